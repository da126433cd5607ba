"""Moves of a few steps -> the thread as a maker sees it: curves, arrowheads, a start and an end.

Several passes through one bead lie side by side: passes down to the left, passes up to the right, so that
the bead's letter between them stays readable. Thread that is not seen, because it is inside a bead or behind
the warps of a loom, comes as short strokes.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from sitegen.draw.overlap import Box, between, sampled
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
HIDDEN_MM = 0.7
"""A shorter way behind a warp is not drawn: the line breaks, and the warp is seen to lie over it."""
TURNED_ASIDE = (0, 35, -35, 60, -60, 85, -85)
"""How the end may turn aside, in degrees, best first, so as to keep off letters."""
AIR_MM = 0.05
"""How far arrows keep off letters."""
REACHES = (0.7, 0.5, 0.36, 0.25)
"""How far the end reaches, as shares of `TAIL_MM`, best first."""
ONWARD = 0.5
"""Two passes whose headings differ by less (the cosine of the angle between them) are one run."""
STROKE_MM = 0.62
"""Length of one stroke and one gap, together, of thread that is not seen."""
STROKE_SHARE = 0.6
"""How much of that is the stroke."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A place the needle goes in at: a bead, a bridge or a loop."""

    number: int
    """From 1, in order of passing."""
    at: Point
    heading: Point
    turns: bool
    """The thread does not go straight on here."""
    leave: Point
    """Where the needle comes out again; of a bridge or a loop, the place itself."""
    bead: Point | None = None
    """The middle of the bead; None for a bridge or a loop."""


@dataclass(slots=True)
class Route:
    """The drawn thread."""

    line: list[Outline] = field(default_factory=list)
    """Open curves, in order, seen or not."""
    strokes: list[Outline] = field(default_factory=list)
    """The same as it is drawn: what is not seen in short strokes."""
    marks: list[Mark] = field(default_factory=list)
    """Where the needle goes in, in order."""
    before: int = 0
    """How many places the needle went in at before this stretch."""
    arrows: list[Outline] = field(default_factory=list)
    start: Point | None = None
    """Where the thread comes from."""
    tip: Outline | None = None
    """The arrowhead where it comes out at the end."""
    from_tail: bool = False
    """The thread begins here: what is drawn before the first bead is its tail."""
    bridges: list[Bridge] = field(default_factory=list)
    """Bridges the needle goes under."""
    hitches: list[Point] = field(default_factory=list)
    """Half hitches."""
    straight: int = 0
    """Beads passed straight on so far."""

    def draw(self, start: Point, segments: tuple[Segment, ...], *, seen: bool = True) -> None:
        """Add a piece of thread."""
        piece = Outline(start, segments, closed=False)
        self.line.append(piece)
        self.strokes += [piece] if seen else _strokes(piece)

    def mark_held(self, at: Point, last: _Pass | None) -> None:
        """The needle goes under a bridge or through a loop here."""
        heading = last.heading if last else (0.0, 1.0)
        self.marks.append(Mark(self.before + len(self.marks) + 1, at, heading, turns=True, leave=at))

    def mark_pass(self, here: _Pass, *, turns: bool) -> None:
        """The needle goes into a bead here."""
        number, middle = self.before + len(self.marks) + 1, (here.bead.x, here.bead.y)
        self.marks.append(Mark(number, here.enter, here.heading, turns, here.leave, middle))


@dataclass(frozen=True, slots=True)
class _Pass:
    """A pass through a bead, as drawn."""

    bead: Bead
    enter: Point
    leave: Point
    heading: Point
    """Unit vector the thread moves along."""


def trace(
    path: ThreadPath,
    beads: dict[int, Bead],
    moves: range,
    *,
    turned: bool = False,
    before: int = 0,
    letters: Sequence[Box] = (),
) -> Route:
    """Draw the thread of `moves`; `beads` holds every bead it touches in the coordinates of the drawing.

    `before` tells how many places the needle has gone in at already; arrows keep off the `letters`.
    """
    route = Route(before=before)
    lanes = _lanes(path, beads, moves)
    last: _Pass | None = None
    if moves.start > 0 and path.moves[moves.start].kind is not MoveKind.TAKE:
        came = path.moves[moves.start - 1]
        if came.bead >= 0:
            last = _pass(beads[came.bead], came, 0.0)
            route.start = last.leave
        elif came.bridge is not None:
            last = _from_bridge(beads, came.bridge)
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
            route.mark_held(held[-1], last)
        elif move.kind is MoveKind.LOOP:
            finding = path.findings[move.finding]
            x, y = move.at or (finding.x, finding.y)
            held.append((-x, -y) if turned else (x, y))
            route.mark_held(held[-1], last)
        else:
            here = _pass(beads[move.bead], move, lanes[number])
            loomed = bool(path.warps) and _loomed(path, move.bead)
            behind = loomed and move.kind is MoveKind.PICK
            _connect(route, last, here, held, (not behind, loomed and not behind))
            held = []
            last = here
    if last is not None and held:
        last = _to_bridge(route, last, held[-1])
    if last is not None:
        _leave(route, last, letters)
    route.arrows = [arrow for arrow in route.arrows if _clear(arrow, letters)]
    return route


