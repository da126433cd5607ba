"""A bundle and its pieces -> the view of its page, and the first pages of its one PDF."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from sitegen.model.bundle import Bundle
from sitegen.model.shop import Shop
from sitegen.publish.bundle_links import bundle_address, bundle_words
from sitegen.publish.bundle_sums import Sums, sums
from sitegen.publish.buying import buy_link, with_contact
from sitegen.publish.compose import TITLE, canonical, shop_line
from sitegen.publish.downloads import Download, downloads
from sitegen.publish.imprint import imprint
from sitegen.publish.making import fitted
from sitegen.publish.materials import difficulty
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.view import Card, ForMachines, Imprint, Link, Sharing, ShopLine
from sitegen.publish.words import Words

PICTURE_ROOM = (38.0, 30.0)
"""What a finished piece has on the contents page, mm."""


@dataclass(frozen=True, slots=True)
class BundleLine:
    """A pattern on the contents page."""

    number: str
    """In the order of the bundle; also names its place in the file."""
    title: str
    summary: str
    terms: str
    """How many pieces it makes, and its level."""
    picture: Markup
    language: str
    """Of title and summary, where it is not that of the page."""


@dataclass(frozen=True, slots=True)
class BundleSheets:
    """What comes before the patterns in a bundle's PDF."""

    name: str
    title: str
    summary: str
    count: str
    """How many patterns."""
    language: str
    """Of title and summary, where it is not that of the page."""
    lines: tuple[BundleLine, ...]
    sums: Sums
    shop: ShopLine
    imprint: Imprint
    """Keywords and dates are those of its patterns together."""


@dataclass(frozen=True, slots=True)
class BundlePage:
    """A bundle's page."""

    name: str
    title: str
    summary: str
    count: str
    language: str
    cards: tuple[Card, ...]
    sums: Sums
    price: str
    downloads: tuple[Download, ...]
    """Empty for a bundle that is for sale."""
    buy: str
    """How to buy; empty for a free bundle."""
    buy_link: Link | None
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


def pieces_of(bundle: Bundle, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces of a bundle, in its order."""
    named = {piece.pattern.name: piece for piece in pieces}
    return [named[name] for name in bundle.patterns]


def bundle_sheets(bundle: Bundle, pieces: Sequence[Piece], shop: Shop, words: Words) -> BundleSheets:
    """The contents and the shopping list; `pieces` are those of the bundle."""
    title, summary, language = bundle_words(bundle, shop)
    return BundleSheets(
        name=bundle.name,
        title=title,
        summary=summary,
        count=words.text("front.count", count=len(pieces)),
        language=language,
        lines=tuple(_line(number, piece, words) for number, piece in enumerate(pieces, 1)),
        sums=sums(pieces, words),
        shop=shop_line(shop),
        imprint=_imprint(pieces),
    )


def _imprint(pieces: Sequence[Piece]) -> Imprint:
    every = [imprint(piece) for piece in pieces]
    return replace(
        every[0],
        keywords=tuple(dict.fromkeys(word for one in every for word in one.keywords)),
        published=min(filter(None, (one.published for one in every)), default=""),
        changed=max(one.changed for one in every),
    )


def _line(number: int, piece: Piece, words: Words) -> BundleLine:
    pattern = piece.pattern
    makes, level = words.text(f"makes.{pattern.makes.value}"), difficulty(piece).level
    return BundleLine(
        number=str(number),
        title=pattern.title,
        summary=pattern.summary,
        terms=words.text("bundle.terms", makes=makes, level=level),
        picture=fitted(piece.picture, f"bundle-{number}", PICTURE_ROOM, 1.0)[0],
        language=piece.language_of(TITLE),
    )


def bundle_page(
    bundle: Bundle, pieces: Sequence[Piece], cards: Sequence[Card], sheets: Sheets, words: Words
) -> BundlePage:
    """The page; `pieces` and `cards` are those of the bundle, `sheets` is its printed file."""
    shop = pieces[0].shop
    title, summary, language = bundle_words(bundle, shop)
    free = bundle.price is None
    how = words.text("bundle.how", seller=shop.maker or shop.title, count=sheets.pages)
    return BundlePage(
        name=bundle.name,
        title=title,
        summary=summary,
        count=words.text("front.count", count=len(pieces)),
        language=language,
        cards=tuple(cards),
        sums=sums(pieces, words),
        price=Quantities(words).price(bundle.price, shop.currency),
        downloads=downloads(bundle.name, sheets, words) if free else (),
        buy="" if free else with_contact(how, shop, words),
        buy_link=buy_link(bundle, shop, words),
        canonical=canonical(shop, bundle_address(bundle.name)),
        shop=shop_line(shop),
    )
