"""Moves of a few steps -> the thread as a maker sees it: curves, arrowheads, a start and an end.

Several passes through one bead lie side by side: passes down to the left, passes up to the right, so that
the bead's letter between them stays readable.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.draw.pens import Outline, Segment
from sitegen.draw.shapes import arrowhead
from sitegen.model.thread import Bead, Bridge, Move, MoveKind, Point, ThreadPath

LANES: Mapping[int, tuple[float, ...]] = {
    1: (0.31,),
    2: (0.29, 0.41),
    3: (0.25, 0.34, 0.43),
}
"""Offsets from the hole's middle on one side, by how many passes share that side, in bead diameters."""
LYING = 1e-6
"""A pass that rises or falls less than this, of its length, goes across."""
TAIL_MM = 3.0
"""Thread drawn before the first bead and after the last."""
ARROW_MM = 0.95
"""Length of an arrowhead."""
ARROW_EVERY = 6
"""Along a straight run of beads, every so many beads an arrowhead shows the way."""


@dataclass(slots=True)
class Route:
    """The drawn thread."""

    line: list[Outline] = field(default_factory=list)
    """Open curves, in order."""
    arrows: list[Outline] = field(default_factory=list)
    start: Point | None = None
    """Where the thread comes from."""
    from_tail: bool = False
    """The thread begins here: what is drawn before the first bead is its tail."""
    bridges: list[Bridge] = field(default_factory=list)
    """Bridges the needle goes under."""
    hitches: list[Point] = field(default_factory=list)
    """Half hitches."""
    straight: int = 0
    """Beads passed straight on so far."""


@dataclass(frozen=True, slots=True)
class _Pass:
    """A pass through a bead, as drawn."""

    bead: Bead
    enter: Point
    leave: Point
    heading: Point
    """Unit vector the thread moves along."""


def trace(path: ThreadPath, beads: dict[int, Bead], moves: range, turned: bool) -> Route:
    """Draw the thread of `moves`; `beads` holds every bead it touches in the coordinates of the drawing."""
    route = Route()
    lanes = _lanes(path, beads, moves)
    last: _Pass | None = None
    if moves.start > 0 and path.moves[moves.start].kind is not MoveKind.TAKE:
        before = path.moves[moves.start - 1]
        if before.bead >= 0:
            last = _pass(beads[before.bead], before, 0.0)
            route.start = last.leave
        elif before.bridge is not None:
            last = _from_bridge(beads, before.bridge)
            route.start = last.leave
    held: list[Point] = []
    for number in moves:
        move = path.moves[number]
        if move.kind is MoveKind.WARP:
            continue
        if move.kind is MoveKind.TAKE:
            last = route.start = None
            if move.hangs is not None:
                bead, end = move.hangs
                last = _pass(beads[bead], Move(MoveKind.THROUGH, bead, end.other), 0.0)
                route.start = last.leave
        elif move.kind in (MoveKind.UNDER, MoveKind.HITCH) and move.bridge is not None:
            route.bridges.append(move.bridge)
            if move.kind is MoveKind.HITCH:
                route.hitches.append(bridge_middle(beads, move.bridge))
            held.append(bridge_middle(beads, move.bridge))
        elif move.kind is MoveKind.LOOP:
            finding = path.findings[move.finding]
            x, y = move.at or (finding.x, finding.y)
            held.append((-x, -y) if turned else (x, y))
        else:
            here = _pass(beads[move.bead], move, lanes[number])
            _connect(route, last, here, held)
            held = []
            last = here
    if last is not None and held:
        last = _to_bridge(route, last, held[-1])
    if last is not None:
        _leave(route, last)
    return route


def _from_bridge(beads: dict[int, Bead], bridge: Bridge) -> _Pass:
    """The thread as it comes out from under a bridge, away from the beads that hold it."""
    bead = beads[bridge.left]
    middle = bridge_middle(beads, bridge)
    return _Pass(bead, middle, middle, (0.0, 1.0 if middle[1] > bead.y else -1.0))


def _to_bridge(route: Route, last: _Pass, hold: Point) -> _Pass:
    """The thread to a bridge or loop it was just brought under, and out again beside it."""
    heading = _unit(last.leave, hold)
    route.line.append(Outline(last.leave, (_curve(last.leave, last.heading, hold, heading),), closed=False))
    return _Pass(last.bead, hold, hold, heading)


def _lanes(path: ThreadPath, beads: dict[int, Bead], moves: range) -> dict[int, float]:
    """For each pass (by its move), how far to the left of its way it is drawn, in bead diameters.

    Passes down and up take opposite sides; where all go one way, the last one takes the free side.
    """
    passes: dict[int, list[int]] = defaultdict(list)
    for number in moves:
        if path.moves[number].bead >= 0:
            passes[path.moves[number].bead].append(number)
    lanes: dict[int, float] = {}
    for bead, numbers in passes.items():
        downs = [number for number in numbers if _onward(_heading(beads[bead], path.moves[number]))]
        ups = [number for number in numbers if number not in downs]
        for same, other in ((downs, ups), (ups, downs)):
            crossing = [same.pop()] if len(same) > 1 and not other else []
            for place, number in enumerate(same):
                lanes[number] = LANES.get(len(same), LANES[3])[min(place, 2)]
            for number in crossing:
                lanes[number] = -LANES[1][0]
    return lanes


