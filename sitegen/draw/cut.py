"""A drawing and a window -> what is seen of it there: beads at the rim stay whole, long lines end at it.

The pen calls themselves are cut, so that every program that shows an SVG shows the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from sitegen.draw.pens import Outline, Paint, Recorder, Text
from sitegen.model.thread import Point

PIECES = 12
"""Straight pieces a curve is cut in, where it crosses the window's edge."""
_HAIR = 1e-6


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle in the drawing's mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def middle(self) -> Point:
        """The middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    @property
    def size(self) -> Point:
        """Width and height."""
        return self.right - self.left, self.bottom - self.top

    def grown(self, rim: float) -> Box:
        """The same with a rim on all sides."""
        return Box(self.left - rim, self.top - rim, self.right + rim, self.bottom + rim)

    def touches(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        return (
            self.left < other.right - _HAIR
            and other.left < self.right - _HAIR
            and self.top < other.bottom - _HAIR
            and other.top < self.bottom - _HAIR
        )

    def holds(self, other: Box) -> bool:
        """Whether the other lies wholly inside."""
        across = self.left <= other.left and other.right <= self.right
        return across and self.top <= other.top and other.bottom <= self.bottom

    def has(self, x: float, y: float) -> bool:
        """Whether a point lies inside."""
        return self.left <= x <= self.right and self.top <= y <= self.bottom


def box_of(outline: Outline) -> Box:
    """The box around a contour's corners and control points."""
    points = list(outline.points())
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


@dataclass(slots=True)
class CuttingPen:
    """A pen that writes down only what is seen in a window."""

    window: Box
    rim: float
    """How far a bead that touches the window may stand out of it and stay whole, mm."""
    recorder: Recorder = field(default_factory=Recorder)
    whole: list[tuple[Outline, Box]] = field(default_factory=list)
    """The filled contours that were kept as they are, such as beads."""
    _standing_out: list[Box] = field(default_factory=list)

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        """Open the group; it is taken back if nothing of it is seen."""
        self.recorder.begin(kind, data)

    def end(self) -> None:
        """Close the group."""
        if self.recorder.calls[-1][0] == "begin":
            self.recorder.calls.pop()
        else:
            self.recorder.end()

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        """Contours that stay whole, then the fills and the strokes of those that are cut."""
        whole: list[tuple[Outline, Box]] = []
        fills: list[Outline] = []
        strokes: list[Outline] = []
        for outline in outlines:
            box = box_of(outline)
            if self.window.holds(box):
                whole.append((outline, box))
            elif self.window.touches(box if outline.closed else box.grown(2 * _HAIR)):
                if outline.closed and self.window.grown(self.rim).holds(box):
                    whole.append((outline, box))
                    self._standing_out.append(box)
                    continue
                points = _flat(outline)
                fills += [piece for piece in (_cut_area(points, self.window),) if piece is not None]
                strokes += _cut_line(points, self.window)
        self.recorder.shapes([outline for outline, _ in whole], paint)
        if paint.fill is not None:
            self.whole += [one for one in whole if one[0].closed]
            self.recorder.shapes(fills, replace(paint, stroke=None, width=0.0))
        if paint.stroke is not None:
            self.recorder.shapes(strokes, replace(paint, fill=None, opacity=1.0))

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        """The letters of all beads that are seen."""
        near = self.window.grown(self.rim)
        self.recorder.letters(
            [
                mark
                for mark in marks
                if self.window.has(mark[0], mark[1])
                or (near.has(mark[0], mark[1]) and any(box.has(*mark[:2]) for box in self._standing_out))
            ],
            size,
        )

    def text(self, label: Text) -> None:
        """A label whose place lies in the window."""
        if self.window.has(label.x, label.y):
            self.recorder.text(label)


def _flat(outline: Outline) -> list[Point]:
    """The contour as straight pieces."""
    points = [outline.start]
    for segment in outline.segments:
        if len(segment) == 2:
            points.append((segment[0], segment[1]))
            continue
        xs, ys = (points[-1][0], *segment[0::2]), (points[-1][1], *segment[1::2])
        for piece in range(1, PIECES + 1):
            share = piece / PIECES
            points.append((_cubic(xs, share), _cubic(ys, share)))
    return [*points, outline.start] if outline.closed else points


def _cubic(values: tuple[float, ...], share: float) -> float:
    back = 1 - share
    weights = (back**3, 3 * back**2 * share, 3 * back * share**2, share**3)
    return sum(weight * value for weight, value in zip(weights, values, strict=True))


Sides = tuple[tuple[int, float, float], ...]


def _sides(window: Box) -> Sides:
    """(axis, limit, sign) of each edge: what lies inside has sign * value <= sign * limit."""
    return (
        (0, window.left, -1.0),
        (0, window.right, 1.0),
        (1, window.top, -1.0),
        (1, window.bottom, 1.0),
    )


def _crossing(one: Point, other: Point, axis: int, limit: float) -> Point:
    share = (limit - one[axis]) / (other[axis] - one[axis])
    return (one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1]))


def _cut_area(points: Sequence[Point], window: Box) -> Outline | None:
    """The part of a closed contour inside the window, edge by edge; None if nothing is left."""
    kept = list(points[:-1] if points[0] == points[-1] else points)
    for axis, limit, sign in _sides(window):
        cut: list[Point] = []
        for one, other in pairwise([*kept, *kept[:1]]):
            first, last = sign * one[axis] <= sign * limit, sign * other[axis] <= sign * limit
            if first:
                cut.append(one)
            if first is not last:
                cut.append(_crossing(one, other, axis, limit))
        kept = cut
    return Outline(kept[0], tuple(kept[1:])) if len(kept) > 2 else None


def _cut_line(points: Sequence[Point], window: Box) -> list[Outline]:
    """The stretches of a line inside the window."""
    stretches: list[list[Point]] = []
    for one, other in _seen_pieces(points, window):
        if stretches and stretches[-1][-1] == one:
            stretches[-1].append(other)
        else:
            stretches.append([one, other])
    return [Outline(line[0], tuple(line[1:]), closed=False) for line in stretches]


def _seen_pieces(points: Sequence[Point], window: Box) -> Iterator[tuple[Point, Point]]:
    for one, other in pairwise(points):
        start, end = one, other
        for axis, limit, sign in _sides(window):
            first, last = sign * start[axis] <= sign * limit, sign * end[axis] <= sign * limit
            if not first and not last:
                break
            if first is not last:
                met = _crossing(start, end, axis, limit)
                start, end = (start, met) if first else (met, end)
        else:
            yield start, end
