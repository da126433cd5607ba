"""A pattern or bundle that is for sale -> how it is bought, in words, and the link to where."""

from __future__ import annotations

from sitegen.model.bundle import Bundle
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.quantities import Quantities
from sitegen.publish.view import Link
from sitegen.publish.words import Words


def with_contact(how: str, shop: Shop, words: Words) -> str:
    """How something is bought, and behind it where to ask, if the shop says."""
    if not shop.contact:
        return how
    ask = words.text("buy.contact", contact=shop.contact)
    return f"{how} {ask}"


def buy_link(sold: Pattern | Bundle, shop: Shop, words: Words) -> Link | None:
    """Its own address, or the shop's with its name; nothing for what is free, or where neither is given."""
    address = sold.buy or shop.buy
    if sold.price is None or not address:
        return None
    mail = address.startswith("mailto:")
    if isinstance(sold, Bundle):
        key = "bundle.by-mail" if mail else "bundle.at-seller"
    else:
        key = "buy.by-mail" if mail else "buy.at-seller"
    price = Quantities(words).price(sold.price, shop.currency)
    return Link(address.replace("{name}", sold.name), words.text(key, price=price))
