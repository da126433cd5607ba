"""A drawing -> a PNG: for cards, for a sales page where a drawing would tell every bead, for other sites."""

from __future__ import annotations

import io
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

import cairosvg
from PIL import Image

from sitegen.draw.pens import BoundsPen, Drawing
from sitegen.publish.theme_look import theme_look

ROOM = (720, 900)
"""Largest width and height of a pattern's picture, pixels."""
COLOURS = 64
"""A PNG of so few is a fifth of the size, and the flat colours of beads stay true within 2 of 255 levels."""


@dataclass(frozen=True, slots=True)
class PictureLook:
    """A theme's typefaces and colours for pictures."""

    title: str
    """Family of the display face."""
    text: str
    paper: str
    plate: str
    """The ground a piece is shown on."""
    ink: str
    soft: str
    rule: str
    accent: str


@lru_cache(maxsize=4)
def picture_look(theme: Path) -> PictureLook:
    """The colours of light pages and the families of a theme. Raises FileNotFoundError without its file."""
    look = theme_look(theme)
    colours = {name: look.light[name] for name in ("paper", "ink", "soft", "rule", "accent")}
    return PictureLook(look.families["title"], look.families["text"], plate=look.light["ground"], **colours)


def trimmed(drawing: Drawing) -> Drawing:
    """The drawing without its margins."""
    bounds = BoundsPen()
    drawing.play(bounds)
    return replace(
        drawing,
        left=bounds.left,
        top=bounds.top,
        width_mm=bounds.right - bounds.left,
        height_mm=bounds.bottom - bounds.top,
    )


def png(drawing: Drawing, ground: str | None, room: tuple[int, int] = ROOM) -> tuple[bytes, tuple[int, int]]:
    """The drawing as large as the room allows, on a ground (None is clear); the PNG and its size in pixels.

    Only for drawings without letters, such as `outlined` makes: the fonts of the machine must not decide
    what a picture looks like.
    """
    scale = min(room[0] / drawing.width_mm, room[1] / drawing.height_mm)
    size = max(1, round(drawing.width_mm * scale)), max(1, round(drawing.height_mm * scale))
    raw: bytes = cairosvg.svg2png(
        drawing.svg("picture").encode(), output_width=size[0], output_height=size[1], background_color=ground
    )
    return _small(raw, "RGBA" if ground is None else "RGB"), size


def _small(picture: bytes, mode: str) -> bytes:
    with Image.open(io.BytesIO(picture)) as read:
        image = read.convert(mode)
    if mode == "RGB":
        image = image.quantize(COLOURS, Image.Quantize.MEDIANCUT, kmeans=1, dither=Image.Dither.NONE)
    kept = io.BytesIO()
    image.save(kept, "PNG", optimize=True)
    return kept.getvalue()
