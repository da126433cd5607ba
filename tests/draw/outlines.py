"""What tests of drawings ask of outlines: their points, and whether one lies within another."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.draw.pens import Outline

Spot = tuple[float, float]
PARTS = 12
"""A curve is looked at in so many places."""


def corners(outline: Outline) -> list[Spot]:
    """All corners and control points."""
    return [(float(x), float(y)) for x, y in outline.points()]


def along(outline: Outline) -> list[Spot]:
    """Points on the contour itself."""
    return [outline.start, *_along(outline)]


def _along(outline: Outline) -> Iterator[Spot]:
    here = outline.start
    for segment in outline.segments:
        ends = list(zip(segment[::2], segment[1::2], strict=True))
        if len(ends) == 3:
            one, two, last = ends
            for part in range(1, PARTS):
                t = part / PARTS
                shares = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
                x, y = (
                    sum(
                        share * point[axis]
                        for share, point in zip(shares, (here, one, two, last), strict=True)
                    )
                    for axis in (0, 1)
                )
                yield x, y
        here = ends[-1]
        yield here


def box(outline: Outline) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the contour."""
    xs, ys = zip(*along(outline), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def within(spot: Spot, contour: list[Spot], slack: float) -> bool:
    """Whether a point lies in a convex contour, or outside it by no more than `slack`."""
    x, y = (sum(values) / len(contour) for values in zip(*contour, strict=True))
    grown = 1 + slack
    return _inside(spot, [(x + grown * (u - x), y + grown * (v - y)) for u, v in contour])


def _inside(spot: Spot, contour: list[Spot]) -> bool:
    x, y = spot
    odd = False
    for (ax, ay), (bx, by) in zip(contour, [*contour[1:], contour[0]], strict=True):
        if (ay > y) is not (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            odd = not odd
    return odd
