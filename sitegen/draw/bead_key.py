"""A bead of a pattern -> how it looks from the side and from its hole; all of a pattern at one scale."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from sitegen.draw.colour import palette_of
from sitegen.draw.light import draw_beads, draw_end, finishes_of
from sitegen.draw.pens import Drawing, Recorder, finish
from sitegen.model.numbers import plain
from sitegen.model.say import Say
from sitegen.model.source import Colour, Pattern
from sitegen.model.thread import Bead
from sitegen.trade.beads import BeadSize, bead_kind

APART_MM = 0.7
"""Between the two views."""
MARGIN_MM = 0.15


def bead_keys(pattern: Pattern, say: Say) -> Mapping[str, Drawing]:
    """Letter -> its bead lying on its side, its hole across, and beside it as one looks through the hole.

    All have the width of the widest, so that they compare at one scale. A letter of unknown kind has none.
    """
    drawn = {
        colour.letter: _bead_key(pattern, colour, kind, say)
        for colour in pattern.colours
        if (kind := bead_kind(colour.bead, pattern.bead_kinds)) is not None
    }
    widest = max((drawing.width_mm for drawing in drawn.values()), default=0.0)
    return {letter: replace(drawing, width_mm=widest) for letter, drawing in drawn.items()}


def _bead_key(pattern: Pattern, colour: Colour, kind: BeadSize, say: Say) -> Drawing:
    recorder, finishes = Recorder(), finishes_of(pattern)
    draw_beads(recorder, [_bead(colour, kind, 90.0, 0.0)], finishes)
    across = kind.length_mm if kind.shape == "drop" else kind.width_mm
    aside = kind.length_mm / 2 + APART_MM + across / 2
    draw_end(recorder, _bead(colour, kind, 0.0, aside), kind.hole_mm, finishes)
    words = say(
        "drawing.bead-says",
        bead=colour.bead,
        finish=colour.finish,
        width=plain(kind.width_mm, 1),
        length=plain(kind.length_mm, 1),
        hole=plain(kind.hole_mm, 2),
    )
    title = say("drawing.bead", letter=colour.letter, name=colour.name)
    return finish(recorder, title, words, MARGIN_MM, palette_of(pattern))


def _bead(colour: Colour, kind: BeadSize, angle: float, x: float) -> Bead:
    size = (kind.width_mm, kind.length_mm)
    return Bead(colour.letter, 0, 1, 1, x, 0.0, angle, *size, kind.shape, kind.name)
