"""Pattern -> problems: rows of square stitch hold together, and loom strips are full."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Part, Pattern


def across_rows(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Empty places where none can be, and beads that nothing holds."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        rows = part.chart.rows if part.chart else ()
        if part.stitch == "loom":
            problems += [Problem("row-not-full", row.where) for row in rows if row.empty]
        elif part.stitch == "square":
            problems += _broken(rows) or _unheld(part)
    return problems


def _broken(rows: tuple[ChartRow, ...]) -> list[Problem]:
    return [
        Problem("row-broken", row.spot(cell))
        for row in rows
        for cell, (column, _) in enumerate(row.cells)
        if cell and any(row.cells[cell - 1][0] < empty < column for empty in row.empty)
    ]


def _unheld(part: Part) -> Iterator[Problem]:
    """Beads with none above and none beneath, a repeated chart meeting itself."""
    rows = part.all_rows
    filled = [set(_places(row)) for row in rows]
    told = set()
    for number, row in enumerate(rows):
        near = [filled[other] for other in (number - 1, number + 1) if 0 <= other < len(rows)]
        for cell, column in enumerate(_places(row)):
            spot = row.spot(cell)
            if not any(column in other for other in near) and spot not in told:
                told.add(spot)
                yield Problem("bead-unheld", spot)


def _places(row: ChartRow) -> list[int]:
    """For each bead, how many places stand to its left."""
    columns = sorted([column for column, _ in row.cells] + list(row.empty))
    number = {column: place for place, column in enumerate(columns)}
    return [number[column] for column, _ in row.cells]
