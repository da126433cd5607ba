"""A pattern's page at the work table: contents, ticks that stay, one large step at a time, and no net."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from sitegen.publish.theme import BUNDLED
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
PAGE = "patterns/reed-pair/index.html"
PHONE, LYING = {"width": 390, "height": 780}, {"width": 780, "height": 390}
LOCKS = """
window.locks = {asked: 0, open: 0};
Object.defineProperty(navigator, "wakeLock", {value: {request: async () => {
  window.locks.asked++;
  window.locks.open++;
  const lock = new EventTarget();
  lock.release = async () => { window.locks.open--; lock.dispatchEvent(new Event("release")); };
  return lock;
}}});
"""
"""Stands in for the screen's lock and counts."""
HIDE = """hidden => {
  const value = hidden ? "hidden" : "visible";
  Object.defineProperty(document, "visibilityState", {value, configurable: true});
  document.dispatchEvent(new Event("visibilitychange"));
}"""


@pytest.fixture
def page(built: Built, browser: Browser) -> Iterator[Page]:
    """The page on a phone, from the disk; what it complains of is a failure."""
    context = browser.new_context(viewport=PHONE)  # type: ignore[arg-type]  # a plain dict of the same keys
    page = context.new_page()
    faults: list[str] = []
    page.on("console", lambda message: faults.append(message.text))
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto((built.site / PAGE).as_uri())
    yield page
    assert faults == []
    context.close()


def start(page: Page) -> None:
    page.get_by_role("button", name=re.compile("Work step by step|Go on at step")).click()


def title(page: Page) -> str:
    return page.locator("dialog h2").inner_text()


def press(page: Page, name: str) -> None:
    page.get_by_role("dialog").get_by_role("button", name=name, exact=True).click()


def test_a_priced_page_has_no_bench(built: Built) -> None:
    text = built.page("pebble-charm")
    assert "bench.js" not in text
    assert "<template" not in text


def test_steps_and_rows_stay_ticked_and_progress_is_told(page: Page) -> None:
    total = page.locator("[data-step]").count()
    page.get_by_role("checkbox", name="Step 1 done").check()
    page.get_by_role("checkbox", name="Step 2 done").check()
    page.get_by_role("checkbox", name="Row 1 done").check()
    told = page.locator(".bench-bar").get_by_role("status")
    assert told.inner_text() == f"2 of {total} steps done"
    page.reload()
    assert told.inner_text() == f"2 of {total} steps done"
    assert page.get_by_role("checkbox", name="Step 2 done").is_checked()
    assert page.get_by_role("checkbox", name="Row 1 done").is_checked()
    assert not page.get_by_role("checkbox", name="Step 3 done").is_checked()
    start(page)
    assert title(page) == "Fan: step 3"


def test_ticks_belong_to_one_pattern_and_revision(built: Built, page: Page, tmp_path: Path) -> None:
    page.get_by_role("checkbox", name="Step 1 done").check()
    assert page.evaluate("Object.keys(localStorage)") == ["sitegen:ticks:reed-pair:2"]
    copy = tmp_path / "site"
    shutil.copytree(built.site, copy)
    for name, value in (("revision", "3"), ("pattern", "other")):
        text = re.sub(rf'data-{name}="[^"]+"', f'data-{name}="{value}"', built.page("reed-pair"))
        (copy / PAGE).write_text(text, encoding="utf-8")
        page.goto((copy / PAGE).as_uri())
        assert not page.get_by_role("checkbox", name="Step 1 done").is_checked()
    shutil.copy(built.site / PAGE, copy / PAGE)
    page.goto((copy / PAGE).as_uri())
    assert page.get_by_role("checkbox", name="Step 1 done").is_checked()


def test_a_page_in_other_colours_shares_the_ticks(built: Built, page: Page) -> None:
    page.get_by_role("checkbox", name="Step 1 done").check()
    page.goto((built.site / "patterns/reed-pair/in-dusk/index.html").as_uri())
    assert page.get_by_role("checkbox", name="Step 1 done").is_checked()


