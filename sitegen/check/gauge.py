"""Pattern -> problems: a measured swatch is one that its beads can make."""

from __future__ import annotations

from collections.abc import Iterable

from sitegen.check.spots import place
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Gauge, Part, Pattern
from sitegen.trade.beads import BeadSize, bead_kind

TIGHTEST, LOOSEST = 0.4, 1.3
"""The nearest and farthest that beads or rows lie, in smallest and largest sides of the beads: rows that
stand half a bead beside the next are half as high; farther apart thread would lie bare. Own judgement."""


def gauge(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The pattern's swatch against all its beads, a part's against the beads of that part."""
    del shop
    room = max((_room(part) for part in pattern.parts), default=1)
    problems = _unlike(pattern, pattern.gauge, {colour.letter for colour in pattern.colours}, room)
    for part in pattern.parts:
        problems += _unlike(pattern, part.gauge, _letters(part), _room(part))
    return problems


def _room(part: Part) -> int:
    """How many beads wide a thing that the swatch counts may be: a square 2, a net all it has."""
    return {"right-angle weave": 2, "netting": part.net + 1}.get(part.stitch, 1)


def _letters(part: Part) -> set[str]:
    rows = part.chart.rows if part.chart else ()
    charted = {letter for row in rows for _, letter in row.cells}
    return charted | {letter for words in part.strands for letter in words.letters}


def _unlike(pattern: Pattern, swatch: Gauge | None, letters: Iterable[str], room: int) -> list[Problem]:
    sides = [side for kind in _kinds(pattern, letters) for side in (kind.width_mm, kind.length_mm)]
    if swatch is None or not sides:
        return []
    least, most = TIGHTEST * min(sides), LOOSEST * max(sides) * room
    pitches = {"width_mm": swatch.width_mm / swatch.beads, "height_mm": swatch.height_mm / swatch.rows}
    return [
        Problem(
            "gauge-unlike-beads",
            place(pattern, swatch.at, side),
            {"pitch": plain(pitch), "least": plain(least, 1), "most": plain(most, 1)},
        )
        for side, pitch in pitches.items()
        if not least <= pitch <= most
    ]


def _kinds(pattern: Pattern, letters: Iterable[str]) -> list[BeadSize]:
    found = (pattern.colour(letter) for letter in letters)
    kinds = (bead_kind(colour.bead, pattern.bead_kinds) for colour in found if colour)
    return [kind for kind in kinds if kind]
