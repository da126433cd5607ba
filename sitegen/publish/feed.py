"""Pieces, bundles and their printed sheets -> an Atom feed of new patterns, every later edition, and bundles.

Format: RFC 4287; names of entries: RFC 4151. An edition or a bundle without a date has no entry, since Atom
asks for one and the build knows no other.
"""

from __future__ import annotations

import unicodedata
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from urllib.parse import quote, urlsplit

from sitegen.model.shop import TRANSLATED, Shop
from sitegen.model.source import Pattern, Revision
from sitegen.publish.bundle_links import bundle_address, bundle_words
from sitegen.publish.compose import SUMMARY, TITLE, canonical, page_address, site_address
from sitegen.publish.dates import dated
from sitegen.publish.downloads import sheets_label
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.words import Words
from sitegen.publish.xml_file import add, xml_file

FEED = "feed.xml"
"""At the top of its language."""
ICON = "look/icon-180.png"


Said = tuple[str, str]
"""A text and its language, empty where that is the feed's."""
File = tuple[str, str, int]
"""Label, name and bytes of a PDF."""


@dataclass(frozen=True, slots=True)
class _Entry:
    """One edition of one pattern, or a bundle."""

    day: date
    number: int
    """Of the edition; 0 for a bundle, which comes after the patterns of its day."""
    path: str
    """Names it among all that is in its language."""
    page: str
    """Where its page stands in its language."""
    title: Said
    summary: Said
    files: tuple[File, ...] = ()
    """Beside its page: only the newest edition of a free pattern has any, and a free bundle."""


def feed(
    pieces: Sequence[Piece],
    sheets: Sequence[Sequence[Sheets]],
    bound: Sequence[Sheets],
    shop: Shop,
    words: Words,
) -> bytes | None:
    """The feed in one language, the newest entry first; None without an address or anything dated.

    `sheets` are the editions of each piece, `bound` is the file of each of the shop's bundles.
    """
    entries = [*_editions(pieces, sheets), *_bundles(shop, bound, words)]
    entries.sort(key=lambda one: (one.day, one.number), reverse=True)
    if not shop.address or not entries:
        return None
    home, maker = canonical(shop, ""), shop.maker or shop.title
    root = ET.Element("feed", {"xmlns": "http://www.w3.org/2005/Atom", "xml:lang": shop.language})
    own = {name: _in(shop.language_of(name)) for name in TRANSLATED}
    add(root, "title", shop.title, **own["title"])
    if shop.tagline:
        add(root, "subtitle", shop.tagline, **own["tagline"])
    add(root, "id", home)
    add(root, "updated", _moment(entries[0].day))
    add(add(root, "author"), "name", maker)
    add(root, "link", rel="self", type="application/atom+xml", href=canonical(shop, FEED))
    add(root, "link", rel="alternate", type="text/html", hreflang=shop.language, href=home)
    add(root, "icon", site_address(shop, ICON))
    add(root, "rights", shop.licence or words.text("licence.usual", maker=maker), **own["licence"])
    for entry in entries:
        _write(add(root, "entry"), entry, shop)
    return xml_file(root)


def tag_uri(shop: Shop, day: date, path: str) -> str:
    """A name that stays while the shop keeps its address and the edition its day: `tag:HOST,DAY:PATH`."""
    parts = urlsplit(shop.address)
    name = unicodedata.normalize("NFKC", parts.hostname or "")
    host = ".".join(
        label if label.isascii() else f"xn--{label.encode('punycode').decode()}" for label in name.split(".")
    )
    folder = quote(parts.path.strip("/"), safe="/%")
    return f"tag:{host},{day.isoformat()}:{'/'.join(filter(None, (folder, path)))}"


def _editions(pieces: Sequence[Piece], sheets: Sequence[Sequence[Sheets]]) -> Iterator[_Entry]:
    """The first edition of a pattern is told as the pattern itself, a later one by what is new in it."""
    for piece, made in zip(pieces, sheets, strict=True):
        pattern, say = piece.pattern, piece.words.text
        files = tuple(file for one in made for file in _files(pattern.name, one, piece.words))
        for place, (day, revision) in enumerate(dated(pattern)):
            title, summary = (pattern.title, piece.language_of(TITLE)), _news(piece, revision)
            if place == 0:
                summary = pattern.summary, piece.language_of(SUMMARY)
            else:
                title = say("feed.edition", title=pattern.title, number=revision.number), ""
            newest = revision.number == pattern.revision and pattern.price is None
            page = page_address(pattern.name)
            path = f"patterns/{pattern.name}/{revision.number}"
            yield _Entry(day, revision.number, path, page, title, summary, files if newest else ())


def _bundles(shop: Shop, bound: Sequence[Sheets], words: Words) -> Iterator[_Entry]:
    """Once each: what is new in its patterns is told by their own entries."""
    for bundle, made in zip(shop.bundles, bound, strict=True):
        if bundle.day is not None:
            title, summary, language = bundle_words(bundle, shop)
            files = _files(bundle.name, made, words) if bundle.price is None else ()
            page = bundle_address(bundle.name)
            path = page.rpartition("/")[0]
            yield _Entry(bundle.day, 0, path, page, (title, language), (summary, language), files)


def _files(name: str, made: Sheets, words: Words) -> tuple[File, ...]:
    return tuple(
        (sheets_label(made, paper, words), made.file_name(name, paper), len(data))
        for paper, data in made.files
    )


def _news(piece: Piece, revision: Revision) -> Said:
    """What is new in a later edition, and what it corrects."""
    language = piece.language_of(_note_of(revision.number))
    if not revision.corrects:
        return revision.note, language
    return piece.words.text("feed.corrects", note=revision.note, corrects=revision.corrects), language


def _note_of(number: int) -> Callable[[Pattern], object]:
    return lambda pattern: [one.note for one in pattern.revisions if one.number == number]


def _write(made: ET.Element, entry: _Entry, shop: Shop) -> None:
    page = canonical(shop, entry.page)
    _add_said(made, "title", entry.title)
    add(made, "id", tag_uri(shop, entry.day, shop.folder + entry.path))
    add(made, "published", _moment(entry.day))
    add(made, "updated", _moment(entry.day))
    add(made, "link", rel="alternate", type="text/html", hreflang=shop.language, href=page)
    for label, name, size in entry.files:
        file = {"type": "application/pdf", "href": page + name, "length": str(size), "title": label}
        add(made, "link", rel="enclosure", **file)
    _add_said(made, "summary", entry.summary)


def _add_said(made: ET.Element, tag: str, said: Said) -> None:
    text, language = said
    add(made, tag, text, **_in(language))


def _in(language: str) -> dict[str, str]:
    """The attribute that names the language of a text, where that is not the feed's."""
    return {"xml:lang": language} if language else {}


def _moment(day: date) -> str:
    """RFC 3339; sources know days, so it is always midnight, universal time."""
    return f"{day.isoformat()}T00:00:00Z"
