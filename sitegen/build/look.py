"""Sources -> the shop's theme and words, and faults for what its fonts cannot print."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sitegen.model.location import NOWHERE, Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Aside, Pattern, Prose
from sitegen.publish.markdown import shown_letters
from sitegen.publish.printing import theme_letters
from sitegen.publish.theme import ThemeMissing
from sitegen.publish.whole_theme import WholeTheme, whole_theme
from sitegen.publish.words import Words
from sitegen.read.faults import Faults
from sitegen.read.sources import SHOP_FILE, Sources

BLANKS = frozenset("\n\r\t ")
_REFERENCE = re.compile(r"&#?[A-Za-z0-9]+;")
"""A letter that Markdown text names instead of holding it, such as `&#x202E;`."""


@dataclass(frozen=True, slots=True)
class Look:
    """How a shop's pages and sheets look and which words they use."""

    theme: Path
    words: Words
    """Of the first language."""
    others: tuple[Words, ...] = ()
    """Of each further language."""
    whole: WholeTheme | None = None
    """Keeps the folder of a theme that was laid over its base."""


def shop_look(sources: Sources) -> tuple[Look | None, list[Problem]]:
    """The shop's look, or None where theme or language is unknown; and every letter its fonts do not have.

    Another font would jump in on one machine and none on the next: printed sheets would differ or have holes.
    """
    shop = sources.shop
    faults = Faults()
    try:
        whole = whole_theme(shop.theme, sources.root, faults)
    except ThemeMissing:
        return None, [Problem("theme-unknown", shop.at.get("theme", NOWHERE), {"name": shop.theme})]
    if whole is None:
        return None, faults.problems
    theme = whole.folder
    languages = sorted(path.name for path in (theme / "strings").iterdir())
    unknown = [name for name in shop.languages if name not in languages]
    if unknown:
        values = {"name": unknown[0], "known": ", ".join(languages)}
        where = shop.at.get("languages") or shop.at.get("language", NOWHERE)
        return None, [Problem("language-unknown", where, values)]
    known = theme_letters(theme)
    problems: list[Problem] = []
    shop_file = next((file for file in sources.texts if Path(file).name == SHOP_FILE), "")
    printed: list[tuple[str, tuple[str, ...]]] = [
        (shop_file, (shop.title, shop.tagline, shop.maker, shop.licence, shop.about, *_translated(shop)))
    ]
    every = [made for pattern in sources.patterns for made in (pattern, *pattern.translations.values())]
    printed += [(pattern.file, tuple(_printed(pattern))) for pattern in every]
    pages = [made for page in shop.pages for made in (page, *page.translations.values())]
    printed += [
        (page.file, (page.title, page.summary, *(shown_letters(one.text) for one in page.body)))
        for page in pages
    ]
    for file, words in printed:
        problems += _missing(words, file, sources.texts.get(file, ""), known)
    first, *others = (Words(theme, language) for language in shop.languages)
    return Look(theme, first, tuple(others), whole), problems


def _translated(shop: Shop) -> Iterator[str]:
    """The shop's texts in other languages, and those of its bundles."""
    for bundle in shop.bundles:
        yield from (bundle.title, bundle.summary)
        for words in bundle.translations.values():
            yield from words.values()
    for words in shop.translations.values():
        yield from words.values()


def _printed(pattern: Pattern) -> Iterator[str]:
    """Every text of the author's that is printed."""
    yield from (pattern.title, pattern.summary)
    yield from (words for colour in pattern.colours for words in (colour.name, colour.finish))
    yield from (part.name for part in pattern.parts)
    yield from (photo.caption for photo in pattern.photos)
    yield from (words for revision in pattern.revisions for words in (revision.note, revision.corrects))
    for way in pattern.colourways:
        yield way.name
        yield from (swap.name for swap in way.swaps.values())
    yield from (shown_letters(block.text) for block in pattern.body if isinstance(block, Prose | Aside))


def _missing(printed: tuple[str, ...], file: str, text: str, known: frozenset[str]) -> Iterator[Problem]:
    """One fault for each letter that is missing, at its first place in the source."""
    for letter in dict.fromkeys(letter for words in printed for letter in words):
        if letter not in known and letter not in BLANKS:
            values = {"letter": letter, "code": f"U+{ord(letter):04X}"}
            yield Problem("letter-not-in-fonts", _place(file, text, letter), values)


def _place(file: str, text: str, letter: str) -> Location:
    at = text.find(letter)
    if at < 0:
        named = (found.start() for found in _REFERENCE.finditer(text) if letter in shown_letters(found[0]))
        at = next(named, -1)
    if at < 0:
        return Location(file, 0, 0, 0)
    line_start = text.rfind("\n", 0, at) + 1
    return Location(file, text.count("\n", 0, at) + 1, at - line_start + 1)
