"""A chart of squares with shared sides -> right-angle weave, flat: squares of four beads, row by row.

Mechanics: the first square is a ring of four; each further one shares a side with the square before it, and
in later rows one with the row below, so that it takes three or two new beads. The thread goes round each
square and on to the side where the next begins, clockwise and the other way by turns: it never crosses from
side to side in a straight line. At the end it runs once round the edge, so that every bead has two passes.
Common practice, no source; proved by the needle. No published gauge exists; see the trade rules.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum

from sitegen.model.problem import Problem
from sitegen.model.source import Hang, Part
from sitegen.model.thread import End, Phrase, PlacedFinding
from sitegen.trade.rules import rules
from sitegen.weave.finding import GAP_MM
from sitegen.weave.openwork import bend_gap, uneven
from sitegen.weave.work import View, Work

ACROSS = 90.0
"""The angle of a hole that lies across."""


class Side(IntEnum):
    """The sides of a square, clockwise, as the maker sees it."""

    LEFT = 0
    TOP = 1
    RIGHT = 2
    BOTTOM = 3


CLOCKWISE = {Side.LEFT: End.BOTTOM, Side.TOP: End.TOP, Side.RIGHT: End.TOP, Side.BOTTOM: End.BOTTOM}
"""The end at which a needle enters each side that goes round clockwise: up, right, down, left."""


def unit_part(work: Work, part: Part) -> None:
    """Work a whole part in right-angle weave."""
    fabric = _Fabric(work, part)
    if not fabric.lay():
        return
    for row in range(fabric.high):
        fabric.row(row)
    fabric.edge()


@dataclass(slots=True)
class _Square:
    """Where a square stands, in order of working, and what the thread has to do in it."""

    row: int
    """From 0, the row worked first."""
    column: int
    """From 0 at the left as the maker sees it."""


class _Fabric:
    """A part on its way. Rows and columns of squares are counted as the maker sees them, from the foot."""

    def __init__(self, work: Work, part: Part) -> None:
        self.work = work
        self.part = part
        self.lines = part.all_rows
        self.high = len(self.lines) // 2
        self.wide = len(self.lines[0].cells)
        self.view = View(turned=part.begin == "top" and self.high > 1)
        self.beads: list[list[int]] = []
        """Beads of each chart line, from the top as it hangs, from the left."""
        self.index = -1

    def lay(self) -> bool:
        """Lay all beads, each with its hole along its side; False where their lengths differ too much."""
        work = self.work
        gauge = self.part.gauge or work.pattern.gauge
        kinds = [[work.kind(letter) for _, letter in line.cells] for line in self.lines]
        level = [kind for line in kinds[0::2] for kind in line]
        upright = [kind for line in kinds[1::2] for kind in line]
        closing = rules().lay["open-corner"]
        across = max(k.length_mm for k in level) + bend_gap(max(k.width_mm for k in upright), 90.0, closing)
        down = max(k.length_mm for k in upright) + bend_gap(max(k.width_mm for k in level), 90.0, closing)
        if gauge:
            across, down = gauge.width_mm / gauge.beads, gauge.height_mm / gauge.rows
        self.index = work.begin_part(self.part, self.high, down, across)
        for number, line in enumerate(self.lines):
            hole, inset = (0.0, 0.0) if number % 2 else (ACROSS, 0.5)
            from_top = (number - 1) // 2
            square = max(0, from_top if self.view.turned else self.high - 1 - number // 2)
            step, first = self._counted(number, square)
            beads = []
            for cell, (_, letter) in enumerate(line.cells):
                at = ((cell + inset) * across, number * down / 2, hole)
                spot = (letter, line.spot(cell))
                beads.append(work.lay(self.index, square + 1, step * cell + first, spot, at))
            self.beads.append(beads)
        work.rows[self.index] = self.beads
        places = [(across, self.beads[0::2]), (down, self.beads[1::2])]
        joints = [
            (b, b, pitch - work.beads[b].length) for pitch, lines in places for line in lines for b in line
        ]
        work.problems += uneven(work, joints)
        return not work.problems

    def _counted(self, line: int, row: int) -> tuple[int, int]:
        """How the beads of a line are counted in their row of squares, all its beads taken from the left: how
        many are counted from one to the next of this line, and the first one's number. An upright bead comes
        before the lying ones of its square; in the first row that at the foot before that at the top.
        """
        if line % 2:
            return (2 if row else 3), 1
        foot = line == (0 if self.view.turned else len(self.lines) - 1)
        return (2 if row else 3), 2 if row or foot else 3

    def side(self, square: _Square, side: Side) -> int:
        """The bead at a side of a square, as the maker sees it."""
        row, column = square.row, square.column
        if self.view.turned:
            row, column = self.high - 1 - row, self.wide - 1 - column
            side = Side((side + 2) % 4)
        line = 2 * (self.high - 1 - row)
        if side in (Side.TOP, Side.BOTTOM):
            return self.beads[line + (2 if side is Side.BOTTOM else 0)][column]
        return self.beads[line + 1][column + (1 if side is Side.RIGHT else 0)]

    def enter(self, side: Side, *, clockwise: bool) -> End:
        """The end at which the needle enters a side that goes round this way."""
        end = CLOCKWISE[side] if clockwise else CLOCKWISE[side].other
        return end.other if self.view.turned else end

    def row(self, row: int) -> None:
        """All squares of a row, from the side the thread is at."""
        rightward = (self.part.start == "left") is (row % 2 == 0)
        columns = range(self.wide) if rightward else range(self.wide - 1, -1, -1)
        near, far = (Side.LEFT, Side.RIGHT) if rightward else (Side.RIGHT, Side.LEFT)
        for column in columns:
            first, last = column == columns[0], column == columns[-1]
            shared = Side.BOTTOM if first else near
            self._round(_Square(row, column), shared if row or not first else None, Side.TOP if last else far)

    def _round(self, square: _Square, shared: Side | None, goal: Side) -> None:
        """Round one square from the side the thread is in (None: a ring of four new beads) on to the goal."""
        work = self.work
        rightward = (self.part.start == "left") is (square.row % 2 == 0)
        if shared is None:
            clockwise, start = rightward, Side.LEFT if rightward else Side.RIGHT
            order = _circle(start, clockwise=clockwise)
        else:
            assert work.here is not None
            clockwise = work.here[1].other is self.enter(shared, clockwise=True)
            order = [*_circle(shared, clockwise=clockwise)[1:], shared]
        new = [side for side in order if not work.passes[self.side(square, side)]]
        before = order.index(new[0])
        for side in order:
            bead, end = self.side(square, side), self.enter(side, clockwise=clockwise)
            if side in new:
                work.pick(bead, end)
            else:
                work.through(bead, end)
        onward = order[: order.index(goal) + 1]
        for side in onward:
            work.through(self.side(square, side), self.enter(side, clockwise=clockwise))
        self._say(square, (shared, goal, new, before), onward, clockwise=clockwise)

    def _say(
        self,
        square: _Square,
        plan: tuple[Side | None, Side, list[Side], int],
        onward: list[Side],
        *,
        clockwise: bool,
    ) -> None:
        """Close the step with the sentence that fits what the square shares."""
        shared, goal, new, before = plan
        last = goal is Side.TOP
        if shared is None:
            motion = "unit-first"
        elif square.row == 0:
            motion = "unit-last" if last else "unit-next"
        elif shared is Side.BOTTOM:
            motion = "unit-up"
        else:
            motion = "unit-join-below" if before else "unit-join-new"
        key = motion if square.row == 0 or not last else f"{motion}-last"
        if self.wide == 1 and motion == "unit-up":
            key = "unit-up-single"
        values = {
            "count": len(onward),
            "first": ("left", "top", "right", "bottom")[new[0]],
            "second": ("left", "top", "right", "bottom")[new[1]],
            "goal": ("left", "top", "right", "bottom")[goal],
        }
        row = square.row + 1
        self.work.step(row, motion, (Phrase(key, values),), turned=self.view.turned, rest=last)

    def edge(self) -> None:
        """Once round the whole piece through the edge beads, the way the thread is going.

        A finding is sewn on where the thread passes the middle of its edge.
        """
        assert self.work.here is not None
        bead, end = self.work.here
        way = self._outline()
        if dict(way)[bead] is end:
            way = [(other, enter.other) for other, enter in reversed(way)]
        start = [other for other, _ in way].index(bead) + 1
        way = way[start:] + way[:start]
        hang = self.part.hang
        if hang is None or hang.finding is None:
            self._run(way, "unit-edge", {"count": len(way)})
            return
        middle = self._middle(hang)
        if middle is None:
            return
        met = [other for other, _ in way].index(middle) + 1
        self._run(way[:met], "unit-edge-middle", {"count": met, "edge": hang.edge})
        self._sew(hang, middle, way[met - 1][1])
        if met < len(way):
            self._run(way[met:], "unit-edge-rest", {"count": len(way) - met})

    def _run(self, way: list[tuple[int, End]], key: str, values: dict[str, object]) -> None:
        for bead, enter in way:
            self.work.through(bead, enter)
        self.work.step(0, "unit-edge", (Phrase(key, values),), turned=self.view.turned, rest=True)

    def _outline(self) -> list[tuple[int, End]]:
        """The edge beads clockwise as it hangs, from the top left corner, and where each is entered."""
        beads = self.beads
        right = [(line[-1], End.TOP) for line in beads[1::2]]
        left = [(line[0], End.BOTTOM) for line in reversed(beads[1::2])]
        top = [(bead, End.TOP) for bead in beads[0]]
        bottom = [(bead, End.BOTTOM) for bead in reversed(beads[-1])]
        return [*top, *right, *bottom, *left]

    def _middle(self, hang: Hang) -> int | None:
        """The middle bead of the edge a finding hangs at; None, with a problem noted, if there is none."""
        edge = self.beads[0 if hang.edge == "top" else -1]
        middle = edge[len(edge) // 2]
        if len(edge) % 2 == 0:
            values = {"finding": hang.finding, "count": len(edge)}
            self.work.problems.append(Problem("weave-no-middle", self.work.beads[middle].where, values))
            return None
        return middle

    def _sew(self, hang: Hang, middle: int, enter: End) -> None:
        """The passes through the finding's loop and the middle bead."""
        work, at = self.work, self.work.beads[middle]
        assert hang.finding is not None
        y = at.y + (-1 if hang.edge == "top" else 1) * (at.width / 2 + GAP_MM)
        finding = len(work.findings)
        work.findings.append(PlacedFinding(hang.finding, self.index, at.x, y, hang.edge))
        for _ in range(work.shop.finding_passes):
            work.loop(finding)
            work.through(middle, enter)
        phrase = Phrase("finding-across", {"finding": hang.finding, "count": work.shop.finding_passes})
        work.step(0, "finding", (phrase,), turned=self.view.turned, rest=True)


def _circle(start: Side, *, clockwise: bool) -> list[Side]:
    """All four sides from one of them, round one way."""
    return [Side((start + turn) % 4) for turn in ((0, 1, 2, 3) if clockwise else (0, -1, -2, -3))]
