"""The places a needle goes in at -> small numbers beside them, where nothing else is drawn."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from sitegen.draw.colour import THREAD, WHITE
from sitegen.draw.overlap import Box, Marks, ink_box
from sitegen.draw.pens import Paint, Recorder, Text, text_width
from sitegen.draw.route import Mark
from sitegen.draw.shapes import ellipse

SIZE_MM = 0.92
"""Font size of a number, at the true size of the piece, on a round bead 11/0."""
FEW = 8
"""So many places are all numbered; of more, the first, the last, and those where the thread turns."""
ENDS = (3, 2)
"""How many are numbered at the start and at the end of a long way."""
TURNS = (90, -90, 120, -120, 60, -60, 150, -150, 180, 30, -30)
"""Where a number may stand, in degrees from the way the thread goes, best first."""
REACHES = (0.85, 1.1, 1.4, 1.75, 2.1)
"""How far it may stand from its place, in font sizes, best first."""
PAD = 0.16
"""Free room round a number, in font sizes."""


def chosen(marks: Sequence[Mark]) -> list[Mark]:
    """The places that get a number."""
    if len(marks) <= FEW:
        return list(marks)
    ends = [*marks[: ENDS[0]], *marks[-ENDS[1] :]]
    turning = [mark for mark in marks if mark.turns]
    kept = {mark.number for mark in (ends if len(turning) > FEW else [*ends, *turning])}
    return [mark for mark in marks if mark.number in kept]


def draw_order(recorder: Recorder, marks: Sequence[Mark], fine: float) -> None:
    """Number the places where there is room; `fine` is how much smaller than usual the beads are.

    A number is left out where nothing is free near its place: the others still count it.
    """
    seen = Marks()
    for name, values in recorder.calls:
        getattr(seen, name)(*values)
    size = SIZE_MM * max(fine, 0.8)
    recorder.begin("order", {})
    for mark in chosen(marks):
        near = _near(seen, mark, size)
        spot = next(_free(near, mark, size, near.new), None) or next(_free(near, mark, size, []), None)
        if spot is not None:
            seen.labels.append(spot)
            _draw_number(recorder, mark.number, spot, size)
    recorder.end()


def _near(seen: Marks, mark: Mark, size: float) -> Marks:
    """What lies near enough to a place to be in the way."""
    x, y = mark.at
    reach = (REACHES[-1] + 1.0) * size
    around = Box(x - reach, y - reach, x + reach, y + reach)
    return Marks(
        glyphs=[box for box in seen.glyphs if box.meets(around)],
        labels=[box for box in seen.labels if box.meets(around)],
        dots=[dot for dot in seen.dots if around.touches(dot[0], dot[1])],
        new=[box for box in seen.new if box.meets(around)],
    )


def _free(near: Marks, mark: Mark, size: float, avoided: Sequence[Box]) -> Iterator[Box]:
    """The free places for a number, best first."""
    taken = [*near.glyphs, *near.labels, *avoided]
    for reach in REACHES:
        for turn in TURNS:
            angle = math.atan2(mark.heading[1], mark.heading[0]) + math.radians(turn)
            x, y = mark.at[0] + reach * size * math.cos(angle), mark.at[1] + reach * size * math.sin(angle)
            ink = ink_box(x, y, str(mark.number), size)
            pad = PAD * size
            box = Box(ink.left - pad, ink.top - pad, ink.right + pad, ink.bottom + pad, ink.what)
            if any(box.meets(other) for other in taken):
                continue
            if not any(box.touches(dot, half) for dot, half, _ in near.dots):
                yield box


def _draw_number(recorder: Recorder, number: int, spot: Box, size: float) -> None:
    """A number on a white ground, so that it reads on any bead."""
    x, y = (spot.left + spot.right) / 2, (spot.top + spot.bottom) / 2
    radius = size * 0.52
    recorder.begin("mark", {"place": str(number)})
    ground = ellipse((x, y), max(radius, text_width(str(number), size) / 2), radius)
    recorder.shapes([ground], Paint(fill=WHITE, opacity=0.85))
    recorder.text(Text(x, y, str(number), size, THREAD, bold=True))
    recorder.end()
