"""A staggered chart -> brick stitch: a ladder row, rows stitched away from it, then those on its other side.

Mechanics: a row starts with two beads and goes on one at a time, each under a thread bridge of the row
below and back up through itself. Passes of a row of m beads: 2 + 3 + 2(m - 2). A start stepped in by half
a bead uses the second bridge, one stepped out by half the first; an end stepped out uses the last bridge
twice. Larger steps weave in, or extend with ladder stitches.
Sources: https://www.interweave.com/article/beading/how-to-bead-shamrock-brick-stitch/ (skipped bridge, last
bridge twice), http://craftspeople.info/article/brick-stitch-instructions/ (two beads, weaving in, ladder
stitches at the edge), http://beaddancing.com/independence.html (second bridge); read as trade notes.
"""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import Phrase
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.grid import Laid, lay_staggered
from sitegen.weave.ladder import ladder_row, ladder_stitch
from sitegen.weave.travel import find_way, travel
from sitegen.weave.work import View, Work


def brick_part(work: Work, part: Part) -> None:
    """Work a whole brick part."""
    laid = lay_staggered(work, part)
    rows = work.rows[laid.part]
    base = laid.order[0]
    first_view = View(turned=base == 0 and len(rows) > 1)
    row = first_view.from_left(rows[base])
    ladder_row(work, row if part.start == "left" else row[::-1], first_view, reinforce=part.reinforce)
    hung = hang_finding(work, part, laid.part)
    for chart_row in laid.order[1:]:
        below = chart_row + (1 if chart_row < base else -1)
        view = View(turned=chart_row > base)
        if not _BrickRow(work, laid, rows[below], rows[chart_row], view).stitch():
            return
        hung = hang_finding(work, part, laid.part) or hung
    if not hung:
        work.problems.append(no_hold(work, part, laid.part))


def _across(
    work: Work, laid: Laid, below: list[int], new: list[int]
) -> tuple[list[int], list[int], dict[int, int]]:
    """Both rows in working order (from the side nearer the thread), and where each bead is that way."""
    assert work.here is not None
    bead = work.here[0]
    if bead in below:
        rightward = below.index(bead) <= (len(below) - 1) / 2
    else:
        rightward = work.beads[bead].x <= (work.beads[below[0]].x + work.beads[below[-1]].x) / 2
    sign = 1 if rightward else -1
    along = {bead: sign * laid.columns[bead] for bead in (*below, *new)}
    return below[::sign], new[::sign], along


