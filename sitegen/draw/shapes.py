"""A bead or an arrow -> outlines in millimetres."""

from __future__ import annotations

import math
from dataclasses import replace

from sitegen.draw.pens import Outline, Segment
from sitegen.model.thread import Bead, Point

KAPPA = 0.5523
"""Control point distance that makes a cubic curve a quarter circle."""
CORNERS = {"round": (0.36, 0.47), "cylinder": (0.12, 0.14), "cube": (0.08, 0.08), "bugle": (0.1, 0.03)}
"""Corner radii seen from the side, as shares of the diameter and of the length."""
FACETED = {
    "bicone": ((0.14, -0.5), (0.5, -0.03), (0.5, 0.03), (0.14, 0.5)),
    "faceted": ((0.2, -0.5), (0.4, -0.36), (0.5, -0.14), (0.5, 0.14), (0.4, 0.36), (0.2, 0.5)),
}
"""Corners of the right half of beads with facets, down along the hole, as shares of diameter and length."""
SIDES = {"bicone": 6, "faceted": 8}
"""Corners of a bead with facets, seen from the hole. A judgement; no source."""
NECK = 0.2
"""How far down a drop its hole lies, as a share of what is left of its height. A judgement; no source."""


class Frame:
    """Places points given along and across a bead's hole; half a turn more if the work is turned."""

    def __init__(self, bead: Bead) -> None:
        turn = math.radians(bead.angle)
        self._across = (math.cos(turn), -math.sin(turn))
        self._along = (math.sin(turn), math.cos(turn))
        self._centre = (bead.x, bead.y)

    def at(self, across: float, along: float) -> Point:
        """The point so far across and along the hole from the bead's centre, mm."""
        return (
            self._centre[0] + across * self._across[0] + along * self._along[0],
            self._centre[1] + across * self._across[1] + along * self._along[1],
        )

    def within(self, way: Point) -> Point:
        """A direction on the page, as it lies across and along the hole."""
        return (
            way[0] * self._across[0] + way[1] * self._across[1],
            way[0] * self._along[0] + way[1] * self._along[1],
        )


def bead_outline(bead: Bead, shrink: float = 0.02) -> Outline:
    """The bead from the side; `shrink` (a share of its size) keeps neighbours' edges apart."""
    if bead.shape in FACETED:
        return polygon(_corners(bead, 1 - shrink))
    if bead.shape == "drop":
        return _drop(bead, 1 - shrink)
    half_width, half_length = bead.width * (1 - shrink) / 2, bead.length * (1 - shrink) / 2
    share = CORNERS.get(bead.shape, CORNERS["round"])
    return _rounded(Frame(bead), half_width, half_length, bead.width * share[0], bead.length * share[1])


def _corners(bead: Bead, scale: float) -> list[Point]:
    """The corners of a bead with facets, clockwise from its TOP end."""
    right = FACETED[bead.shape]
    left = [(-across, along) for across, along in reversed(right)]
    frame = Frame(bead)
    return [
        frame.at(across * bead.width * scale, along * bead.length * scale)
        for across, along in (*right, *left)
    ]


def polygon(corners: list[Point]) -> Outline:
    """Straight edges from corner to corner."""
    return Outline(corners[0], tuple(corners[1:]))


def _drop(bead: Bead, scale: float) -> Outline:
    """A drop, its neck on the side that is upward where the hole lies across, its belly opposite."""
    frame, neck, belly = Frame(bead), bead.width * scale / 2, bead.length * scale / 2
    low = belly - neck
    reach = belly * KAPPA
    way: list[tuple[Point, ...]] = [
        ((neck * 0.86, belly * 0.42), (low + belly * 0.95, belly * 0.9), (low + belly * 0.1, belly)),
        ((low - reach, belly), (-neck, reach), (-neck, 0.0)),
        ((-neck, -reach), (low - reach, -belly), (low + belly * 0.1, -belly)),
        ((low + belly * 0.95, -belly * 0.9), (neck * 0.86, -belly * 0.42), (neck, 0.0)),
    ]
    segments = []
    for points in way:
        placed = [frame.at(*point) for point in points]
        segments.append(tuple(value for point in placed for value in point))
    return Outline(frame.at(neck, 0.0), tuple(segments))


