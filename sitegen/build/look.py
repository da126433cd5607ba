"""Sources -> the shop's theme and words, and faults for what its fonts cannot print."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sitegen.model.location import NOWHERE, Location
from sitegen.model.problem import Problem
from sitegen.model.source import Aside, Pattern, Prose
from sitegen.publish.printing import theme_letters
from sitegen.publish.theme import ThemeMissing, theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import SHOP_FILE, Sources

BLANKS = frozenset("\n\r\t ")


@dataclass(frozen=True, slots=True)
class Look:
    """How a shop's pages and sheets look and which words they use."""

    theme: Path
    words: Words


def shop_look(sources: Sources) -> tuple[Look | None, list[Problem]]:
    """The shop's look, or None where theme or language is unknown; and every letter its fonts do not have.

    Another font would jump in on one machine and none on the next: printed sheets would differ or have holes.
    """
    shop = sources.shop
    try:
        theme = theme_folder(shop.theme, sources.root)
    except ThemeMissing:
        return None, [Problem("theme-unknown", shop.at.get("theme", NOWHERE), {"name": shop.theme})]
    languages = sorted(path.name for path in (theme / "strings").iterdir())
    if shop.language not in languages:
        values = {"name": shop.language, "known": ", ".join(languages)}
        return None, [Problem("language-unknown", shop.at.get("language", NOWHERE), values)]
    known = theme_letters(theme)
    problems: list[Problem] = []
    shop_file = next((file for file in sources.texts if Path(file).name == SHOP_FILE), "")
    printed: list[tuple[str, tuple[str, ...]]] = [
        (shop_file, (shop.title, shop.tagline, shop.maker, shop.licence, shop.about))
    ]
    printed += [(pattern.file, tuple(_printed(pattern))) for pattern in sources.patterns]
    for file, words in printed:
        problems += _missing(words, file, sources.texts.get(file, ""), known)
    return Look(theme, Words(theme, shop.language)), problems


def _printed(pattern: Pattern) -> Iterator[str]:
    """Every text of the author's that is printed."""
    yield from (pattern.title, pattern.summary)
    yield from (colour.name for colour in pattern.colours)
    yield from (part.name for part in pattern.parts)
    yield from (photo.caption for photo in pattern.photos)
    yield from (revision.note for revision in pattern.revisions)
    for way in pattern.colourways:
        yield way.name
        yield from (swap.name for swap in way.swaps.values())
    yield from (block.text for block in pattern.body if isinstance(block, Prose | Aside))


def _missing(printed: tuple[str, ...], file: str, text: str, known: frozenset[str]) -> Iterator[Problem]:
    """One fault for each letter that is missing, at its first place in the source."""
    for letter in dict.fromkeys(letter for words in printed for letter in words):
        if letter not in known and letter not in BLANKS:
            values = {"letter": letter, "code": f"U+{ord(letter):04X}"}
            yield Problem("letter-not-in-fonts", _place(file, text, letter), values)


def _place(file: str, text: str, letter: str) -> Location:
    at = text.find(letter)
    if at < 0:
        return Location(file, 0, 0, 0)
    line_start = text.rfind("\n", 0, at) + 1
    return Location(file, text.count("\n", 0, at) + 1, at - line_start + 1)
