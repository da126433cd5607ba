"""A drawing turned into pixels, for tests that trust no box of ours."""

from __future__ import annotations

import io
from dataclasses import replace

import cairosvg
from PIL import Image

FRAME_MM = 8.0
"""White shown around a drawing."""
A_MM = 10.0
"""Pixels a millimetre."""


def picture(drawing, pixels_a_mm=A_MM):
    """The drawing on white."""
    wide = round(drawing.width_mm * pixels_a_mm)
    png = cairosvg.svg2png(drawing.svg("t").encode(), output_width=wide, background_color="white")
    return Image.open(io.BytesIO(png)).convert("RGB")


def drawn_outside(drawing):
    """How far, in mm, anything is drawn outside of the drawing's own box."""
    framed = replace(
        drawing,
        left=drawing.left - FRAME_MM,
        top=drawing.top - FRAME_MM,
        width_mm=drawing.width_mm + 2 * FRAME_MM,
        height_mm=drawing.height_mm + 2 * FRAME_MM,
    )
    shown = picture(framed)
    left, top, right, bottom = shown.convert("L").point(lambda level: 255 * (level < 250)).getbbox()
    rim = FRAME_MM * A_MM
    return max(rim - left, rim - top, right - shown.width + rim, bottom - shown.height + rim) / A_MM
