"""The tables of the trade: complete, sourced, and closed to words they do not know."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest

from sitegen.model.shop import Shop
from sitegen.trade.beads import bead_kind, bead_kind_names, glass_per_gram, table_kind
from sitegen.trade.figures import figure, table
from sitegen.trade.findings import finding_kind, finding_names
from sitegen.trade.needles import finer_needles, needle, needle_names
from sitegen.trade.rules import band, rules
from sitegen.trade.threads import finer_threads, parse_thread, thread_materials

TABLES = ("beads", "bugles", "glass", "threads", "needles", "findings", "rules", "cautions", "tools")
CITED = re.compile(r"\[([a-z0-9-]+) (S[123])\]")
WITHOUT_SOURCE = ("from memory", "common practice, no source", "own judgement", "no weaving", "[D]")


def figures(content: Any, trail: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every entry of a table that holds a number, with the way to it."""
    if isinstance(content, dict):
        if {"value", "most", "up_to", "source"} & set(content):
            yield trail, content
            return
        for key, item in content.items():
            yield from figures(item, f"{trail}/{key}")
    elif isinstance(content, list):
        for number, item in enumerate(content):
            yield from figures(item, f"{trail}/{number}")
    else:
        assert not isinstance(content, int | float), f"{trail}: a number without a source"


ENTRIES = [entry for name in TABLES for entry in figures(table(name), name)]


@pytest.mark.parametrize(("trail", "entry"), ENTRIES, ids=[trail for trail, _ in ENTRIES])
def test_every_figure_says_where_it_comes_from(trail: str, entry: dict[str, Any]) -> None:
    source = entry["source"]
    assert CITED.search(source) or any(words in source for words in WITHOUT_SOURCE)


def test_every_citation_leads_to_an_address_and_no_address_is_idle() -> None:
    cited = {key for _, entry in ENTRIES for key, _ in CITED.findall(entry["source"])}
    known = table("sources")
    assert cited <= set(known)
    assert set(known) - cited == {"astm-b258"}, "the wire gauge is a formula, not a figure of a table"
    assert all(source["name"] and source["address"].startswith("http") for source in known.values())


@pytest.mark.parametrize(("trail", "entry"), ENTRIES, ids=[trail for trail, _ in ENTRIES])
def test_a_figure_lies_within_its_own_range(trail: str, entry: dict[str, Any]) -> None:
    if "value" in entry:
        found = figure(entry)
        assert found.low <= found.value <= found.high


def test_names_are_found_whatever_their_case_and_blanks() -> None:
    assert bead_kind("  Round   11/0 ") == bead_kind("round 11/0")
    assert needle("Beading 12") == needle("beading 12")
    assert finding_kind("Ear  Wire") == finding_kind("ear wire")


@pytest.mark.parametrize("name", ["", "11/0", "round 5/0", "bugle 40 mm", "bugle", "round 11/0 matte"])
def test_unknown_bead_kinds_are_none(name: str) -> None:
    assert bead_kind(name) is None


def test_round_11_is_as_the_trade_sells_it() -> None:
    kind = table_kind("round 11/0")
    assert kind is not None
    assert (kind.shape, kind.width_mm, kind.length_mm, kind.hole_mm, kind.per_gram) == (
        "round",
        2.1,
        1.5,
        0.8,
        110,
    )
    assert "[esther S2]" in kind.figures["length"].source


def test_within_a_shape_a_higher_number_is_smaller_and_lighter() -> None:
    for shape in ("round", "cylinder", "cube", "bicone", "faceted"):
        kinds = [kind for name in bead_kind_names() if (kind := bead_kind(name)) and kind.shape == shape]
        sizes = [(kind.width_mm, kind.length_mm, kind.hole_mm, -kind.per_gram) for kind in kinds]
        assert all(
            one < other for small, big in pairwise(sizes) for one, other in zip(small, big, strict=True)
        )


