"""ThreadPath -> beads of each letter: pieces, grams, and packs to buy."""

from __future__ import annotations

import math
from collections import Counter

from sitegen.measure.tools import kind_of
from sitegen.model.measures import BeadCount
from sitegen.model.shop import Shop
from sitegen.model.source import Colour, Pattern
from sitegen.model.thread import ThreadPath


def materials(path: ThreadPath, pattern: Pattern, shop: Shop) -> tuple[BeadCount, ...]:
    """One line for each letter used, in the order of the pattern's colours."""
    counts = Counter(bead.letter for bead in path.beads)
    return tuple(
        bead_count(colour, counts[colour.letter], pattern, shop)
        for colour in pattern.colours
        if counts[colour.letter]
    )


def bead_count(colour: Colour, each: int, pattern: Pattern, shop: Shop) -> BeadCount:
    """So many beads of a colour in each piece: all in grams and in packs, those of the stock or the usual."""
    total = each * pattern.makes.pieces
    grams = total / kind_of(colour.bead, pattern.bead_kinds).per_gram
    stock = shop.stocked(colour)
    pack_grams = stock.pack_grams if stock and stock.pack_grams else shop.pack_grams
    packs = whole_packs(grams, shop.spare, pack_grams)
    return BeadCount(
        letter=colour.letter,
        name=colour.name,
        bead=colour.bead,
        hex=colour.hex,
        finish=colour.finish,
        each=each,
        total=total,
        grams=grams,
        buy_grams=packs * pack_grams,
        packs=packs,
        pack_grams=pack_grams,
    )


def whole_packs(grams: float, spare: float, pack_grams: float) -> int:
    """Packs to buy for so many grams and a share to spare: a rest takes a whole pack."""
    return math.ceil(round(grams * (1 + spare) / pack_grams, 9))
