"""What bundles are called, and the links to them, in each language of a shop."""

from __future__ import annotations

from sitegen.model.bundle import Bundle
from sitegen.model.shop import Shop
from sitegen.publish.bundle_links import bundle_links, bundle_words
from sitegen.publish.view import Link

WHOLE = Bundle("shore", "The shore", "All.", ("a", "b"), translations={"de": {"title": "T", "summary": "S"}})
HALF = Bundle("gifts", "Gifts", "Free.", ("b", "c"), translations={"de": {"title": "T"}})
SHOP = Shop(languages=("en", "de"), bundles=(WHOLE, HALF))


def test_words_are_those_of_the_language_or_all_as_written() -> None:
    german = SHOP.in_language("de")
    assert bundle_words(WHOLE, SHOP) == ("The shore", "All.", "")
    assert bundle_words(WHOLE, german) == ("T", "S", "")
    assert bundle_words(HALF, german) == ("Gifts", "Free.", "en")


def test_links_to_all_or_to_those_that_hold_a_pattern() -> None:
    shore, gifts = bundle_links(SHOP)
    assert shore == Link("bundles/shore/index.html", "The shore", "All.")
    assert bundle_links(SHOP, "a") == (shore,)
    assert bundle_links(SHOP, "b") == (shore, gifts)
    assert bundle_links(SHOP, "d") == ()
