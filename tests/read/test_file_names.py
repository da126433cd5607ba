"""Files called alike: the shop in `tests/broken/file-names` has each kind, and what comes near it."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.check.tell import tell
from sitegen.read.sources import Sources, load_shop
from tests.conftest import Golden
from tests.read.samples import REED

BROKEN = Path(__file__).parents[1] / "broken" / "file-names"


@pytest.fixture(scope="module")
def broken() -> Sources:
    return load_shop(BROKEN)


def test_the_message(broken: Sources, golden: Golden) -> None:
    golden(BROKEN / "told.txt", tell(list(broken.problems), broken.texts))


def test_each_is_told_once_where_it_can_be_renamed(broken: Sources) -> None:
    """An edition, a language, both, and bundles: `fern` has ink and large print, `moss` has neither."""
    assert [(problem.code, str(problem.where)) for problem in broken.problems] == [
        ("file-name-shared", "patterns/fern-de.md:1:1"),
        ("file-name-shared", "patterns/fern-ink.md:1:1"),
        ("file-name-shared", "patterns/fern-de-ink.md:1:1"),
        ("file-name-shared", "shop.yaml:4:12"),
        ("file-name-shared", "shop.yaml:5:12"),
    ]


def test_what_the_shop_does_not_print_keeps_no_name(tmp_path: Path) -> None:
    for name in ("fern", "fern-ink", "fern-de", "fern-a4"):
        (tmp_path / f"{name}.md").write_text(REED, encoding="utf-8")
    assert load_shop(tmp_path).problems == ()
