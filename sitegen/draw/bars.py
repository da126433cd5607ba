"""A length -> a bar with ticks to hold a ruler against: it tells whether a print is true to scale."""

from __future__ import annotations

from fractions import Fraction

from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, Text, finish
from sitegen.model.numbers import MM_PER_INCH
from sitegen.model.say import Say
from sitegen.model.thread import Point

BAR_MM = 100
BAR_INCHES = 4
BLACK = "#000000"
"""Bars and templates are in black and grey alone: any printer gives them sharp, and they save ink."""
FINE_MM = 0.15
"""How thick a bar and its ticks are: finer than half the millimetre that a ruler is read to."""
LABEL_MM = 2.2
"""Font size of the numbers."""
LARGE_MM = 5.0
"""From this font size on three digits are wider than 10 mm."""
MARGIN_MM = 0.1
"""Left free around a bar."""

Tick = tuple[float, float]
"""(place along the bar, length of the tick), mm."""
Label = tuple[float, str]
"""(place along the bar, the number there)."""


def millimetre_bar(say: Say, upright: bool, label_mm: float = LABEL_MM) -> Drawing:
    """A bar of 100 mm, a tick each millimetre, longer at every fifth and tenth, numbered at the tenths.

    `label_mm` is the font size of the numbers; where that is large only 0, 50 and 100 are numbered.

    Upright it counts from its foot, lying from its left end; its numbers stand to its right or below.
    """
    ticks = [(float(mm), 4.0 if mm % 10 == 0 else 2.8 if mm % 5 == 0 else 1.7) for mm in range(BAR_MM + 1)]
    labels = [(float(mm), str(mm)) for mm in range(0, BAR_MM + 1, 10 if label_mm < LARGE_MM else 50)]
    way = "upright" if upright else "lying"
    words = say("drawing.bar-mm", length=BAR_MM), say(f"drawing.bar-mm-{way}", length=BAR_MM)
    return _bar(ticks, labels, say("drawing.bar-unit-mm"), upright, words, label_mm)


def inch_bar(say: Say, label_mm: float = LABEL_MM) -> Drawing:
    """A lying bar of 4 in, a tick each eighth, longer at quarters, halves and inches, numbered at inches."""
    depths = {1: 4.0, 2: 3.2, 4: 2.4, 8: 1.7}
    eighths = [Fraction(number, 8) for number in range(BAR_INCHES * 8 + 1)]
    ticks = [(float(inch) * MM_PER_INCH, depths[inch.denominator]) for inch in eighths]
    labels = [(inch * MM_PER_INCH, str(inch)) for inch in range(BAR_INCHES + 1)]
    words = say("drawing.bar-in", length=BAR_INCHES), say("drawing.bar-in-lying", length=BAR_INCHES)
    return _bar(ticks, labels, say("drawing.bar-unit-in"), False, words, label_mm)


def _bar(
    ticks: list[Tick], labels: list[Label], unit: str, upright: bool, words: tuple[str, str], size: float
) -> Drawing:
    """The bar with its ticks on one side, the numbers beyond them and the unit at its far end."""
    length = ticks[-1][0]

    def at(along: float, aside: float) -> Point:
        return (aside, length - along) if upright else (along, aside)

    recorder = Recorder()
    recorder.begin("bar", {})
    recorder.shapes([Outline(at(0, 0), (at(length, 0),), closed=False)], Paint(stroke=BLACK, width=FINE_MM))
    recorder.shapes(
        [Outline(at(place, 0), (at(place, depth),), closed=False) for place, depth in ticks],
        Paint(stroke=BLACK, width=FINE_MM),
    )
    anchor = "start" if upright else "middle"
    away = max(depth for _, depth in ticks) + (0.9 if upright else 0.6 + size / 2)
    for place, number in labels:
        recorder.text(Text(*at(place, away), number, size, BLACK, anchor))
    if upright:
        recorder.text(Text(0.0, 0.42 - 1.1 * size, unit, size, BLACK, "start"))
    else:
        recorder.text(Text(length + 1.4, 1.0, unit, size, BLACK, "start"))
    recorder.end()
    return finish(recorder, *words, MARGIN_MM)
