"""A thread at one bead, wanted at another -> the shortest way through beads that shows no thread."""

from __future__ import annotations

import heapq
import math
from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sitegen.model.thread import Bridge, End, Phrase
from sitegen.weave.across import across_phrases, lies_across, onward
from sitegen.weave.teeth import tooth_legs, tooth_phrases, toothed
from sitegen.weave.work import View, Work

PASS_COST = 0.05
"""Millimetres added for each pass a bead already has, so that of two equal ways the emptier is taken.
A judgement; no source."""
U_TURN_COST = 2.0
"""Millimetres added for turning round a bridge: a plain way through beads is easier to follow.
A judgement; no source."""

Spot = tuple[int, End]
"""A bead and the end the thread comes out of."""


@dataclass(frozen=True, slots=True)
class Leg:
    """One pass on the way: perhaps under a bridge first, then through the bead."""

    bead: int
    enter: End
    under: Bridge | None = None


def find_way(work: Work, goals: set[Spot], start: Spot | None = None) -> list[Leg] | None:
    """The cheapest way from `start` (or where the thread is) to any goal: [] if it is there, None if none is.

    A way goes from bead to touching bead at one end of their holes: into the row above or below, or to
    the neighbour in the row where a bridge or a bead hides the thread; or it turns back into the same
    bead round a bridge. At a point of one bead it lies along the point's side, as the thread that came
    up to the point does on the other.
    """
    start = start or work.here
    if start is None:
        return None
    best: dict[Spot, float] = {start: 0.0}
    came: dict[Spot, tuple[Spot, Leg]] = {}
    queue: list[tuple[float, int, End]] = [(0.0, *start)]
    while queue:
        cost, bead, end = heapq.heappop(queue)
        spot = (bead, end)
        if spot in goals:
            return _trace(came, start, spot)
        if cost > best[spot]:
            continue
        for leg, extra in _legs(work, spot):
            then = (leg.bead, leg.enter.other)
            total = cost + extra
            if total < best.get(then, math.inf) - 1e-9:
                best[then] = total
                came[then] = (spot, leg)
                heapq.heappush(queue, (total, *then))
    return None


def _trace(came: dict[Spot, tuple[Spot, Leg]], start: Spot, goal: Spot) -> list[Leg]:
    legs: list[Leg] = []
    spot = goal
    while spot != start:
        spot, leg = came[spot]
        legs.append(leg)
    return legs[::-1]


def _legs(work: Work, spot: Spot) -> Iterator[tuple[Leg, float]]:
    bead, end = spot
    here = work.beads[bead]
    if toothed(work, bead):
        for leg in tooth_legs(work, spot):
            passed, cost = _leg(work, spot, leg.bead, leg.enter)
            yield Leg(passed.bead, passed.enter, leg.under), cost + leg.extra
        return
    if lies_across(work, bead):
        yield from (_leg(work, spot, other, enter) for other, enter in onward(work, spot))
        return
    rows = work.rows[here.part]
    row_index = work.seats[bead]
    row = rows[row_index]
    for place in (here.place - 2, here.place):
        if 0 <= place < len(row) and work.passes[row[place]]:
            other = row[place]
            bridge = work.bridge(bead, other, end)
            if bridge in work.bridges:
                yield Leg(bead, end, bridge), here.length + U_TURN_COST
            if bridge in work.bridges or _covered(work, bead, other, end):
                yield _leg(work, spot, other, end)
    beyond = row_index + (-1 if end is End.TOP else 1)
    if 0 <= beyond < len(rows):
        for other in _about(work, rows[beyond], bead):
            if work.passes[other] and _touch(work, bead, other):
                yield _leg(work, spot, other, end.other)
    inward = row_index + (1 if end is End.TOP else -1)
    if len(row) == 1 and 0 <= inward < len(rows):
        for other in _about(work, rows[inward], bead):
            if work.passes[other] and _touch(work, bead, other):
                yield _leg(work, spot, other, end)


def _leg(work: Work, spot: Spot, other: int, enter: End) -> tuple[Leg, float]:
    """The pass into `other` by `enter`, and what it costs."""
    bead, end = spot
    gap = math.dist(work.beads[bead].mouth(end), work.beads[other].mouth(enter))
    return Leg(other, enter), gap + work.beads[other].length + PASS_COST * work.passes[other]


