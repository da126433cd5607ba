"""A bead or an arrow -> outlines in millimetres."""

from __future__ import annotations

import math

from sitegen.draw.pens import Outline, Segment
from sitegen.model.thread import Bead, Point

KAPPA = 0.5523
"""Control point distance that makes a cubic curve a quarter circle."""
CORNERS = {"round": (0.36, 0.47), "cylinder": (0.12, 0.14)}
"""Corner radii seen from the side, as shares of the diameter and of the length."""


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
    half_width, half_length = bead.width * (1 - shrink) / 2, bead.length * (1 - shrink) / 2
    share = CORNERS.get(bead.shape, CORNERS["round"])
    return _rounded(Frame(bead), half_width, half_length, bead.width * share[0], bead.length * share[1])


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
    return ellipse(
        (bead.x - bead.width * 0.16, bead.y - bead.length * 0.2), bead.width * 0.17, bead.length * 0.11
    )


def shade(bead: Bead) -> Outline:
    """The dark lower edge of a bead: a sickle as wide as the bead."""
    across, down = bead.width * 0.46, bead.length * 0.46
    if 45 < bead.angle % 180 < 135:
        across, down = bead.length * 0.46, bead.width * 0.46
    x, y = bead.x, bead.y
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


def arrowhead(tip: Point, heading: Point, size: float) -> Outline:
    """A filled arrowhead, its tip at `tip`, pointing along the unit vector `heading`."""
    (x, y), (dx, dy) = tip, heading
    back = (x - dx * size, y - dy * size)
    notch = (x - dx * size * 0.7, y - dy * size * 0.7)
    side = (-dy * size * 0.45, dx * size * 0.45)
    return Outline(
        tip, ((back[0] + side[0], back[1] + side[1]), notch, (back[0] - side[0], back[1] - side[1]))
    )
