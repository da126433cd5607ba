"""Step drawings that move when asked: buttons, order of appearing, stillness, and no script where none is."""

from __future__ import annotations

from itertools import pairwise

from playwright.sync_api import Browser, Locator, Page

from sitegen.publish.theme import BUNDLED
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
SCRIPT = LINEN / "scripts" / "play.js"
SEEN = """row => {
  const shown = (kind) => [...row.querySelectorAll(`[data-kind="${kind}"] :is(path, text)`)]
    .filter((one) => getComputedStyle(one).visibility === "visible");
  const drawn = shown("thread-ground").map((one) => one.getAttribute("stroke-dasharray"));
  return {
    thread: drawn.reduce((sum, dash) => sum + (dash ? parseFloat(dash) : 1e6), 0),
    beads: shown("beads-new").length, arrows: shown("arrows").length, ends: shown("ends").length,
  };
}"""
"""How much of a step drawing is seen: mm of thread, new beads, arrows."""
STATIC = 'row => row.querySelector("svg").outerHTML'


def opened(built: Built, browser: Browser, **how: object) -> Page:
    page = browser.new_page(**how)  # type: ignore[arg-type]  # options of the browser
    page.goto((built.site / "patterns/reed-pair/index.html").as_uri())
    return page


def a_row(page: Page) -> Locator:
    """A step of several beads."""
    rows = page.locator(".table-of-steps tr", has=page.locator(".play"))
    counts = [len(rows.nth(place).locator('[data-kind="beads-new"]').all()) for place in range(rows.count())]
    return rows.nth(counts.index(max(counts)))


def test_small_plain_and_without_a_word_for_readers() -> None:
    text = SCRIPT.read_bytes()
    assert len(text) < 6000
    assert not [word for word in (b"fetch", b"import", b"innerHTML", b"eval") if word in text]
    assert text.count(b"http") == text.count(b'"http://www.w3.org/2000/svg"') == 1


def test_every_drawing_with_thread_has_a_named_button(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    drawn = page.locator('.drawing svg:has([data-kind="thread-line"])').count()
    buttons = page.get_by_role("button", name="Show it moving: Step")
    assert buttons.count() == drawn > 5
    box = buttons.first.bounding_box()
    assert box is not None
    assert box["height"] >= 44
    page.close()


def test_moving_holding_going_on_and_once_more(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda message: faults.append(message.text))
    row = a_row(page)
    button, status = row.get_by_role("button"), row.get_by_role("status")
    before, whole = row.evaluate(STATIC), row.evaluate(SEEN)
    button.focus()
    page.keyboard.press("Enter")
    assert button.text_content() == "Hold"
    assert status.text_content() == "The needle is moving."
    seen = []
    for _ in range(4):
        page.wait_for_timeout(250)
        seen.append(row.evaluate(SEEN))
    assert all(one["thread"] < other["thread"] for one, other in pairwise(seen))
    assert all(one["beads"] <= other["beads"] for one, other in pairwise(seen))
    assert seen[0]["beads"] < whole["beads"]
    page.keyboard.press("Enter")
    assert button.text_content() == "Go on"
    assert status.text_content() == "The needle is held."
    held = row.evaluate(SEEN)
    page.wait_for_timeout(200)
    assert row.evaluate(SEEN) == held
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Show it once more").wait_for(timeout=20_000)
    assert status.text_content() == "The whole step is shown."
    assert row.evaluate(STATIC) == before
    page.keyboard.press("Enter")
    assert button.text_content() == "Hold"
    assert faults == []
    page.close()


def test_only_one_drawing_moves_at_a_time(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    buttons = page.locator(".play button")
    buttons.nth(0).click()
    buttons.nth(1).click()
    assert buttons.nth(0).text_content() == "Go on"
    assert buttons.nth(1).text_content() == "Hold"
    page.close()


def test_who_wants_no_motion_gets_pass_after_pass(built: Built, browser: Browser) -> None:
    page = opened(built, browser, reduced_motion="reduce")
    row = a_row(page)
    before = row.evaluate(STATIC)
    button = row.get_by_role("button")
    assert button.text_content() == "Show it pass by pass"
    page.wait_for_timeout(100)
    assert row.evaluate(STATIC) == before
    passes = [0.0]
    while True:
        button.click()
        if button.text_content() == "Show it once more":
            break
        seen = row.evaluate(SEEN)
        page.wait_for_timeout(60)
        assert row.evaluate(SEEN) == seen
        assert seen["thread"] > passes[-1]
        passes.append(seen["thread"])
    assert len(passes) > 3
    assert row.evaluate(STATIC) == before
    page.close()


def test_printing_shows_the_whole_drawing(built: Built, browser: Browser) -> None:
    page = opened(built, browser)
    row = a_row(page)
    before = row.evaluate(STATIC)
    row.get_by_role("button").click()
    page.wait_for_timeout(100)
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert row.evaluate(STATIC) == before
    page.close()


def test_without_script_the_page_is_whole(built: Built, browser: Browser) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((built.site / "patterns/reed-pair/index.html").as_uri())
    assert page.get_by_role("button").count() == 0
    assert page.locator(".drawing svg").first.is_visible()
    context.close()


def test_a_page_without_steps_has_no_player(built: Built) -> None:
    for page in (built.page("pebble-charm"), (built.site / "index.html").read_text(encoding="utf-8")):
        assert "play.js" not in page
    free = built.page("reed-pair")
    assert free.count("look/play.js") == 1
    assert "script-src 'self'" in free
    assert "unsafe" not in free
