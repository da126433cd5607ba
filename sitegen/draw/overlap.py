"""Pen calls -> where letters, labels and the thread lie, and which of them lie over each other.

What a maker reads in a drawing of a step is free: no line runs through a letter or a number, and no number
stands on a letter.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations, pairwise

from sitegen.draw.pens import CAP_HEIGHT, Drawing, Outline, Paint, Segment, Text, text_width
from sitegen.model.thread import Point

BEARING = 0.11
"""Share of a font's size that a letter's advance is wider than its ink, both sides together."""
STRIDE_MM = 0.12
"""How far apart the points lie that a line is sampled at."""
LINES = ("thread-line", "arrows", "ends", "bridges", "hitches", "stop-bead")
"""Groups whose contours no letter and no label may touch."""
BEADS = ("beads-new", "beads-there", "beads-cut")
"""Groups of beads, by how they are painted."""
TOUCH_MM = 0.01
"""Marks may come this near before they count as overlapping."""


@dataclass(frozen=True, slots=True)
class Box:
    """A letter or label: the box around its ink, mm."""

    left: float
    top: float
    right: float
    bottom: float
    what: str = ""
    """Its text."""

    def meets(self, other: Box) -> bool:
        """Whether two boxes share more than an edge."""
        return (
            self.left < other.right - TOUCH_MM
            and other.left < self.right - TOUCH_MM
            and self.top < other.bottom - TOUCH_MM
            and other.top < self.bottom - TOUCH_MM
        )

    def touches(self, dot: Point, half: float) -> bool:
        """Whether a line of this half width touches the box at a point of its middle."""
        reach = half - TOUCH_MM
        x, y = dot
        return self.left - reach < x < self.right + reach and self.top - reach < y < self.bottom + reach


@dataclass(slots=True)
class Marks:
    """A pen that gathers what a maker reads, and what must not lie over it."""

    glyphs: list[Box] = field(default_factory=list)
    """Letters of beads."""
    labels: list[Box] = field(default_factory=list)
    dots: list[tuple[Point, float, str]] = field(default_factory=list)
    """Points along lines, the line's half width there, and the group it is in."""
    new: list[Box] = field(default_factory=list)
    """The beads that are picked up."""
    there: list[Box] = field(default_factory=list)
    """The beads already there."""
    kinds: list[str] = field(default_factory=list)
    """The groups that are open."""

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        """Groups tell lines from beads."""
        del data
        self.kinds.append(kind)

    def end(self) -> None:
        """The group is done."""
        self.kinds.pop()

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        """Take lines and arrowheads, and the boxes of beads."""
        kind = self.kinds[-1] if self.kinds else ""
        if kind in LINES:
            half = paint.width / 2 if paint.stroke else 0.0
            self.dots += [(dot, half, kind) for outline in outlines for dot in sampled(outline)]
        elif kind in BEADS:
            beads = self.new if kind == "beads-new" else self.there
            for outline in outlines:
                xs, ys = zip(*outline.points(), strict=True)
                beads.append(Box(min(xs), min(ys), max(xs), max(ys)))

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        """Take the letters of beads."""
        self.glyphs += [ink_box(x, y, letter, size) for x, y, letter in marks]

    def text(self, label: Text) -> None:
        """Take a label."""
        self.labels.append(label_box(label))

    def free(self, box: Box) -> bool:
        """Whether no line, letter or label lies where this one would."""
        return not (
            any(box.meets(other) for other in (*self.glyphs, *self.labels))
            or any(box.touches(dot, half) for dot, half, _ in self.dots)
        )


def ink_box(x: float, y: float, text: str, size: float) -> Box:
    """The box around the ink of a text centred at (x, y)."""
    half, tall = (text_width(text, size) - BEARING * size) / 2, size * CAP_HEIGHT / 2
    return Box(x - half, y - tall, x + half, y + tall, text)


def label_box(label: Text) -> Box:
    """The box around the ink of a label."""
    aside = {"start": 0.5, "middle": 0.0, "end": -0.5}[label.anchor]
    middle = label.x + text_width(label.text, label.size) * aside
    return ink_box(middle, label.y, label.text, label.size)


def sampled(outline: Outline) -> Iterator[Point]:
    """Points along a contour, `STRIDE_MM` apart or nearer."""
    here = outline.start
    yield here
    for segment in outline.segments:
        yield from _along(here, segment)
        here = (segment[-2], segment[-1])
    if outline.closed:
        yield from _along(here, outline.start)


def _along(start: Point, segment: Segment) -> Iterator[Point]:
    """Points of one segment after its start, its end included."""
    corners = [start, *zip(segment[0::2], segment[1::2], strict=True)]
    length = sum(math.dist(one, other) for one, other in pairwise(corners))
    count = max(1, math.ceil(length / STRIDE_MM))
    for part in range(1, count + 1):
        yield between(corners, part / count)


def between(corners: Sequence[Point], share: float) -> Point:
    """The point at a share of the way along a straight line (two corners) or a cubic (four)."""
    points = list(corners)
    while len(points) > 1:
        points = [(x + (u - x) * share, y + (v - y) * share) for (x, y), (u, v) in pairwise(points)]
    return points[0]


def overlaps(drawing: Drawing) -> list[str]:
    """Every letter or label that lies over another, or that a line runs through, in words for a developer."""
    marks = Marks()
    drawing.play(marks)
    read = [*marks.glyphs, *marks.labels]
    found = [f"{one.what} over {other.what}" for one, other in combinations(read, 2) if one.meets(other)]
    for box in read:
        lines = {kind for dot, half, kind in marks.dots if box.touches(dot, half)}
        found += [f"{kind} through {box.what}" for kind in sorted(lines)]
    return found