def test_clearing_asks_first(page: Page) -> None:
    clear = page.get_by_role("button", name="Clear all ticks")
    assert clear.count() == 0
    box = page.get_by_role("checkbox", name="Step 1 done")
    box.check()
    page.once("dialog", lambda dialog: dialog.dismiss())
    clear.click()
    assert box.is_checked()
    page.once("dialog", lambda dialog: dialog.accept())
    clear.click()
    assert not box.is_checked()
    page.reload()
    assert not box.is_checked()


def test_without_a_store_the_page_still_works(built: Built, browser: Browser) -> None:
    page = browser.new_page()
    page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new Error('no'); }});")
    page.goto((built.site / PAGE).as_uri())
    start(page)
    press(page, "Done, go on")
    assert title(page) == "Fan: step 2"
    page.close()


def test_by_touch_and_by_key_and_it_opens_where_one_left_off(page: Page) -> None:
    start(page)
    dialog = page.get_by_role("dialog")
    assert title(page) == "Fan: step 1"
    assert dialog.get_by_role("button", name="Back", exact=True).is_disabled()
    press(page, "Next")
    page.keyboard.press("ArrowRight")
    assert title(page) == "Fan: step 3"
    page.keyboard.press("ArrowLeft")
    assert title(page) == "Fan: step 2"
    assert page.locator("[data-tick^=steps]:checked").count() == 0
    press(page, "Done, go on")
    assert page.locator("[data-tick^=steps]:checked").count() == 1
    assert "Fan, step 3. 1 of" in dialog.get_by_role("status").first.inner_text()
    page.reload()
    assert title(page) == "Fan: step 3"
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Go on at step 3").wait_for()
    assert not dialog.is_visible()
    page.get_by_role("button", name="Go on at step 3").click()
    assert title(page) == "Fan: step 3"
    page.go_back()
    dialog.wait_for(state="hidden")


def test_every_step_comes_whole_and_goes_back_whole(page: Page) -> None:
    rows = page.locator("[data-step]")
    before = rows.evaluate_all("rows => rows.map(row => row.innerHTML)")
    words = rows.evaluate_all(
        "rows => rows.map(row => [...row.querySelectorAll('.doing > p')].at(-1).innerText)"
    )
    start(page)
    for place, said in enumerate(words, 1):
        assert title(page).endswith(f"step {place}")
        shown = page.locator(".bench-words")
        assert said in shown.inner_text()
        assert page.locator(".bench-stage svg").count() > 0
        press(page, "Next" if place < len(words) else "Done, go on")
    assert (
        "Every step of one piece" not in page.get_by_role("dialog").get_by_role("status").first.inner_text()
    )
    press(page, "To the page")
    page.get_by_role("dialog").wait_for(state="hidden")
    after = rows.evaluate_all("rows => rows.map(row => row.innerHTML)")
    assert after == before


def test_the_end_of_one_piece_of_a_pair_is_told(page: Page) -> None:
    for box in page.locator("[data-tick^=steps]").all():
        box.check()
    told = page.locator(".bench-bar").get_by_role("status").inner_text()
    assert told == "Every step of one piece is done. Clear the ticks to begin the other."


@pytest.mark.parametrize("motion", ["reduce", "no-preference"])
def test_a_drawing_moves_at_the_table_too(page: Page, motion: str) -> None:
    page.emulate_media(reduced_motion=motion)  # type: ignore[arg-type]  # one of its two words
    page.reload()
    whole = page.locator("[data-step='1'] svg").first.evaluate("svg => svg.outerHTML")
    start(page)
    player = page.locator(".bench-drawing .play button")
    player.click()
    assert player.inner_text() == ("Next pass" if motion == "reduce" else "Hold")
    assert page.locator(".bench-drawing [stroke-dasharray]").count() > 0
    press(page, "Next")
    assert page.locator("[data-step='1'] svg").first.evaluate("svg => svg.outerHTML") == whole


