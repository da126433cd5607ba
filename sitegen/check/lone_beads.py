"""Pattern -> problems: no row of one brick-stitched bead on another row of one."""

from __future__ import annotations

from itertools import pairwise

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Part, Pattern


def lone_beads(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The lower row of each such two."""
    del shop
    return [
        Problem("rows-of-one", below.where)
        for part in pattern.parts
        if part.stitch == "brick"
        for above, below in pairwise(_rows(part))
        if len(above.cells) == 1 == len(below.cells)
    ]


def _rows(part: Part) -> tuple[ChartRow, ...]:
    return part.chart.rows if part.chart else ()
