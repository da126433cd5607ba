"""A rectangular chart -> loom work: warps, and a weft that goes under them and back over them row by row.

Mechanics: one warp more than beads across. A row is strung on the weft, brought under the warps, pushed up
so that one bead lies in each gap, and the needle goes back through all beads above the warps. Sources, read
as trade notes: https://beads.co/ (the loom page); 9 beads across on 10 warps, outer warps doubled at will:
[kingsmere] and [millner]. Each turn at an edge is round the outer warp, which holds the row.
"""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase, Warp
from sitegen.weave.across import lay_across, thread_mm, to
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.grid import Laid
from sitegen.weave.travel import travel
from sitegen.weave.work import View, Work

VIEW = View()
"""The loom is never turned."""


def loom_part(work: Work, part: Part) -> None:
    """Work a whole loom strip: a row begins and ends at the same edge, the one the thread is at."""
    laid = lay_across(work, part, thread_mm(work))
    warps = _stretch(work, part, laid)
    enter = End.TOP if part.start == "left" else End.BOTTOM
    rows = work.rows[laid.part]
    hung = False
    for number, chart_row in enumerate(laid.order, start=1):
        beside = chart_row + (1 if chart_row < laid.order[0] else -1)
        if number > 1:
            edges = {(rows[beside][0], End.TOP), (rows[beside][-1], End.BOTTOM)}
            if not travel(work, edges, number, VIEW):
                where = work.beads[rows[chart_row][0]].where
                work.problems.append(Problem("weave-no-way", where, {"row": number}))
                return
            assert work.here is not None
            enter = work.here[1]
        near, far = (warps[0], warps[-1]) if enter is End.TOP else (warps[-1], warps[0])
        row = rows[chart_row] if enter is End.TOP else rows[chart_row][::-1]
        if number > 1:
            work.round(near)
        for bead in row:
            work.pick(bead, enter)
        work.round(far)
        for bead in reversed(row):
            work.through(bead, enter.other)
        values: dict[str, object] = {
            "count": len(row),
            "on": to(VIEW, enter),
            "back": to(VIEW, enter.other),
            "where": "above" if beside > chart_row else "below",
            "beside": laid.order.index(beside) + 1 if number > 1 else 0,
        }
        work.step(number, "loom-row", _phrases(part, number, len(rows), values), rest=True)
        hung = hang_finding(work, part, laid.part) or hung
    if not hung:
        work.problems.append(no_hold(work, part, laid.part))


def _stretch(work: Work, part: Part, laid: Laid) -> list[int]:
    """Stretch the warps, left to right: one in each gap and one at each edge; -> their indexes."""
    pitch = work.parts[laid.part].bead_pitch
    gaps = len(work.rows[laid.part][0]) + 1
    first = len(work.warps)
    for gap in range(gaps):
        edge = gap in (0, gaps - 1)
        threads = 2 if edge and part.edge_warps == "doubled" else 1
        work.warps.append(Warp(laid.part, (gap - 0.5) * pitch, threads))
    return list(range(first, first + gaps))


def _phrases(part: Part, number: int, rows: int, values: Mapping[str, object]) -> tuple[Phrase, ...]:
    """The words of a row; the first tells how to stretch the warps. They are finished after the tails."""
    phrases = [Phrase("loom-row" if values["beside"] == number - 1 else "loom-row-beside", values)]
    if number == 1:
        doubled = part.edge_warps == "doubled"
        places = sum(len(row.cells) for row in part.all_rows) // rows + 1
        warps = Phrase("loom-warps-doubled" if doubled else "loom-warps", {"count": places})
        phrases = [warps, Phrase("loom-tie", values), Phrase("loom-first", values)]
    return tuple(phrases)
