"""A shop's bundles -> the links to their pages, in the words of its language."""

from __future__ import annotations

from sitegen.model.bundle import Bundle
from sitegen.model.shop import Shop
from sitegen.publish.view import Link

BUNDLES = "bundles"
"""Folder of their pages in the site."""


def bundle_address(name: str) -> str:
    """Where a bundle's page stands in the site."""
    return f"{BUNDLES}/{name}/index.html"


def bundle_links(shop: Shop, pattern: str = "") -> tuple[Link, ...]:
    """The links to all bundles of a shop, or to those that hold a pattern."""
    return tuple(
        Link(bundle_address(bundle.name), title, summary, language, language)
        for bundle in shop.bundles
        if not pattern or pattern in bundle.patterns
        for title, summary, language in [bundle_words(bundle, shop)]
    )


def bundle_words(bundle: Bundle, shop: Shop) -> tuple[str, str, str]:
    """Title and summary as the shop's language has them, and their language where they are not in it."""
    said = bundle.translations.get(shop.language, {})
    if not {"title", "summary"} <= set(said):
        return bundle.title, bundle.summary, shop.author_language
    return said["title"], said["summary"], ""
