"""Pattern -> problems: the row a part begins with is there."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted


def begin(pattern: Pattern, shop: Shop) -> list[Problem]:
    """`begin: row N` with an N beyond the chart's rows, repeats included."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        if not part.begin.startswith("row ") or part.chart is None or not part.chart.rows:
            continue
        row, rows = int(part.begin.removeprefix("row ")), len(part.chart.rows) * part.repeat
        if not 1 <= row <= rows:
            values = {"part": part.name, "row": row, "rows": counted(rows, "row")}
            problems.append(Problem("begin-row", place(pattern, part.at, "begin"), values))
    return problems
