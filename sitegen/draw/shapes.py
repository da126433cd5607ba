"""A bead or an arrow -> outlines in millimetres."""

from __future__ import annotations

import math

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


def highlight(bead: Bead) -> Outline:
    """Where the light falls on a bead: high on its left, however its hole lies."""
    if bead.shape in FACETED:
        corners = _corners(bead, 0.82)
        return polygon(_upper_left(corners, (bead.x, bead.y)))
    if bead.shape == "bugle":
        return _strip(bead, -0.62, -0.3)
    x, y, across, down = _body(bead)
    return ellipse((x - across * 0.32, y - down * 0.4), across * 0.34, down * 0.22)


def shade(bead: Bead) -> Outline:
    """The dark lower edge of a bead: a sickle as wide as the bead, or its lower facets."""
    if bead.shape in FACETED:
        return polygon(_below(_corners(bead, 1.0), bead.y + 0.1 * bead.length))
    if bead.shape == "bugle":
        return _strip(bead, 0.35, 0.9)
    x, y, across, down = _body(bead)
    across, down = across * 0.92, down * 0.92
    return Outline(
        (x - across, y + down * 0.1),
        (
            (x - across, y + down * 0.9, x - across * 0.5, y + down, x, y + down),
            (x + across * 0.5, y + down, x + across, y + down * 0.9, x + across, y + down * 0.1),
            (x + across * 0.8, y + down * 0.62, x + across * 0.4, y + down * 0.66, x, y + down * 0.66),
            (
                x - across * 0.4,
                y + down * 0.66,
                x - across * 0.8,
                y + down * 0.62,
                x - across,
                y + down * 0.1,
            ),
        ),
    )


def _strip(bead: Bead, near: float, far: float) -> Outline:
    """A strip along a tube, `near` to `far` from its axis (1 is its lower or right edge, -1 the other)."""
    frame = Frame(bead)
    aside = frame.at(1.0, 0.0)
    down, right = aside[1] - bead.y, aside[0] - bead.x
    side = math.copysign(bead.width / 2, down if abs(down) > 0.2 else right)
    end = bead.length * 0.46
    return polygon([frame.at(near * side, -end), frame.at(far * side, -end), frame.at(far * side, end),
                    frame.at(near * side, end)])  # fmt: skip


def _body(bead: Bead) -> tuple[float, float, float, float]:
    """The round of a bead as it is seen: its middle, and half its size to the side and down."""
    half_width, half_length = bead.width / 2, bead.length / 2
    if bead.shape == "drop":
        x, y = Frame(bead).at(half_length - half_width, 0.0)
        return x, y, half_length, half_length
    if 45 < bead.angle % 180 < 135:
        return bead.x, bead.y, half_length, half_width
    return bead.x, bead.y, half_width, half_length


def _below(corners: list[Point], y: float) -> list[Point]:
    """The part of a convex outline that lies below a level."""
    kept: list[Point] = []
    for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
        if one[1] >= y:
            kept.append(one)
        if (one[1] >= y) is not (other[1] >= y):
            share = (y - one[1]) / (other[1] - one[1])
            kept.append((one[0] + share * (other[0] - one[0]), y))
    return kept or corners


def _upper_left(corners: list[Point], middle: Point) -> list[Point]:
    """The quarter of a convex outline that faces the light, drawn in a little from the ridges."""
    above = [(x, -y) for x, y in _below([(x, -y) for x, y in corners], -middle[1])]
    left = [(-y, x) for x, y in _below([(y, -x) for x, y in above], -middle[0])]
    centre = (sum(x for x, _ in left) / len(left), sum(y for _, y in left) / len(left))
    return [(centre[0] + 0.6 * (x - centre[0]), centre[1] + 0.6 * (y - centre[1])) for x, y in left]


def arrowhead(tip: Point, heading: Point, size: float) -> Outline:
    """A filled arrowhead, its tip at `tip`, pointing along the unit vector `heading`."""
    (x, y), (dx, dy) = tip, heading
    back = (x - dx * size, y - dy * size)
    notch = (x - dx * size * 0.7, y - dy * size * 0.7)
    side = (-dy * size * 0.45, dx * size * 0.45)
    return Outline(
        tip, ((back[0] + side[0], back[1] + side[1]), notch, (back[0] - side[0], back[1] - side[1]))
    )
