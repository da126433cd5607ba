"""The header: typed values, and every fault with its place."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Gauge, Makes, Measured, Pattern
from sitegen.read.pattern import read_pattern
from tests.read.samples import changed, codes, read, sound

TITLE = "title: Reed drops"


def with_line(line: str) -> str:
    """The sample with one more line (or several) before its colours."""
    return changed(("colours:\n", f"{line}\ncolours:\n"))


def read_beside(body: str, header: str) -> tuple[Pattern, list[Problem]]:
    """Body and header read from two files."""
    pattern, problems = read_pattern(body, "reed.md", Shop(), header, "reed.yaml")
    assert pattern is not None
    return pattern, problems


def test_values_have_their_types() -> None:
    pattern = sound(
        with_line(
            "gauge: {beads: 20, width: 4.3 cm, rows: 10, height: 16 mm}\n"
            "measured: {width: 31 mm, height: 0.078 m}\n"
            "revisions:\n  - {number: 1, date: 2026-03-14, note: First edition.}\n"
            'colourways:\n  - {name: Dusk, G: {name: plum, hex: "#5E2A4D"}}'
        )
    )
    assert (pattern.name, pattern.title, pattern.makes) == ("reed", "Reed drops", Makes.PAIR)
    assert pattern.price == Decimal("4.50")
    assert pattern.gauge == Gauge(20, 43.0, 10, 16.0)
    assert pattern.measured == Measured(31.0, 78.0)
    assert pattern.revisions[0].date == date(2026, 3, 14)
    assert pattern.colourways[0].swaps["G"].hex == "#5e2a4d"
    wedge, drops = pattern.parts
    assert wedge.hang is not None
    assert drops.hang is not None
    assert (wedge.hang.finding, wedge.hang.edge, wedge.hang.part) == ("ear wire", "top", None)
    assert (drops.hang.finding, drops.hang.edge, drops.hang.part) == (None, "bottom", "Wedge")
    assert ["".join(words.letters) for words in drops.all_strands] == ["GGGW", "GGGGWW", "GGGW"]


@pytest.mark.parametrize(
    ("written", "price"),
    [("free", None), ("0", None), ("0.00", None), ("5", Decimal(5)), ("5.5", Decimal("5.5"))],
)
def test_prices(written: str, price: Decimal | None) -> None:
    assert sound(changed(("price: 4.50", f"price: {written}"))).price == price


@pytest.mark.parametrize("written", ["-1", "5.555", "5,50", "€5", "1e3", "gratis", "5.", "true", "NaN", "٣"])
def test_no_prices(written: str) -> None:
    assert codes(read(changed(("price: 4.50", f"price: {written}")))[1]) == [("price", 6, 8)]


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("measured: {width: 12, height: 3 mm}", "length"),
        ("measured: {width: 12 inch, height: 3 mm}", "length"),
        ("measured: {width: 0 mm, height: 3 mm}", "out-of-range"),
        ("measured: {width: -3 mm, height: 3 mm}", "out-of-range"),
        ("measured: {width: .nan mm, height: 3 mm}", "length"),
        ("measured: {width: 12 mm}", "key-missing"),
        ("measured: 12 mm", "value-shape"),
        ("measured: {}", "key-missing"),
        ("gauge: {beads: 2.5, width: 43 mm, rows: 1, height: 1 mm}", "whole-number"),
        ("gauge: {beads: true, width: 43 mm, rows: 1, height: 1 mm}", "whole-number"),
        ("revisions: [{number: 1, date: 2026-02-30, note: x}]", "date"),
        ("revisions: [{number: 1, date: 14.3.2026, note: x}]", "date"),
        ("revisions: first", "value-shape"),
        ("colourways: [{name: Dusk, G: plum}]", "value-shape"),
        ('colourways: [{name: Dusk, GG: {name: a, hex: "#123456"}}]', "key-unknown"),
        ("needle2: x", "key-unknown"),
        ("gauge:", "value-empty"),
        ("measured: null", "value-empty"),
    ],
)
def test_one_fault(line: str, code: str) -> None:
    found = codes(read(with_line(line))[1])
    assert {code for code, _, _ in found} == {code}
    assert all(place == 10 for _, place, _ in found)


def test_title_may_look_like_a_number() -> None:
    assert sound(changed((TITLE, "title: 1912"))).title == "1912"


def test_long_texts_may_be_folded() -> None:
    text = changed(("summary: A small wedge with four short strands.", "summary: >\n  A small\n  wedge."))
    assert sound(text).summary == "A small wedge."


def test_digits_are_letters() -> None:
    text = changed(
        ("  G: {", "  1: {"), (" G G\nG W G", " 1 1\n1 W 1"), ("3G 1W", "3(1) W"), ("4G 2W", "41 W")
    )
    assert "".join(sound(text).parts[1].strands[1].letters) == "1111W"


def test_all_faults_in_one_run() -> None:
    text = changed(
        ("makes: pair", "makes: two"),
        ("price: 4.50", "price: dear"),
        ("turn: 1", "turn: 0"),
        ("3G 1W", "3G 1?"),
        ('hex: "#eef0e6"', 'hex: "#eef0e"'),
        ("::: steps Wedge", "::: steps Fan"),
    )
    found = codes(read(text)[1])
    wanted = {"choice-unknown", "price", "out-of-range", "words-character", "hex", "part-unknown"}
    assert {code for code, _, _ in found} == wanted
    assert len(found) == 6  # each once


def test_what_can_be_read_is_kept() -> None:
    pattern, problems = read(changed((TITLE, ""), ("  - 3G 1W", "  - 0G")))
    assert len(problems) == 2
    assert pattern is not None
    assert [len(words.letters) for words in pattern.parts[1].strands] == [0, 6]


def test_stock_lends_its_beads() -> None:
    shop = Shop(stock={"reed": StockBead("reed", "round 8/0", "reed green", "#112233", "matte")})
    text = changed(('{bead: round 11/0, name: reed, hex: "#5d7a3a"}', "{stock: reed}"))
    colour = sound(text, shop).colour("G")
    assert colour is not None
    assert (colour.bead, colour.name, colour.hex, colour.finish) == (
        "round 8/0",
        "reed green",
        "#112233",
        "matte",
    )
    assert colour.stock == "reed"
    assert codes(read(text)[1]) == [("stock-unknown", 11, 14)]


def test_stock_and_own_bead_do_not_mix() -> None:
    shop = Shop(stock={"reed": StockBead("reed", "round 8/0", "reed green", "#112233")})
    text = changed(('{bead: round 11/0, name: reed, hex: "#5d7a3a"}', "{stock: reed, name: other}"))
    assert codes(read(text, shop)[1]) == [("key-unknown", 11, 20)]


def test_lists_have_an_end() -> None:
    assert codes(read(changed(("      - 4G 2W\n", "      - 4G 2W\n" * 1000)))[1]) == [("list-long", 23, 7)]


def test_missing_keys_point_at_the_record() -> None:
    assert codes(read(changed((f"{TITLE}\n", "")))[1]) == [("key-missing", 1, 1)]
    assert codes(read(changed(("name: reed, ", "")))[1]) == [("key-missing", 11, 6)]
    assert codes(read(changed(("  - name: Drops\n    stitch: fringe\n", "  - name: Drops\n")))[1]) == [
        ("key-missing", 18, 5)
    ]


def test_a_header_that_is_no_record() -> None:
    assert codes(read("---\n- a\n---\n")[1]) == [("value-shape", 2, 1)]
    assert codes(read("---\njust words\n---\n")[1]) == [("value-shape", 2, 1)]


def test_the_header_may_stand_beside() -> None:
    from_one = sound(changed())
    header, body = changed().removeprefix("---\n").split("---\n")
    from_two, problems = read_beside(body, header)
    assert problems == []
    assert from_two == from_one
    assert from_two.at["title"].file == "reed.yaml"
    assert codes(read_beside(changed(), header)[1]) == [("header-double", 1, 1)]
