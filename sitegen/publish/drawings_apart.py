"""The sheets as HTML, drawings and all -> the same with an image for each drawing, and the drawings apart.

The print engine reads a page letter by letter and asks its style sheets about every element; drawings, which
are most of a pattern's sheets, need neither. As images they are only drawn, and cost a third less time.
"""

from __future__ import annotations

import re

SCHEME = "drawing"
"""Addresses of drawings are `drawing:/NUMBER`."""
_DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_TITLE = re.compile(r"<title[^>]*>(.*?)</title>", re.DOTALL)
_ABOUT = re.compile(r"<desc[^>]*>(.*?)</desc>", re.DOTALL)


def take_apart(html: str, drawings: dict[str, bytes]) -> str:
    """The HTML without drawings; those are put into `drawings` by their addresses."""

    def image(found: re.Match[str]) -> str:
        address = f"{SCHEME}:/{len(drawings)}"
        drawings[address] = found[0].encode()
        return f'<img src="{address}" alt="{alternative_text(found[0])}">'

    return _DRAWING.sub(image, html)


def alternative_text(drawing: str) -> str:
    """What is seen, as the value of an attribute: a drawing's title and, where it says more, its description.

    Empty for a drawing without a title: the engine complains of that.
    """
    title, about = _TITLE.search(drawing), _ABOUT.search(drawing)
    told = title[1] if title else ""
    if told and about and about[1] not in ("", told):
        told = f"{told}. {about[1]}"
    return told.replace('"', "&quot;")
