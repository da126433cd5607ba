"""The shopping list in a browser, opened from the disk: it is kept, changed, shared and taken along."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from sitegen.publish.shopping import SHOPPING
from tests.publish.listed_shop import Listed, as_table, listed, on_list
from tests.publish.test_offline import served


@pytest.fixture
def site(listed_shop: Listed) -> Path:
    return listed_shop.site


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A browser with nothing kept; no page in it may say anything on the console."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    said: list[str] = []
    context.on("console", lambda message: said.append(message.text))
    context.on("weberror", lambda error: said.append(str(error.error)))
    yield context
    context.close()
    assert said == []


def test_three_patterns_are_put_on_from_their_pages(site: Path, context: BrowserContext) -> None:
    page = context.new_page()
    for address, number in (("reed-pair", None), ("reed-pair/in-dusk", "5"), ("pebble-charm", "3")):
        page.goto((site / "patterns" / address / "index.html").as_uri())
        there = page.get_by_role("link", name="It is on the list")
        assert there.count() == 0
        if number:
            page.get_by_label("Pieces").fill(number)
        page.get_by_role("button", name="Put on the shopping list").click()
        assert there.is_visible()
    page.get_by_role("link", name="It is on the list").click()
    assert on_list(page) == {
        "Reed pair": "2",
        "Reed pair in Dusk": "5",
        '=1+2, "Pebble" </script> charm': "3",
    }
    page.goto((site / "patterns" / "reed-pair" / "in-dusk" / "index.html").as_uri())
    assert page.get_by_label("Pieces").input_value() == "5"
    assert page.get_by_role("link", name="It is on the list").is_visible()


@pytest.mark.parametrize(
    ("typed", "kept"), [("0", "1"), ("-4", "1"), ("2.6", "3"), ("", "1"), ("5000", "999")]
)
def test_a_number_that_makes_no_sense_is_put_right(
    site: Path, context: BrowserContext, typed: str, kept: str
) -> None:
    page = context.new_page()
    page.goto((site / "patterns" / "reed-pair" / "index.html").as_uri())
    page.get_by_label("Pieces").fill(typed)
    page.get_by_role("button", name="Put on the shopping list").click()
    assert page.get_by_label("Pieces").input_value() == kept
    assert json.loads(page.evaluate("localStorage.getItem('sitegen:list')")) == {"reed-pair": int(kept)}


def test_numbers_change_things_are_taken_off_and_brought_back(site: Path, context: BrowserContext) -> None:
    page = listed(context, site, {"reed-pair": 2, "pebble-charm": 1})
    green = page.locator("tbody tr", has_text="reed green").locator("[data-is=count]")
    assert green.inner_text() == str(4 * 2 + 3)
    page.get_by_label("Pieces of Reed pair").fill("10")
    assert green.inner_text() == str(4 * 10 + 3)
    page.get_by_role("button", name="Take off: Reed pair").click()
    assert list(on_list(page)) == ['=1+2, "Pebble" </script> charm']
    assert page.get_by_role("status").first.inner_text() == "Reed pair is off the list."
    page.get_by_role("button", name="Bring it back").click()
    assert on_list(page)["Reed pair"] == "10"
    page.get_by_role("button", name="Clear the list").click()
    assert page.get_by_text("Nothing is on the list yet").is_visible()
    page.reload()
    assert page.get_by_text("Nothing is on the list yet").is_visible()
    assert not page.locator("table").is_visible()


def test_the_table_is_safe_to_open(site: Path, context: BrowserContext) -> None:
    """A cell that a spreadsheet would take for a formula begins with an apostrophe."""
    table = as_table(listed(context, site, {"pebble-charm": 2, "loom-band": 1}))
    head, *rows = table
    assert head == [
        *("What", "Name", "Kind", "Colour code", "Number", "Grams"),
        *("Packs", "Grams in a pack", "Metres", "Price"),
    ]
    assert all(len(row) == len(head) for row in rows)
    assert rows[0][:5] == ["Pattern", '\'=1+2, "Pebble" </script> charm', "", "", "2"]
    assert "'+sand" in [row[1] for row in rows]
    assert not [cell for row in rows for cell in row if cell[:1] in ("=", "+", "-", "@", "\t", "\r")]


def test_the_text_is_copied(site: Path, browser: Browser) -> None:
    context = browser.new_context(permissions=["clipboard-read", "clipboard-write"])
    page = listed(context, site, {"reed-pair": 2, "loom-band": 1})
    page.get_by_role("button", name="Copy as text").click()
    page.get_by_text("Copied.").wait_for()
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied == page.get_by_label("The list as text").input_value()
    lines = copied.splitlines()
    assert lines[:4] == ["Shopping list – Ferry & Daughters", "", "To be made", "2 × Reed pair"]
    assert "milk, round 11/0, matte: 1 × 5 g; used 0.02 g (0.00064 oz), beads 2" in lines
    assert lines[-2:] == ["Estimate", "€2.45, for 2 of 4 kinds of bead; the others have no price here"]
    context.close()


def test_an_address_shows_the_list_elsewhere_and_leaves_the_own_one_alone(
    site: Path, context: BrowserContext
) -> None:
    page = listed(context, site, {"reed-pair.in-dusk": 4, "loom-band": 2})
    page.get_by_role("link", name="Address of this list").click()
    page.wait_for_url(lambda url: url.endswith("#reed-pair.in-dusk=4&loom-band=2"))
    address = page.url
    other = listed(context, site, {"pebble-charm": 1, "loom-band": 9})
    other.goto("about:blank")
    other.goto(address)
    assert on_list(other) == {"Reed pair in Dusk": "4", "Loom band": "2"}
    other.get_by_label("Pieces of Loom band").fill("3")
    other.wait_for_url(lambda url: url.endswith("#reed-pair.in-dusk=4&loom-band=3"))
    other.get_by_role("button", name="Back to my own list").click()
    assert on_list(other) == {'=1+2, "Pebble" </script> charm': "1", "Loom band": "9"}
    other.goto("about:blank")
    other.goto(address)
    other.get_by_role("button", name="Put all of it on my list").click()
    assert on_list(other) == {
        '=1+2, "Pebble" </script> charm': "1",
        "Loom band": "2",
        "Reed pair in Dusk": "4",
    }
    other.wait_for_url(lambda url: "#" not in url)


@pytest.mark.parametrize(
    "kept", ["", "null", "[]", "5", '"x"', "{", '{"constructor": 2, "reed-pair": "x", "loom-band": -1}']
)
def test_what_is_kept_may_be_anything(site: Path, context: BrowserContext, kept: str) -> None:
    page = context.new_page()
    page.goto((site / SHOPPING).as_uri())
    page.evaluate("text => localStorage.setItem('sitegen:list', text)", kept)
    page.reload()
    assert page.get_by_text("Nothing is on the list yet").is_visible()
    page.goto((site / "patterns" / "reed-pair" / "index.html").as_uri())
    page.get_by_role("button", name="Put on the shopping list").click()
    page.get_by_role("link", name="It is on the list").click()
    assert on_list(page) == {"Reed pair": "2"}


def test_without_a_place_to_keep_it_the_address_keeps_the_list(site: Path, context: BrowserContext) -> None:
    refuse = "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })"
    context.add_init_script(refuse)
    page = context.new_page()
    page.goto((site / "patterns" / "reed-pair" / "index.html").as_uri())
    page.get_by_label("Pieces").fill("6")
    page.get_by_role("button", name="Put on the shopping list").click()
    page.get_by_role("link", name="It is on the list").click()
    assert on_list(page) == {"Reed pair": "6"}
    page.get_by_label("Pieces of Reed pair").fill("8")
    page.reload()
    assert on_list(page) == {"Reed pair": "8"}


def test_an_opened_list_goes_on_without_a_net(site: Path, browser: Browser) -> None:
    context = browser.new_context()
    page = context.new_page()
    with served(site) as port:
        page.goto(f"http://127.0.0.1:{port}/{SHOPPING}#reed-pair=2")
        page.get_by_text("Kept in this browser").wait_for()
    page.reload()
    assert on_list(page) == {"Reed pair": "2"}
    assert page.locator("tbody tr").count() == 2
    context.close()


def test_without_script_the_page_says_how_to_add_up_by_hand(site: Path, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / SHOPPING).as_uri())
    assert page.get_by_text("take 10 % more to spare").is_visible()
    assert not page.locator(".made").is_visible()
    page.locator("main").get_by_role("link", name="Materials").click()
    assert page.locator("main").get_by_role("link", name="shopping list").is_visible()
    page.goto((site / "patterns" / "reed-pair" / "index.html").as_uri())
    assert not page.locator(".put").is_visible()
    context.close()


def test_it_is_printed_without_its_buttons_and_in_the_chosen_units(
    site: Path, context: BrowserContext
) -> None:
    page = listed(context, site, {"reed-pair": 2})
    page.get_by_role("button", name="inch, oz").click()
    page.emulate_media(media="print")
    assert not page.locator("button:visible").count()
    assert page.locator("tbody tr").first.locator("[data-is=grams]").inner_text().endswith("oz")
    text = page.get_by_label("The list as text").input_value()
    assert " oz, beads" in text
    assert " m (" not in text


def test_numbers_follow_the_language_of_the_page(site: Path, context: BrowserContext) -> None:
    page = listed(context, site, {"reed-pair": 60, "pebble-charm": 1})
    page.evaluate("document.documentElement.lang = 'de'; document.documentElement.dataset.units = 'metric'")
    green = page.locator("tbody tr", has_text="reed green")
    green.locator(".metric", has_text=",").wait_for()
    assert green.locator("[data-is=price]").inner_text().replace("\u00a0", " ").endswith(" €")


def test_the_data_of_the_page_cannot_end_its_element(site: Path) -> None:
    text = (site / SHOPPING).read_text(encoding="utf-8")
    data = text.partition('id="list-data">')[2].partition("</script>")[0]
    assert "<" not in data
    assert json.loads(data)["patterns"]["pebble-charm"]["title"] == '=1+2, "Pebble" </script> charm'
