"""A page -> what it says of itself to whoever passes its address on; nothing for a shop without an address.

Names of the fields: the Open Graph protocol, https://ogp.me/.
"""

from __future__ import annotations

from sitegen.model.shop import Shop
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
    )


def shop_sharing(shop: Shop, address: str, words: Words) -> Sharing | None:
    """For the front page at a full address."""
    if not address:
        return None
    alt = words.text("cover.shop", shop=shop.title)
    return Sharing(shop.title, "website", address, address + COVER, WIDTH, HEIGHT, alt, shop.title)
