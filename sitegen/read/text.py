"""Bytes -> text, and text -> text with one kind of line end and no hidden characters, or problems."""

from __future__ import annotations

import re
import unicodedata

from sitegen.model.location import Location
from sitegen.read.faults import Faults

_PLANES = range(0, 0x110000, 0x10000)
_NO_CHARACTERS = "".join(f"{chr(plane + 0xFFFE)}{chr(plane + 0xFFFF)}" for plane in _PLANES)
_HIDDEN = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b\u2028-\u202e\u2060\u2066-\u2069\ufeff\ufff9-\ufffb"
    f"\U000e0000-\U000e007f\ud800-\udfff\ufdd0-\ufdef{_NO_CHARACTERS}]"
)
"""Controls, invisible blanks, marks that turn a text's direction or tag it, and what is no character."""


def even(text: str) -> str:
    """The text without a byte order mark, every line end as LF."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


def utf8(data: bytes, file: str, faults: Faults) -> str | None:
    """The bytes as text, line ends as they are; None with a fault at the first byte that is not UTF-8."""
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = even(data[: error.start].decode("utf-8"))
        column = len(before) - (before.rfind("\n") + 1) + 1
        faults.add("file-not-utf8", Location(file, before.count("\n") + 1, column))
        return None


def readable(data: bytes) -> str:
    """The bytes as text for showing the problems, whatever they are."""
    return even(data.decode("utf-8", errors="replace"))


def hidden(text: str) -> tuple[int, str] | None:
    """Place from 0 and name of the first hidden character, or None."""
    found = _HIDDEN.search(text)
    if found is None:
        return None
    return found.start(), f"U+{ord(found[0]):04X} {unicodedata.name(found[0], '')}".strip()


def clean(text: str, file: str, faults: Faults) -> str:
    """The text, evened; hidden characters are noted (the first of each line) and become blanks."""
    text = even(text)
    if not hidden(text):
        return text
    for number, line in enumerate(text.split("\n"), start=1):
        if found := hidden(line):
            faults.add("hidden-character", Location(file, number, found[0] + 1), name=found[1])
    return _HIDDEN.sub(" ", text)
