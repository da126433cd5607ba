"""Pattern -> problems: what peyote adds to a chart (beads by twos, a strip zipped into a tube) fits it."""

from __future__ import annotations

from itertools import pairwise

from sitegen.check.chart_shape import apart
from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Part, Pattern


def peyote(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Rows of two-drop that are out of step, and strips that cannot be zipped."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        if part.stitch == "peyote" and part.drop > 1:
            problems += _by_drops(pattern, part)
        if part.zip:
            problems += _zip(pattern, part)
            problems += _on_zipped(pattern, part)
    return problems


def _by_drops(pattern: Pattern, part: Part) -> list[Problem]:
    """Each row's first bead that is out of step."""
    if "rows" in part.at:
        return [Problem("drop-rows", place(pattern, part.at, "drop"), {"drop": part.drop})]
    rows = part.chart.rows if part.chart else ()
    if not rows:
        return []
    left = min(row.cells[0][0] for row in rows)
    side = (rows[0].cells[0][0] - left) // part.drop
    problems: list[Problem] = []
    for number, row in enumerate(rows):
        columns = [column - left for column, _ in row.cells]
        start = columns[0] - columns[0] % part.drop
        if (start // part.drop - side - number) % 2:
            start += part.drop
        due = [start + 2 * part.drop * (n // part.drop) + n % part.drop for n in range(len(columns))]
        wrong = next((n for n, column in enumerate(columns) if column != due[n]), None)
        if wrong is None and len(columns) % part.drop:
            wrong = len(columns) - 1
        if wrong is not None:
            problems.append(Problem("drop-row", row.spot(wrong), {"drop": part.drop}))
    if not problems:
        problems += [
            Problem("row-adrift", below.where)
            for above, below in pairwise(rows)
            if apart(above, below, part.drop)
        ]
    return problems


def _zip(pattern: Pattern, part: Part) -> list[Problem]:
    here = place(pattern, part.at, "zip")
    if part.stitch != "peyote":
        return [Problem("zip-needless", here, {"stitch": part.stitch})]
    rows = part.all_rows
    if part.begin not in ("top", "bottom"):
        return [Problem("zip-begin", place(pattern, part.at, "begin"))]
    if rows and not _meet(rows[0], rows[-1], part.drop):
        return [Problem("zip-out-of-step", here)]
    return []


def _on_zipped(pattern: Pattern, zipped: Part) -> list[Problem]:
    """What would hang from an edge that a zip closes: its own finding, and other parts."""
    problems: list[Problem] = []
    for part in pattern.parts:
        hang = part.hang
        if hang is not None and (hang.part == zipped.name or (part is zipped and hang.finding)):
            where = place(pattern, hang.at, "part", "finding")
            problems.append(Problem("zip-hang", where, {"part": zipped.name, "edge": hang.edge}))
    return problems


def _meet(first: ChartRow, last: ChartRow, drop: int) -> bool:
    """Whether the beads of the two rows lie beside each other all the way across."""
    return all(abs(first.cells[end][0] - last.cells[end][0]) == drop for end in (0, -1))
