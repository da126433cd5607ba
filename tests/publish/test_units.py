"""Quantities in both systems: as text, as HTML, and as a reader chooses between them in a browser."""

from __future__ import annotations

import pickle

import pytest
from playwright.sync_api import Browser, Page

from sitegen.publish.quantities import Quantities
from sitegen.publish.theme import BUNDLED, templates
from sitegen.publish.units import InBoth, in_both
from sitegen.publish.words import Words
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
CUT = '<span class="metric">1.42 m</span> <span class="imperial"><span>(</span>4 ft 8 in<span>)</span></span>'


@pytest.fixture(scope="module")
def words() -> Words:
    return Words(LINEN, "en")


def shown_in(html: str, value: object) -> str:
    return templates(LINEN).from_string(html).render(one=value)


def test_one_text_for_readers_of_text_and_of_pages() -> None:
    both = in_both("1.42 m", "4 ft 8 in")
    assert both == "1.42 m (4 ft 8 in)"
    assert shown_in("{{ one }}", both) == CUT
    assert shown_in("{{ one }}", in_both("<5 g", "&c.")).count("&lt;5 g") == 1
    again = pickle.loads(pickle.dumps(both))
    assert (again, shown_in("{{ one }}", again)) == (both, CUT)


def test_a_sentence_with_such_a_quantity_is_such_a_text(words: Words) -> None:
    tell = Quantities(words)
    said = words.text("note.first-thread", cut=tell.both_threads(1420), tail=tell.both_spans(150))
    assert said == ("Cut 1.42 m (4 ft 8 in) of thread and thread the needle. Leave a tail of 15 cm (6 in).")
    assert isinstance(said, InBoth)
    assert shown_in("{{ one }}", said).startswith(f"Cut {CUT} of thread")
    mixed = words.text("steps.so-far", count=3, length=in_both("<1>", "2"))
    assert "&lt;1&gt;" in shown_in("{{ one }}", mixed)
    assert not isinstance(words.text("steps.so-far", count=3, length="1 m"), InBoth)


@pytest.mark.parametrize(
    ("length_mm", "both"),
    [(150, "15 cm (6 in)"), (25.4, "2.5 cm (1 in)"), (25.5, "2.5 cm (2 in)"), (600, "60 cm (24 in)")],
)
def test_thread_by_the_hand_is_never_short(words: Words, length_mm: float, both: str) -> None:
    """1 in is 25.4 mm exactly (international inch, 1959); a rest takes a whole inch."""
    assert Quantities(words).both_spans(length_mm) == both


def opened(built: Built, browser: Browser, **about: bool) -> Page:
    page = browser.new_context(viewport={"width": 1280, "height": 900}, **about).new_page()
    page.goto((built.site / "patterns" / "reed-pair" / "index.html").as_uri())
    return page


def size(page: Page) -> str:
    """The size among the facts, as it is seen."""
    return page.locator(".title-block .facts dd").first.inner_text()


def test_both_are_shown_until_one_is_chosen_and_without_script(built: Built, browser: Browser) -> None:
    for script in (True, False):
        page = opened(built, browser, java_script_enabled=script)
        assert size(page) == "6.3 × 12.6 mm (1/4 × 1/2 in)"
        assert page.locator(".units").is_visible() is script
        page.context.close()


def test_the_choice_is_remembered_on_all_pages_and_taken_back(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    other = page.context.new_page()
    other.goto((built.site / "materials" / "index.html").as_uri())
    page.get_by_role("button", name="inch, oz").click()
    assert size(page) == "1/4 × 1/2 in"
    assert page.locator(".beads .metric:visible, .so-far .metric:visible").count() == 0
    other.locator("[data-units=imperial]").wait_for(state="attached")
    page.goto((built.site / "catalogue" / "index.html").as_uri())
    assert page.locator(".plate .facts dd").first.inner_text() == "1/4 × 1/2 in"
    assert page.get_by_role("button", name="inch, oz").get_attribute("aria-pressed") == "true"
    page.get_by_role("button", name="mm, g").click()
    assert page.locator(".plate .facts dd").first.inner_text() == "6.3 × 12.6 mm"
    other.goto((built.site / "patterns" / "reed-pair" / "index.html").as_uri())
    assert other.locator(".metric:visible").count() > 10
    assert other.locator(".imperial:visible").count() == 0
    page.get_by_role("button", name="mm, g").click()
    page.reload()
    assert page.locator(".plate .facts dd").first.inner_text() == "6.3 × 12.6 mm (1/4 × 1/2 in)"
    assert page.locator(".units [aria-pressed=true]").count() == 0
    page.context.close()


def test_print_shows_the_chosen_units(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    page.keyboard.press("Tab")
    page.get_by_role("button", name="mm, g").focus()
    page.keyboard.press("Enter")
    page.emulate_media(media="print")
    assert size(page) == "6.3 × 12.6 mm"
    assert not page.locator(".units").is_visible()
    page.context.close()


def test_the_scripts_of_switch_and_list_button_stay_small() -> None:
    assert sum((LINEN / "scripts" / name).stat().st_size for name in ("units.js", "put.js")) < 2000
