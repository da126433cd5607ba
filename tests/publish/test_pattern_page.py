"""The order of a pattern's page, the link to its seller, and its corrections."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from sitegen.build.woven import make_pieces, weave_all
from sitegen.model.source import Revision
from sitegen.publish.buying import buy_link
from sitegen.publish.compose import print_view
from sitegen.publish.piece import Piece
from sitegen.publish.theme import BUNDLED
from sitegen.publish.words import Words
from sitegen.read.shop_file import read_shop_file
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import Built, Outline, write_shop

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())


@pytest.fixture(scope="module")
def piece(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str, str], Piece]:
    """Makes the priced sample, sold at the shop's address and at its own."""
    root = write_shop(tmp_path_factory.mktemp("priced"))
    (root / "content" / "patterns" / "reed-pair.md").unlink()
    sources = load_shop(root)
    [made] = make_pieces(weave_all(sources, print)[0], sources.shop, Words(LINEN, "en"), print)

    def sold(shop: str, own: str) -> Piece:
        return replace(made, shop=replace(made.shop, buy=shop), pattern=replace(made.pattern, buy=own))

    return sold


def test_the_contents_lead_to_every_chapter(built: Built) -> None:
    for name in ("reed-pair", "pebble-charm"):
        text = built.page(name)
        seen = Outline(text)
        listed = re.findall(r'<li><a href="#([a-z0-9-]+)">', text)
        chapters = re.findall(r'<section class="chapter(?: making| own)?" id="([a-z-]+)"', text)
        assert len(chapters) == text.count('<section class="chapter')
        assert [spot for spot in listed if spot in chapters] == chapters
        assert set(listed) <= set(seen.ids)
    assert {"steps-1", "steps-2", "chart-of-1"} <= set(Outline(built.page("reed-pair")).ids)


@pytest.mark.parametrize(
    ("shop", "own", "href", "said"),
    [
        (
            "https://sell.example/p/{name}",
            "",
            "https://sell.example/p/pebble-charm",
            "Buy the pattern, €4.50",
        ),
        ("", "mailto:oona@beads.example", "mailto:oona@beads.example", "Order the pattern by mail, €4.50"),
        ("https://sell.example/", "https://b.example/7", "https://b.example/7", "Buy the pattern, €4.50"),
    ],
)
def test_a_priced_pattern_has_a_link_to_its_seller(
    shop: str, own: str, href: str, said: str, piece: Callable[[str, str], Piece]
) -> None:
    sold = piece(shop, own)
    link = buy_link(sold.pattern, sold.shop, sold.words)
    assert link is not None
    assert (link.href, link.text) == (href, said)


def test_without_an_address_there_is_no_link_to_a_seller(piece: Callable[[str, str], Piece]) -> None:
    sold = piece("", "")
    assert buy_link(sold.pattern, sold.shop, sold.words) is None


@pytest.mark.parametrize(
    "address",
    ["http://sell.example/", "javascript:alert(1)", "data:text/html,x", "https://sell.example/{id}", "//x"],
)
def test_only_safe_addresses_sell(address: str) -> None:
    _, problems = read_shop_file(f'title: T\nbuy: "{address}"\n', "shop.yaml")
    assert [(one.code, one.where.line, one.where.column) for one in problems] == [("form", 2, 7)]


def test_a_correction_is_told_after_the_edition_that_makes_it(piece: Callable[[str, str], Piece]) -> None:
    made = piece("", "")
    mended = Revision(2, date(2026, 5, 2), "Row 2 put right.", "Row 2 began with a Z.")
    first = Revision(1, None, "First edition.")
    pattern = replace(made.pattern, revision=2, revisions=(mended, first))
    told = print_view(replace(made, pattern=pattern)).revisions
    assert [one.value for one in told] == ["Row 2 put right.", "Row 2 began with a Z.", "First edition."]
    assert told[1].label == "Correction"
