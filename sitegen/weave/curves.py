"""Two points and the sizes of beads -> the line a string of them hangs in, and each bead's place on it.

Millimetres, y downward. Geometry of a chain that hangs by both ends; no published figure.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from itertools import accumulate, pairwise

from sitegen.model.thread import Point

Placed = tuple[float, float, float]
"""x, y in mm and the angle of the hole."""
SAMPLES = 160
"""Points a curve is drawn through."""


def hanging_line(one: Point, other: Point, length: float, width: float) -> list[Point]:
    """The line of a string as long as `length` that hangs between two points at about one height.

    A wide one is a catenary. One that would bend more sharply than beads `width` thick can hangs as a drop:
    two legs and a round foot. One too short for the distance is straight.
    """
    apart = math.dist(one, other)
    if length <= apart * 1.001:
        return [one, other]
    foot = _catenary_foot(apart, length)
    sharp = foot < width and length > 2 * apart
    shape = _drop(apart, length, width) if sharp else _catenary(apart, foot)
    tilt = (other[1] - one[1]) / (other[0] - one[0] or 1.0)
    sign = 1.0 if other[0] >= one[0] else -1.0
    return [(one[0] + sign * x, one[1] + y + tilt * sign * x) for x, y in shape]


def _catenary_foot(apart: float, length: float) -> float:
    """The radius of a catenary's bend at its lowest point."""
    low, high = 1e-6, 60.0
    for _ in range(60):
        middle = (low + high) / 2
        if math.sinh(middle) / middle < length / apart:
            low = middle
        else:
            high = middle
    return apart / (2 * low)


def _catenary(apart: float, foot: float) -> list[Point]:
    """From (0, 0) to (apart, 0)."""
    top = foot * math.cosh(apart / (2 * foot))
    xs = (apart * number / SAMPLES for number in range(SAMPLES + 1))
    return [(x, top - foot * math.cosh((x - apart / 2) / foot)) for x in xs]


def _drop(apart: float, length: float, width: float) -> list[Point]:
    """From (0, 0) down one leg, round a foot about a bead wide, and up to (apart, 0)."""
    radius = min(max(width, apart / 4), _open_circle(apart, length))
    low, high = math.sqrt(max(0.0, radius**2 - (apart / 2) ** 2)) + 1e-9, length
    for _ in range(60):
        depth = (low + high) / 2
        leg, arc = _leg_and_arc(apart, depth, radius)
        if 2 * leg + radius * arc < length:
            low = depth
        else:
            high = depth
    _, arc = _leg_and_arc(apart, low, radius)
    line: list[Point] = [(0.0, 0.0)]
    for number in range(SAMPLES + 1):
        turn = math.pi + arc / 2 - arc * number / SAMPLES  # from straight up, to the left first
        line.append((apart / 2 + radius * math.sin(turn), low - radius * math.cos(turn)))
    return [*line, (apart, 0.0)]


def _open_circle(apart: float, length: float) -> float:
    """The radius of a circle that is as long as `length` from one end of its opening to the other."""
    low, high = apart / 2, length
    for _ in range(60):
        radius = (low + high) / 2
        if radius * (2 * math.pi - 2 * math.asin(min(1.0, apart / (2 * radius)))) < length:
            low = radius
        else:
            high = radius
    return low


def _leg_and_arc(apart: float, depth: float, radius: float) -> tuple[float, float]:
    """A leg's length and the angle of the foot's arc, for a foot whose middle hangs so deep."""
    far = math.hypot(apart / 2, depth)
    leg = math.sqrt(max(0.0, far**2 - radius**2))
    return leg, 2 * math.pi - 2 * (math.atan2(apart / 2, depth) + math.acos(min(1.0, radius / far)))


def along(line: Sequence[Point], lengths: Sequence[float]) -> list[Placed]:
    """Beads of these lengths side by side along a line, spread evenly over the whole of it."""
    steps = [math.dist(one, other) for one, other in pairwise(line)]
    ends = list(accumulate(steps, initial=0.0))
    scale = ends[-1] / sum(lengths)

    def at(way: float) -> Point:
        piece = min(max(bisect_right(ends, way) - 1, 0), len(steps) - 1)
        share = (way - ends[piece]) / (steps[piece] or 1.0)
        (x, y), (to_x, to_y) = line[piece], line[piece + 1]
        return x + (to_x - x) * share, y + (to_y - y) * share

    marks = [way * scale for way in accumulate(lengths, initial=0.0)]
    return [_between(at(one), at(other)) for one, other in pairwise(marks)]


def _between(one: Point, other: Point) -> Placed:
    """A bead with its TOP mouth towards one point and its BOTTOM mouth towards the other."""
    angle = math.degrees(math.atan2(other[0] - one[0], other[1] - one[1]))
    return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2, angle


def upside_down(places: Sequence[Placed], level: float) -> list[Placed]:
    """The same places mirrored at a height: what hangs then stands."""
    return [(x, 2 * level - y, 180.0 - angle) for x, y, angle in places]
