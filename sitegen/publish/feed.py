"""Pieces and their printed sheets -> an Atom feed of new patterns and of every later edition.

Format: RFC 4287; names of entries: RFC 4151. An edition without a date has no entry, since Atom asks for one
and the build knows no other.
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


@dataclass(frozen=True, slots=True)
class _Entry:
    """One edition of one pattern."""

    piece: Piece
    revision: Revision
    day: date
    first: bool
    """Whether it is the first of its history that has a date."""
    files: tuple[tuple[str, str, int], ...]
    """(paper, name, bytes) of each PDF beside its page; only the newest edition of a free pattern has any."""
    language: str
    """Of what the author says of the edition, where that is not the feed's."""


def feed(
    pieces: Sequence[Piece], sheets: Sequence[Sequence[Sheets]], shop: Shop, words: Words
) -> bytes | None:
    """The feed in one language, the newest entry first; None without an address or any dated edition."""
    entries = sorted(_entries(pieces, sheets), key=lambda one: (one.day, one.revision.number), reverse=True)
    if not shop.address or not entries:
        return None
    home, maker = canonical(shop, ""), shop.maker or shop.title
    root = ET.Element("feed", {"xmlns": "http://www.w3.org/2005/Atom", "xml:lang": shop.language})
    own = {name: _in(shop.languages[0] if name in shop.foreign else "") for name in TRANSLATED}
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
        _write(add(root, "entry"), entry, shop, words)
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


def _entries(pieces: Sequence[Piece], sheets: Sequence[Sequence[Sheets]]) -> Iterator[_Entry]:
    for piece, made in zip(pieces, sheets, strict=True):
        pattern = piece.pattern
        files = tuple(
            (sheets_label(edition, paper, piece.words), edition.file_name(pattern.name, paper), len(data))
            for edition in made
            for paper, data in edition.files
            if pattern.price is None
        )
        for place, (day, revision) in enumerate(dated(pattern)):
            newest = revision.number == pattern.revision
            language = piece.language_of(_note_of(revision.number))
            yield _Entry(piece, revision, day, place == 0, files if newest else (), language)


def _note_of(number: int) -> Callable[[Pattern], object]:
    return lambda pattern: [one.note for one in pattern.revisions if one.number == number]


def _write(made: ET.Element, entry: _Entry, shop: Shop, words: Words) -> None:
    pattern, number = entry.piece.pattern, entry.revision.number
    later = words.text("feed.edition", title=pattern.title, number=number)
    page = canonical(shop, page_address(pattern.name))
    if entry.first:
        add(made, "title", pattern.title, **_in(entry.piece.language_of(TITLE)))
    else:
        add(made, "title", later)
    add(made, "id", tag_uri(shop, entry.day, f"{shop.folder}patterns/{pattern.name}/{number}"))
    add(made, "published", _moment(entry.day))
    add(made, "updated", _moment(entry.day))
    add(made, "link", rel="alternate", type="text/html", hreflang=shop.language, href=page)
    for label, name, size in entry.files:
        file = {"type": "application/pdf", "href": page + name, "length": str(size), "title": label}
        add(made, "link", rel="enclosure", **file)
    if entry.first:
        add(made, "summary", pattern.summary, **_in(entry.piece.language_of(SUMMARY)))
    else:
        add(made, "summary", _news(entry.revision, words), **_in(entry.language))


def _in(language: str) -> dict[str, str]:
    """The attribute that names the language of a text, where that is not the feed's."""
    return {"xml:lang": language} if language else {}


def _news(revision: Revision, words: Words) -> str:
    """What is new in a later edition, and what it corrects."""
    if not revision.corrects:
        return revision.note
    return words.text("feed.corrects", note=revision.note, corrects=revision.corrects)


def _moment(day: date) -> str:
    """RFC 3339; sources know days, so it is always midnight, universal time."""
    return f"{day.isoformat()}T00:00:00Z"
