"""Reading and moving about: keyboard, narrow screens, no script, a silent console, the first picture."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from playwright.sync_api import Browser, Route
from playwright.sync_api import Page as Tab

from tests.site.conftest import DEMO_ALONE
from tests.site.host import Host, serve
from tests.site.places import Page, Site

FOR_SCRIPTS = "ancestor::svg or ancestor::template or ancestor::*[@hidden][not(.//tr or .//ol)]"
"""Controls and remarks that a script shows are no instructions; a table or a list of steps is."""
SETTLED = 150
"""Milliseconds in which a page has done what it does after loading."""
WIDE = {"width": 1280, "height": 800}
NARROWEST = 320  # WCAG 2.2, 1.4.10: 1280 CSS pixels enlarged four times
MARK = """() => {
  const able = "a[href], button, input, select, textarea, summary, [tabindex]";
  const seen = [...document.querySelectorAll(able)]
    .filter((one) => one.tabIndex >= 0 && !one.disabled && one.checkVisibility({ visibilityProperty: true }));
  const radios = new Set();
  return seen.filter((one) => {
    if (one.type !== "radio") return true;
    const fresh = !radios.has(one.name);
    radios.add(one.name);
    return fresh;
  }).map((one, place) => { one.dataset.walk = place; return place; }).length;
}"""
FOCUSED = """async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  await frame();
  await frame();
  const one = document.activeElement;
  const look = getComputedStyle(one);
  const box = one.getBoundingClientRect();
  const middle = document.elementFromPoint(
    Math.min(Math.max(box.x + box.width / 2, 0), innerWidth - 1),
    Math.min(Math.max(box.y + box.height / 2, 0), innerHeight - 1),
  );
  const label = one.closest("label");
  return {
    walk: one.dataset.walk === undefined ? null : Number(one.dataset.walk),
    name: one.outerHTML.slice(0, 120),
    ring: (look.outlineStyle !== "none" && parseFloat(look.outlineWidth) >= 2)
      || (label !== null && getComputedStyle(label).outlineStyle !== "none"),
    seen: middle !== null && (one.contains(middle) || middle.contains(one)),
    onScreen: box.bottom > 0 && box.top < innerHeight && box.width > 0 && box.height > 0,
  };
}"""
TOO_WIDE = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
SPACED = "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important }"
READ = """() => {
  document.querySelectorAll("details").forEach((one) => { one.open = true; });
  return document.querySelector("main").innerText;
}"""


@contextmanager
def opened(browser: Browser, address: str, **how: Any) -> Iterator[Tab]:
    """A page in a browser of its own, nothing remembered."""
    with browser.new_context(**how) as context:
        tab = context.new_page()
        tab.goto(address)
        yield tab


def from_disk(page: Page) -> str:
    return page.path.resolve().as_uri()


def plain(text: str) -> str:
    """Text without blanks and capitals, which style sheets change."""
    return re.sub(r"\s+", "", text).casefold()


@DEMO_ALONE
def test_tab_goes_through_the_page_as_it_is_read(site: Site, host: Host, browser: Browser) -> None:
    """Everything in the order of the page, once, on the screen, uncovered and with a ring around it."""
    walked(site, host, browser)


def walked(site: Site, host: Host, browser: Browser) -> None:
    """Tab through one page of each kind in the first language."""
    faults = []
    for page in [one for one in site.examples if one.kind.language == site.language]:
        with opened(browser, host.address + page.name, viewport=WIDE, reduced_motion="reduce") as tab:
            for place in range(tab.evaluate(MARK)):
                tab.keyboard.press("Tab")
                now = tab.evaluate(FOCUSED)
                if now["walk"] != place:
                    faults.append(f"{page.name}: at {place} of the page Tab comes to {now['name']}")
                    break
                faults += [
                    f"{page.name}: {now['name']} has no {what}"
                    for what in ("ring", "seen", "onScreen")
                    if not now[what]
                ]
    assert faults == []


@DEMO_ALONE
def test_nothing_sticks_out_of_the_narrowest_screen(site: Site, host: Host, browser: Browser) -> None:
    """Nor with the letters set as far apart as WCAG 2.2, 1.4.12, asks for."""
    faults = []
    for page in site.examples:
        how = {"viewport": {"width": NARROWEST, "height": 800}, "bypass_csp": True}
        with opened(browser, host.address + page.name, **how) as tab:
            plainly = tab.evaluate(TOO_WIDE)
            tab.add_style_tag(content=SPACED)
            apart = tab.evaluate(TOO_WIDE)
            if plainly > 0 or apart > 0:
                faults.append(f"{page.name}: {plainly} px, {apart} px with wide letters")
    assert faults == []


def test_without_script_all_instructions_are_read(site: Site, browser: Browser) -> None:
    """Every word of steps, materials and cautions is on the page, nothing hidden behind a script."""
    taught = 0
    with opened(browser, "about:blank", java_script_enabled=False) as tab:
        for page in site.pattern_pages:
            texts = page.tree.xpath(f"//main//text()[not({FOR_SCRIPTS})]")
            wanted = [text.strip() for text in texts if text.strip()]
            tab.goto(from_disk(page), wait_until="domcontentloaded")
            read = plain(tab.evaluate(READ))
            assert [text for text in wanted if plain(text) not in read] == [], page.name
            taught += len(wanted)
    assert taught > 100


def told(browser: Browser, address: str, home: str) -> list[str]:
    """What a browser says of a page: messages, errors, requests that fail or go elsewhere, cookies."""
    said: list[str] = []
    asked: list[str] = []
    with browser.new_context() as context:
        tab = context.new_page()
        tab.on("console", lambda message: said.append(message.text))
        tab.on("pageerror", lambda error: said.append(str(error)))
        tab.on("requestfailed", lambda one: said.append(f"{one.url} {one.failure}"))
        tab.on("request", lambda one: asked.append(one.url))
        tab.goto(address, wait_until="load")
        tab.wait_for_timeout(SETTLED)
        said += [f"asked for {url}" for url in asked if not url.startswith(home)]
        said += [f"the cookie {cookie}" for cookie in context.cookies()]
    return [f"{address}: {one}" for one in said]


@DEMO_ALONE
def test_the_browser_has_nothing_to_say(site: Site, host: Host, browser: Browser) -> None:
    """From the disk and over the web."""
    said = []
    for page in site.examples:
        if not page.stands_in:
            said += told(browser, from_disk(page), site.root.resolve().as_uri())
        said += told(browser, host.address + page.name, host.address)
    assert said == []


@DEMO_ALONE
def test_the_first_picture_is_seen_before_any_script(site: Site, browser: Browser) -> None:
    """With every script held back for ever, the picture of a pattern stands on the screen."""
    held: list[Route] = []
    for page in [one for one in site.examples if one.kind.place == "patterns"]:
        with browser.new_context(viewport={"width": 390, "height": 844}) as context:
            context.route("**/*.js", lambda route: held.append(route))
            tab = context.new_page()
            tab.goto(from_disk(page), wait_until="commit")
            picture = tab.locator("main").locator("svg, img").first
            picture.wait_for(state="visible", timeout=10_000)
            box = picture.bounding_box()
            assert box is not None
            assert box["y"] < 844, page.name
            assert box["width"] * box["height"] > 100 * 100, page.name
            assert held or not page.tree.xpath("//script/@src"), page.name


@pytest.mark.parametrize(
    "fault", ['tabindex="3"', 'style="outline: none"', 'style="opacity: 0; position: fixed; top: -9em"']
)
def test_a_bad_walk_is_seen(tmp_path: Any, browser: Browser, fault: str) -> None:
    text = (
        f'<html lang="en"><body><main><a href="#a">One</a> <a href="#b" {fault}>Two</a></main></body></html>'
    )
    (tmp_path / "index.html").write_text(text, encoding="utf-8")
    with pytest.raises(AssertionError), serve(Site(tmp_path)) as host:
        walked(Site(tmp_path), host, browser)