@dataclass(slots=True)
class _BrickRow:
    """One row on its way: which beads lie below, which come, and how the maker sees them."""

    work: Work
    laid: Laid
    below: list[int]
    new: list[int]
    view: View

    def stitch(self) -> bool:
        """Stitch the whole row; False (with a problem noted) where the thread cannot get to its start."""
        work = self.work
        self.below, self.new, along = _across(work, self.laid, self.below, self.new)
        row = work.beads[self.new[0]].row
        below_at = {along[bead]: index for index, bead in enumerate(self.below)}
        outside = 0
        while along[self.new[outside]] < along[self.below[0]] - 1:
            outside += 1  # the check stage holds that the rows overlap
        start = self.new[outside]
        pair = [bead for bead in self.new[outside : outside + 2] if along[bead] <= along[self.below[-1]] + 1]
        if not pair or len(pair) + len(self.below) < 3:
            work.problems.append(Problem("weave-no-footing", work.beads[start].where, {"row": row}))
            return False
        under_start = below_at.get(along[start] - 1, 0)
        goals = {(self.below[under_start], self.view.up)}
        if find_way(work, goals) is None and along[start] > along[self.below[0]]:
            goals = {(self.below[under_start + 1], self.view.up)}
        if not travel(work, goals, row, self.view):
            work.problems.append(Problem("weave-no-way", work.beads[start].where, {"row": row}))
            return False
        done = outside + len(pair)
        self._first(pair, below_at, along)
        self._extend_start(outside, done)
        for place in range(done, len(self.new)):
            self._next(place, below_at, along)
        return True

    def _first(self, pair: list[int], below_at: dict[int, int], along: dict[int, int]) -> None:
        """The start of the row: two beads, or one where no second bead rests on the row below."""
        work, view = self.work, self.view
        assert work.here is not None
        thread_at = self.below.index(work.here[0])
        row = work.beads[pair[0]].row
        whole = len(pair) == len(self.new)
        if len(self.below) == 1:
            first_left = (work.beads[pair[0]].x < work.beads[pair[-1]].x) is not view.turned
            phrase = Phrase("brick-first-on-one", {"side": "left" if first_left else "right"})
        else:
            bridge = self._bridge_for(pair[-1], below_at, along)
            key = "brick-first" if len(pair) == 2 else "brick-single"
            ahead = bridge - thread_at + 1
            if ahead < 1:
                key += "-behind"
            elif thread_at > 0:
                key += "-inside"
            phrase = Phrase(key, {"bridge": ahead})
        if len(pair) == 1:
            self._single(pair[0], bridge)
            self._close(row, "brick-first", phrase, last=whole)
            return
        first, second = pair
        work.pick(first, view.down)
        work.pick(second, view.up)
        if len(self.below) == 1:
            work.through(self.below[0], view.down)
        else:
            work.under(work.bridge(self.below[bridge], self.below[bridge + 1], view.up))
        work.through(second, view.down)
        work.through(first, view.up)
        work.through(second, view.down)
        out = along[first] < along[self.below[0]]
        grows = out and len(self.new) > len(self.below)
        phrases = (phrase, Phrase("brick-out")) if out else (phrase,)
        self._close(row, "brick-increase" if grows else "brick-first", *phrases, last=whole)

    def _bridge_for(self, bead: int, below_at: dict[int, int], along: dict[int, int]) -> int:
        """The bridge (numbered from 0 in working order) a bead is stitched to."""
        index = below_at.get(
            along[bead] - 1, 0 if along[bead] < along[self.below[0]] else len(self.below) - 1
        )
        return min(index, len(self.below) - 2)

    def _single(self, bead: int, bridge: int) -> None:
        """One bead: picked up, under a bridge, back up through itself."""
        work, view = self.work, self.view
        work.pick(bead, view.up)
        work.under(work.bridge(self.below[bridge], self.below[bridge + 1], view.up))
        work.through(bead, view.down)

    def _next(self, place: int, below_at: dict[int, int], along: dict[int, int]) -> None:
        bead = self.new[place]
        row = self.work.beads[bead].row
        last = place == len(self.new) - 1
        beyond = along[bead] - along[self.below[-1]]
        if beyond > 1:
            motion = "brick-extend"
            ladder_stitch(self.work, self.new[place - 1], bead, row, self.view, motion=motion, rest=last)
            return
        self._single(bead, self._bridge_for(bead, below_at, along))
        motion = "brick-increase" if beyond == 1 else "brick-next"
        self._close(row, motion, Phrase(motion), last=last)

    def _extend_start(self, outside: int, done: int) -> None:
        """Ladder stitches beyond the start, then back to where the row goes on."""
        if not outside:
            return
        work, view, new = self.work, self.view, self.new
        row = work.beads[new[0]].row
        start = new[outside]
        if done == outside + 2:
            work.through(start, view.up)
            work.step(row, "travel", (Phrase("brick-back-down"),), turned=view.turned)
        for place in range(outside - 1, -1, -1):
            ladder_stitch(work, new[place + 1], new[place], row, view, motion="brick-extend")
        for bead in new[1:done]:
            assert work.here is not None
            work.through(bead, work.here[1])
        phrase = Phrase("brick-back-along", {"count": done - 1})
        work.step(row, "travel", (phrase,), turned=view.turned, rest=done == len(new))

    def _close(self, row: int, motion: str, *phrases: Phrase, last: bool) -> None:
        self.work.step(row, motion, phrases, turned=self.view.turned, rest=last)
