"""Pieces -> one shopping list for all of them: beads, packs counted over the sum, thread, findings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from sitegen.draw.bead_key import bead_keys
from sitegen.measure.materials import whole_packs
from sitegen.model.measures import BeadCount
from sitegen.model.numbers import plain
from sitegen.publish.materials import KEY_ROOM, LARGEST_KEY, bead_words, colour_language
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.shopping import SoldBead, sold_bead
from sitegen.publish.units import in_both
from sitegen.publish.view import Fact
from sitegen.publish.words import Words
from sitegen.trade.needles import needle


@dataclass(frozen=True, slots=True)
class SumLine:
    """A bead of the shopping list, for all patterns that take it."""

    key: Markup
    """The bead from the side and from its hole."""
    name: str
    bead: str
    used: str
    """Number of the pattern and letter in it, for each."""
    total: str
    grams: str
    buy: str
    packs: str
    language: str
    """Of the name, where it is not that of the page."""


@dataclass(frozen=True, slots=True)
class Sums:
    """A shopping list for several patterns, each made once as it says."""

    beads: tuple[SumLine, ...]
    total: str
    """All beads."""
    scale: str
    """How much larger than life they are drawn."""
    spare: str
    """Percent of beads bought on top of the count."""
    supplies: tuple[Fact, ...]


@dataclass(slots=True)
class _Taken:
    """One bead in one pattern: the piece, its number among all, and the count."""

    piece: Piece
    number: int
    count: BeadCount


def sums(pieces: Sequence[Piece], words: Words) -> Sums:
    """What all the pieces take together; `pieces` are several, of one shop."""
    taken: dict[SoldBead, list[_Taken]] = {}
    for number, piece in enumerate(pieces, 1):
        for count in piece.measures.beads:
            taken.setdefault(sold_bead(piece, count), []).append(_Taken(piece, number, count))
    beads = sorted(taken, key=lambda bead: (bead.drawer, str(bead)))
    drawn = [bead_keys(piece.pattern, words.text) for piece in pieces]
    keys = {bead: drawn[first.number - 1][first.count.letter] for bead, (first, *_) in taken.items()}
    fits = [min(KEY_ROOM[0] / one.width_mm, KEY_ROOM[1] / one.height_mm) for one in keys.values()]
    scale, spare = min([LARGEST_KEY, *fits]), pieces[0].shop.spare
    return Sums(
        beads=tuple(
            _line(bead, taken[bead], Markup(keys[bead].svg(f"sum-{place}", scale)), words)
            for place, bead in enumerate(beads, 1)
        ),
        total=str(sum(piece.measures.bead_total for piece in pieces)),
        scale=plain(scale, 1),
        spare=plain(spare * 100, 1),
        supplies=tuple(_supplies(pieces, words)),
    )


def _line(bead: SoldBead, taken: Sequence[_Taken], key: Markup, words: Words) -> SumLine:
    say, tell, first = words.text, Quantities(words), taken[0]
    grams = sum(one.count.grams for one in taken)
    packs = whole_packs(grams, first.piece.shop.spare, bead.pack_grams)
    buy = packs * bead.pack_grams
    used = [say("bundle.letter", number=one.number, letter=one.count.letter) for one in taken]
    return SumLine(
        key=key,
        name=first.count.name,
        bead=bead_words(first.count.bead, first.count.finish, words),
        used=", ".join(used),
        total=str(sum(one.count.total for one in taken)),
        grams=tell.both_weights(grams),
        buy=in_both(say("unit.g", value=plain(buy, 1)), tell.ounces(buy)),
        packs=say("beads.packs", count=packs, grams=plain(bead.pack_grams, 1)),
        language=colour_language(first.piece, first.count.letter),
    )


def _supplies(pieces: Sequence[Piece], words: Words) -> list[Fact]:
    """Needles, each thread with the length of all patterns together, and findings."""
    say, tell = words.text, Quantities(words)
    threads: dict[str, float] = {}
    findings: dict[str, int] = {}
    for piece in pieces:
        measures = piece.measures
        length = measures.thread.total_mm + sum(line.total_mm for line in measures.warps)
        threads[piece.thread] = threads.get(piece.thread, 0.0) + length * measures.pieces
        for kind, count in piece.findings.items():
            findings[kind] = findings.get(kind, 0) + count * measures.pieces
    label = say("supplies.thread")
    return [
        Fact(say("supplies.needle"), ", ".join(_needles(pieces, words))),
        *(
            Fact(label, say("supplies.thread-is", thread=thread), tell.both_threads(length))
            for thread, length in threads.items()
        ),
        *_findings(findings, words),
    ]


def _needles(pieces: Sequence[Piece], words: Words) -> list[str]:
    """Each needle once; a piece that is strung without one does not say so beside another that needs one."""
    named = dict.fromkeys(piece.needle for piece in pieces)
    there = [name for name in named if (sewn := needle(name)) is None or sewn.length_mm]
    return [words.text("supplies.needle-is", needle=name) for name in there or named]


def _findings(findings: Mapping[str, int], words: Words) -> list[Fact]:
    """All kinds in one line, so that the list keeps to its page."""
    said = [words.text("supplies.findings", number=count, kind=kind) for kind, count in findings.items()]
    return [Fact(words.text("supplies.finding"), ", ".join(said))] if said else []
