"""What a visitor loads: bytes on the wire, text compressed with gzip, as every plain host sends it.

A page is all that a phone asks for until the page stands: the HTML with its drawings, style sheets, scripts,
fonts, and the pictures of the first screen. Photos are left out; pictures further down and sheets to print
come when somebody goes there.
"""

from __future__ import annotations

import gzip
from pathlib import Path
from urllib.parse import urljoin

import pytest
from playwright.sync_api import Browser

from tests.site.host import PRESSED, Host, serve
from tests.site.places import Page, Site

PATTERN_PAGE = 150_000
"""Bytes of a pattern page with all that it loads, photos left out."""
SCRIPTS = 20_000
"""Bytes of all scripts of one page as they are written, not compressed."""
PHOTOS = {".jpg", ".jpeg", ".webp"}


def on_the_wire(path: Path) -> int:
    """Bytes of a file as a host sends it."""
    data = path.read_bytes()
    return len(gzip.compress(data)) if path.suffix in PRESSED else len(data)


def loaded(browser: Browser, host: Host, site: Site, page: Page) -> set[Path]:
    """The files that a phone asks for when it opens a page: what lies further down waits until it is near."""
    files = set()
    with browser.new_context(viewport={"width": 390, "height": 844}) as context:
        tab = context.new_page()
        tab.on("request", lambda one: files.add(one.url.partition("#")[0].removeprefix(host.address)))
        tab.goto(urljoin(host.address, page.name), wait_until="load")
        tab.evaluate("document.fonts.ready")
    return {site.root / name for name in files}


@pytest.mark.slow
def test_pattern_pages_are_light(demo: Site, browser: Browser) -> None:
    """In the first language; the same pages in another one weigh the same but for a few words."""
    heavy = {}
    pages = [page for page in demo.pattern_pages if page.kind.language == demo.language]
    with serve(demo) as host:
        weighed = {page: loaded(browser, host, demo, page) for page in pages}
    for page, all_files in weighed.items():
        files = [path for path in all_files if path.suffix not in PHOTOS]
        total = sum(map(on_the_wire, files))
        if total >= PATTERN_PAGE:
            heavy[page.name] = sorted(((on_the_wire(path), path.name) for path in files), reverse=True)[:4]
    assert heavy == {}


def test_scripts_are_small(site: Site) -> None:
    for page in site.examples:
        scripts = [
            site.root / "look" / address.rpartition("/")[2] for address in page.tree.xpath("//script/@src")
        ]
        assert sum(path.stat().st_size for path in scripts) < SCRIPTS, page.name
