"""Finished flat peyote -> ways through its beads for what hangs from it, bead by bead, and ways in words.

TOP is a bead's left mouth, BOTTOM its right one. The edge a part hangs from is the chart's outer row: its
beads stand out like teeth, and a thread from one to the next goes through the beads of the row behind that
lie between them.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.model.thread import Bridge, End, Phrase
from sitegen.weave.across import Pass, to
from sitegen.weave.work import View, Work

HIDDEN_COST, OPEN_COST = 1.0, 2.0
"""For turning round into the bead two rows away, mm: where a bead covers the turn, and at an edge.
A judgement; no source, like the two below."""
CATCH_COST = 1.0
"""For turning back round the thread that lies at an edge, mm."""
BARE_COST = 9.0
"""For thread along the outside of a bead, mm: only where there is no other way."""
NEAR_MM = 1e-6
"""Places of one lattice that differ less are the same."""


@dataclass(frozen=True, slots=True)
class ToothLeg:
    """One pass, perhaps round the thread at an edge first, and what it costs beyond its length (mm)."""

    bead: int
    enter: End
    under: Bridge | None = None
    extra: float = 0.0


def toothed(work: Work, bead: int) -> bool:
    """Whether a bead belongs to flat peyote."""
    return work.parts[work.beads[bead].part].stitch == "peyote"


def tooth_legs(work: Work, spot: Pass) -> Iterator[ToothLeg]:
    """Where a thread may go that comes out of a bead: straight on, back above or below, or round the edge."""
    bead, end = spot
    aside = 1 if end is End.BOTTOM else -1
    beyond = {level: _beside(work, bead, aside, level) for level in (-1, 0, 1)}
    for other in beyond.values():
        if other is not None:
            yield ToothLeg(other, end.other)
    for level in (-2, 2):
        other = _beside(work, bead, 0, level)
        if other is None:
            continue
        covered = beyond[level // 2] is not None
        yield ToothLeg(other, end, None, HIDDEN_COST if covered else OPEN_COST)
        bridge = work.bridge(bead, other, end)
        if not covered and bridge in work.bridges:
            yield ToothLeg(bead, end, bridge, CATCH_COST)
    for level in (-1, 0, 1):  # along the side of this bead to the one before it, or along the next one
        for side in (-aside, aside):
            other = _beside(work, bead, side, level)
            if other is not None:
                yield ToothLeg(other, end, None, BARE_COST)


def _beside(work: Work, bead: int, columns: int, rows: int) -> int | None:
    """The bead so many columns to the right and chart rows down, if there is one."""
    here = work.beads[bead]
    level = work.seats[bead] + rows
    chart = work.rows[here.part]
    if not 0 <= level < len(chart):
        return None
    x = here.x + columns * work.parts[here.part].bead_pitch
    place = bisect_left(chart[level], x - NEAR_MM, key=lambda other: work.beads[other].x)
    if place == len(chart[level]) or work.beads[chart[level][place]].x > x + NEAR_MM:
        return None
    return chart[level][place]


def behind(work: Work, one: int, other: int) -> tuple[int, ...]:
    """Beads between two of an edge, in order from `one`, in the row behind; none where the two touch."""
    row = work.rows[work.beads[one].part]
    edge = work.seats[one]
    here, there = work.beads[one].x, work.beads[other].x
    low, high = sorted((here, there))
    between = [bead for bead in row[1 if edge == 0 else edge - 1] if low < work.beads[bead].x < high]
    return tuple(between if here < there else between[::-1])


def notch(work: Work, left: int, right: int) -> bool:
    """Whether beads of the row behind lie between two beads of an edge."""
    apart = work.beads[right].x - work.beads[left].x
    return apart > work.parts[work.beads[left].part].bead_pitch + NEAR_MM


def tooth_phrases(work: Work, legs: Sequence[tuple[Pass, bool]], view: View) -> tuple[Phrase, ...]:
    """A way of passes, caught at the edge first or not, in words: each direction is one sentence."""
    phrases: list[Phrase] = []
    first = 0
    for number, (spot, _) in enumerate(legs, start=1):
        following = legs[number] if number < len(legs) else None
        if following is None or following[1] or following[0][1] is not spot[1]:
            key = "peyote-catch" if legs[first][1] else "peyote-way"
            phrases.append(Phrase(key, {"count": number - first, **_named(work, spot, view)}))
            first = number
    return tuple(phrases)


def _named(work: Work, spot: Pass, view: View) -> dict[str, object]:
    """A bead in words: its row, its place from the nearer side, and which way the thread leaves it."""
    bead, enter = spot
    row = view.from_left(work.rows[work.beads[bead].part][work.seats[bead]])
    left = row.index(bead) + 1
    right = len(row) + 1 - left
    side, place = ("left", left) if left <= right else ("right", right)
    return {"row": work.beads[bead].row, "side": side, "place": place, "way": to(view, enter)}
