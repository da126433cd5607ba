"""What every test may ask for: goldens with one way to renew them, and what is dear to make, once."""

from __future__ import annotations

import difflib
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

from tests.publish.sample_shop import Built
from tests.shared import Once, built_sample, folder_of_all, once_in

Golden = Callable[[Path, str], None]

QUIET = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run")
"""What the browser is started with: it draws alone, and asks nobody anything."""


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--update-goldens` writes what the code makes now over what is kept."""
    parser.addoption(
        "--update-goldens", action="store_true", help="renew the kept results and show the change"
    )


def pytest_configure(config: pytest.Config) -> None:
    """Goldens are renewed by a person who reads the change; no test fails because the machine is busy."""
    settings.register_profile("busy", deadline=None)
    settings.load_profile("busy")
    if config.getoption("--update-goldens") and os.environ.get("CI"):
        raise pytest.UsageError("--update-goldens does not run where CI is set: read the change yourself")


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Golden:
    """Compare a text with the file that keeps it; the failure shows a unified diff."""
    update = bool(request.config.getoption("--update-goldens"))

    def compare(path: Path, text: str) -> None:
        kept = path.read_text(encoding="utf-8") if path.exists() else ""
        if text == kept:
            return
        diff = "".join(
            difflib.unified_diff(kept.splitlines(True), text.splitlines(True), f"{path.name} (kept)", "(now)")
        )
        if not update:
            pytest.fail(f"{path} differs from what the code makes now:\n{diff}", pytrace=False)
        sys.stderr.write(diff)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    return compare


@pytest.fixture(scope="session")
def once(tmp_path_factory: pytest.TempPathFactory) -> Once:
    """Make something once for all workers."""
    return once_in(folder_of_all(tmp_path_factory))


@pytest.fixture(scope="session")
def built(once: Once) -> Built:
    """The sample shop and its output, for reading alone."""
    return once("sample", built_sample)


@pytest.fixture(scope="session")
def chromium() -> str:
    """The path of the browser."""
    program = shutil.which("chromium") or shutil.which("chromium-browser")
    assert program, "the tests need chromium; `make test` installs it"
    return program


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Browser]:
    """One browser for the tests of a module."""
    with sync_playwright() as player:
        browser = player.chromium.launch(executable_path=chromium, args=[*QUIET])
        yield browser
        browser.close()
