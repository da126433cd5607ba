"""Pattern -> problems: the piece is not larger than the program can draw in reasonable time."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.read.faults import counted

MOST_BEADS = 50_000
"""Beads in one piece."""


def bead_limit(pattern: Pattern, shop: Shop) -> list[Problem]:
    """One problem at the part with the most beads."""
    del shop
    total = sum(_beads(part) for part in pattern.parts)
    if total <= MOST_BEADS:
        return []
    largest = max(pattern.parts, key=_beads)
    values = {"count": counted(total, "bead"), "most": MOST_BEADS}
    return [Problem("too-many-beads", place(pattern, largest.at, "repeat", "name"), values)]


def _beads(part: Part) -> int:
    rows = part.chart.rows if part.chart else ()
    charted = sum(len(row.cells) for row in rows) * part.repeat
    return charted + sum(len(words.letters) for words in part.all_strands)
