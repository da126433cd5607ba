"""Pictures made for the tests: corners that differ, and a colour profile wider than sRGB."""

from __future__ import annotations

import io
import struct
from typing import Any

from coloraide import Color
from PIL import Image

CORNERS = ((200, 30, 30), (30, 160, 40), (30, 60, 200), (230, 200, 30))
"""Top left, top right, bottom left, bottom right."""


def quarters(width: int = 64, height: int = 48) -> Image.Image:
    """A picture in four colours, one a corner."""
    image = Image.new("RGB", (width, height))
    halves = [(x, y) for y in (0, height // 2) for x in (0, width // 2)]
    for colour, (x, y) in zip(CORNERS, halves, strict=True):
        image.paste(colour, (x, y, x + width // 2, y + height // 2))
    return image


def corners(image: Image.Image) -> tuple[Any, ...]:
    """The colours a little inside the four corners, in the order of CORNERS."""
    left, top = image.width // 8, image.height // 8
    right, foot = image.width - 1 - left, image.height - 1 - top
    return tuple(image.getpixel(at) for at in ((left, top), (right, top), (left, foot), (right, foot)))


def saved(image: Image.Image, form: str = "PNG", **settings: Any) -> bytes:
    """The picture as a file."""
    out = io.BytesIO()
    image.save(out, form, **settings)
    return out.getvalue()


def display_p3() -> bytes:
    """An ICC profile of Display P3: its primaries seen from D50 (by coloraide) and the curve of sRGB.

    Laid out as ICC.1:2010 asks: header of 128 bytes, table of tags, tags. The curve is the parametric one of
    type 3 with the constants of IEC 61966-2-1.
    """
    tags: dict[bytes, bytes] = {b"wtpt": _xyz(Color("white").convert("xyz-d50").coords())}
    for name, primary in ((b"r", (1, 0, 0)), (b"g", (0, 1, 0)), (b"b", (0, 0, 1))):
        tags[name + b"XYZ"] = _xyz(Color("display-p3", primary).convert("xyz-d50").coords())
        tags[name + b"TRC"] = (
            b"para"
            + bytes(4)
            + struct.pack(">HH", 3, 0)
            + b"".join(map(_fixed, (2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045)))
        )
    words = "Display P3, made for a test".encode("utf-16-be")
    text = b"mluc" + bytes(4) + struct.pack(">II2s2sII", 1, 12, b"en", b"US", len(words), 28) + words
    tags[b"desc"] = tags[b"cprt"] = text
    table, body, at = struct.pack(">I", len(tags)), b"", 128 + 4 + 12 * len(tags)
    for name, content in tags.items():
        table += struct.pack(">4sII", name, at + len(body), len(content))
        body += content + bytes(-len(content) % 4)
    size = at + len(body)
    head = struct.pack(">I4sI4s4s4s", size, bytes(4), 0x04200000, b"mntr", b"RGB ", b"XYZ ")
    head += bytes(12) + b"acsp" + bytes(28) + b"".join(map(_fixed, (0.9642, 1.0, 0.8249)))
    return head.ljust(128, b"\0") + table + body


def _fixed(value: float) -> bytes:
    """A number with 16 bits before and 16 after the point."""
    return struct.pack(">i", round(value * 65536))


def _xyz(values: Any) -> bytes:
    return b"XYZ " + bytes(4) + b"".join(map(_fixed, values))
