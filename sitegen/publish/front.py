"""The shop, its cards and its catalogue -> the front page: the newest patterns and the ways in."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from sitegen.model.shop import Shop
from sitegen.publish.catalogue import CATALOGUE, CatalogueView
from sitegen.publish.compose import canonical, own_page_link, shop_line
from sitegen.publish.front_view import FrontView, WayIn
from sitegen.publish.glossary import GLOSSARY
from sitegen.publish.lesson_pages import LIST
from sitegen.publish.lessons import lesson_plans
from sitegen.publish.sharing import page_sharing
from sitegen.publish.stock_page import MATERIALS
from sitegen.publish.view import Card, Link
from sitegen.publish.words import Words

NEWEST = 7
"""Patterns shown on the front page: the first of them large, beside the title."""


def front_view(shop: Shop, catalogue: CatalogueView, theme: Path, words: Words) -> FrontView:
    """The front page, with the newest patterns of the catalogue."""
    home = canonical(shop, "")
    return FrontView(
        cards=newest(catalogue),
        ways_in=tuple(_ways_in(shop, catalogue, theme, words)),
        count=catalogue.count,
        canonical=home,
        description=shop.tagline or words.text("front.description", shop=shop.title),
        shop=shop_line(shop),
        sharing=page_sharing(shop, shop.title, "website", home, words),
    )


def newest(catalogue: CatalogueView) -> tuple[Card, ...]:
    """The cards whose patterns have the newest edition; equal dates, and none, in the catalogue's order."""
    entries = [entry for shelf in catalogue.shelves for entry in shelf.entries]
    entries.sort(key=lambda entry: dict(entry.ranks)["newest"], reverse=True)
    return tuple(entry.card for entry in entries[:NEWEST])


def _ways_in(shop: Shop, catalogue: CatalogueView, theme: Path, words: Words) -> Iterator[WayIn]:
    say = words.text
    kinds = tuple(Link(f"{CATALOGUE}#{shelf.name}", shelf.heading) for shelf in catalogue.shelves)
    yield WayIn(CATALOGUE, say("nav.catalogue"), say("front.to-catalogue"), catalogue.count, kinds)
    prices = {choice.value: choice for group in catalogue.groups for choice in group.choices}
    if "free" in prices:
        count = say("front.count", count=int(prices["free"].count))
        yield WayIn(f"{CATALOGUE}#price=free", say("front.free"), say("front.to-free"), count)
    if shop.bundles:
        count = say("bundle.count", count=len(shop.bundles))
        about = say("bundle.about")
        yield WayIn(f"{CATALOGUE}#bundles", say("bundle.heading"), about, count, catalogue.bundles)
    count = say("front.lessons", count=len(lesson_plans(theme)))
    yield WayIn(LIST, say("nav.techniques"), say("front.to-techniques"), count)
    yield WayIn(MATERIALS, say("nav.materials"), say("front.to-materials"))
    yield WayIn(GLOSSARY, say("nav.glossary"), say("front.to-glossary"))
    for page in shop.pages:
        if page.in_head:
            link = own_page_link(page, shop)
            yield WayIn(link.href, link.text, link.also, language=link.language)
