"""A finished edge and a finding -> passes through its loop and the beads that hold it."""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.source import Hang, Part
from sitegen.model.thread import End, Phrase, PlacedFinding
from sitegen.weave.across import lies_across, to
from sitegen.weave.teeth import notch, toothed
from sitegen.weave.travel import find_way, go, travel, way_phrases
from sitegen.weave.work import View, Work

GAP_MM = 0.8
"""From the edge's beads to the middle of the finding's loop. A judgement; no source."""


def hang_finding(work: Work, part: Part, index: int) -> bool:
    """Sew on the part's finding if its edge is made and can hold it; whether nothing is left to hang.

    The thread comes out of a middle bead of the edge, goes through the loop and into the other middle
    bead (an edge with an odd number of beads has only one: back into that), and round to where it came
    out; as often as the shop asks. The last time it stays inside, ready to go on.
    """
    if part.hang is None or part.hang.finding is None or _hung(work, index):
        return True
    end = End.TOP if part.hang.edge == "top" else End.BOTTOM
    edge = _edge(work, index, end)
    if not work.passes[edge[0]]:
        return False
    if lies_across(work, edge[0]):
        return sew_across(work, part.hang, index, edge)
    middle = len(edge) // 2
    pair = {edge[middle], edge[(len(edge) - 1) // 2]}
    way = find_way(work, {(bead, end) for bead in pair})
    if way is None:
        return False
    out = way[-1].bead if way else work.here[0] if work.here else edge[middle]
    back = next(iter(pair - {out}), out)
    if find_way(work, {(out, end)}, start=(back, end.other)) is None:
        return False
    view = View(turned=end is End.BOTTOM)
    travel(work, {(out, end)}, 0, view)
    _sew(work, part.hang, index, (out, back), view)
    return True


def no_hold(work: Work, part: Part, index: int) -> Problem:
    """What to say where the edge cannot hold the finding."""
    assert part.hang is not None
    edge = _edge(work, index, End.TOP if part.hang.edge == "top" else End.BOTTOM)
    return Problem("weave-no-hold", work.beads[edge[0]].where, {"finding": part.hang.finding})


def _hung(work: Work, index: int) -> bool:
    return any(finding.part == index for finding in work.findings)


def _edge(work: Work, index: int, end: End) -> list[int]:
    return work.rows[index][0 if end is End.TOP else -1]


def _sew(work: Work, hang: Hang, index: int, beads: tuple[int, int], view: View) -> None:
    """The passes through the loop: out of the first bead, into the second, round to the first."""
    assert hang.finding is not None
    end = view.up
    out, back = beads
    mouths = [work.beads[bead].mouth(end) for bead in beads]
    y = mouths[0][1] + (-GAP_MM if end is End.TOP else GAP_MM)
    finding = len(work.findings)
    x = (mouths[0][0] + mouths[1][0]) / 2
    work.findings.append(PlacedFinding(hang.finding, index, x, y, hang.edge))
    rounds = work.shop.finding_passes
    legs = find_way(work, {(out, end)}, start=(back, end.other)) or []
    for number in range(rounds):
        work.loop(finding)
        work.through(back, end)
        if number < rounds - 1:
            go(work, legs)
    side = "left" if (mouths[1][0] < mouths[0][0]) is not view.turned else "right"
    key = "finding-pair" if back != out else "finding-one"
    phrases = [Phrase(key, {"finding": hang.finding, "side": side})]
    if rounds > 1:
        phrases += [*way_phrases(work, legs, view), Phrase("finding-again", {"count": rounds})]
    work.step(0, "finding", tuple(phrases), turned=view.turned, rest=True)


def sew_across(work: Work, hang: Hang, index: int, edge: list[int]) -> bool:
    """Sew a finding to a row of lying beads; False if the thread cannot get there.

    It hangs over the middle bead, out of one end of its hole and into the other; or over the gap between the
    two middle beads, out of one, into the other and round through the next row to where it came out. On
    peyote that gap is a notch, half a bead deep.
    """
    assert hang.finding is not None
    left, right = edge[(len(edge) - 1) // 2], edge[len(edge) // 2]
    goals = {(left, End.BOTTOM), (right, End.TOP)}
    way = find_way(work, goals)
    if way is None:
        return False
    here = (way[-1].bead, way[-1].enter.other) if way else work.here
    assert here is not None
    out, end = here
    back = left if out == right else right
    round_again = find_way(work, {here}, start=(back, end))
    if round_again is None:
        return False
    view = View(turned=hang.edge == "bottom")
    travel(work, goals, 0, view)
    one, other = work.beads[left], work.beads[right]
    over = GAP_MM + (0.0 if notch(work, left, right) else max(one.width, other.width) / 2)
    y = one.y + (over if view.turned else -over)
    work.findings.append(PlacedFinding(hang.finding, index, (one.x + other.x) / 2, y, hang.edge))
    for _ in range(work.shop.finding_passes):
        work.loop(len(work.findings) - 1)
        work.through(back, end.other)
        go(work, round_again)
    values = {"finding": hang.finding, "count": work.shop.finding_passes, "way": to(view, end.other)}
    key = "finding-across-pair" if left != right else "finding-across-one"
    phrases: tuple[Phrase, ...] = (Phrase(key, values),)
    if toothed(work, left) and left != right:
        begin = Phrase("finding-notch" if notch(work, left, right) else "finding-beside", values)
        phrases = (begin, *way_phrases(work, round_again, view), Phrase("finding-round", values))
    work.step(0, "finding", phrases, turned=view.turned, rest=True)
    return True
