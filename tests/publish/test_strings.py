"""The theme's words: every message that is asked for is there, and none lies unused."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from sitegen.draw.legend import FILLED_SIGNS, SIGNS
from sitegen.model.shop import EDITIONS
from sitegen.model.source import Makes
from sitegen.publish.making import LINE_NAMES
from sitegen.publish.papers import PAPERS
from sitegen.publish.theme import BUNDLED
from sitegen.read.body import ASIDES

ROOT = Path(__file__).parents[2]
LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
SITE = LINEN / "strings" / "en" / "site.yaml"
LEVELS = ("beginner", "advanced beginner", "intermediate", "advanced")
BANDS = ("very light", "all day", "noticeable", "heavy")


@pytest.fixture(scope="module")
def keys() -> set[str]:
    return set(yaml.safe_load(SITE.read_text(encoding="utf-8")))


def named() -> set[str]:
    """Keys that templates and code name outright."""
    files = [*(LINEN / "templates").glob("*.html"), *(ROOT / "sitegen").rglob("*.py")]
    return {
        key
        for file in files
        for key in re.findall(r'"([a-z-]+\.[a-z0-9-]+)"', file.read_text(encoding="utf-8"))
    }


def made() -> set[str]:
    """Keys that are put together from a value of the model or the trade tables."""
    return {
        *(f"makes.{makes.value}" for makes in Makes),
        *(f"level.{level}" for level in LEVELS),
        *(f"comfort.{band}" for band in BANDS),
        *(f"aside.{kind}" for kind in ASIDES),
        *(f"paper.{paper.name}" for paper in PAPERS),
        *(f"edition.{name}{end}" for name in EDITIONS for end in ("", "-about")),
        *(f"legend.{name}" for name in SIGNS),
        *(f"legend.{name}-unfilled" for name in FILLED_SIGNS),
        *(f"chart.{line}" for line in ("row", *LINE_NAMES.values())),
        *(f"chart.about-{line}s" for line in ("row", *LINE_NAMES.values())),
        *(f"chart.tick-{line}" for line in ("row", *LINE_NAMES.values())),
    }


def test_no_message_lies_unused(keys: set[str]) -> None:
    assert keys - named() - made() == set()


def test_every_message_asked_for_is_there(keys: set[str]) -> None:
    asked = set()
    for template in (LINEN / "templates").glob("*.html"):
        asked |= set(re.findall(r'\bt\("([^"]+)"', template.read_text(encoding="utf-8")))
    assert len(asked) > 40
    every = {
        key for file in SITE.parent.glob("*.yaml") for key in yaml.safe_load(file.read_text(encoding="utf-8"))
    }
    assert made() - keys == set()
    assert asked - every == set()


def test_no_message_is_given_twice() -> None:
    names = re.findall(r"^([^#\s][^:]*):", SITE.read_text(encoding="utf-8"), re.M)
    assert len(names) == len(set(names))
