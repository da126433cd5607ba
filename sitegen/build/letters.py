"""Texts of the sources -> faults for letters that the theme's fonts do not have.

Another font would jump in on one machine and none on the next: the printed sheets would differ or have holes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Aside, Pattern, Prose

BLANKS = frozenset("\n\r\t ")


def shop_letters(shop: Shop, file: str, text: str, known: frozenset[str]) -> list[Problem]:
    """Faults of the shop file."""
    return _missing((shop.title, shop.maker, shop.licence, shop.about, shop.tagline), file, text, known)


def pattern_letters(pattern: Pattern, texts: Mapping[str, str], known: frozenset[str]) -> list[Problem]:
    """Faults of one pattern; `known` holds the letters that every font of the theme has."""
    return _missing(tuple(_printed(pattern)), pattern.file, texts.get(pattern.file, ""), known)


def _printed(pattern: Pattern) -> Iterator[str]:
    """Every text of the author's that is printed."""
    yield from (pattern.title, pattern.summary)
    yield from (colour.name for colour in pattern.colours)
    yield from (part.name for part in pattern.parts)
    yield from (revision.note for revision in pattern.revisions)
    for way in pattern.colourways:
        yield way.name
        yield from (swap.name for swap in way.swaps.values())
    yield from (block.text for block in pattern.body if isinstance(block, Prose | Aside))


def _missing(printed: tuple[str, ...], file: str, text: str, known: frozenset[str]) -> list[Problem]:
    """One fault for each letter that is missing, at its first place in the source."""
    letters = dict.fromkeys(letter for words in printed for letter in words)
    return [
        Problem("letter-not-in-fonts", _place(file, text, letter), {"letter": letter, "code": f"U+{ord(letter):04X}"})
        for letter in letters
        if letter not in known and letter not in BLANKS
    ]


def _place(file: str, text: str, letter: str) -> Location:
    at = max(text.find(letter), 0)
    line_start = text.rfind("\n", 0, at) + 1
    return Location(file, text.count("\n", 0, at) + 1, at - line_start + 1)
