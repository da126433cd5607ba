"""Chart rows of staggered beads -> beads laid in their places, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.model.source import Part
from sitegen.weave.work import Work


@dataclass(frozen=True, slots=True)
class Laid:
    """A part whose beads have their places but no thread yet."""

    part: int
    """Its index in the thread path."""
    columns: dict[int, int]
    """Bead -> text column of its letter (half a pitch each)."""
    order: tuple[int, ...]
    """Chart rows (indexes from the top) in order of working; the first is the base row."""


def working_order(begin: str, rows: int) -> tuple[int, ...]:
    """Chart rows in order of working: the base row, all rows above it, then all rows below it.

    `begin` is `bottom`, `top`, `middle` or `row N`, N counted from 1 at the top.
    """
    if begin == "bottom":
        base = rows - 1
    elif begin == "top":
        base = 0
    elif begin == "middle":
        base = (rows - 1) // 2
    else:
        base = int(begin.removeprefix("row ")) - 1
    return (base, *range(base - 1, -1, -1), *range(base + 1, rows))


def lay_staggered(work: Work, part: Part) -> Laid:
    """Lay a brick (or ladder) chart: holes upright, a row as high as its longest bead.

    The pitch along a row is the widest bead's diameter, unless the author's gauge says otherwise.
    """
    rows = part.all_rows
    gauge = part.gauge or work.pattern.gauge
    kinds = [[work.kind(letter) for _, letter in row.cells] for row in rows]
    pitch = gauge.width_mm / gauge.beads if gauge else max(kind.width_mm for row in kinds for kind in row)
    heights = [
        gauge.height_mm / gauge.rows if gauge else max(kind.length_mm for kind in row) for row in kinds
    ]
    order = working_order(part.begin, len(rows))
    number = {row: index + 1 for index, row in enumerate(order)}
    index = work.begin_part(part, len(rows), sum(heights) / len(heights), pitch)
    places = [[column for column, _ in row.cells] for row in rows]
    if part.stitch == "ladder":  # its beads may be written without blanks between them
        places = [[2 * cell for cell in range(len(row))] for row in places]
    first = min(row[0] for row in places)
    columns: dict[int, int] = {}
    top = 0.0
    for chart_row, row in enumerate(rows):
        middle = top + heights[chart_row] / 2
        beads = []
        for cell, (column, (_, letter)) in enumerate(zip(places[chart_row], row.cells, strict=True)):
            x = (column - first) * pitch / 2
            bead = work.lay(index, number[chart_row], cell + 1, (letter, row.spot(cell)), (x, middle, 0.0))
            columns[bead] = column
            work.seats[bead] = chart_row
            beads.append(bead)
        work.rows[index].append(beads)
        top += heights[chart_row]
    return Laid(index, columns, order)
