"""A page -> what it says of itself to whoever passes its address on; nothing for a shop without an address.

Names of the fields: the Open Graph protocol, https://ogp.me/.
"""

from __future__ import annotations

from datetime import date

from sitegen.model.shop import Shop
from sitegen.publish.compose import canonical
from sitegen.publish.dates import changed, published
from sitegen.publish.piece import Piece
from sitegen.publish.social import HEIGHT, WIDTH
from sitegen.publish.view import Sharing
from sitegen.publish.words import Words

COVER = "cover.png"
"""The cover beside the front page and beside each pattern's page."""


def pattern_sharing(piece: Piece, address: str, home: str) -> Sharing | None:
    """For a pattern's page at a full address; `home` is that of the page in the author's own colours."""
    if not address:
        return None
    return Sharing(
        title=piece.pattern.title,
        kind="article",
        address=address,
        image=home + COVER,
        width=WIDTH,
        height=HEIGHT,
        alt=f"{piece.picture.title}. {piece.picture.description}",
        shop=piece.shop.title,
        locale=_locale(piece.shop),
        published=_day(published(piece.pattern)),
        changed=_day(changed([piece.pattern])),
    )


def page_sharing(shop: Shop, title: str, kind: str, address: str, words: Words) -> Sharing | None:
    """For any page at a full address, with the shop's cover; `kind` is `website` or `article`."""
    if not address:
        return None
    return Sharing(
        title=title,
        kind=kind,
        address=address,
        image=canonical(shop, COVER),
        width=WIDTH,
        height=HEIGHT,
        alt=words.text("cover.shop", shop=shop.title),
        shop=shop.title,
        locale=_locale(shop),
    )


def _locale(shop: Shop) -> str:
    """`en_GB` where the shop names a country with its language: the protocol has no other form."""
    return shop.language.replace("-", "_") if "-" in shop.language else ""


def _day(day: date | None) -> str:
    return day.isoformat() if day else ""
