"""The shop's own pages -> their views; and the page that is shown where there is none."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import urlsplit

from sitegen.model.shop import Shop, ShopPage
from sitegen.model.source import Aside
from sitegen.publish.blocks import AsideBlock, ProseBlock
from sitegen.publish.compose import canonical, own_page_address, shop_line
from sitegen.publish.markdown import Author
from sitegen.publish.view import ForMachines, Sharing, ShopLine
from sitegen.publish.words import Words

LOST = "404.html"
"""Served by most hosts in place of an address that does not exist."""


@dataclass(frozen=True, slots=True)
class OwnPageView:
    """A page of the author's own."""

    name: str
    title: str
    summary: str
    language: str
    """Of the author's text, where it is not that of the page."""
    blocks: tuple[ProseBlock | AsideBlock, ...]
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


@dataclass(frozen=True, slots=True)
class LostView:
    """The page for an address that does not exist."""

    base: str
    """The way from any depth to the top of the site; empty where the shop's address is not known."""
    shop: ShopLine
    canonical: str = ""
    machines: ForMachines | None = None


def own_page(page: ShopPage, shop: Shop, words: Words) -> OwnPageView:
    """A page of the author's in the shop's language, or as written where it is not translated."""
    shown, language = shop.said(page)
    address = own_page_address(page.name)
    author = Author(up="../" * address.count("/"))
    return OwnPageView(
        name=page.name,
        title=shown.title,
        summary=shown.summary,
        language=language,
        blocks=tuple(
            AsideBlock(words.text(f"aside.{block.kind}"), author.html(block.text), language)
            if isinstance(block, Aside)
            else ProseBlock(author.html(block.text), language)
            for block in shown.body
        ),
        canonical=canonical(shop, address),
        shop=shop_line(shop),
    )


def lost_view(shop: Shop) -> LostView:
    """A host shows this page under any address, at any depth: only a full path leads anywhere from it."""
    base = urlsplit(shop.address).path if shop.address else ""
    return LostView(base=base or ("/" if shop.address else ""), shop=shop_line(shop))
