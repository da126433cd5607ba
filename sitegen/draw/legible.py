"""A drawing -> the same drawing with no letter or number below a font size, for large print."""

from __future__ import annotations

import math
from dataclasses import replace

from sitegen.draw.pens import BoundsPen, Drawing, Text

MOST_GROWTH = 1.45
"""A letter grows by so much at most: beyond that it would cover what stands beside it. Own judgement."""

Call = tuple[str, tuple[object, ...]]


def smallest_text(drawing: Drawing) -> float:
    """The smallest font size in a drawing, mm; 0 for a drawing without text."""
    return min((size for size in map(_size, drawing.calls) if size), default=0.0)


def legible(drawing: Drawing, least: float) -> Drawing:
    """Letters and numbers below a font size of `least` (mm) grow to it; those far below it are left out.

    Sizes are written with two digits, so that `least` goes up to the next of these. What is left out must
    stand in the text beside the drawing. The box grows with the letters.
    """
    least = math.ceil(least * 100 - 0.001) / 100
    calls = tuple(
        _grown(call, least) for call in drawing.calls if _size(call) * MOST_GROWTH >= least or not _size(call)
    )
    made = replace(drawing, calls=calls)
    box = BoundsPen()
    made.play(box)
    left, top = min(drawing.left, box.left), min(drawing.top, box.top)
    right = max(drawing.left + drawing.width_mm, box.right)
    bottom = max(drawing.top + drawing.height_mm, box.bottom)
    return replace(made, left=left, top=top, width_mm=right - left, height_mm=bottom - top)


def _size(call: Call) -> float:
    """The font size of a call, mm; 0 where it sets no text."""
    name, values = call
    if name == "letters":
        return float(values[1])  # type: ignore[arg-type]  # the second value of these calls is a size
    return values[0].size if name == "text" and isinstance(values[0], Text) else 0.0


def _grown(call: Call, least: float) -> Call:
    size = _size(call)
    if not size or size >= least:
        return call
    name, values = call
    if name == "letters":
        return name, (values[0], least)
    (label,) = values
    assert isinstance(label, Text)
    return name, (replace(label, size=least),)
