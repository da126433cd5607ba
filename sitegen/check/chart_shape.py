"""Pattern -> problems: the rows of a chart lie as its stitch lays them."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

from sitegen.check.stitch import StitchShape, shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Pattern
from sitegen.read.faults import counted


def chart_shape(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Rows out of step or with gaps in staggered charts; rows too long or short in rectangular ones."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        rows = part.chart.rows if part.chart else ()
        if part.stitch == "peyote" and part.drop > 1:
            continue  # see peyote.py
        if shape(part) is StitchShape.STAGGERED:
            problems += _staggered(rows, part.stitch)
        elif shape(part) is StitchShape.RECTANGULAR:
            problems += _rectangular(rows)
    return problems


def _staggered(rows: tuple[ChartRow, ...], stitch: str) -> list[Problem]:
    problems: list[Problem] = []
    sides = [_usual([column % 2 for column, _ in row.cells]) for row in rows]
    problems += [Problem("row-shifted", rows[number].where, {"stitch": stitch}) for number in _shifted(sides)]
    for row, side in zip(rows, sides, strict=True):
        for cell, (column, _) in enumerate(row.cells):
            before = row.cells[cell - 1][0] if cell else column - 2
            if column % 2 != side:
                problems.append(Problem("row-out-of-step", row.spot(cell), {"stitch": stitch}))
            elif column - before > 3:
                problems.append(Problem("row-gap", row.spot(cell), {"stitch": stitch}))
    if not problems:
        problems += [
            Problem("row-adrift", below.where) for above, below in pairwise(rows) if apart(above, below)
        ]
    return problems


def _shifted(sides: list[int]) -> list[int]:
    """Rows that stand straight above the row before them; of a single shifted row, not the row after it."""
    shifted: list[int] = []
    for number, (above, below) in enumerate(pairwise(sides), start=1):
        if above == below and number - 1 not in shifted:
            shifted.append(number)
    return shifted


def _usual(sides: list[int]) -> int:
    """The side (0 or 1) that most are on; the first one's if it is even."""
    count = Counter(sides)
    return count.most_common(1)[0][0] if count else 0


def apart(above: ChartRow, below: ChartRow, drop: int = 1) -> bool:
    """Whether no bead of two rows that follow each other, worked by so many beads at a time, touches."""
    columns = {column for column, _ in above.cells}
    return not any(column - drop in columns or column + drop in columns for column, _ in below.cells)


def _rectangular(rows: tuple[ChartRow, ...]) -> list[Problem]:
    places = [len(row.cells) + len(row.empty) for row in rows]
    usual = Counter(places).most_common(1)[0][0] if places else 0
    return [
        Problem(
            "row-width", row.where, {"count": counted(count, "place"), "usual": usual, "over": count - usual}
        )
        for row, count in zip(rows, places, strict=True)
        if count != usual
    ]
