"""A rectangular chart -> square stitch: a strung row, then each bead sewn to the one beneath it.

Mechanics: pick up a bead, back through the bead beneath, through the new bead again; so a bead is passed
twice as it is sewn. Two-drop works two at a time. After each row the thread runs back through the row below
and the new row, which firms both. Sources, read as trade notes:
http://www.lisayangjewelry.com/2025/08/square-stitch-earrings-with-loop-fringe-tutorial.html (sewn to the bead
beneath; two-drop), http://thebeaddoodler.blogspot.com/2009/06/diagonal-square-stitch.html (rows that step in
and out at the edges).

A row that steps out where it ends is strung on beyond the edge and held by the row above. One that steps
out where it begins gets those beads with the row above, two at a time, in a circle through both rows
(our own way of it, no source). A row that steps in begins where the firming run comes out.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase
from sitegen.weave.across import lay_across, thread_mm, to
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.grid import Laid
from sitegen.weave.travel import travel
from sitegen.weave.work import View, Work

NUMBER_WORDS = {1: "next", 2: "two", 3: "three"}
"""Motions by how many beads a stitch adds."""


def square_part(work: Work, part: Part) -> None:
    """Work a whole square-stitch part: its base row, the rows above it, then those on its other side."""
    laid = lay_across(work, part, thread_mm(work) / part.drop)
    square = _Square(work, laid, part)
    base = laid.order[0]
    square.string(base, View(turned=base == 0 and len(square.rows) > 1))
    hung = False
    for number, chart_row in enumerate(laid.order[1:], start=2):
        after = laid.order[number] if number < len(laid.order) else base
        if not square.row(chart_row, after):
            return
        hung = hang_finding(work, part, laid.part) or hung
    if not hung:
        work.problems.append(no_hold(work, part, laid.part))


def _far(columns: set[int], sign: int) -> int:
    return max(columns) if sign > 0 else min(columns)


@dataclass(slots=True)
class _Square:
    """A part on its way."""

    work: Work
    laid: Laid
    part: Part
    rows: list[dict[int, int]] = field(init=False)
    """For each chart row, the bead in each of its columns."""
    waiting: set[int] = field(default_factory=set)
    """Columns of the last row whose beads come with the next row."""

    def __post_init__(self) -> None:
        rows = self.work.rows[self.laid.part]
        self.rows = [{self.laid.columns[bead]: bead for bead in row} for row in rows]

    def string(self, base: int, view: View) -> None:
        """The base row, all on the thread at once."""
        rightward = (self.part.start == "left") is not view.turned
        enter = End.TOP if rightward else End.BOTTOM
        for column in sorted(self.rows[base], reverse=not rightward):
            self.work.pick(self.rows[base][column], enter)
        values = {"count": len(self.rows[base]), "way": to(view, enter)}
        self.work.step(1, "square-string", (Phrase("square-string", values),), turned=view.turned)

    def row(self, chart_row: int, after: int) -> bool:
        """Stitch one row; `after` is the chart row that comes next. False, a problem noted, if it cannot."""
        base = self.laid.order[0]
        side = 1 if chart_row < base else -1
        made = set(self.rows[chart_row + side]) - self.waiting
        resting = made & set(self.rows[chart_row])
        view = View(turned=side < 0)
        row = self.laid.order.index(chart_row) + 1
        spot = self.work.beads[next(iter(self.rows[chart_row].values()))].where
        if not resting:
            self.work.problems.append(Problem("weave-no-way", spot, {"row": row}))
            return False
        below = self.rows[chart_row + side]
        going_on = after - chart_row == -side
        goals = self._starts(below, resting, set(self.rows[chart_row]), set(self.rows[after]))
        if not travel(self.work, goals, row, view):
            self.work.problems.append(Problem("weave-no-way", spot, {"row": row}))
            return False
        course = _Course(self, below, self.rows[chart_row], row, view)
        course.stitches(resting, self.waiting)
        sewn = resting | self.waiting
        beyond = set(self.rows[chart_row]) - set(below)
        ahead = {column for column in beyond if (column - min(sewn)) * course.sign > 0}
        if self.part.reinforce:
            further = sewn & set(self.rows[after]) if going_on else sewn
            course.firm(sewn, _far(further or sewn, course.sign))
        course.string_on(ahead)
        self.waiting = beyond - ahead
        return True

    def _starts(
        self, below: dict[int, int], resting: set[int], row: set[int], after: set[int]
    ) -> set[tuple[int, End]]:
        """Where a row may start: at the edge the thread is at, or else at either that leaves it a next row.

        Beads beyond the starting edge wait for the next row, which then must rest on others of this one.
        """
        ends = {End.TOP: min(resting), End.BOTTOM: max(resting)}
        beyond = {
            End.TOP: {column for column in row if column < min(below)},
            End.BOTTOM: {column for column in row if column > max(below)},
        }
        good = [end for end in ends if not beyond[end] or after & (row - beyond[end])]
        if self.waiting:
            good = [
                end for end in good if (ends[end] - min(self.waiting)) * (1 if end is End.TOP else -1) < 0
            ]
        here = self.work.here
        if here is not None and here[0] in below.values() and here[1] in good:
            good = [here[1]]
        return {(below[ends[end]], end) for end in good}


class _Course:
    """One row being worked in one direction."""

    def __init__(
        self, square: _Square, below: dict[int, int], new: dict[int, int], row: int, view: View
    ) -> None:
        self.work = square.work
        self.part = square.part
        self.below = below
        self.new = new
        self.row = row
        self.view = view
        assert self.work.here is not None
        self.enter = self.work.here[1]
        """Where new beads are entered: the side the row is worked from."""
        self.sign = 1 if self.enter is End.TOP else -1
        self.on, self.back = to(view, self.enter), to(view, self.enter.other)

    def _in_order(self, columns: set[int]) -> list[int]:
        return sorted(columns, reverse=self.sign < 0)

    def stitches(self, resting: set[int], waiting: set[int]) -> None:
        """All beads that rest on the row below, then those that come together with beads of that row."""
        order, drop = self._in_order(resting), self.part.drop
        for first in range(0, len(order), drop):
            group = order[first : first + drop]
            last = first + drop >= len(order) and not waiting
            self._stitch(group, starts=first == 0, ends=last)
        pairs = self._in_order(waiting)
        for column in pairs:
            self._pair(column, ends=column == pairs[-1])

    def _stitch(self, group: list[int], *, starts: bool, ends: bool) -> None:
        """Some new beads: back through those beneath, through the new ones again."""
        work = self.work
        for column in group:
            work.pick(self.new[column], self.enter)
        for column in reversed(group):
            work.through(self.below[column], self.enter.other)
        for column in group:
            work.through(self.new[column], self.enter)
        values = {"count": len(group), "on": self.on, "back": self.back}
        if starts:
            self._close("square-first", values, rest=ends and not self.part.reinforce)
        else:
            motion = f"square-{NUMBER_WORDS[len(group)]}"
            self._close(motion, values, rest=ends and not self.part.reinforce)

    def _pair(self, column: int, *, ends: bool) -> None:
        """Two beads beyond the edge, one in each row, in a circle through the two beside them."""
        work, back = self.work, self.enter.other
        inner = column - self.sign
        work.pick(self.new[column], self.enter)
        work.pick(self.below[column], back)
        work.through(self.below[inner], back)
        work.through(self.new[inner], self.enter)
        work.through(self.new[column], self.enter)
        if ends and not self.part.reinforce:
            work.through(self.below[column], back)
            work.through(self.new[column], self.enter)
            self._close("square-pair-last", {"on": self.on, "back": self.back}, rest=True)
        else:
            self._close("square-pair", {"on": self.on, "back": self.back})

    def firm(self, sewn: set[int], stop: int) -> None:
        """Back through the row below, and through the new row as far as the column the next one starts at."""
        work, order = self.work, self._in_order(sewn)
        for column in reversed(order):
            work.through(self.below[column], self.enter.other)
        passed = order[: order.index(stop) + 1]
        for column in passed:
            work.through(self.new[column], self.enter)
        key = "square-firm" if len(passed) == len(order) else "square-firm-part"
        values = {"below": len(order), "count": len(passed), "on": self.on, "back": self.back}
        work.step(self.row, "square-firm", (Phrase(key, values),), turned=self.view.turned, rest=True)

    def string_on(self, columns: set[int]) -> None:
        """Beads beyond the edge, which the next row will hold."""
        if columns:
            for column in self._in_order(columns):
                self.work.pick(self.new[column], self.enter)
            self._close("square-extend", {"count": len(columns)})

    def _close(self, motion: str, values: dict[str, object], *, rest: bool = False) -> None:
        self.work.step(self.row, motion, (Phrase(motion, values),), turned=self.view.turned, rest=rest)
