"""The rows of a chart -> its marks: lines every 5 and 10, numbers of rows and columns, bead counts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain, count, pairwise

from sitegen.draw.colour import INK, WHITE
from sitegen.draw.pens import CAP_HEIGHT, Outline, Paint, Pen, Text, text_width
from sitegen.draw.shapes import arrowhead
from sitegen.model.numbers import plain
from sitegen.model.thread import Bead, Point

LABEL_MM = 1.5
"""Font size of the numbers of rows, rounds, strands and loops."""
COUNT_MM = 1.2
"""Font size of bead counts: smaller than a number, pale, not bold and in brackets."""
COUNT_INK = "#665c51"
"""6.6:1 on white."""
AIR = 1.25
"""Room a label takes upward and downward, in heights of its capitals."""
NUMBER_OUT_MM, COUNT_OUT_MM = 1.7, 0.9
"""How far from the beads a row's number (its arrow stands between) and its count begin."""
EVERY = 5
"""Every so many rows and columns a heavier line is drawn; every second of them is heavier still."""
FINE, BOLD = 0.12, 0.26
"""Widths of the two."""
HALO_MM = 0.09
"""White on either side of a heavier line, so that it shows between dark beads."""
BEYOND_MM = 0.5
"""How far a heavier line stands out beyond the beads."""
LEANING = 20.0
"""A bead leaning less than this, degrees, counts as upright or lying."""


@dataclass(frozen=True, slots=True)
class Row:
    """A row, or a round of a tube, in order of picking up."""

    number: int
    beads: tuple[Bead, ...]
    rightward: bool
    """Whether it is worked from left to right as the piece hangs."""


def half_size(bead: Bead) -> Point:
    """Half its size to the side and down; a bead that leans a little is taken as upright or lying."""
    if 45 < bead.angle % 180 < 135:
        return bead.length / 2, bead.width / 2
    return bead.width / 2, bead.length / 2


def is_cloth(rows: Sequence[Row]) -> bool:
    """Whether the beads lie close in straight rows, all one way: lines can be drawn between them."""
    turns = {
        round(bead.angle / 90) % 2 if abs((bead.angle + 45) % 90 - 45) <= LEANING else -1
        for row in rows
        for bead in row.beads
    }
    level = all(max(one.y for one in row.beads) - min(one.y for one in row.beads) < 0.1 for row in rows)
    return len(turns) == 1 and -1 not in turns and level


def heavier_lines(pen: Pen, rows: Sequence[Row]) -> None:
    """After every fifth and tenth row, following the stagger; and column where columns are straight."""
    found: dict[bool, list[Outline]] = {False: [], True: []}
    levels = sorted(rows, key=lambda row: row.beads[0].y)
    for upper, lower in pairwise(levels):
        done = min(upper.number, lower.number)
        if done % EVERY == 0:
            found[done % (2 * EVERY) == 0].append(_between(upper.beads, lower.beads))
    beads = [bead for row in rows for bead in row.beads]
    head = min(bead.y - half_size(bead)[1] for bead in beads)
    foot = max(bead.y + half_size(bead)[1] for bead in beads)
    columns = straight_columns(rows)
    for number, (one, other) in enumerate(pairwise(columns), 1):
        if number % EVERY == 0:
            both = (*one, *other)
            x = (max(bead.x + half_size(bead)[0] for bead in one)
                 + min(bead.x - half_size(bead)[0] for bead in other)) / 2  # fmt: skip
            top = min(bead.y - half_size(bead)[1] for bead in both)
            bottom = max(bead.y + half_size(bead)[1] for bead in both)
            top, bottom = top - BEYOND_MM * (top == head), bottom + BEYOND_MM * (bottom == foot)
            line = Outline((x, top), ((x, bottom),), closed=False)
            found[number % (2 * EVERY) == 0].append(line)
    pen.begin("heavier-lines", {})
    for width, lines in ((FINE, found[False]), (BOLD, found[True])):
        pen.shapes(lines, Paint(stroke=WHITE, width=width + 2 * HALO_MM))
    for width, lines in ((FINE, found[False]), (BOLD, found[True])):
        pen.shapes(lines, Paint(stroke=INK, width=width))
    pen.end()


def _between(upper: Sequence[Bead], lower: Sequence[Bead]) -> Outline:
    """The line between two rows: straight, or up and down where their beads stand side by side."""
    foot = max(bead.y + half_size(bead)[1] for bead in upper)
    head = min(bead.y - half_size(bead)[1] for bead in lower)
    both = sorted((*upper, *lower), key=lambda bead: bead.x)
    left = both[0].x - half_size(both[0])[0]
    right = both[-1].x + half_size(both[-1])[0]
    if foot - head < 0.3 * half_size(upper[0])[1]:
        y = (foot + head) / 2
        return Outline((left - BEYOND_MM, y), ((right + BEYOND_MM, y),), closed=False)
    steps: list[Point] = []
    edges = [left - BEYOND_MM, *((one.x + other.x) / 2 for one, other in pairwise(both)), right + BEYOND_MM]
    above = set(map(id, upper))
    for bead, (start, end) in zip(both, pairwise(edges), strict=True):
        y = bead.y + half_size(bead)[1] if id(bead) in above else bead.y - half_size(bead)[1]
        steps += [(start, y), (end, y)]
    return Outline(steps[0], tuple(steps[1:]), closed=False)


def straight_columns(rows: Sequence[Row]) -> list[list[Bead]]:
    """Columns from the left where beads stand one above the other; none where rows step by half a bead."""
    columns: list[list[Bead]] = []
    for bead in sorted((bead for row in rows for bead in row.beads), key=lambda bead: bead.x):
        if columns and bead.x - columns[-1][0].x < 0.2 * half_size(bead)[0]:
            columns[-1].append(bead)
        else:
            columns.append([bead])
    wide = half_size(columns[0][0])[0] * 2
    stepped = any(other[0].x - one[0].x < 0.8 * wide for one, other in pairwise(columns))
    return [] if stepped else columns


