"""A pattern's page in a reader's own colours: what follows, is shared and is printed, and the way back."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from sitegen.build import build
from sitegen.check.colours_apart import difference
from sitegen.draw.colour import ink_on
from tests.publish.drawer import PAINTED, expect, seen, write_drawer
from tests.publish.sample_shop import Built

PAGE = "patterns/lined-pair/index.html"
DUSK = "patterns/lined-pair/in-dusk/index.html"
OWN = {"A": "#3c6b45", "a": "#f6f1e4", "W": "#101830"}
TOLD = """() => [document.querySelector(".beads").innerText, document.querySelector("svg desc").textContent,
  ...[...document.querySelectorAll(".beads title")].map((one) => one.textContent),
  ...[...document.querySelectorAll(".chip[title]")].map((one) => one.title)]"""


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """A shop with a stock, a free pattern with a colourway, and a priced one."""
    root = write_drawer(tmp_path_factory.mktemp("drawer"))
    result = build(root, processes=1)
    assert result.files, result.problems
    return Built(root, result)


@pytest.fixture
def page(shop: Built, browser: Browser) -> Iterator[Page]:
    """The page, from the disk; what it complains of, its own policy included, is a failure."""
    page = browser.new_page(viewport={"width": 1280, "height": 900}, reduced_motion="reduce")
    faults: list[str] = []
    page.on("console", lambda message: faults.append(message.text))
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto((shop.site / PAGE).as_uri())
    yield page
    assert faults == []
    page.close()


def choose(page: Page, letter: str, colour: str) -> None:
    page.get_by_label(f"Colour of {letter}", exact=True).fill(colour)


def pick(page: Page, letter: str, bead: str) -> None:
    page.get_by_label(f"Bead for {letter}", exact=True).select_option(label=bead)


@pytest.mark.parametrize(
    "colours",
    [
        {"A": "#0b1c2d", "a": "#fefdfb", "W": "#777777"},
        {"A": "#ffffff", "a": "#000000", "W": "#ff8800"},
        {"A": "#f19b31", "a": "#757575", "W": "#01fe80"},
        {"A": "#3c6b46"},
    ],
)
def test_every_shape_letter_and_chip_follows_as_the_drawings_reckon(
    page: Page, colours: dict[str, str]
) -> None:
    expect(page.evaluate(PAINTED), OWN)
    for letter, colour in colours.items():
        choose(page, letter, colour)
    met = expect(page.evaluate(PAINTED), OWN | colours)
    assert sum("#" in one for one in met) >= 12
    assert {"ink A", "ink a", "ink W", "chip A", "chip a", "chip W", "fill A", "fill a #ffffff 0.72"} <= met


def test_the_key_to_the_step_drawings_stays(page: Page) -> None:
    key = [one for one in page.evaluate(PAINTED) if one["key"]]
    assert "A" in {one["ink"] for one in key}
    choose(page, "A", "#ff0000")
    assert [one for one in page.evaluate(PAINTED) if one["key"]] == key


def test_an_address_with_the_colours_of_a_colourway_shows_what_its_page_shows(
    shop: Built, page: Page
) -> None:
    page.goto((shop.site / DUSK).as_uri())
    dusk = page.evaluate(PAINTED)
    page.goto((shop.site / PAGE).as_uri() + "#colours&A=4b2b4f&W=f2c230")
    assert page.evaluate(PAINTED) == dusk
    assert len(dusk) > 100


def test_a_colourway_has_its_own_colours_to_begin_from(shop: Built, page: Page) -> None:
    page.goto((shop.site / DUSK).as_uri())
    assert page.get_by_label("Colour of A", exact=True).input_value() == "#4b2b4f"
    choose(page, "a", "#123456")
    assert page.evaluate("location.href").endswith("in-dusk/index.html#colours&a=123456")
    expect(page.evaluate(PAINTED), {"A": "#4b2b4f", "a": "#123456", "W": "#f2c230"})


def test_the_address_keeps_the_colours_and_a_place_on_the_page_does_not_lose_them(page: Page) -> None:
    choose(page, "A", "#ABCDEF")
    choose(page, "W", "#010203")
    assert page.evaluate("location.href").endswith("index.html#colours&A=abcdef&W=010203")
    link = page.get_by_role("link", name="this page in these colours")
    assert link.get_attribute("href") == page.evaluate("location.href")
    shared, painted = page.evaluate("location.href"), page.evaluate(PAINTED)
    page.reload()
    assert page.evaluate(PAINTED) == painted
    assert page.get_by_text("not in the maker's").first.is_visible()
    page.get_by_role("navigation", name="On this page").get_by_role("link", name="Materials").click()
    page.wait_for_url(shared)
    assert page.evaluate("scrollY") > 100
    assert page.evaluate(PAINTED) == painted
    page.evaluate("location.hash = 'colours&A=00ff00'")
    page.wait_for_function("document.querySelector('[data-own=address]').href.endsWith('#colours&A=00ff00')")
    expect(page.evaluate(PAINTED), OWN | {"A": "#00ff00"})


@pytest.mark.parametrize(
    "address",
    ["#colours&A=red&W=12345", "#colours&A=%3Cimg%20src=x%3E&__proto__=1", "#colours", "#colours&Z=123456"],
)
def test_an_address_that_names_no_colour_changes_none(shop: Built, page: Page, address: str) -> None:
    before, told = page.evaluate(PAINTED), page.evaluate(TOLD)
    page.goto("about:blank")
    page.goto((shop.site / PAGE).as_uri() + address)
    assert page.evaluate(PAINTED) == before
    assert page.evaluate(TOLD) == told
    assert not page.get_by_role("button", name="Back to the maker's colours").is_visible()


def test_a_place_in_the_address_stays_while_no_colour_is_chosen(shop: Built, page: Page) -> None:
    page.goto((shop.site / PAGE).as_uri() + "#materials")
    page.evaluate("location.hash = 'safety'")
    page.wait_for_timeout(50)
    assert page.evaluate("location.href").endswith("#safety")


def test_back_to_the_makers_colours_leaves_nothing_behind(page: Page) -> None:
    before, told, address = page.evaluate(PAINTED), page.evaluate(TOLD), page.evaluate("location.href")
    choose(page, "A", "#102030")
    pick(page, "a", "kelp, matte")
    assert page.evaluate(PAINTED) != before
    assert page.evaluate(TOLD) != told
    page.get_by_role("button", name="Back to the maker's colours").click()
    assert page.evaluate(PAINTED) == before
    assert page.evaluate(TOLD) == told
    assert page.evaluate("location.href") == address
    assert page.evaluate("document.activeElement.getAttribute('aria-label')") == "Colour of A"
    assert not page.get_by_role("button", name="Back to the maker's colours").is_visible()
    assert not page.get_by_text("not in the maker's").first.is_visible()


def test_beads_of_the_same_kind_in_stock_may_be_picked(page: Page) -> None:
    def beads(letter: str) -> list[str]:
        return page.get_by_label(f"Bead for {letter}", exact=True).locator("option").all_inner_texts()

    assert beads("A") == [
        "reed green, the maker's",
        "kelp, matte",
        "foam",
        "spray, lustre",
        "any other colour",
    ]
    assert "reed green, transparent" in beads("a")
    assert beads("W") == ["night, the maker's", "any other colour"]
    pick(page, "A", "kelp, matte")
    line = page.locator(".beads tr[data-letter=A]")
    assert re.sub(r"\s+", " ", line.inner_text()).startswith("A kelp round 11/0, matte")
    assert line.locator("[data-cell=packs]").inner_text() == "2 × 0.1 g"
    assert line.locator("[data-cell=buy] .metric").inner_text() == "0.2 g"
    assert line.locator(".key title").text_content() == "Bead A: kelp"
    assert page.locator("td .chip.bead-A").first.get_attribute("title") == "kelp"
    assert "in kelp, milk, night;" in page.locator(".frontispiece desc").text_content()  # type: ignore[operator]
    expect(page.evaluate(PAINTED), OWN | {"A": "#2f3b22"})
    choose(page, "A", "#445566")
    assert "a colour like #445566" in line.inner_text()
    assert line.locator("[data-cell=packs]").inner_text() == "1 × 5 g"
    assert page.get_by_label("Bead for A", exact=True).locator(":checked").inner_text() == "any other colour"


def test_beads_of_one_colour_are_kept_apart_in_the_address(page: Page) -> None:
    pick(page, "A", "spray, lustre")
    assert page.evaluate("location.href").endswith("#colours&A=dfe9e6-2")
    page.reload()
    assert "spray" in page.locator(".beads tr[data-letter=A]").inner_text()
    expect(page.evaluate(PAINTED), OWN | {"A": "#dfe9e6"})


PAIRS = [
    ("#1f2a44", "#1f2a4a"), ("#f6f1e4", "#fffdf8"), ("#b3372c", "#b23327"), ("#4e7d3e", "#567d3a"),
    ("#e8b02e", "#e7ad33"), ("#808080", "#868686"), ("#000000", "#0a0a0a"),
    ("#1f2a44", "#b3372c"), ("#f6f1e4", "#d98a9c"), ("#4e7d3e", "#9cc7c0"), ("#e8b02e", "#c07a22"),
    ("#000000", "#5a2f1c"), ("#ffffff", "#d9c7a0"), ("#c9a3d6", "#8d4fa3"),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_colours_hard_to_tell_apart_are_remarked_upon_as_the_check_of_designs_does(
    page: Page, one: str, other: str
) -> None:
    """Pairs far from the limit on either side: it is reckoned more simply than CIEDE2000."""
    apart = difference(one, other)
    assert apart < 7 or apart > 13
    remark = page.locator(".own .remark")
    assert remark.inner_text() == ""
    choose(page, "A", one)
    choose(page, "a", other)
    wanted = "A and a are hard to tell apart in these colours." if apart < 7 else ""
    assert remark.inner_text() == wanted


def test_beads_of_different_kind_are_told_apart_by_it(page: Page) -> None:
    choose(page, "W", "#3c6b45")
    assert page.locator(".own .remark").inner_text() == ""


def test_print_keeps_the_colours_and_leaves_the_choices_out(page: Page) -> None:
    choose(page, "A", "#123456")
    painted = page.evaluate(PAINTED)
    page.emulate_media(media="print")
    assert page.evaluate(PAINTED) == painted
    assert not page.get_by_label("Colour of A", exact=True).is_visible()
    assert page.get_by_text("Shown in a reader's own colours").is_visible()
    assert "a colour like #123456" in page.locator(".beads").inner_text()


def test_a_drawing_that_moves_and_one_at_the_table_follow_too(page: Page) -> None:
    page.get_by_role("button", name=re.compile("Thread it pass by pass|Show it|Next pass")).first.click()
    choose(page, "A", "#ff00aa")
    expect(page.evaluate(PAINTED), OWN | {"A": "#ff00aa"})
    page.get_by_role("button", name="Work step by step").click()
    shown = page.locator("dialog [data-ink=A]").first
    assert shown.evaluate("one => getComputedStyle(one).fill") == seen(ink_on("#ff00aa"))


def test_by_keyboard_alone(page: Page) -> None:
    page.get_by_label("Colour of A", exact=True).focus()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.getAttribute('aria-label')") == "Bead for A"
    page.keyboard.type("kelp")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.wait_for_url(re.compile("#colours&A=2f3b22$"))
    expect(page.evaluate(PAINTED), OWN | {"A": "#2f3b22"})
    page.get_by_role("button", name="Back to the maker's colours").press("Enter")
    expect(page.evaluate(PAINTED), OWN)


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_choices_are_large_enough_and_nothing_sticks_out(page: Page, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    choose(page, "A", "#123456")
    for one in page.locator(".own :is(input, select, button)").all():
        box = one.bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= 44
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_ids_stay_unique_and_the_small_picture_is_not_read_out(page: Page) -> None:
    choose(page, "A", "#123456")
    ids = page.evaluate("[...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) == len(set(ids))
    assert page.locator(".own-picture[aria-hidden=true] svg").count() == 1
    assert page.locator(".own-picture title").count() == 0


def test_without_script_and_on_a_priced_page_there_is_nothing_of_it(shop: Built, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((shop.site / PAGE).as_uri())
    assert page.locator("input[type=color]").count() == 0
    assert "own colours" not in page.locator("body").inner_text()
    context.close()
    text = shop.page("pebble-charm")
    assert "colours.js" not in text
    assert "own-letters" not in text


def test_a_shop_without_stock_speaks_of_none(shop: Built, built: Built) -> None:
    assert "one of the beads in stock" in shop.page("lined-pair")
    assert "one of the beads in stock" not in built.page("reed-pair")
    assert "Choose a colour for each letter." in built.page("reed-pair")


def test_scripts_of_a_pattern_page_are_small(shop: Built) -> None:
    """Twenty kilobytes for all of them, and none with a word for readers."""
    scripts = re.findall(r'<script src="[./]*(look/[a-z]+\.js)"', shop.page("lined-pair"))
    assert "look/colours.js" in scripts
    assert sum((shop.site / script).stat().st_size for script in scripts) < 20_000
    assert not Path(shop.site / "look" / "colours.js").read_text(encoding="utf-8").count("innerHTML")
