"""A rectangular chart of beads in pairs -> flat herringbone: a ladder base, then two beads at a time.

Mechanics: two beads are picked up; the needle goes down through the next bead of the row below and up
through the one after it, the first of the next pair. So each bead is passed when it is picked up and again
by the row above. At the end of a row the needle goes down the edge bead, up the bead beside it and up the
edge bead just added: no thread shows at the edge. The last row is run through once more, up one bead and
down the next. An increase adds two beads between two pairs; the next row takes them as a pair.
That the base may be a ladder: [feld-ndebele S2]. The rest is common practice, no source; the needle proves
it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sitegen.model.source import Part
from sitegen.model.thread import Phrase
from sitegen.trade.rules import rules
from sitegen.weave.across import places
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.grid import working_order
from sitegen.weave.ladder import ladder_row
from sitegen.weave.openwork import MOST_GAP, uneven
from sitegen.weave.stack import stack_ladder
from sitegen.weave.travel import travel
from sitegen.weave.work import View, Work


def herringbone_part(work: Work, part: Part) -> None:
    """Work a whole herringbone part, from the ladder at its foot or its head to the other end."""
    index, order = _lay(work, part)
    if _too_small(work, index):
        return
    rows = [work.rows[index][chart_row] for chart_row in order]
    view = View(turned=order[0] < order[-1])
    base = [row if part.start == "left" else row[::-1] for row in map(view.from_left, rows[: part.base])]
    if part.base == 1:
        ladder_row(work, base[0], view, reinforce=part.reinforce)
    else:
        stack_ladder(work, list(zip(*base, strict=True)), view, reinforce=part.reinforce)
    hung = hang_finding(work, part, index)
    columns = [places(part.all_rows[chart_row]) for chart_row in order]
    for number in range(part.base, len(rows)):
        gap = _gap(columns[number - 1], columns[number])
        _HerringboneRow(work, rows[max(0, number - 2) : number + 1], number + 1, view, gap).stitch()
    if len(rows) > part.base:
        _run_through(work, rows[-1], view)
    if not hung and not hang_finding(work, part, index):
        work.problems.append(no_hold(work, part, index))


def _lay(work: Work, part: Part) -> tuple[int, tuple[int, ...]]:
    """Lay the beads, each row in the middle over the one below; -> the part, and chart rows in working order.

    The beads of a pair lean towards each other, as far as thin beads leave room; the ladder stands straight.
    """
    rows = part.all_rows
    gauge = part.gauge or work.pattern.gauge
    kinds = [[work.kind(letter) for _, letter in row.cells] for row in rows]
    lay = rules().lay
    pitch = gauge.width_mm / gauge.beads if gauge else max(kind.width_mm for row in kinds for kind in row)
    order = working_order(part.begin, len(rows))
    number = {row: place + 1 for place, row in enumerate(order)}
    heights = [
        max(kind.length_mm for kind in row) * (lay["herringbone-row"] if number[place] > part.base else 1.0)
        for place, row in enumerate(kinds)
    ]
    if gauge:
        heights = [gauge.height_mm / gauge.rows] * len(rows)
    narrow = min(kind.width_mm for row in kinds for kind in row)
    long = max(kind.length_mm for row in kinds for kind in row)
    room = math.degrees(math.asin(min(1.0, max(0.0, (MOST_GAP * narrow - pitch) / long))))
    tilt = min(lay["herringbone-tilt"], room) * (-1 if order[0] < order[-1] else 1)
    index = work.begin_part(part, len(rows), sum(heights) / len(heights), pitch)
    top = 0.0
    for chart_row, row in enumerate(rows):
        middle = top + heights[chart_row] / 2
        lean = tilt if number[chart_row] > part.base else 0.0
        beads = []
        for cell, (_, letter) in enumerate(row.cells):
            x = (cell - (len(row.cells) - 1) / 2) * pitch
            at = (x, middle, lean if cell % 2 else -lean)
            bead = work.lay(index, number[chart_row], cell + 1, (letter, row.spot(cell)), at)
            work.seats[bead] = chart_row
            beads.append(bead)
        work.rows[index].append(beads)
        top += heights[chart_row]
    return index, order


def _too_small(work: Work, index: int) -> bool:
    """Whether some bead is so thin that the thread to its neighbour, or round its length where a row grows,
    would lie bare; noted as a problem.
    """
    rows = work.rows[index]
    grows = len({len(row) for row in rows}) > 1
    pitch = max(work.parts[index].bead_pitch, work.parts[index].row_pitch if grows else 0.0)
    work.problems += uneven(work, [(bead, bead, pitch) for row in rows for bead in row])
    return bool(work.problems)


def _gap(below: list[int], new: list[int]) -> int | None:
    """Before which bead of the row below, from the left, two beads are added; None if none are."""
    if len(below) == len(new):
        return None
    return next(place for place, (one, other) in enumerate(zip(below, new, strict=False)) if one != other)


@dataclass(slots=True)
class _HerringboneRow:
    """One row on its way."""

    work: Work
    rows: list[list[int]]
    """The two rows before it (one, if there are no more) and the row itself, from the left as they hang."""
    number: int
    view: View
    gap: int | None

    def stitch(self) -> None:
        """Stitch the whole row from the side the thread is at."""
        work, view = self.work, self.view
        below = self.rows[-2]
        travel(work, {(below[0], view.up), (below[-1], view.up)}, self.number, view)
        assert work.here is not None
        if work.here[0] != below[0]:
            self.rows = [row[::-1] for row in self.rows]
            self.gap = None if self.gap is None else len(below) - self.gap
        old, new = self.rows[-2:]
        at = 0
        for pair in range(0, len(old), 2):
            self._two(new[at : at + 2])
            work.through(old[pair + 1], view.up)
            at += 2
            if pair + 2 == self.gap:
                self._close("herringbone-before")
                self._two(new[at : at + 2])
                at += 2
            if pair + 2 < len(old):
                work.through(old[pair + 2], view.down)
                self._close("herringbone-increase" if pair + 2 == self.gap else "herringbone-next")
        self._turn(old, new)

    def _two(self, pair: list[int]) -> None:
        """Pick up the two beads of a pair: up the first, down the second."""
        self.work.pick(pair[0], self.view.down)
        self.work.pick(pair[1], self.view.up)

    def _turn(self, old: list[int], new: list[int]) -> None:
        """Up again to the top of the last bead, through beads only.

        Where the row has grown, the bead beside the edge is too far off to reach the new edge bead from:
        the needle goes round one row deeper.
        """
        work, view = self.work, self.view
        if self.gap is None:
            work.through(old[-2], view.down)
        else:
            deeper = self.rows[0]
            work.through(deeper[-1], view.up)
            work.through(deeper[-2], view.down)
            work.through(old[-1], view.down)
        work.through(new[-1], view.down)
        self._close("herringbone-turn" if self.gap is None else "herringbone-turn-deep", rest=True)

    def _close(self, motion: str, *, rest: bool = False) -> None:
        self.work.step(self.number, motion, (Phrase(motion),), turned=self.view.turned, rest=rest)


def _run_through(work: Work, row: list[int], view: View) -> None:
    """The last row once more, from the edge the thread is at: down one bead, up the next."""
    assert work.here is not None
    order = row if work.here[0] == row[0] else row[::-1]
    enter = view.up
    for bead in order[1:]:
        work.through(bead, enter)
        enter = enter.other
    number = work.beads[row[0]].row
    phrase = Phrase("herringbone-finish", {"count": len(row) - 1})
    work.step(number, "herringbone-finish", (phrase,), turned=view.turned, rest=True)
