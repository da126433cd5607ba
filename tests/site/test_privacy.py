"""What a visit tells nobody: the policy of every page, scripts that send nothing, and what is said of it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Route

from tests.site.host import serve
from tests.site.places import Page, Site
from tests.site.test_reading import SETTLED

ROOT = Path(__file__).parents[2]
LINEN = ROOT / "themes" / "linen"
SCRIPTS = sorted([*(LINEN / "scripts").glob("*.js"), *(LINEN / "workers").glob("*.js")])
LOADS = "//script/@src | //img/@src | //img/@srcset | //link[@rel!='canonical' and @rel!='alternate']/@href"
TELLS = r"document\.cookie|XMLHttpRequest|sendBeacon|WebSocket|EventSource|RTCPeer|innerHTML|\beval\("
KEPT = {
    "ticks": "steps you have ticked",
    "light": "light or dark pages",
    "units": "millimetres or inches",
    "list": "your shopping list",
}
"""What scripts keep under `sitegen:NAME` -> how the help page names it."""
WATCH = """
window.caught = [];
addEventListener("securitypolicyviolation", (event) => {
  window.caught.push(`${event.violatedDirective} ${event.blockedURI}`);
});
"""


def directives(policy: str) -> dict[str, str]:
    """Directive -> its sources."""
    parts = (part.strip().partition(" ") for part in policy.split(";") if part.strip())
    return {name: sources for name, _, sources in parts}


def page_policy(page: Page) -> dict[str, str]:
    """What the page itself says."""
    (policy,) = page.tree.xpath("//meta[@http-equiv='Content-Security-Policy']/@content")
    return directives(policy)


def headers() -> dict[str, str]:
    """The headers that the README asks of a host."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    (block,) = re.findall(r"```http\n(.*?)```", text, re.DOTALL)
    return dict(line.split(": ", 1) for line in block.splitlines())


def test_every_page_allows_its_own_site_alone(site: Site) -> None:
    for page in site.pages:
        policy = page_policy(page)
        assert policy["default-src"] == policy["base-uri"] == policy["form-action"] == "'none'", page.name
        assert set(policy.values()) <= {"'none'", "'self'"}, page.name
        assert page.tree.xpath("//meta[@name='referrer']/@content") == ["no-referrer"], page.name


def test_no_page_has_a_script_or_a_style_within(site: Site) -> None:
    for page in site.pages:
        inside = page.tree.xpath("//script[not(@src)][not(contains(@type, 'json'))] | //style | //@style")
        handlers = page.tree.xpath("//@*[starts-with(name(), 'on')]")
        assert [*inside, *handlers] == [], page.name


def test_nothing_is_loaded_from_elsewhere(site: Site) -> None:
    """Style sheets too; links to other sites leave them no hold on the page."""
    for page in site.pages:
        foreign = [one for one in page.tree.xpath(LOADS) if "//" in one or one.startswith("data:")]
        links = page.tree.xpath("//a[contains(@href, '://')][not(contains(@rel, 'noopener'))]/@href")
        assert [*foreign, *links] == [], page.name
    for path in site.files(".css"):
        assert not re.search(r"@import|url\(\s*[\"']?(https?:|//|data:)", path.read_text(encoding="utf-8")), (
            path
        )


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda path: path.name)
def test_scripts_send_nothing_and_keep_what_the_help_page_says(script: Path) -> None:
    text = script.read_text(encoding="utf-8")
    assert re.findall(TELLS, text) == []
    assert ("fetch(" in text) == (script.parent.name == "workers")
    keys = set(re.findall(r"[\"'`]sitegen:([a-z]+)", text))
    assert keys <= set(KEPT)
    assert ("localStorage" in text) == bool(keys)
    told = (ROOT / "content" / "pages" / "help.md").read_text(encoding="utf-8")
    assert [name for name in keys if KEPT[name] not in told] == []


def test_the_headers_of_a_host_say_the_same(sample: Site, browser: Browser) -> None:
    """The README's policy is the page's, with what only a header can say, and the pages live under it."""
    asked = headers()
    policy = directives(asked["Content-Security-Policy"])
    front = page_policy(sample.front)
    assert policy == front | {"connect-src": "'self'", "frame-ancestors": "'none'", "script-src": "'self'"}
    assert asked["X-Content-Type-Options"] == "nosniff"
    assert asked["Referrer-Policy"] == "no-referrer"

    def answer(route: Route) -> None:
        found = route.fetch()
        route.fulfill(response=found, headers={**found.headers, **asked})

    said = []
    with serve(sample) as host, browser.new_context() as context:
        context.add_init_script(WATCH)
        context.route("**/*", answer)
        tab = context.new_page()
        for page in sample.examples:
            tab.goto(host.address + page.name, wait_until="load")
            tab.wait_for_timeout(SETTLED)
            said += [f"{page.name}: {one}" for one in tab.evaluate("caught")]
        assert context.cookies() == []
    assert said == []
