"""Bundles in the shop file, and the patterns they name."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from sitegen.check.tell import tell
from sitegen.model.bundle import Bundle
from sitegen.model.codes.bundles import BUNDLES
from sitegen.read.shop_file import read_shop_file
from sitegen.read.sources import load_shop
from tests.conftest import Golden
from tests.read.samples import REED

BROKEN = Path(__file__).parents[1] / "broken" / "bundles"
FREE = REED.replace("price: 4.50", "price: free")
HEAD = "title: Loft\nlanguages: [en, de]\nbundles:\n"
SPRING = "  - {name: spring, title: Spring, summary: All of it., patterns: "


def problems(folder: Path, bundles: str) -> list[tuple[str, str]]:
    """Code and place of what is wrong with the bundles of a shop with three patterns, one of them priced."""
    (folder / "shop.yaml").write_text(HEAD + bundles, encoding="utf-8")
    for name, text in (("reed", FREE), ("sedge", FREE), ("rush", REED)):
        (folder / f"{name}.md").write_text(text, encoding="utf-8")
    return [(problem.code, str(problem.where)) for problem in load_shop(folder).problems]


def test_reads_everything() -> None:
    text = (
        f"{SPRING}[reed, rush], price: 6.50, date: 2026-06-01, buy: 'https://example.org/{{name}}',"
        " translations: {de: {title: Frühling}}}\n"
    )
    shop, found = read_shop_file(HEAD + text, "shop.yaml")
    assert found == []
    assert shop.bundles == (
        Bundle(
            "spring",
            "Spring",
            "All of it.",
            ("reed", "rush"),
            Decimal("6.50"),
            date(2026, 6, 1),
            "https://example.org/{name}",
            {"de": {"title": "Frühling"}},
        ),
    )
    assert str(shop.bundles[0].at["patterns=rush"]) == f"shop.yaml:4:{text.index('rush') + 1}"


@pytest.mark.parametrize(
    "bundle",
    ["[reed, sedge]}", "[reed, sedge], price: free}", "[sedge, rush, reed], price: 6}"],
)
def test_bundles_that_can_be_made(tmp_path: Path, bundle: str) -> None:
    assert problems(tmp_path, SPRING + bundle) == []


@pytest.mark.parametrize(
    ("bundle", "code", "spot"),
    [
        ("[reed, ruhs], price: 6}", "bundle-pattern", "ruhs"),
        ("[reed, sedge, reed]}", "list-twice", "reed"),
        ("[reed]}", "bundle-alone", "[reed"),
        ("[reed, rush]}", "bundle-unpriced", "rush"),
        ("[reed, rush], price: free}", "bundle-unpriced", "free"),
        ("[reed, sedge], price: 6}", "bundle-priced", "6"),
        ("[reed, sedge], translations: {fr: {title: x}}}", "translation-unshown", "fr"),
        ("[reed, sedge]}\n" + SPRING + "[reed, sedge]}", "bundle-name", "spring"),
    ],
)
def test_bundles_that_cannot(tmp_path: Path, bundle: str, code: str, spot: str) -> None:
    """The last place where the spot stands is told, by line and column."""
    lines = (HEAD + SPRING + bundle).split("\n")
    place = f"shop.yaml:{len(lines)}:{lines[-1].rindex(spot) + 1}"
    assert problems(tmp_path, SPRING + bundle) == [(code, place)]


def test_a_bundle_is_not_called_as_a_pattern(tmp_path: Path) -> None:
    bundle = "  - {name: sedge, title: S, summary: s, patterns: [reed, sedge]}"
    assert problems(tmp_path, bundle) == [("bundle-name", "shop.yaml:4:12")]
    bundle = "  - {name: Big Set, title: S, summary: s, patterns: [reed, sedge]}"
    assert problems(tmp_path, bundle) == [("form", "shop.yaml:4:12")]


def test_the_message(golden: Golden) -> None:
    broken = load_shop(BROKEN)
    assert {problem.code for problem in broken.problems} >= set(BUNDLES)
    golden(BROKEN / "told.txt", tell(list(broken.problems), broken.texts))


def test_a_pattern_with_faults_of_its_own_adds_none_to_its_bundle(tmp_path: Path) -> None:
    (tmp_path / "sorrel.md").write_text("no header\n", encoding="utf-8")
    assert [code for code, _ in problems(tmp_path, SPRING + "[reed, sorrel]}")] == ["header-missing"]
