"""A drawing -> a PNG: for the front page, and for a sales page, where a drawing would tell every bead."""

from __future__ import annotations

import cairosvg

from sitegen.draw.pens import Drawing

ROOM = (720, 900)
"""Largest width and height, pixels."""


def png(drawing: Drawing, room: tuple[int, int] = ROOM) -> tuple[bytes, tuple[int, int]]:
    """The drawing as large as the room allows, on a clear ground; the PNG and its size in pixels.

    Only for drawings without letters: the fonts of the machine must not decide what a picture looks like.
    """
    scale = min(room[0] / drawing.width_mm, room[1] / drawing.height_mm)
    size = max(1, round(drawing.width_mm * scale)), max(1, round(drawing.height_mm * scale))
    picture: bytes = cairosvg.svg2png(
        drawing.svg("picture").encode(), output_width=size[0], output_height=size[1]
    )
    return picture, size
