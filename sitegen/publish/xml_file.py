"""An element and all in it -> the bytes of an XML file."""

from __future__ import annotations

import xml.etree.ElementTree as ET

_DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>'


def xml_file(root: ET.Element) -> bytes:
    """UTF-8 with its declaration, one element a line, a line break at the end."""
    ET.indent(root)
    return f"{_DECLARATION}\n{ET.tostring(root, encoding='unicode')}\n".encode()


def add(parent: ET.Element, tag: str, text: str = "", **attributes: str) -> ET.Element:
    """A new element at the end of another."""
    made = ET.SubElement(parent, tag, attributes)
    made.text = text or None
    return made
