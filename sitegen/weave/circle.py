"""Rounds from the middle outward -> circular brick stitch and circular peyote, laid in the round.

Worked clockwise; the whole lies so that the outermost round's beginning is at the top.
Circular peyote: a strung ring, then in each gap between two beads of the round before one bead or two; at
the end of a round the thread steps up through the round's first bead. The last round is gone through once
more, so that each of its beads has two passes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from sitegen.model.source import Part
from sitegen.model.thread import Bridge, End, Phrase, PlacedFinding, Point, way
from sitegen.trade.rounds import Round, Size, between, brick_rounds, evenly, gaps, peyote_rounds
from sitegen.weave.brick_round import BrickRound, bridges_of, spread
from sitegen.weave.peyote_round import firm, peyote_round, string_ring
from sitegen.weave.work import View, Work

RING = "closed ring"
"""Trade name of the finding that work is begun around."""
LOOP_GAP_MM = 0.8
"""From the edge's beads to the middle of a finding's loop. A judgement; no source."""

Angles = list[float]
"""Where each bead of a round lies: radians clockwise from the top."""


def circular_brick_part(work: Work, part: Part) -> None:
    """Brick stitch round a ring, or round a strung ring of beads."""
    ring_mm = part.around.ring_mm if part.around else 0.0
    sizes = _sizes(work, part)
    laid = brick_rounds(sizes, ring_mm, _row_pitch(work, part))
    angles = [evenly(0.0, laid[0].beads)]
    for number, (before, this) in enumerate(pairwise(laid)):
        strung = number == 0 and not ring_mm
        angles.append(_over(angles[-1][0], before.beads, this.beads, 0.5 if strung else -0.5))
    turn = _to_the_top(angles[-1])
    rounds = _lay(work, part, laid, [[angle - turn for angle in ring] for ring in angles], 0.0)
    index, view = len(work.parts) - 1, View()
    if ring_mm:
        ring = len(work.findings)
        work.findings.append(PlacedFinding(RING, index, 0.0, 0.0, "round", ring_mm))
        places = [_at(angle - turn, ring_mm / 2) for angle in angles[0]]
        BrickRound(work, 1, rounds[0], places, range(len(places)), "hoop", view, ring=ring).stitch()
    else:
        string_ring(work, rounds[0], End.TOP, 1)
    for number, (below, new) in enumerate(pairwise(rounds), start=2):
        on = spread(len(below), len(new))
        if number == 2 and not ring_mm:
            BrickRound(work, number, new, _strung_bridges(below), on, "circle", view, ahead=1).stitch()
        else:
            BrickRound(work, number, new, bridges_of(below, view), on, "circle", view).stitch()
    hang_at_seam(work, part, index, rounds[-1], view, "circle")


def circular_peyote_part(work: Work, part: Part) -> None:
    """Peyote in the round from a strung ring of beads."""
    laid = peyote_rounds(_sizes(work, part), _row_pitch(work, part))
    angles = [evenly(0.0, laid[0].beads)]
    for before, this in pairwise(laid):
        angles.append(between(angles[-1], gaps(before.beads, this.beads)))
    turn = _to_the_top(angles[-1])
    rounds = _lay(work, part, laid, [[angle - turn for angle in ring] for ring in angles], 90.0)
    string_ring(work, rounds[0], End.TOP, 1)
    for number, (below, new) in enumerate(pairwise(rounds), start=2):
        filled = _filled(new, gaps(len(below), len(new)))
        ahead = (*below[1:], below[0])
        peyote_round(work, number, ahead, filled, End.TOP)
        if number == len(rounds):
            firm(work, ahead, filled, End.TOP, number)


def _filled(new: Sequence[int], counts: Sequence[int]) -> list[Sequence[int]]:
    """The beads of a round, gap by gap."""
    left = iter(new)
    return [[next(left) for _ in range(count)] for count in counts]


def _sizes(work: Work, part: Part) -> list[list[Size]]:
    kinds = [[work.kind(letter) for _, letter in row.cells] for row in part.all_rows]
    return [[(kind.width_mm, kind.length_mm) for kind in row] for row in kinds]


def _row_pitch(work: Work, part: Part) -> float:
    gauge = part.gauge or work.pattern.gauge
    return gauge.height_mm / gauge.rows if gauge else 0.0


def _over(before: float, below: int, beads: int, side: float) -> Angles:
    """A brick round, its beads as near as can be to the bridges they are stitched to.

    `before` is where the round inside it has its first bead; its first bridge lies half a place beside that.
    """
    pitch = 2 * math.pi / below
    off = [place * below / beads - hold for place, hold in enumerate(spread(below, beads))]
    return evenly(before + pitch * (side - (min(off) + max(off)) / 2), beads)


def _to_the_top(last: Angles) -> float:
    """How far to turn everything back so that the last round's beginning and end meet at the top."""
    return (last[0] + last[-1] - 2 * math.pi) / 2


def _at(angle: float, radius: float) -> Point:
    return radius * math.sin(angle), -radius * math.cos(angle)


def _lay(
    work: Work, part: Part, laid: Sequence[Round], angles: Sequence[Angles], lies: float
) -> list[list[int]]:
    """Beads in their places, holes turned `lies` degrees from pointing to the middle; -> rounds of beads."""
    steps = [other.radius_mm - one.radius_mm for one, other in pairwise(laid)]
    pitch = sum(steps) / len(steps) if steps else laid[0].bead_mm
    index = work.begin_part(part, len(laid), pitch, laid[0].bead_mm, lines="rounds")
    for number, (row, ring, places) in enumerate(zip(part.all_rows, laid, angles, strict=True), start=1):
        across = lies if number > 1 or part.around else 90.0
        beads = []
        for cell, ((_, letter), angle) in enumerate(zip(row.cells, places, strict=True)):
            x, y = _at(angle, ring.radius_mm)
            at = (x, y, (across - math.degrees(angle)) % 360.0)
            beads.append(work.lay(index, number, cell + 1, (letter, row.spot(cell)), at))
            work.seats[beads[-1]] = number - 1
        work.rows[index].append(beads)
    return work.rows[index]


def _strung_bridges(ring: Sequence[int]) -> list[Bridge]:
    """The thread between beads strung in a ring, from the one after the first bead on."""
    return [Bridge(one, other, End.BOTTOM, End.TOP) for one, other in pairwise((*ring, ring[0]))]


def hang_at_seam(work: Work, part: Part, index: int, ring: Sequence[int], view: View, style: str) -> None:
    """Sew the finding between the last round's first and last bead, where the thread comes out."""
    if part.hang is None or part.hang.finding is None:
        return
    first, last = ring[0], ring[-1]
    here, there = work.beads[first].mouth(view.up), work.beads[last].mouth(view.up)
    dx, dy = way(here, there, work.parts[index].around_mm)
    out = -LOOP_GAP_MM if view.up is End.TOP else LOOP_GAP_MM
    place = (here[0] + dx / 2, here[1] + dy / 2 + out)
    finding = len(work.findings)
    work.findings.append(PlacedFinding(part.hang.finding, index, *place, part.hang.edge))
    for _ in range(work.shop.finding_passes):
        work.loop(finding)
        work.through(last, view.up)
        work.through(first, view.down)
    values = {"finding": part.hang.finding, "count": work.shop.finding_passes}
    work.step(0, "finding", (Phrase(f"{style}-finding", values),), turned=view.turned, rest=True)
