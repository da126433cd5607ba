"""A word chart from clasp to clasp -> stringing: both ends go through the clasp and back through some beads.

Mechanics: the first few beads are strung, then the crimp (or none) and the clasp; the thread goes back
through the crimp and those beads, and on through all the others to the clasp's other half, where it returns
alike. A crimp is pressed flat; on thread, half hitches between the beads hold instead. The beads between hang
on one pass. Common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import replace

from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase, PlacedFinding
from sitegen.trade.threads import parse_thread
from sitegen.weave.curves import along
from sitegen.weave.work import Work

BACK = 3
"""Beads at each end that the thread goes back through. Common practice, no source."""
AT_A_TIME = 40
"""Beads strung in one step, so that a maker can tick them off. A judgement; no source."""
CRIMP = "crimp tube"
CRIMP_MM = 1.2
"""From the last bead to the middle of the crimp, and from there to the clasp's loop; where no crimp stands
between, from the bead to the loop. A judgement."""
ROUND = 240
"""Corners of the ring a string is laid in."""


def strung_part(work: Work, part: Part) -> None:
    """String a whole part from one half of its clasp to the other."""
    words = part.strands[0]
    index = work.begin_part(part, 1, 0.0, 0.0, lines="string")
    lengths = [work.kind(letter).length_mm for letter in words.letters]
    crimped = held_by_crimps(part, work.pattern.thread or work.shop.thread)
    line = _ring(sum(lengths), 2 * CRIMP_MM * (2 if crimped else 1))
    spots = zip(words.letters, words.spots, strict=True)
    beads = [
        work.lay(index, 1, place, spot, at)
        for place, (spot, at) in enumerate(zip(spots, along(line, lengths), strict=True), start=1)
    ]
    work.parts[index] = replace(work.parts[index], strung_mm=sum(lengths))
    clasp, crimps = _place_findings(work, part, index, line, crimped=crimped)
    back = min(BACK, len(beads) // 2)
    for bead in reversed(beads[:back]):
        work.pick(bead, End.BOTTOM)
    _through_clasp(work, clasp, crimps[:1])
    for bead in beads[:back]:
        work.through(bead, End.TOP)
    values = {"count": back, "finding": part.clasp}
    held = "crimp" if crimped else "knot"
    work.step(0, "strung-start", (Phrase(f"strung-start-{held}", values),))
    left = len(beads) - back
    some_at_a_time = math.ceil(left / math.ceil(left / AT_A_TIME))
    for first in range(back, len(beads), some_at_a_time):
        some = beads[first : first + some_at_a_time]
        for bead in some:
            work.pick(bead, End.TOP)
        key = "strung-last" if some[-1] == beads[-1] else "strung"
        work.step(1, "strung", (Phrase(key, {"count": len(some), "so_far": first + len(some)}),))
    _through_clasp(work, clasp, crimps[1:])
    for bead in reversed(beads[-back:]):
        work.through(bead, End.BOTTOM)
    work.step(0, "strung-end", (Phrase(f"strung-end-{held}", values),), rest=True)


def held_by_crimps(part: Part, thread: str) -> bool:
    """Whether crimps hold the ends: as the author says, else on wire."""
    made_of = parse_thread(thread)
    return part.ends == "crimps" or (part.ends is None and made_of is not None and made_of.material == "wire")


def _ring(length: float, gap: float) -> list[tuple[float, float]]:
    """A circle of beads so long, open at the top for the clasp; from the left side of the gap round."""
    radius = (length + gap) / (2 * math.pi)
    opening = gap / radius / 2
    corners = (opening + (2 * math.pi - 2 * opening) * corner / ROUND for corner in range(ROUND + 1))
    return [(-radius * math.sin(turn), -radius * math.cos(turn)) for turn in corners]


def _place_findings(
    work: Work, part: Part, index: int, line: list[tuple[float, float]], *, crimped: bool
) -> tuple[int, list[int]]:
    """The clasp in the gap, as one finding, and a crimp on either side of it."""
    assert part.clasp is not None
    top = line[0][1]
    crimps: list[int] = []
    for x in (line[0][0] + CRIMP_MM, line[-1][0] - CRIMP_MM) if crimped else ():
        crimps.append(len(work.findings))
        work.findings.append(PlacedFinding(CRIMP, index, x, top, "top"))
    work.findings.append(PlacedFinding(part.clasp, index, 0.0, top, "top"))
    return len(work.findings) - 1, crimps


def _through_clasp(work: Work, clasp: int, crimp: list[int]) -> None:
    """Through the crimp, the clasp, and the crimp again."""
    for finding in (*crimp, clasp, *crimp):
        work.loop(finding)
