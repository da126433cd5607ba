"""WCAG 2.2 A and AA and good practice by axe-core: nothing to object, narrow and wide, light and dark."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.site.conftest import DEMO_ALONE
from tests.site.host import Host
from tests.site.outside import MODULES
from tests.site.places import Site

AXE = (MODULES / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
RUN = """async () => {
  const found = await axe.run(document, { resultTypes: ["violations"] });
  return found.violations.map(({ id, nodes }) => [id, nodes.length, nodes[0].html.slice(0, 200)]);
}"""
EMPTIED = """() => {
  document.querySelectorAll("svg > :not(title, desc)").forEach((one) => { one.remove(); });
}"""
USED = {
    "a catalogue that is narrowed": (
        "catalogue/",
        "document.querySelector('main fieldset input').click()",
        ".told p",
    ),
    "a list that was sent": (
        "list/",
        "location.hash = '#hedge-berry-bracelet=2&window-box=1'",
        ".wanted li",
    ),
    "step by step": ("patterns/", "document.querySelector('[data-is=open]').click()", "dialog[open]"),
    "colours too much alike": (
        "patterns/",
        """const [one, other] = document.querySelectorAll("#own input[type=color]");
           other.value = one.value;
           ["input", "change"].forEach((name) => other.dispatchEvent(new Event(name)));""",
        "[data-own=keys]",
    ),
}
"""First letters of a page's name, what a visitor does there, and what is seen then."""
WIDTHS = (320, 390, 1280)
COMMON = 390
FAULTY = '<!doctype html><html><title>x</title><main><h1>x</h1><img src="x.png"><p style="color: #ccc">Pale'


def objections(
    context: BrowserContext,
    address: str,
    widths: tuple[int, ...],
    prepare: str = "() => null",
    seen: str = "body",
) -> list[tuple[int, Any]]:
    """(width, what axe found) of one page, after a script has prepared it so that something is seen."""
    tab = context.new_page()
    tab.goto(address)
    tab.evaluate(prepare)
    tab.locator(seen).first.wait_for(state="visible", timeout=10_000)
    tab.evaluate(AXE)  # as the browser's tools do, so that the page's own policy does not refuse it
    found = []
    for width in widths:
        tab.set_viewport_size({"width": width, "height": 800})
        found += [(width, one) for one in tab.evaluate(RUN)]
    tab.close()
    return found


@DEMO_ALONE
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_one_page_of_each_kind_at_every_width(site: Site, host: Host, browser: Browser, scheme: Any) -> None:
    """Pages in another language have other words in the same places: they are looked at on a phone by day."""
    found = []
    with browser.new_context(color_scheme=scheme) as context:
        for page in site.examples:
            first = page.kind.language == site.language
            widths = WIDTHS if first else (COMMON,) if scheme == "light" else ()
            objected = objections(context, host.address + page.name, widths) if widths else []
            found += [(page.name, *one) for one in objected]
    assert found == []


@DEMO_ALONE
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("use", USED)
def test_pages_in_use(site: Site, host: Host, browser: Browser, scheme: str, use: str) -> None:
    """What scripts show to a visitor who uses them; the page is made dark by its own switch."""
    place, done, seen = USED[use]
    page = max((one for one in site.examples if one.name.startswith(place)), key=lambda one: len(one.text))
    dark = "document.querySelector('.light-switch').click();" if scheme == "dark" else ""
    with browser.new_context() as context:
        address, prepare = host.address + page.name, f"() => {{ {dark} {done} }}"
        found = objections(context, address, (COMMON, WIDTHS[-1]), prepare, seen)
    assert [(page.name, *one) for one in found] == []


@pytest.mark.slow
def test_every_page_of_the_demo_shop_at_the_width_of_a_phone(demo: Site, browser: Browser) -> None:
    """In its first language, and not inside the drawings: of those, one page of each kind was looked at."""
    found = []
    with browser.new_context() as context:
        for page in demo.pages:
            if page.kind.language == demo.language:
                objected = objections(context, page.path.resolve().as_uri(), (COMMON,), EMPTIED)
                found += [(page.name, *one) for one in objected]
    assert found == []


def test_axe_sees_planted_faults(browser: Browser, tmp_path: Any) -> None:
    (tmp_path / "faults.html").write_text(FAULTY, encoding="utf-8")
    with browser.new_context() as context:
        found = {one[0] for _, one in objections(context, (tmp_path / "faults.html").as_uri(), (COMMON,))}
    assert {"html-has-lang", "image-alt", "color-contrast"} <= found
