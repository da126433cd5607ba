"""The catalogue in a browser, opened from the disk: narrowing, order, search, the address, the way back."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.publish.sample_shop import Built


@pytest.fixture
def page(built: Built, browser: Browser) -> Iterator[Page]:
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto((built.site / "catalogue" / "index.html").as_uri())
    yield page
    page.close()
    assert said == []


def shown(page: Page) -> list[str]:
    """Titles in the list, in order."""
    return page.locator(".plate:visible h3").all_inner_texts()


def count(page: Page, label: str) -> str:
    return page.locator(".narrow label", has_text=label).locator(".also").inner_text()


def test_all_is_listed_with_script_and_without(built: Built, browser: Browser, page: Page) -> None:
    assert shown(page) == ["Reed pair", "Pebble charm"]
    plain = browser.new_context(java_script_enabled=False).new_page()
    plain.goto((built.site / "catalogue" / "index.html").as_uri())
    assert shown(plain) == ["Reed pair", "Pebble charm"]
    assert not plain.locator(".narrow").is_visible()
    assert plain.locator(".jump a").all_inner_texts() == ["Earrings", "Other pieces"]
    plain.context.close()


def test_a_choice_narrows_counts_follow_and_back_takes_it_back(page: Page) -> None:
    assert (count(page, "Free"), count(page, "Fringe")) == ("1", "1")
    page.get_by_label("For sale").check()
    assert shown(page) == ["Pebble charm"]
    assert page.get_by_role("status").inner_text() == "1 of 2 patterns"
    assert (count(page, "Free"), count(page, "Fringe")) == ("1", "0"), (
        "its own group offers what it would add"
    )
    assert page.evaluate("location.href").endswith("#price=priced")
    page.get_by_label("Brick stitch").check()
    assert page.evaluate("location.href").endswith("#stitch=brick&price=priced")
    page.go_back()
    assert not page.get_by_label("Brick stitch").is_checked()
    page.go_back()
    assert shown(page) == ["Reed pair", "Pebble charm"]
    page.go_forward()
    assert shown(page) == ["Pebble charm"]


def test_the_address_brings_it_all_back(page: Page) -> None:
    page.get_by_label("Free").check()
    page.get_by_label("Look for").fill("reed")
    page.get_by_label("In order of").select_option("name")
    page.goto("about:blank")
    page.go_back()
    assert page.get_by_label("Free").is_checked()
    assert page.get_by_label("Look for").input_value() == "reed"
    assert page.get_by_label("In order of").input_value() == "name"
    assert shown(page) == ["Reed pair"]


def test_nothing_fits_and_the_way_back(page: Page) -> None:
    page.get_by_label("Look for").fill("zzz")
    assert shown(page) == []
    assert page.get_by_text("No pattern answers to all of this").is_visible()
    page.get_by_role("button", name="Show the whole list").click()
    assert shown(page) == ["Reed pair", "Pebble charm"]
    assert not page.get_by_text("No pattern answers").is_visible()


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("REED", ["Reed pair"]),
        ("réed gre", ["Reed pair"]),
        ("cyl slate", ["Pebble charm"]),
        ("brick", ["Reed pair", "Pebble charm"]),
        ("11/0 chalk", ["Pebble charm"]),
        ("eed", []),
    ],
)
def test_a_search_forgives(page: Page, words: str, found: list[str]) -> None:
    page.get_by_label("Look for").fill(words)
    assert shown(page) == found


@pytest.mark.parametrize(
    ("order", "titles"),
    [
        ("newest", ["Reed pair", "Pebble charm"]),
        ("time", ["Pebble charm", "Reed pair"]),
        ("beads", ["Pebble charm", "Reed pair"]),
        ("name", ["Pebble charm", "Reed pair"]),
        ("level", ["Pebble charm", "Reed pair"]),
        ("kind", ["Reed pair", "Pebble charm"]),
    ],
)
def test_the_list_in_another_order(page: Page, order: str, titles: list[str]) -> None:
    page.get_by_label("In order of").select_option(order)
    assert shown(page) == titles


def test_a_place_on_the_page_is_no_choice(built: Built, page: Page) -> None:
    page.goto((built.site / "catalogue" / "index.html").as_uri() + "#earrings")
    assert shown(page) == ["Reed pair", "Pebble charm"]
    assert page.evaluate("location.href").endswith("#earrings")


@pytest.mark.parametrize("width", [320, 390, 700, 1280])
@pytest.mark.parametrize("name", ["catalogue", "materials", "glossary", "pages/help"])
def test_pages_fit_and_targets_are_large_enough(built: Built, page: Page, name: str, width: int) -> None:
    """WCAG 2.2, 2.5.8: targets of at least 24 by 24 CSS pixels, links in sentences apart."""
    page.set_viewport_size({"width": width, "height": 800})
    page.goto((built.site / name / "index.html").as_uri())
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")
    low = page.evaluate(
        "[...document.querySelectorAll('.masthead a, .jump a, .used a, .narrow label:has(input),"
        " .narrow button, .narrow select, .narrow input[type=search], .foot-links a')]"
        ".filter(e => e.getClientRects().length && e.getBoundingClientRect().height < 24)"
        ".map(e => e.textContent)"
    )
    assert low == []
