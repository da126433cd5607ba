"""Pieces -> the page of the shopping list: what each pattern takes, raw, for sums made in the page itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from sitegen.measure.tools import kind_of
from sitegen.model.measures import BeadCount
from sitegen.model.numbers import plain
from sitegen.model.shop import Shop
from sitegen.publish.compose import TITLE, canonical, page_address, shop_line
from sitegen.publish.data_block import as_data
from sitegen.publish.materials import bead_words
from sitegen.publish.piece import Piece
from sitegen.publish.to_list import MOST_PIECES, list_name
from sitegen.publish.view import ForMachines, Sharing, ShopLine
from sitegen.publish.ways import PICTURE
from sitegen.publish.words import Words
from sitegen.trade.families import drawer
from sitegen.trade.figures import tidy
from sitegen.trade.needles import needle

SHOPPING = "list/index.html"
"""Where it stands in the site."""

Node = dict[str, Any]


@dataclass(frozen=True, slots=True)
class ListView:
    """The page of the shopping list."""

    data: Markup
    """Every pattern and bead as JSON, without any `<`."""
    priced: bool
    """Whether any bead has a price."""
    most: str
    """The most pieces of one pattern."""
    spare: str
    """Percent of beads bought on top of the count."""
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


@dataclass(frozen=True, slots=True)
class SoldBead:
    """A bead as it is bought: what differs in any of this is bought by itself."""

    bead: str
    finish: str
    name: str
    hex: str
    per_gram: float
    pack_grams: float
    price: float | None
    """Of one pack."""

    @property
    def drawer(self) -> tuple[str, int, float, str]:
        """Kinds together, each in the order of a drawer."""
        return self.bead, *drawer(self.hex, self.name)


def list_view(pieces: Sequence[Piece], shop: Shop, words: Words) -> ListView:
    """The page; its patterns are all of the shop's, each in the author's colours and in every colourway."""
    every = [one for piece in pieces for one in (piece, *piece.ways)]
    said: dict[SoldBead, tuple[str, str]] = {}
    for piece in every:
        for count in piece.measures.beads:
            said.setdefault(
                sold_bead(piece, count), (bead_words(count.bead, count.finish, words), count.name)
            )
    beads = sorted(said, key=lambda bead: (bead.drawer, str(bead)))
    place = {bead: number for number, bead in enumerate(beads)}
    data = {
        "currency": shop.currency,
        "spare": shop.spare,
        "beads": [_sold(bead, *said[bead]) for bead in beads],
        "patterns": {
            list_name(piece): {
                **_shown(piece, words),
                "beads": [[place[sold_bead(piece, count)], count.each] for count in piece.measures.beads],
                **_supplies(piece, words),
            }
            for piece in every
        },
    }
    return ListView(
        data=as_data(data),
        priced=any(bead.price is not None for bead in beads),
        most=str(MOST_PIECES),
        spare=plain(shop.spare * 100, 1),
        canonical=canonical(shop, SHOPPING),
        shop=shop_line(shop),
    )


def sold_bead(piece: Piece, count: BeadCount) -> SoldBead:
    """A line of a piece's bead list as the bead that is bought, alike in all patterns that take it."""
    pattern = piece.pattern
    stock = piece.shop.stocked(pattern.colour(count.letter))
    return SoldBead(
        bead=tidy(count.bead),
        finish=tidy(count.finish),
        name=piece.author_name(count.letter).casefold(),
        hex=count.hex,
        per_gram=kind_of(count.bead, pattern.bead_kinds).per_gram,
        pack_grams=count.pack_grams,
        price=float(stock.price) if stock and stock.price is not None else None,
    )


def _sold(bead: SoldBead, kind: str, name: str) -> Node:
    """`per_gram` beads weigh a gram; `pack` is in grams."""
    told = {"kind": kind, "name": name, "hex": bead.hex, "per_gram": bead.per_gram, "pack": bead.pack_grams}
    return told if bead.price is None else {**told, "price": bead.price}


def _shown(piece: Piece, words: Words) -> Node:
    """How the pattern is named and pictured; addresses are from the page of the list."""
    top = "../" * (piece.shop.folder + SHOPPING).count("/")
    home = page_address(piece.pattern.name, piece.folder)
    return {
        "title": piece.pattern.title,
        "language": piece.language_of(TITLE),
        "href": "../" * SHOPPING.count("/") + home,
        "picture": top + home.replace("index.html", PICTURE),
        "makes": words.text(f"makes.{piece.pattern.makes.value}"),
    }


def _supplies(piece: Piece, words: Words) -> Node:
    """For one piece: mm of each thread, warps included, the needle, and the number of each finding.

    What is strung without a needle has none.
    """
    measures = piece.measures
    length = measures.thread.total_mm + sum(line.total_mm for line in measures.warps)
    used = needle(piece.needle)
    needles = [words.text("supplies.needle-is", needle=piece.needle)] if used and used.diameter_mm else []
    return {
        "threads": {words.text("supplies.thread-is", thread=piece.thread): length},
        "needles": needles,
        "findings": {words.text("list.finding", kind=kind): count for kind, count in piece.findings.items()},
    }
