"""A rope's core and outer beads -> the chart they stand for, one row a stitch, in order of working."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.model.location import Location
from sitegen.model.source import Chart, ChartRow, Rope


def chart_of_rope(name: str, rope: Rope) -> Chart:
    """In each row its core beads (all of them in the first, one later), then its outer beads."""
    core, outer = rope.core, rope.outer
    count = len(core.letters)
    rows = [_row(core.letters + outer.letters, core.spots + outer.spots, core.where)]
    for stitch in range(rope.stitches - 1):
        at = stitch % count
        letters, spots = core.letters[at : at + 1], core.spots[at : at + 1]
        rows.append(_row(letters + outer.letters, spots + outer.spots, core.where))
    return Chart(name, tuple(rows), core.where)


def _row(letters: Sequence[str], spots: tuple[Location, ...], where: Location) -> ChartRow:
    """A row of letters; where their places are not known, the whole value stands for each."""
    known = spots if len(spots) == len(letters) else (where,) * len(letters)
    return ChartRow(tuple(enumerate(letters)), where, spots=known)
