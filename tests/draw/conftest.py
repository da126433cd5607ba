"""Two woven patterns for the tests of the drawings."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.read.sources import load_pattern
from sitegen.weave import weave

TESTS = Path(__file__).parent.parent


def _woven(file: Path) -> tuple[Pattern, ThreadPath]:
    pattern = load_pattern(file, Shop()).patterns[0]
    path, problems = weave(pattern, Shop())
    assert path is not None
    assert not problems
    return pattern, path


@pytest.fixture(scope="session")
def kelp() -> tuple[Pattern, ThreadPath]:
    """A fan and a fringe."""
    return _woven(TESTS / "examples" / "kelp-lantern.md")


@pytest.fixture(scope="session")
def diamond() -> tuple[Pattern, ThreadPath]:
    """Worked both ways from the middle row."""
    return _woven(TESTS.parent / "content" / "patterns" / "hearth-diamond.md")
