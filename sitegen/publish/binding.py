"""The first pages of a bundle and the sheets of its patterns, as HTML -> one document, in place.

Each pattern's sheets become a block of their own. Ids, the ways to them and the colours of chips are made
its own too, so that what several patterns call alike stays apart.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Sequence

PLACE = "bound-{}"
"""Id of a pattern's block by its number, from 1."""
_REFER = frozenset(("id", "for", "headers", "aria-labelledby", "aria-describedby"))
"""Attributes that hold ids, blanks between them; the name of a box to tick is unique in a file too."""
_RULE = re.compile(r"(?m)^(?=\.)")
_ONCE = "papers"
"""Class of what the first pages have for all."""


def bind(front: ET.Element, parts: Sequence[ET.Element]) -> None:
    """Put the sheets of each part behind those of the front."""
    _, last = _head_and_body(front)
    for number, part in enumerate(parts, 1):
        place = PLACE.format(number)
        _make_own(part, f"{place}-")
        head, body = _head_and_body(part)
        block = ET.SubElement(last, "div", {**body.attrib, "class": "bound", "id": place})
        for style in head.iter("style"):
            style.text = _RULE.sub(f"#{place} ", style.text or "")
            block.append(style)
        block.extend(child for child in body if child.get("class") != _ONCE)


def _head_and_body(page: ET.Element) -> tuple[ET.Element, ET.Element]:
    head, body = page.find("head"), page.find("body")
    if head is None or body is None:
        raise ValueError("sheets without head or body")
    return head, body


def _make_own(part: ET.Element, prefix: str) -> None:
    for element in part.iter():
        for name, value in element.attrib.items():
            if name in _REFER or (name == "name" and element.tag == "input"):
                element.set(name, " ".join(prefix + one for one in value.split()))
            elif name.endswith("href") and value.startswith("#"):
                element.set(name, f"#{prefix}{value[1:]}")
            elif value.startswith("url(#"):
                element.set(name, f"url(#{prefix}{value[5:]}")
