"""The sums of the shopping list, made in a browser, against the measures of the patterns, made in Python."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

import pytest
from playwright.sync_api import Browser, BrowserContext

from sitegen.measure.materials import whole_packs
from sitegen.measure.tools import kind_of
from sitegen.publish.piece import Piece
from tests.publish.listed_shop import Listed, as_table, listed

COMBINATIONS: list[dict[str, int]] = [
    {"reed-pair": 2},
    {"pebble-charm": 1},
    {"reed-pair": 2, "pebble-charm": 1},
    {"reed-pair": 1, "pebble-charm": 31, "loom-band": 7},
    {"reed-pair": 37, "reed-pair.in-dusk": 3, "loom-band": 1},
    {"reed-pair": 999, "pebble-charm": 999, "loom-band": 999},
]


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A browser with nothing kept."""
    context = browser.new_context()
    yield context
    context.close()


@dataclass(frozen=True)
class Bought:
    count: int
    grams: float
    packs: int
    cost: str


def reckoned(
    pieces: Mapping[str, Piece], wanted: Mapping[str, int]
) -> dict[tuple[str, str], dict[str, object]]:
    """(colour, hex) -> what has to be bought, from the measures of each pattern."""
    counts: dict[tuple[str, str], int] = {}
    about: dict[tuple[str, str], tuple[float, float, Decimal | None]] = {}
    for name, number in wanted.items():
        piece = pieces[name]
        for line in piece.measures.beads:
            key = (line.name, line.hex)
            counts[key] = counts.get(key, 0) + line.each * number
            stock = piece.shop.stocked(piece.pattern.colour(line.letter))
            per_gram = kind_of(line.bead, piece.pattern.bead_kinds).per_gram
            about[key] = (per_gram, line.pack_grams, stock.price if stock else None)
    found = {}
    for key, count in counts.items():
        per_gram, pack, price = about[key]
        packs = whole_packs(count / per_gram, 0.10, pack)
        cost = "" if price is None else f"{price * packs:.2f}"
        found[key] = Bought(count, count / per_gram, packs, cost)
    return found


@pytest.mark.parametrize("wanted", COMBINATIONS)
def test_the_sums_are_those_of_python(
    listed_shop: Listed, context: BrowserContext, wanted: dict[str, int]
) -> None:
    pieces = listed_shop.pieces
    table = as_table(listed(context, listed_shop.site, wanted))
    expected = reckoned(pieces, wanted)
    beads = {(row[1].removeprefix("'"), row[3]): row for row in table if row[0] == "Bead"}
    assert beads.keys() == expected.keys()
    for key, line in expected.items():
        count, grams, packs, _, _, cost = beads[key][4:10]
        assert (int(count), int(packs), cost) == (line.count, line.packs, line.cost)
        assert float(grams) == pytest.approx(line.grams, abs=0.0005)
    threads: dict[str, float] = {}
    findings: dict[str, int] = {}
    for name, number in wanted.items():
        measures = pieces[name].measures
        length = measures.thread.total_mm + sum(line.count * line.each_mm for line in measures.warps)
        threads[pieces[name].thread] = threads.get(pieces[name].thread, 0) + length * number
        for kind, count in pieces[name].findings.items():
            findings[kind] = findings.get(kind, 0) + count * number
    told = {row[1]: float(row[8]) for row in table if row[0] == "Thread"}
    assert told == pytest.approx({kind: mm / 1000 for kind, mm in threads.items()}, abs=0.0005)
    assert {row[1]: int(row[4]) for row in table if row[0] == "Finding"} == findings
    assert {row[1] for row in table if row[0] == "Needle"} == {pieces[name].needle for name in wanted}


@pytest.mark.parametrize("name", ["reed-pair", "pebble-charm", "loom-band"])
def test_one_pattern_takes_what_its_own_page_says(
    listed_shop: Listed, context: BrowserContext, name: str
) -> None:
    measures = listed_shop.pieces[name].measures
    page = listed(context, listed_shop.site, {name: measures.pieces})
    shown = page.locator("tbody tr").all()
    cells = {row.locator("[data-is=name]").inner_text(): row for row in shown}
    for line in measures.beads:
        row = cells[line.name]
        assert row.locator("[data-is=count]").inner_text() == str(line.total)
        assert row.locator("[data-is=packs]").inner_text() == f"{line.packs} × {line.pack_grams:g} g"
        assert row.locator(".metric").inner_text() == f"{line.grams:.{1 if line.grams >= 0.1 else 2}f} g"


def test_packs_are_rounded_up_over_the_sum_and_not_for_each_pattern(
    listed_shop: Listed, context: BrowserContext
) -> None:
    """Reed green: 4 beads in a piece of the pair, 3 in a charm; 2 g packs."""
    per_gram = kind_of("round 11/0").per_gram
    number = math.floor(2 * per_gram / 1.1 / 2 / 4)
    alone = {"reed-pair": number}, {"pebble-charm": number}
    page = listed(context, listed_shop.site, {"reed-pair": number, "pebble-charm": number})
    both = [row for row in as_table(page) if row[1] == "reed green"]
    assert len(both) == 1, "a bead of two patterns stands once"
    key = ("reed green", "#3c6b45")
    assert [reckoned(listed_shop.pieces, one)[key].packs for one in alone] == [1, 1]
    assert both[0][6] == "1"
