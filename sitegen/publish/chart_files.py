"""A piece's charts -> drawings of their own beside its page, in colour and in letters alone; their links."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from sitegen.draw.colour import INK_SAVER, WHITE
from sitegen.draw.pens import Drawing, Paint
from sitegen.draw.shapes import polygon
from sitegen.publish.blocks import FileLink
from sitegen.publish.lettering import outlined
from sitegen.publish.piece import Piece
from sitegen.publish.slugs import slugs

ROOM = (186.0, 255.0)
"""The box that A4 and US Letter share inside usual printers' margins, mm."""
LARGEST = 5.0
"""A small chart is drawn this many times its true size, but not larger."""
UNNAMED = "part"
"""What a part is called in an address where its name has no Latin letter."""
SECOND = "second-"
"""Goes before the names of the other piece's charts in a mirrored pair."""


def chart_links(piece: Piece, index: int, prefix: str) -> tuple[FileLink, ...]:
    """The links under a part's chart; `prefix` is empty or `SECOND`."""
    say = piece.words.text
    colour, letters = _names(piece, prefix)[index]
    return FileLink(colour, say("chart.file-colour")), FileLink(letters, say("chart.file-ink-saver"))


def chart_files(piece: Piece, theme: Path) -> Iterator[tuple[str, bytes]]:
    """(file name, SVG) of every chart. Only for a pattern that is free.

    Raises FileNotFoundError where the theme lacks the drawings' typeface.
    """
    for shown, prefix in ((piece, ""), (piece.second, SECOND)):
        if shown is None:
            continue
        for (colour, letters), drawing in zip(_names(shown, prefix), shown.charts, strict=True):
            if drawing is not None:
                yield colour, _alone(drawing, theme)
                yield letters, _alone(drawing.dyed(INK_SAVER), theme)


def _names(piece: Piece, prefix: str) -> list[tuple[str, str]]:
    """For each part the file in colour and the one in letters; what begins them keeps the two apart."""
    names = slugs([part.name for part in piece.path.parts], UNNAMED)
    return [(f"{prefix}chart-{name}.svg", f"{prefix}letters-{name}.svg") for name in names]


def _alone(drawing: Drawing, theme: Path) -> bytes:
    """An SVG file that opens anywhere: letters as outlines, on white, no larger than a sheet of paper."""
    left, top = drawing.left, drawing.top
    right, foot = left + drawing.width_mm, top + drawing.height_mm
    sheet = polygon([(left, top), (right, top), (right, foot), (left, foot)])
    whole = outlined(drawing, theme)
    whole = replace(whole, calls=(("shapes", ((sheet,), Paint(fill=WHITE))), *whole.calls))
    scale = min(LARGEST, ROOM[0] / drawing.width_mm, ROOM[1] / drawing.height_mm)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{whole.svg("chart", scale)}\n'.encode()
