"""A row of beads laid side by side -> ladder stitch: two beads, then one at a time, with one needle.

Mechanics: each new bead is followed by a pass through its neighbour and one through itself, so end beads
have two passes and inner beads three; running back through the row adds one to each, the last one too,
which the thread enters again after catching the bridge beside it.
Source: https://monkeysee.com/beading-basics-brick-stitch/ and
https://www.thesprucecrafts.com/brick-stitch-fringe-earrings-project-339438 (read as trade notes).
"""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import Phrase
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.grid import lay_staggered
from sitegen.weave.work import View, Work


def ladder_part(work: Work, part: Part) -> None:
    """Work a part that is one ladder row and nothing more."""
    if len(part.all_rows) > 1:
        values = {"part": part.name, "rows": len(part.all_rows)}
        work.problems.append(Problem("weave-ladder-rows", part.all_rows[1].where, values))
        return
    laid = lay_staggered(work, part)
    view = View()
    row = view.from_left(work.rows[laid.part][0])
    ladder_row(work, row if part.start == "left" else row[::-1], view, reinforce=part.reinforce)
    if not hang_finding(work, part, laid.part):
        work.problems.append(no_hold(work, part, laid.part))


def ladder_row(work: Work, row: list[int], view: View, *, reinforce: bool) -> None:
    """Stitch the beads in the order given; the thread ends coming up out of an end bead.

    The first pass goes up or down, whichever makes the very last one go up.
    """
    if len(row) == 1:
        work.pick(row[0], view.down)
        work.step(1, "ladder-first", (Phrase("ladder-single"),), turned=view.turned, rest=True)
        return
    rises = not reinforce and len(row) % 2 == 1
    enter = view.down if rises else view.up
    work.pick(row[0], enter)
    work.pick(row[1], enter.other)
    work.through(row[0], enter)
    work.through(row[1], enter.other)
    phrase = Phrase("ladder-first", {"first": view.way(enter), "second": view.way(enter.other)})
    work.step(1, "ladder-first", (phrase,), turned=view.turned, rest=len(row) == 2 and not reinforce)
    for place in range(2, len(row)):
        last = place == len(row) - 1 and not reinforce
        ladder_stitch(work, row[place - 1], row[place], 1, view, motion="ladder-next", rest=last)
    if reinforce:
        assert work.here is not None
        back = work.here[1]
        work.under(work.bridge(row[-1], row[-2], back))
        for bead in row[::-1]:
            work.through(bead, back)
            back = back.other
        this, other = (view.way(move.enter) for move in work.moves[-len(row) :][:2])
        phrase = Phrase("ladder-back", {"count": len(row) - 1, "way": this, "other": other})
        work.step(1, "ladder-back", (phrase,), turned=view.turned, rest=True)


def ladder_stitch(
    work: Work, before: int, bead: int, row: int, view: View, *, motion: str, rest: bool = False
) -> None:
    """Add one bead beside the one the thread comes out of: through that one again, then through itself."""
    assert work.here is not None
    enter = work.here[1]
    work.pick(bead, enter)
    work.through(before, enter.other)
    work.through(bead, enter)
    phrase = Phrase(motion, {"before": view.way(enter.other), "self": view.way(enter)})
    work.step(row, motion, (phrase,), turned=view.turned, rest=rest)
