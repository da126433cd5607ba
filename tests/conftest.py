"""What every test may ask for: readable goldens with one way to renew them."""

from __future__ import annotations

import difflib
import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Golden = Callable[[Path, str], None]


def pytest_addoption(parser: pytest.Parser) -> None:
    """`--update-goldens` writes what the code makes now over what is kept."""
    parser.addoption(
        "--update-goldens", action="store_true", help="renew the kept results and show the change"
    )


def pytest_configure(config: pytest.Config) -> None:
    """Goldens are renewed by a person who reads the change, never by a machine."""
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