@pytest.mark.parametrize("size", [PHONE, LYING, {"width": 320, "height": 640}])
def test_keys_are_large_and_nothing_lies_under_them(page: Page, size: dict[str, int]) -> None:
    page.set_viewport_size(size)  # type: ignore[arg-type]  # a plain dict of the same keys
    start(page)
    for name in ("Back", "Done, go on", "Next", "To the page"):
        box = page.get_by_role("dialog").get_by_role("button", name=name, exact=True).bounding_box()
        assert box is not None
        assert box["height"] >= 44
        assert box["y"] + box["height"] <= size["height"]
        if name != "To the page":
            assert box["y"] > size["height"] / 2
    stage, keys = page.locator(".bench-stage").bounding_box(), page.locator(".bench-keys").bounding_box()
    assert stage is not None
    assert keys is not None
    assert stage["height"] > size["height"] * 0.4
    assert stage["y"] + stage["height"] <= keys["y"] + 1
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]


@pytest.mark.parametrize("size", [PHONE, LYING])
def test_what_has_the_focus_is_never_under_the_bar(page: Page, size: dict[str, int]) -> None:
    page.set_viewport_size(size)  # type: ignore[arg-type]  # a plain dict of the same keys
    page.emulate_media(reduced_motion="reduce")  # or places are asked for while the page still rolls
    page.locator("[data-tick]").first.focus()
    met = 0
    for _ in range(40):
        page.keyboard.press("Tab")
        overlap, stuck = page.evaluate(
            """() => {
              const focus = document.activeElement, bar = document.querySelector(".bench-bar");
              const [at, over] = [focus, bar].map((one) => one.getBoundingClientRect());
              const own = focus === document.body || bar.contains(focus) || at.height > innerHeight / 2;
              const overlap = own ? 0 : Math.min(at.bottom, over.bottom) - Math.max(at.top, over.top);
              return [overlap, Math.abs(over.bottom - innerHeight) < 2];
            }"""
        )
        assert overlap <= 1
        met += stuck
    assert met > 10


def test_the_screen_is_kept_on_while_the_table_is_open(built: Built, browser: Browser) -> None:
    page = browser.new_page()
    page.add_init_script(LOCKS)
    page.goto((built.site / PAGE).as_uri())
    assert page.evaluate("locks") == {"asked": 0, "open": 0}
    start(page)
    assert page.get_by_text("The screen stays on.").is_visible()
    assert page.evaluate("locks") == {"asked": 1, "open": 1}
    page.evaluate(HIDE, True)
    assert page.evaluate("locks") == {"asked": 1, "open": 0}
    assert not page.get_by_text("The screen stays on.").is_visible()
    page.evaluate(HIDE, False)
    page.wait_for_function("locks.open === 1")
    assert page.evaluate("locks.asked") == 2
    press(page, "To the page")
    page.wait_for_function("locks.open === 0")
    page.evaluate(HIDE, False)
    assert page.evaluate("locks.asked") == 2
    page.close()


def test_the_scripts_of_a_page_are_small_and_hold_no_words() -> None:
    scripts = sorted((LINEN / "scripts").glob("*.js"))
    assert sum(len((LINEN / "scripts" / name).read_bytes()) for name in ("bench.js", "shelf.js")) < 9_000
    assert {"bench.js", "shelf.js"} <= {path.name for path in scripts}
    for name in ("bench.js", "shelf.js"):
        text = (LINEN / "scripts" / name).read_text(encoding="utf-8")
        assert not [word for word in ("innerHTML", "eval", "document.cookie") if word in text]


def test_without_script_nothing_of_the_bench_is_seen(built: Built, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((built.site / PAGE).as_uri())
    assert page.get_by_role("button").count() == 0
    assert not page.get_by_text("Kept in this browser").is_visible()
    assert page.locator("[data-step]").first.is_visible()
    assert page.get_by_role("navigation", name="On this page").get_by_role("link").count() > 6
    context.close()