def _clear(outline: Outline, letters: Sequence[Box]) -> bool:
    """Whether a contour keeps off all letters."""
    return not any(box.touches(dot, AIR_MM) for dot in sampled(outline) for box in letters)


def _loomed(path: ThreadPath, bead: int) -> bool:
    """Whether a bead is picked up behind warps."""
    return any(warp.part == path.beads[bead].part for warp in path.warps)


def _strokes(piece: Outline) -> list[Outline]:
    """A piece of thread that is not seen, as short straight strokes with a gap at either end."""
    strokes: list[Outline] = []
    here = piece.start
    for segment in piece.segments:
        corners = [here, *zip(segment[0::2], segment[1::2], strict=True)]
        here = corners[-1]
        length = math.dist(corners[0], here)
        count = max(1, round(length / STROKE_MM))
        for place in range(count):
            middle, half = (place + 0.5) / count, STROKE_SHARE / 2 / count
            start, end = between(corners, middle - half), between(corners, middle + half)
            strokes.append(Outline(start, (end,), closed=False))
    return strokes


def _from_bridge(beads: dict[int, Bead], bridge: Bridge) -> _Pass:
    """The thread as it comes out from under a bridge, away from the beads that hold it."""
    bead = beads[bridge.left]
    middle = bridge_middle(beads, bridge)
    return _Pass(bead, middle, middle, (0.0, 1.0 if middle[1] > bead.y else -1.0))


def _to_bridge(route: Route, last: _Pass, hold: Point) -> _Pass:
    """The thread to a bridge or loop it was just brought under, and out again beside it."""
    heading = _unit(last.leave, hold)
    route.draw(last.leave, (_curve(last.leave, last.heading, hold, heading),))
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


def _connect(
    route: Route, last: _Pass | None, here: _Pass, held: list[Point], seen: tuple[bool, bool]
) -> None:
    """From bead to bead, round what holds the thread on the way, and through the bead.

    `seen` tells whether the thread is drawn unbroken, between the beads and in this one: in a bead only where
    it lies over the warps of a loom, so that the way under them and the way over them differ.
    """
    if last is None:
        route.from_tail = True
        route.start = (here.enter[0] - here.heading[0] * TAIL_MM, here.enter[1] - here.heading[1] * TAIL_MM)
        route.draw(route.start, (here.enter,))
        route.draw(here.enter, (here.leave,), seen=seen[1])
        route.mark_pass(here, turns=True)
        return
    segments: list[Segment] = []
    point, heading = last.leave, last.heading
    if last.bead is here.bead and _goes_on(last, here):
        segments.append(_round(last, here))
        point, heading = (segments[-1][-2], segments[-1][-1]), (-heading[0], -heading[1])
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
    if seen[0] or math.dist(last.leave, here.enter) > HIDDEN_MM:
        route.draw(last.leave, tuple(segments), seen=seen[0])
    route.draw(here.enter, (here.leave,), seen=seen[1])
    route.mark_pass(here, turns=bool(held) or not _goes_on(last, here))


def _goes_on(last: _Pass, here: _Pass) -> bool:
    """Whether the thread goes much the way it went through the bead before."""
    return last.heading[0] * here.heading[0] + last.heading[1] * here.heading[1] > ONWARD


def _round(last: _Pass, here: _Pass) -> Segment:
    """Out of a bead and back past it, on the side of the next pass, for a bead gone through once more."""
    bead, (dx, dy) = here.bead, here.heading
    lane = (here.enter[0] - bead.x) * -dy + (here.enter[1] - bead.y) * dx
    side = math.copysign(bead.width * 0.72, lane)
    middle = (bead.x - dy * side, bead.y + dx * side)
    return _curve(last.leave, last.heading, middle, (-dx, -dy))


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
    return between([start, *zip(curve[0::2], curve[1::2], strict=True)], 0.5)


def _centred_arrow(middle: Point, heading: Point, size: float) -> Outline:
    tip = (middle[0] + heading[0] * size / 2, middle[1] + heading[1] * size / 2)
    return arrowhead(tip, heading, size)


def _leave(route: Route, last: _Pass, letters: Sequence[Box]) -> None:
    """The thread goes on out of the last bead, with an arrowhead at its end that keeps off letters."""
    ends = [_end(last, turn, reach) for turn in TURNED_ASIDE for reach in REACHES]
    free = (end for end in ends if all(_clear(outline, letters) for outline in end))
    line, route.tip = next(free, ends[0])
    route.draw(line.start, line.segments)


def _end(last: _Pass, turn: float, reach: float) -> tuple[Outline, Outline]:
    """The last of the thread and its arrowhead, turned aside by so many degrees."""
    (x, y), (dx, dy), angle = last.leave, last.heading, math.radians(turn)
    heading = (dx * math.cos(angle) - dy * math.sin(angle), dx * math.sin(angle) + dy * math.cos(angle))
    tip = (x + heading[0] * TAIL_MM * reach, y + heading[1] * TAIL_MM * reach)
    neck = (tip[0] - heading[0] * ARROW_MM * 0.8, tip[1] - heading[1] * ARROW_MM * 0.8)
    way: Segment = _curve(last.leave, last.heading, neck, heading) if turn else neck
    return Outline(last.leave, (way,), closed=False), arrowhead(tip, heading, ARROW_MM * 1.5)
