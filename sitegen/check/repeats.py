"""Pattern -> problems: a repeated chart meets itself in step."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.check.stitch import StitchShape, shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern


def repeats(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Repeated staggered charts whose last and first row would lie straight above each other."""
    del shop
    return [
        Problem("repeat-out-of-step", place(pattern, part.at, "repeat"))
        for part in pattern.parts
        if part.repeat > 1 and shape(part) is StitchShape.STAGGERED and _clash(part)
    ]


def _clash(part: Part) -> bool:
    rows = part.chart.rows if part.chart else ()
    if not rows:
        return False
    drop = part.drop if part.stitch == "peyote" else 1
    left = min(row.cells[0][0] for row in rows)
    first, last = ((row.cells[0][0] - left) // drop for row in (rows[0], rows[-1]))
    return first % 2 == last % 2