def _rounded(
    frame: Frame, half_width: float, half_length: float, corner_x: float, corner_y: float
) -> Outline:
    corner_x, corner_y = min(corner_x, half_width), min(corner_y, half_length)
    flat_x, flat_y = half_width - corner_x, half_length - corner_y
    reach_x, reach_y = flat_x + corner_x * KAPPA, flat_y + corner_y * KAPPA
    way: list[tuple[Point, ...]] = [
        ((flat_x, -half_length),),
        ((reach_x, -half_length), (half_width, -reach_y), (half_width, -flat_y)),
        ((half_width, flat_y),),
        ((half_width, reach_y), (reach_x, half_length), (flat_x, half_length)),
        ((-flat_x, half_length),),
        ((-reach_x, half_length), (-half_width, reach_y), (-half_width, flat_y)),
        ((-half_width, -flat_y),),
        ((-half_width, -reach_y), (-reach_x, -half_length), (-flat_x, -half_length)),
    ]
    segments: list[Segment] = []
    for points in way:
        placed = [frame.at(*point) for point in points]
        segments.append(tuple(value for point in placed for value in point))
    return Outline(frame.at(-flat_x, -half_length), tuple(segments))


def moved(outline: Outline, by: Point) -> Outline:
    """The outline, shifted."""
    (x, y), (dx, dy) = outline.start, by
    segments = tuple(
        tuple(value + by[index % 2] for index, value in enumerate(segment)) for segment in outline.segments
    )
    return Outline((x + dx, y + dy), segments, outline.closed)


def scaled(outline: Outline, share: float) -> Outline:
    """The outline, drawn in about the middle of its box."""
    xs, ys = zip(*outline.points(), strict=True)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)

    def near(values: Segment) -> Segment:
        return tuple(
            middle[index % 2] + share * (value - middle[index % 2]) for index, value in enumerate(values)
        )

    x, y = near(outline.start)
    return Outline((x, y), tuple(map(near, outline.segments)), outline.closed)


def ellipse(centre: Point, radius_x: float, radius_y: float) -> Outline:
    """An upright ellipse."""
    x, y = centre
    reach_x, reach_y = radius_x * KAPPA, radius_y * KAPPA
    return Outline(
        (x, y - radius_y),
        (
            (x + reach_x, y - radius_y, x + radius_x, y - reach_y, x + radius_x, y),
            (x + radius_x, y + reach_y, x + reach_x, y + radius_y, x, y + radius_y),
            (x - reach_x, y + radius_y, x - radius_x, y + reach_y, x - radius_x, y),
            (x - radius_x, y - reach_y, x - reach_x, y - radius_y, x, y - radius_y),
        ),
    )


def bead_end(bead: Bead, hole_mm: float) -> tuple[Outline, Outline]:
    """The bead from the hole (its outline, then the rim of the hole), about its own place; mm.

    A drop is hung through its neck, so its hole shows there, above its belly.
    """
    centre = (bead.x, bead.y)
    if bead.shape == "drop":
        upright = replace(bead, angle=90.0)
        neck = (bead.y - bead.width / 2) + hole_mm * 0.5 + (bead.width - hole_mm) * NECK
        return _drop(upright, 1.0), ellipse((bead.x, neck), hole_mm / 2, hole_mm / 2)
    hole = ellipse(centre, hole_mm / 2, hole_mm / 2)
    half = bead.width / 2
    if bead.shape == "cube":
        return _rounded(Frame(replace(bead, angle=0.0)), half, half, half * 0.24, half * 0.24), hole
    if bead.shape in SIDES:
        count = SIDES[bead.shape]
        turns = [math.pi * (0.5 + 2 * corner / count) for corner in range(count)]
        return polygon([(bead.x + half * math.sin(t), bead.y - half * math.cos(t)) for t in turns]), hole
    return ellipse(centre, half, half), hole


def arrowhead(tip: Point, heading: Point, size: float) -> Outline:
    """A filled arrowhead, its tip at `tip`, pointing along the unit vector `heading`."""
    (x, y), (dx, dy) = tip, heading
    back = (x - dx * size, y - dy * size)
    notch = (x - dx * size * 0.7, y - dy * size * 0.7)
    side = (-dy * size * 0.45, dx * size * 0.45)
    return Outline(
        tip, ((back[0] + side[0], back[1] + side[1]), notch, (back[0] - side[0], back[1] - side[1]))
    )
