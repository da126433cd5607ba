"""A finished PDF and a line of words -> a copy with the line at the foot of every page and in its metadata.

The line is drawn as outlines of the theme's own letters, so that a copy needs no further font, and marked as
what belongs to the page and not to the text (ISO 32000-1, 14.8.2.2; ISO 14289-1, 7.1): reading order and
tags stay as they were.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pikepdf
from pikepdf import Array, Dictionary, Name, Object, Pdf

from sitegen.draw.pens import Outline
from sitegen.publish.lettering import face
from sitegen.publish.packet import describe
from sitegen.publish.papers import saved
from sitegen.publish.theme_look import theme_look

SIZE = 6.5
"""Points: small enough to be discreet, and still to be read."""
FOOT = 36.5
"""Points from the sheet's foot to the line: as far in as all other print, and below the page's own foot."""
SIDES = 90.0
"""Points that stay free on either side: paper and page number stand there, lower in large print."""
_UNDER = 2.0
"""Points that letters reach below their line at most."""
_GRAIN = 20
"""Outlines are written in whole twentieths of a point: finer than any printer, and short."""
_FORM = Name("/PersonalLine")


@dataclass(frozen=True, slots=True)
class Line:
    """A line ready to be drawn on any page."""

    words: str
    width: float
    """Points."""
    path: bytes
    """Path operators in twentieths of a point, from its left end on the baseline, y upward."""


def set_line(words: str, theme: Path) -> Line:
    """The line in the theme's text face. Raises FileNotFoundError where the theme lacks that."""
    look = theme_look(theme)
    letters = face(theme, look.families["text"])
    colour = " ".join(f"{int(look.light['soft'][at : at + 2], 16) / 255:.3f}" for at in (1, 3, 5))
    drawn = _operators(letters.outlines(words, SIZE * _GRAIN, (0.0, 0.0)))
    path = "\n".join((f"{colour} rg", *drawn, "f"))
    return Line(words, letters.width(words, SIZE), path.encode())


def _operators(outlines: list[Outline]) -> Iterator[str]:
    for outline in outlines:
        yield f"{_points(outline.start)} m"
        for segment in outline.segments:
            yield f"{_points(segment)} {'l' if len(segment) == 2 else 'c'}"
        yield "h"


def _points(values: tuple[float, ...]) -> str:
    """Outlines count downward, a page upward."""
    return " ".join(str(round(-value if at % 2 else value)) for at, value in enumerate(values))


def stamped(pdf: bytes, line: Line) -> bytes:
    """The copy: the same line and the same file always give the same bytes.

    Its keywords end with the line, in the document information and in the XMP packet alike.
    """
    with Pdf.open(io.BytesIO(pdf)) as copy:
        form = copy.make_stream(
            line.path,
            Type=Name.XObject,
            Subtype=Name.Form,
            BBox=Array([round(edge * _GRAIN) for edge in (0.0, -_UNDER, line.width, SIZE)]),
            Matrix=Array([1 / _GRAIN, 0, 0, 1 / _GRAIN, 0, 0]),
            Resources=Dictionary(),
        )
        opening = copy.make_stream(b"q\n")
        for page in copy.pages:
            _draw(copy, page, form, opening, line.width)
        known = str(copy.docinfo.get("/Keywords", ""))
        copy.docinfo["/Keywords"] = ", ".join(filter(None, (known, line.words)))
        describe(copy)
        return saved(copy)


def _draw(copy: Pdf, page: pikepdf.Page, form: Object, opening: Object, width: float) -> None:
    """Over the middle of the page's foot; what the page's own content does to the axes is undone first."""
    left, foot, right, _ = (float(edge) for edge in page.MediaBox)
    scale = min(1.0, (right - left - 2 * SIDES) / width)
    start = (left + right - width * scale) / 2
    resources = page.obj.Resources
    if "/XObject" not in resources:
        resources.XObject = Dictionary()
    resources.XObject[_FORM] = form
    drawn = (
        f"\nQ\n/Artifact <</Type /Pagination /Subtype /Footer /Attached [/Bottom]>> BDC\nq\n"
        f"{scale:.4f} 0 0 {scale:.4f} {start:.2f} {foot + FOOT:.2f} cm\n{_FORM} Do\nQ\nEMC\n"
    )
    own = page.obj.Contents
    parts = list(own) if isinstance(own, Array) else [own]
    page.obj.Contents = Array([opening, *parts, copy.make_stream(drawn.encode())])
