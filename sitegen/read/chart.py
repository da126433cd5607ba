"""The lines of a chart block, or the word charts of its rows -> Chart, or problems."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.model.location import Location
from sitegen.model.source import Chart, ChartRow, Words
from sitegen.read.faults import Faults

RECTANGULAR = frozenset({"ladder", "herringbone", "tubular herringbone", "square", "loom"})
"""Stitches whose beads lie in columns; in all others each row stands half a bead beside the next."""


@dataclass(frozen=True, slots=True)
class ChartBlock:
    """A fenced block of the body that draws a part."""

    name: str
    lines: tuple[tuple[int, str], ...]
    """(line number, text) of the lines between the fences."""
    where: Location
    """The part's name behind the opening fence."""
    closed: bool = True


def read_chart(block: ChartBlock, faults: Faults) -> Chart:
    """Read a drawn chart.

    A character that cannot be a bead is noted and kept in its cell; a chart whose rows cannot be told at
    all has none, so that what follows is silent about it.
    """
    lines = list(block.lines)
    while lines and not lines[-1][1].strip():
        lines.pop()
    while lines and not lines[0][1].strip():
        lines.pop(0)
    if not block.closed:
        return Chart(block.name, (), block.where)
    if not lines:
        faults.add("chart-empty", block.where, name=block.name)
        return Chart(block.name, (), block.where)
    rows = [_read_row(number, text, block.where.file, faults) for number, text in lines]
    whole = tuple(row for row in rows if row is not None)
    return Chart(block.name, whole if len(whole) == len(rows) else (), block.where)


def _read_row(number: int, text: str, file: str, faults: Faults) -> ChartRow | None:
    tab = text.find("\t")
    if tab >= 0:
        faults.add("chart-tab", Location(file, number, tab + 1))
        return None
    cells = tuple((column, sign) for column, sign in enumerate(text) if sign not in " .")
    for column, sign in cells:
        if not (sign.isascii() and sign.isalnum()):
            faults.add("chart-character", Location(file, number, column + 1), sign=sign)
    if not cells:
        faults.add("chart-row-empty", Location(file, number, 1, max(1, len(text))))
        return None
    first, last = cells[0][0], cells[-1][0]
    where = Location(file, number, first + 1, last - first + 1)
    return ChartRow(cells, where, empty=tuple(column for column, sign in enumerate(text) if sign == "."))


def chart_of_rows(name: str, stitch: str, rows: Sequence[Words], where: Location) -> Chart:
    """The chart that the rows' word charts stand for.

    Rectangular stitches take one column a bead. In the others a bead takes two columns, and each row is
    centred over the widest; where that would put a row straight above the one before it, the row moves by
    one column: the way the row before it was moved, else to the right and to the left by turns.
    """
    if any(not row.letters for row in rows):
        return Chart(name, (), where)
    if stitch in RECTANGULAR:
        return Chart(name, tuple(_worded_row(row, 0, 1) for row in rows), where)
    widest = max((len(row.letters) for row in rows), default=0)
    starts: list[int] = []
    moved, turn = 0, 1
    for row in rows:
        start = widest - len(row.letters)
        if starts and (start - starts[-1]) % 2 == 0:
            if not moved:
                moved, turn = turn, -turn
        else:
            moved = 0
        starts.append(start + moved)
    least = min(starts, default=0)
    worded = (_worded_row(row, start - least, 2) for row, start in zip(rows, starts, strict=True))
    return Chart(name, tuple(worded), where)


def _worded_row(words: Words, start: int, step: int) -> ChartRow:
    cells = tuple((start + step * place, letter) for place, letter in enumerate(words.letters))
    return ChartRow(cells, words.where, spots=words.spots)
