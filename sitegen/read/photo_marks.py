"""The lines of a body -> the photos written in it, with their places; or problems.

A photo is Markdown's own image, alone in its paragraph: `![what is seen](file.jpg "caption")`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from urllib.parse import unquote

from markdown_it import MarkdownIt
from markdown_it.token import Token

from sitegen.model.location import Location
from sitegen.model.photo import Photo
from sitegen.read.faults import Faults
from sitegen.read.fields import PHOTO_WORDS

_WRITTEN = re.compile(r"!\[(?P<alt>[^\]]*)\](?:\((?P<file><[^<>]*>|[^\s()]*))?")
_ALMOST = re.compile(r"(?<!\\)!\[[^\[\]]*\]\([^)]*\)")
"""What a reader of the source takes for a photo."""


@dataclass(frozen=True, slots=True)
class PlacedPhoto:
    """A photo and the line past its paragraph, from 0."""

    photo: Photo
    past: int


class _Reader(MarkdownIt):
    """CommonMark that leaves every address as it is written, so that a wrong one can be told."""

    def validateLink(self, url: str) -> bool:
        return True

    def normalizeLink(self, url: str) -> str:
        return unquote(url)


def photos_in(lines: Sequence[str], file: str, first_line: int, faults: Faults) -> Mapping[int, PlacedPhoto]:
    """First line (from 0) of a photo's paragraph -> the photo; all others are noted as faults.

    `first_line` is the number that the first of the lines has in `file`.
    """
    placed: dict[int, PlacedPhoto] = {}
    for token in _Reader("commonmark", {"html": False}).parse("\n".join(lines)):
        if token.type != "inline" or token.map is None or token.children is None:
            continue
        spots = _spots(lines, token, file, first_line)
        images = [child for child in token.children if child.type == "image"]
        if len(token.children) == len(images) == 1 and token.level == 1 and spots[""].column == 1:
            photo = _photo(images[0], spots, faults)
            if photo is not None:
                placed[token.map[0]] = PlacedPhoto(photo, token.map[1])
        elif images:
            faults.add("photo-place", spots[""])
        elif any(_ALMOST.search(text) for text in _texts(token)) and _ALMOST.search(token.content):
            faults.add("photo-form", spots[""])
    return placed


def _texts(token: Token) -> Iterator[str]:
    """The runs of plain words of a paragraph, each as if it were one line."""
    words = ""
    for child in token.children or ():
        if child.type in ("text", "softbreak"):
            words += child.content or " "
        else:
            yield words
            words = ""
    yield words


def _spots(lines: Sequence[str], token: Token, file: str, first_line: int) -> dict[str, Location]:
    """Where a paragraph's first photo, its words and its file stand; where they are not found, the line."""
    first, past = token.map or (0, 1)
    for number in range(first, past):
        if found := _WRITTEN.search(lines[number]):
            line = first_line + number
            spots = {"": Location(file, line, found.start() + 1, len(found[0]))}
            for name in ("alt", "file"):
                if found[name]:
                    spots[name] = Location(file, line, found.start(name) + 1, len(found[name]))
            return spots
    return {"": Location(file, first_line + first, 1, max(1, len(lines[first])))}


def _photo(image: Token, spots: dict[str, Location], faults: Faults) -> Photo | None:
    """The photo, unless its words or its file are missing, which is noted."""
    written = "".join(child.content or " " for child in image.children or ())
    alt, name = " ".join(written.split()), str(image.attrs["src"])
    if not name:
        faults.add("photo-form", spots[""])
    elif not alt:
        faults.add("photo-alt", spots[""], file=name)
    else:
        caption = " ".join(str(image.attrs.get("title", "")).split())
        longest = max(len(alt), len(caption))
        if longest > PHOTO_WORDS.most:
            faults.add("text-long", spots[""], count=longest, most=PHOTO_WORDS.most)
        return Photo(name, alt, caption, at=spots)
    return None
