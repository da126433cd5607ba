"""A page that was opened once goes on without a net, and a new build takes the place of what was kept."""

from __future__ import annotations

import os
import shutil
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from sitegen.publish.offline import WORKER, offline_worker
from sitegen.publish.theme import BUNDLED
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
PAGE = "patterns/reed-pair/index.html"


class _Still(SimpleHTTPRequestHandler):
    def log_message(self, *args: object) -> None:
        """Nothing: a test needs no log."""


@contextmanager
def served(folder: Path, port: int = 0) -> Iterator[int]:
    """The folder on a port of this machine; nothing answers there once the block is left."""
    server = ThreadingHTTPServer(("127.0.0.1", port), partial(_Still, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield server.server_address[1]
    finally:
        server.shutdown()
        server.server_close()


@pytest.mark.parametrize("address", [PAGE, "patterns/reed-pair/"])
def test_an_opened_page_goes_on_without_a_net(built: Built, browser: Browser, address: str) -> None:
    context = browser.new_context()
    page = context.new_page()
    with served(built.site) as port:
        page.goto(f"http://127.0.0.1:{port}/{address}")
        page.get_by_text("Kept in this browser").wait_for()
        page.get_by_role("button", name="Work step by step").click()
        page.get_by_role("button", name="Done, go on").click()
    page.reload()
    title = page.locator("dialog h2")
    assert title.inner_text() == "Fan: step 2"
    page.get_by_role("button", name="Done, go on").click()
    assert title.inner_text() == "Fan: step 3"
    fonts = (
        "document.fonts.ready.then(() => [...document.fonts].filter(one => one.status == 'loaded').length)"
    )
    assert page.evaluate(fonts) >= 2
    chip = page.locator(".chip.bead-G").first
    assert chip.evaluate("one => getComputedStyle(one).backgroundColor") == "rgb(60, 107, 69)"
    context.close()


def test_a_new_build_takes_the_place_of_the_old(built: Built, browser: Browser, tmp_path: Path) -> None:
    site = tmp_path / "site"
    shutil.copytree(built.site, site)
    context = browser.new_context()
    page = context.new_page()
    with served(site) as port:
        page.goto(f"http://127.0.0.1:{port}/{PAGE}")
        page.get_by_text("Kept in this browser").wait_for()
        [old] = page.evaluate("caches.keys()")
        text = (site / PAGE).read_text(encoding="utf-8").replace("A small fan", "A mended fan")
        (site / PAGE).write_text(text, encoding="utf-8")
        later = time.time() + 60  # a server tells changes by the second
        os.utime(site / PAGE, (later, later))
        files = {str(path): path.read_bytes() for path in site.rglob("*") if path.is_file()}
        (site / WORKER).write_bytes(offline_worker(files, LINEN))
        page.goto(f"http://127.0.0.1:{port}/{PAGE}")
        page.wait_for_function(
            "old => caches.keys().then(all => all.length === 1 && all[0] !== old)", arg=old
        )
    page.reload()
    page.get_by_text("A mended fan").first.wait_for()
    context.close()


def test_the_worker_is_named_after_what_the_site_holds() -> None:
    one = offline_worker({"site/a": b"1"}, LINEN)
    assert one == offline_worker({"site/a": b"1"}, LINEN)
    others = ({"site/a": b"2"}, {"site/b": b"1"}, {"site/a": b"1", "site/b": b""})
    assert len({one, *(offline_worker(files, LINEN) for files in others)}) == 4