def _touch(work: Work, one: int, other: int) -> bool:
    """Beads of neighbouring rows touch when they stand half a pitch apart; in herringbone, where they stand
    in columns, those of the next column do as well.
    """
    part = work.parts[work.beads[one].part]
    near = 1.1 if part.stitch == "herringbone" else 0.75
    return abs(work.beads[one].x - work.beads[other].x) < near * part.bead_pitch


def _covered(work: Work, one: int, other: int, end: End) -> bool:
    """Whether a bead of the next row sits over the gap between two neighbours at that end."""
    row = work.seats[one]
    rows = work.rows[work.beads[one].part]
    beyond = row + (-1 if end is End.TOP else 1)
    if not 0 <= beyond < len(rows):
        return False
    return any(
        work.passes[bead] and _touch(work, one, bead) and _touch(work, other, bead)
        for bead in _about(work, rows[beyond], one)
    )


def _about(work: Work, row: list[int], bead: int) -> list[int]:
    """The beads of a row (given from the left) that are near enough to touch this one."""
    here = work.beads[bead]
    reach = 1.2 * work.parts[here.part].bead_pitch
    first = bisect_left(row, here.x - reach, key=lambda other: work.beads[other].x)
    past = bisect_right(row, here.x + reach, lo=first, key=lambda other: work.beads[other].x)
    return row[first:past]


def travel(work: Work, goals: set[Spot], row: int, view: View) -> bool:
    """Bring the thread to one of the goals as a step of its own; False if no way exists."""
    legs = find_way(work, goals)
    if legs is None:
        return False
    if legs:
        go(work, legs)
        work.step(row, "travel", way_phrases(work, legs, view), turned=view.turned)
    return True


def go(work: Work, legs: list[Leg]) -> None:
    """Pass through the beads of a way."""
    for leg in legs:
        if leg.under:
            work.under(leg.under)
        work.through(leg.bead, leg.enter)


def way_phrases(work: Work, legs: list[Leg], view: View) -> tuple[Phrase, ...]:
    """A way in words: passes in one direction through rows that follow each other are one sentence part."""
    if toothed(work, legs[0].bead):
        passes = [((leg.bead, leg.enter), leg.under is not None) for leg in legs]
        return tooth_phrases(work, passes, view)
    if lies_across(work, legs[0].bead):
        return across_phrases(work, [(leg.bead, leg.enter) for leg in legs], view)
    phrases: list[Phrase] = []
    run: list[Leg] = []
    for leg in [*legs, None]:
        if run and (leg is None or not _follows(work, run[-1], leg, _seat(view))):
            phrases.append(_run_phrase(work, run, view))
            run = []
        if leg is not None:
            run.append(leg)
    return tuple(phrases)


def _seat(view: View) -> Callable[[Work, int], tuple[str, int]]:
    """How a bead of a row is named: from the nearer side, as the maker sees it."""

    def seat(work: Work, bead: int) -> tuple[str, int]:
        row = work.rows[work.beads[bead].part][work.seats[bead]]
        place = view.from_left(row).index(bead) + 1
        from_right = len(row) + 1 - place
        return ("left", place) if place <= from_right else ("right", from_right)

    return seat


def _follows(work: Work, last: Leg, leg: Leg, seat: Callable[[Work, int], tuple[str, int]]) -> bool:
    if leg.under or last.under or leg.enter is not last.enter:
        return False
    one, other = work.beads[last.bead], work.beads[leg.bead]
    return abs(one.row - other.row) == 1 and seat(work, last.bead) == seat(work, leg.bead)


def _run_phrase(work: Work, run: list[Leg], view: View) -> Phrase:
    side, place = _seat(view)(work, run[0].bead)
    first, last = work.beads[run[0].bead].row, work.beads[run[-1].bead].row
    key = "travel-run" if len(run) > 1 else "travel-turn" if run[0].under else "travel-one"
    bead = work.beads[run[0].bead]
    if place == 1:
        alone = key == "travel-one" and len(work.rows[bead.part][work.seats[run[0].bead]]) == 1
        key += "-only" if alone else "-edge"
    return Phrase(
        key,
        {"way": view.way(run[0].enter), "side": side, "place": place, "first": first, "last": last},
    )
