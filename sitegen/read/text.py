"""Decoded text -> text with one kind of line end and no hidden characters, or problems."""

from __future__ import annotations

import re
import unicodedata

from sitegen.model.location import Location
from sitegen.read.faults import Faults

_HIDDEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b\u2028\u2029\u2060\ufeff\ufffe\uffff\ud800-\udfff]")


def even(text: str) -> str:
    """The text without a byte order mark, every line end as LF."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


def clean(text: str, file: str, faults: Faults) -> str:
    """The text, evened; hidden characters are noted (the first of each line) and become blanks."""
    text = even(text)
    if not _HIDDEN.search(text):
        return text
    for number, line in enumerate(text.split("\n"), start=1):
        if match := _HIDDEN.search(line):
            name = f"U+{ord(match[0]):04X} {unicodedata.name(match[0], '')}".strip()
            faults.add("hidden-character", Location(file, number, match.start() + 1), name=name)
    return _HIDDEN.sub(" ", text)