def _onward(heading: Point) -> bool:
    """Whether a pass goes down, or to the right in a hole that lies across."""
    return heading[0] > 0 if abs(heading[1]) < LYING else heading[1] > 0


def _heading(bead: Bead, move: Move) -> Point:
    return _unit(bead.mouth(move.enter), bead.mouth(move.enter.other))


def _pass(bead: Bead, move: Move, lane: float) -> _Pass:
    """A pass in its lane: passes down lie to the left of the middle, passes up to the right."""
    enter, leave = bead.mouth(move.enter), bead.mouth(move.enter.other)
    heading = _unit(enter, leave)
    aside = (-heading[1] * lane * bead.width, heading[0] * lane * bead.width)
    return _Pass(
        bead, (enter[0] + aside[0], enter[1] + aside[1]), (leave[0] + aside[0], leave[1] + aside[1]), heading
    )


def _unit(one: Point, other: Point) -> Point:
    length = math.dist(one, other) or 1.0
    return ((other[0] - one[0]) / length, (other[1] - one[1]) / length)


def bridge_middle(beads: dict[int, Bead], bridge: Bridge) -> Point:
    """The middle of a bridge in the drawing's coordinates."""
    left, right = beads[bridge.left].mouth(bridge.end), beads[bridge.right].mouth(bridge.right_end)
    return ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)


def _connect(route: Route, last: _Pass | None, here: _Pass, held: list[Point]) -> None:
    """From bead to bead, round what holds the thread on the way, and through the bead."""
    if last is None:
        route.from_tail = True
        route.start = (here.enter[0] - here.heading[0] * TAIL_MM, here.enter[1] - here.heading[1] * TAIL_MM)
        route.line.append(Outline(route.start, (here.leave,), closed=False))
        return
    segments: list[Segment] = []
    point, heading = last.leave, last.heading
    for hold in held:
        across = _across(last, here)
        dip = (hold[0] + last.heading[0] * 0.55, hold[1] + last.heading[1] * 0.55)
        segments.append(_curve(point, heading, dip, across))
        point, heading = dip, across
    segments.append(_curve(point, heading, here.enter, here.heading))
    lying = max(abs(last.heading[1]), abs(here.heading[1])) < LYING
    back = last.heading[0] * here.heading[0] if lying else last.heading[1] * here.heading[1]
    turns = back < 0 and not held
    if turns and math.dist(last.leave, here.enter) > 0.3 * here.bead.width:
        middle = _middle(point, segments[-1])
        route.arrows.append(_centred_arrow(middle, _unit(last.leave, here.enter), ARROW_MM))
    straight = not held and math.dist(last.leave, here.enter) < 0.1 * here.bead.width
    route.straight = route.straight + 1 if straight else 0
    if route.straight % ARROW_EVERY == 3:
        route.arrows.append(_centred_arrow(here.enter, here.heading, ARROW_MM * 0.8))
    segments.append(here.leave)
    route.line.append(Outline(last.leave, tuple(segments), closed=False))


def _across(last: _Pass, here: _Pass) -> Point:
    """Square to the way the thread came, towards where it goes next; to the right if that is straight on."""
    right = (abs(last.heading[1]), -math.copysign(1.0, last.heading[1]) * last.heading[0])
    towards = (here.enter[0] - last.leave[0]) * right[0] + (here.enter[1] - last.leave[1]) * right[1]
    return right if towards >= 0 else (-right[0], -right[1])


def _curve(start: Point, heading: Point, end: Point, arriving: Point) -> Segment:
    """A cubic that leaves along `heading` and arrives along `arriving`."""
    pull = max(0.25, 0.5 * math.dist(start, end))
    return (
        start[0] + heading[0] * pull,
        start[1] + heading[1] * pull,
        end[0] - arriving[0] * pull,
        end[1] - arriving[1] * pull,
        end[0],
        end[1],
    )


def _middle(start: Point, curve: Segment) -> Point:
    """The point halfway along a cubic's parameter."""
    xs, ys = (start[0], *curve[0::2]), (start[1], *curve[1::2])
    weights = (0.125, 0.375, 0.375, 0.125)
    return (
        sum(weight * x for weight, x in zip(weights, xs, strict=True)),
        sum(weight * y for weight, y in zip(weights, ys, strict=True)),
    )


def _centred_arrow(middle: Point, heading: Point, size: float) -> Outline:
    tip = (middle[0] + heading[0] * size / 2, middle[1] + heading[1] * size / 2)
    return arrowhead(tip, heading, size)


def _leave(route: Route, last: _Pass) -> None:
    """The thread goes on out of the last bead, with an arrowhead at its end."""
    tip = (last.leave[0] + last.heading[0] * TAIL_MM * 0.7, last.leave[1] + last.heading[1] * TAIL_MM * 0.7)
    neck = (tip[0] - last.heading[0] * ARROW_MM * 0.8, tip[1] - last.heading[1] * ARROW_MM * 0.8)
    route.line.append(Outline(last.leave, (neck,), closed=False))
    route.arrows.append(arrowhead(tip, last.heading, ARROW_MM * 1.5))
