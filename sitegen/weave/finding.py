"""A finished edge and a finding -> passes through its loop and the beads that hold it."""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase, PlacedFinding
from sitegen.weave.travel import find_way, go, travel
from sitegen.weave.work import View, Work

GAP_MM = 0.8
"""From the edge's beads to the middle of the finding's loop. A judgement; no source."""


def attach_finding(work: Work, part: Part, index: int) -> None:
    """Sew a finding to the middle of an edge: out of one middle bead, through the loop, into the other.

    An edge with an odd number of beads has one middle bead; the thread goes back down into it. Each of the
    shop's reinforcing passes ends where it began.
    """
    assert part.hang is not None and part.hang.finding is not None
    end = End.TOP if part.hang.edge == "top" else End.BOTTOM
    view = View(turned=end is End.BOTTOM)
    edge = view.from_left(work.rows[index][0 if end is End.TOP else -1])
    middle = len(edge) // 2
    pair = {edge[middle], edge[(len(edge) - 1) // 2]}
    if not travel(work, {(bead, end) for bead in pair}, 0, view):
        work.problems.append(
            Problem("weave-no-way", work.beads[edge[0]].where, {"row": work.beads[edge[0]].row})
        )
        return
    assert work.here is not None
    out = work.here[0]
    back = next(iter(pair - {out}), out)
    mouths = [work.beads[bead].mouth(end) for bead in (out, back)]
    y = mouths[0][1] + (-GAP_MM if end is End.TOP else GAP_MM)
    finding = len(work.findings)
    work.findings.append(
        PlacedFinding(part.hang.finding, index, (mouths[0][0] + mouths[1][0]) / 2, y, part.hang.edge)
    )
    for _ in range(work.shop.finding_passes):
        work.loop(finding)
        work.through(back, end)
        legs = find_way(work, {(out, end)})
        if legs is None:
            work.problems.append(Problem("weave-no-way", work.beads[out].where, {"row": work.beads[out].row}))
            return
        go(work, legs)
    key = "finding-pair" if back != out else "finding-one"
    phrase = Phrase(key, {"finding": part.hang.finding, "count": work.shop.finding_passes})
    work.step(0, "finding", (phrase,), turned=view.turned, rest=True)