def column_numbers(pen: Pen, rows: Sequence[Row]) -> None:
    """The number of every fifth column above it; where rows step, ticks along the widest row instead."""
    columns = straight_columns(rows)
    beads = [bead for row in rows for bead in row.beads]
    top = min(bead.y - half_size(bead)[1] for bead in beads)
    bottom = max(bead.y + half_size(bead)[1] for bead in beads)
    if columns:
        for number in range(EVERY, len(columns) + 1, EVERY):
            _column_number(pen, number, columns[number - 1][0].x, (top, bottom), ticked=False)
        return
    widest = max(rows, key=lambda row: len(row.beads))
    low = widest.beads[0].y > (top + bottom) / 2 + 0.1
    across = sorted(widest.beads, key=lambda bead: bead.x)
    for number in range(EVERY, len(across) + 1, EVERY):
        span = (top, bottom)
        _column_number(pen, number, across[number - 1].x, span, ticked=True, below=low)


def _column_number(
    pen: Pen, number: int, x: float, span: Point, *, ticked: bool, below: bool = False
) -> None:
    data = {"from": plain(span[0]), "to": plain(span[1]), "at": plain(x)}
    edge, out = (span[1], 1.0) if below else (span[0], -1.0)
    pen.begin("column-number", data)
    if ticked:
        width = BOLD if number % (2 * EVERY) == 0 else FINE
        near, far = edge + out * 0.3, edge + out * (0.3 + 0.7)
        pen.shapes([Outline((x, near), ((x, far),), closed=False)], Paint(stroke=INK, width=width))
    bold = number % (2 * EVERY) == 0
    pen.text(Text(x, edge + out * 1.9, str(number), COUNT_MM, COUNT_INK, "middle", bold=bold))
    pen.end()


@dataclass(slots=True)
class _Margin:
    """Finds each label its place beside the beads: level with its row, outside of beads and other labels."""

    beads: Mapping[int, Sequence[Bead]]
    """By the height they stand at, in whole `LABEL_MM`."""
    step: float
    """How far a label moves out where another stands in its place."""
    taken: list[tuple[float, float, float, float]] = field(default_factory=list)

    def edge(self, y: float, side: float) -> float:
        """How far beads at this height reach to that side."""
        slot = round(y / LABEL_MM)
        near = [bead for at in range(slot - 3, slot + 4) for bead in self.beads.get(at, ())]
        level = [bead for bead in near if abs(bead.y - y) < half_size(bead)[1] + LABEL_MM / 5]
        return max(side * bead.x + half_size(bead)[0] for bead in level) * side

    def free(self, edges: Sequence[float], y: float, side: float, label: tuple[float, float]) -> float:
        """The first free place at one of the edges for a label (reach, half its height), or the nearest one
        outward from the last of them; it is taken then."""
        outward = (edges[-1] + side * self.step * far for far in count(1))
        for edge in chain(edges, outward):
            left, right = sorted((edge, edge + side * label[0]))
            box = (left, right, y - label[1], y + label[1])
            if not any(
                box[0] < other[1] and other[0] < box[1] and box[2] < other[3] and other[2] < box[3]
                for other in self.taken
            ):
                break
        self.taken.append(box)
        return edge


def row_numbers(pen: Pen, rows: Sequence[Row]) -> None:
    """Each row's number with an arrow at the side where it is begun, and at its end how many beads it has."""
    slots: dict[int, list[Bead]] = {}
    for row in rows:
        for bead in row.beads:
            slots.setdefault(round(bead.y / LABEL_MM), []).append(bead)
    margin = _Margin(slots, NUMBER_OUT_MM + text_width(str(len(rows)), LABEL_MM) + 0.2)
    levels = sorted(row.beads[0].y for row in rows)
    turns = len({row.rightward for row in rows}) > 1  # counts then stand outside of numbers
    close = any(other - one < AIR * CAP_HEIGHT * LABEL_MM for one, other in pairwise(levels))
    for row in rows:
        _row_label(pen, margin, row, counted=False, aside=0.0)
    for row in rows:
        _row_label(pen, margin, row, counted=True, aside=margin.step if close and turns else 0.0)


def _row_label(pen: Pen, margin: _Margin, row: Row, *, counted: bool, aside: float) -> None:
    """The number with its arrow at the side the row begins at, or the count of its beads at the other."""
    side = 1.0 if row.rightward is counted else -1.0
    y = row.beads[0].y
    left = min(bead.x - half_size(bead)[0] for bead in row.beads)
    right = max(bead.x + half_size(bead)[0] for bead in row.beads)
    words = f"({len(row.beads)})" if counted else str(row.number)
    size, out = (COUNT_MM, COUNT_OUT_MM) if counted else (LABEL_MM, NUMBER_OUT_MM)
    label = (out + text_width(words, size), AIR * CAP_HEIGHT * size / 2)
    beside = margin.edge(y, side)
    edge = margin.free([beside + side * aside, beside], y, side, label)
    anchor = "start" if side > 0 else "end"
    pen.begin(
        "row-count" if counted else "row-number", {"from": plain(left), "to": plain(right), "at": plain(y)}
    )
    if counted:
        pen.text(Text(edge + side * out, y, words, size, COUNT_INK, anchor))
    else:
        pen.shapes([arrowhead((edge + side * 0.45, y), (-side, 0.0), 0.9)], Paint(fill=INK))
        pen.text(Text(edge + side * out, y, words, size, INK, anchor, bold=True))
    pen.end()