def test_a_bugle_is_known_by_its_length() -> None:
    short, long = bead_kind("bugle 3 mm"), bead_kind("Bugle  6.5mm")
    assert short is not None
    assert long is not None
    assert (short.name, short.length_mm, long.name, long.length_mm) == ("bugle 3 mm", 3, "bugle 6.5 mm", 6.5)
    assert short.per_gram / long.per_gram == pytest.approx(6.5 / 3)
    assert all(bead_kind(f"bugle {length} mm") is None for length in ("1.9", "30.1", "0"))


@pytest.mark.parametrize("name", bead_kind_names())
def test_glass_of_that_size_weighs_about_as_much(name: str) -> None:
    """Two figures that come from different places: sizes, and counts to the gram."""
    kind = bead_kind(name)
    assert kind is not None
    assert glass_per_gram(kind) == pytest.approx(kind.per_gram, rel=0.35)


def test_an_own_bead_stands_before_the_table() -> None:
    kind = bead_kind("round 11/0")
    assert kind is not None
    assert bead_kind(" Lentil", {"lentil": kind}) is kind
    assert bead_kind("lentil") is None
    assert bead_kind_names({"lentil": kind})[0] == kind.name


@pytest.mark.parametrize(
    ("words", "material", "diameter"),
    [
        ("nylon 0.25 mm", "nylon", 0.25),
        ("Braided .15mm", "braided", 0.15),
        ("polyester 1.0 mm", "polyester", 1.0),
    ],
)
def test_threads_are_a_material_and_a_diameter(words: str, material: str, diameter: float) -> None:
    thread = parse_thread(words)
    assert thread is not None
    assert (thread.material, thread.diameter_mm) == (material, diameter)
    assert parse_thread(thread.text) == thread


@pytest.mark.parametrize(
    "words",
    [
        "nylon",
        "0.25 mm",
        "nylon 0.25",
        "nylon 0,25 mm",
        "silk 0.25 mm",
        "nylon 0.04 mm",
        "nylon 1.01 mm",
        "nylon -0.2 mm",
        "nylon 0.2 mm 0.2 mm",
        "",
    ],
)
def test_other_words_are_no_thread(words: str) -> None:
    assert parse_thread(words) is None


def test_finer_ones_stay_in_the_family_and_begin_with_the_next() -> None:
    twelve = needle("beading 12")
    assert twelve is not None
    assert [finer.name for finer in finer_needles(twelve)] == ["beading 13", "beading 15", "beading 16"]
    thread = parse_thread("braided 0.20 mm")
    assert thread is not None
    assert [finer.text for finer in finer_threads(thread)] == ["braided 0.15 mm", "braided 0.1 mm"]


def test_every_name_in_a_table_can_be_asked_for() -> None:
    assert all(map(bead_kind, bead_kind_names()))
    assert all(map(needle, needle_names()))
    assert all(map(finding_kind, finding_names()))
    assert all(parse_thread(f"{material} 0.2 mm") for material in thread_materials())
    assert {kind.worn for name in finding_names() if (kind := finding_kind(name))} <= {
        "ear",
        "neck",
        "wrist",
        "none",
    }


def test_a_shop_that_says_nothing_has_the_habits_of_the_table() -> None:
    shop, habits = Shop(), rules()
    assert (shop.spare, shop.slack, shop.tail_mm, shop.working_length_mm) == (
        habits.spare,
        habits.slack,
        habits.tail_mm,
        habits.working_length_mm,
    )
    assert shop.loom_allowance_mm == habits.loom_allowance_mm


def test_difficulty_factors_add_up_to_a_hundred() -> None:
    assert sum(factor.most for factor in rules().difficulty.values()) == 100


def test_bands_include_their_upper_limit_and_leave_no_gap() -> None:
    bands = rules().levels
    assert [band(bands, value) for value in (0, 20, 20.1, 35, 50, 50.1, 100)] == [
        "beginner",
        "beginner",
        "advanced beginner",
        "advanced beginner",
        "intermediate",
        "advanced",
        "advanced",
    ]
