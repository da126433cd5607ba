"""Pattern -> problems: charts of herringbone, right-angle weave and netting can be worked as they stand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sitegen.check.spots import half_read, place
from sitegen.check.stitch import StitchShape, shape
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Part, Pattern
from sitegen.read.faults import counted

OPEN = ("right-angle weave", "netting")
"""Stitches whose chart is a drawing of lines."""
NETS = (3, 5, 7)
"""Beads a net may have."""


def openwork(pattern: Pattern, shop: Shop) -> list[Problem]:
    """What parts in these stitches cannot be stitched as, and what cannot hang from them."""
    del shop
    return [problem for part in pattern.parts for problem in _part(pattern, part)]


def _part(pattern: Pattern, part: Part) -> Iterator[Problem]:
    if part.hang is not None and part.hang.part is not None:
        yield from _unholding(pattern, part, part.hang.part, "hang")
    if part.over is not None:
        yield from _unholding(pattern, part, part.over.part, "over")
    if part.stitch not in (*OPEN, "herringbone"):
        return
    yield from _keys(pattern, part)
    if half_read(part) or part.chart is None or (part.stitch in OPEN and part.repeat > 1):
        return
    if part.stitch == "herringbone":
        yield from _pairs(pattern, part)
    elif shape(part) is StitchShape.SQUARES:
        yield from _squares(part)
    elif part.net in NETS:
        yield from _net(part)


def _unholding(pattern: Pattern, part: Part, name: str, key: str) -> Iterator[Problem]:
    source = pattern.part(name)
    if source is not None and source.stitch in OPEN:
        values = {"part": name, "stitch": source.stitch}
        yield Problem("open-hang", place(pattern, part.at, key), values)


def _keys(pattern: Pattern, part: Part) -> Iterator[Problem]:
    if part.begin not in ("bottom", "top"):
        values = {"stitch": part.stitch.capitalize(), "begin": part.begin}
        yield Problem("open-begin", place(pattern, part.at, "begin"), values)
    if part.stitch in OPEN and part.repeat > 1:
        yield Problem("open-repeat", place(pattern, part.at, "repeat"), {"stitch": part.stitch})
    if part.stitch == "netting":
        if part.net not in NETS:
            yield Problem("net-size", place(pattern, part.at, "net"), {"net": part.net})
        if "start" in part.at:
            yield Problem("net-start", place(pattern, part.at, "start"))
        if part.hang is not None and part.hang.finding is not None:
            yield Problem("net-finding", place(pattern, part.at, "hang"))


def _columns(row: ChartRow) -> list[int]:
    """For each bead, how many places, empty ones too, stand to its left."""
    rank = {column: n for n, column in enumerate(sorted([*(c for c, _ in row.cells), *row.empty]))}
    return [rank[column] for column, _ in row.cells]


def _pairs(pattern: Pattern, part: Part) -> Iterator[Problem]:
    """Rows of pairs, each on the row before it, growing between two pairs and not too often."""
    rows = part.all_rows
    if len(rows) < part.base:
        values = {"base": counted(part.base, "row"), "rows": counted(len(rows), "row")}
        yield Problem("pairs-base", place(pattern, part.at, "base"), values)
    odd = [row for row in rows if len(row.cells) % 2]
    yield from (Problem("pairs-odd", row.where, {"beads": counted(len(row.cells), "bead")}) for row in odd)
    if odd:
        return
    order = rows if part.begin == "top" else rows[::-1]
    before, grown = _columns(order[0]), False
    for number, row in enumerate(order[1:], start=2):
        columns = _columns(row)
        added = [column for column in columns if column not in before]
        if not _stands(before, columns, added) or (added and number <= part.base):
            yield Problem("pairs-growth", row.where)
            return
        if added and (grown or number == 2):
            yield Problem("pairs-early", row.where)
        before, grown = columns, bool(added)


def _stands(before: list[int], columns: list[int], added: list[int]) -> bool:
    """Whether a row keeps all columns and has none or two more, side by side, between two pairs."""
    if len(columns) - len(added) != len(before):
        return False
    if not added:
        return True
    at = columns.index(added[0])
    return len(added) == 2 and columns[at : at + 2] == added and at % 2 == 0 and 0 < at < len(before)


def _squares(part: Part) -> Iterator[Problem]:
    """Lines by turns of lying sides (one for each square) and of upright ones (one more)."""
    rows = part.all_rows
    left, right = _span(rows)
    wide = (right - left) // 2
    if len(rows) % 2 == 0 or len(rows) < 3 or (right - left) % 2 or not wide:
        remedy = (
            "a line of lying sides, then one of upright sides and one of lying sides for each row of squares"
        )
        yield _size(part, (left, right), "squares", "1", remedy)
        return
    wanted: dict[int, tuple[int, ...]] = {
        0: tuple(range(left + 1, right, 2)),
        1: tuple(range(left, right + 1, 2)),
    }
    yield from _lines(part, {line: wanted[line % 2] for line in range(len(rows))})


def _net(part: Part) -> Iterator[Problem]:
    """Letters on the lattice alone: edge beads at one side in even rows and at the other in odd ones."""
    rows = part.all_rows
    left, right = _span(rows)
    pitch = (part.net + 1) // 2
    wide, high = (right - left) // pitch, (len(rows) - 1) // pitch
    whole = (right - left) % pitch == 0 and (len(rows) - 1) % pitch == 0
    if not whole or wide % 2 == 0 or wide < 3 or high < 3:
        remedy = (
            f"{pitch} lines for each row of nets and one more, and {pitch} columns for each half net "
            "and one more; the half nets across are an odd number"
        )
        yield _size(part, (left, right), "nets", "3 half nets across and 3 rows", remedy)
        return
    shift = 0 if rows[0].cells[0][0] == left else 1
    wanted: dict[int, tuple[int, ...]] = {}
    for line in range(len(rows)):
        level, inside = divmod(line, pitch)
        places = set()
        for column in range((level + shift) % 2, wide + 1, 2):
            for step in (-1, 1) if inside else (0,):
                if 0 <= column + step <= wide:
                    places.add(left + column * pitch + step * inside)
        wanted[line] = tuple(sorted(places))
    yield from _lines(part, wanted)


def _span(rows: tuple[ChartRow, ...]) -> tuple[int, int]:
    columns = [column for row in rows for column, _ in row.cells]
    return min(columns), max(columns)


def _size(part: Part, span: tuple[int, int], shapes: str, least: str, remedy: str) -> Problem:
    assert part.chart is not None
    values = {
        "lines": counted(len(part.all_rows), "line"),
        "columns": counted(span[1] - span[0] + 1, "column"),
        "shapes": shapes,
        "least": least,
        "remedy": remedy,
    }
    return Problem("open-size", part.chart.where, values)


def _lines(part: Part, wanted: Mapping[int, tuple[int, ...]]) -> Iterator[Problem]:
    """The first letter of each line that stands where none can, else the first place without one."""
    for line, row in enumerate(part.all_rows):
        columns = {column for column, _ in row.cells}
        stray = next((cell for cell, (column, _) in enumerate(row.cells) if column not in wanted[line]), None)
        if stray is not None:
            values = {"stitch": part.stitch, "column": row.cells[stray][0] + 1}
            yield Problem("open-place", row.spot(stray), values)
        elif columns != set(wanted[line]):
            column = next(column for column in wanted[line] if column not in columns)
            where = Location(
                row.where.file, row.where.line, column + 1 if not row.spots else row.where.column, 1
            )
            yield Problem("open-missing", where, {"column": column + 1})
