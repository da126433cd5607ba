"""One shopping list for several patterns, counted by hand from their charts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sitegen.build.look import shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.publish.bundle_sums import Sums, sums
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.read.sources import load_shop
from tests.publish.listed_shop import SHOP, SOURCES

NAMES = ("reed-pair", "pebble-charm", "loom-band")


@pytest.fixture(scope="module")
def pieces(tmp_path_factory: pytest.TempPathFactory) -> list[Piece]:
    root = tmp_path_factory.mktemp("sums")
    (root / "shop.yaml").write_text(SHOP, encoding="utf-8")
    for name in NAMES:
        (root / f"{name}.md").write_text(SOURCES[name], encoding="utf-8")
    sources = load_shop(root)
    look, _ = shop_look(sources)
    assert look is not None
    woven, _ = weave_all(sources, lambda line: None)
    made = {piece.pattern.name: piece for piece in make_pieces(woven, sources.shop, look.words, print)}
    return [made[name] for name in NAMES]


@pytest.fixture(scope="module")
def summed(pieces: list[Piece]) -> Sums:
    return sums(pieces, pieces[0].words)


def test_a_bead_of_several_patterns_is_one_line(summed: Sums) -> None:
    """Reed green: 4 in each of the pair (G) and 3 in the charm (Q); chalk: 3 in it (Z), 6 in the band (b)."""
    lines = {line.name: (line.used, line.total) for line in summed.beads}
    assert lines == {
        "reed green": ("1 G, 2 Q", "11"),
        "milk": ("1 W", "2"),
        "chalk": ("2 Z, 3 b", "9"),
        "+sand": ("3 a", "10"),
    }
    assert (summed.total, summed.spare) == ("32", "10")


def test_packs_are_counted_over_the_sum(summed: Sums, pieces: list[Piece]) -> None:
    """Each pattern alone would buy a pack of reed green; together they need one."""
    alone = [bead.packs for piece in pieces for bead in piece.measures.beads if bead.name == "reed green"]
    assert alone == [1, 1]
    (line,) = [line for line in summed.beads if line.name == "reed green"]
    assert line.packs == "1 × 2 g"
    assert line.buy.startswith("2 g")


def test_grams_are_those_of_all(summed: Sums, pieces: list[Piece]) -> None:
    grams = sum(bead.grams for piece in pieces for bead in piece.measures.beads if bead.name == "chalk")
    (line,) = [line for line in summed.beads if line.name == "chalk"]
    assert line.grams == Quantities(pieces[0].words).both_weights(grams)


def test_thread_and_findings_are_summed_by_kind(summed: Sums, pieces: list[Piece]) -> None:
    told = [(fact.label, fact.value, fact.also) for fact in summed.supplies]
    pair, charm, band = (piece.measures for piece in pieces)
    nylon = charm.thread.total_mm + band.thread.total_mm + sum(line.total_mm for line in band.warps)
    tell = Quantities(pieces[0].words)
    assert told == [
        ("Needle", "beading 12", ""),
        ("Thread", "braided 0.15 mm", tell.both_threads(2 * pair.thread.total_mm)),
        ("Thread", "nylon 0.2 mm", tell.both_threads(nylon)),
        ("Finding", "2 × ear wire", ""),
    ]


def test_no_needle_is_told_only_where_no_piece_needs_one(pieces: list[Piece]) -> None:
    words = pieces[0].words
    strung = replace(pieces[0], pattern=replace(pieces[0].pattern, needle="no needle"))
    assert sums([strung, pieces[1]], words).supplies[0].value == "beading 12"
    assert sums([strung, strung], words).supplies[0].value == "no needle"
