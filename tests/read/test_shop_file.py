"""The shop file."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.shop import Shop, StockBead
from sitegen.read.shop_file import read_shop_file
from tests.read.samples import codes

FULL = """# yaml-language-server: $schema=../schema/shop.json
title: Heron Loft
tagline: Patterns with feathers
maker: Ida Heron
language: en
currency: SEK
address: https://example.org/beads
licence: Make and sell as many as you like.
about: A loft, a lamp.
theme: linen
needle: beading 10
thread: braided 0.15 mm
working_length: 160 cm
tail: 20 cm
slack: 1.25
pack: 10 g
spare: 15 %
finding_passes: 4
ticks: true
stock:
  moss: {bead: round 11/0, name: moss, hex: "#445522", finish: matte, pack: 7.5 g, price: 2.40}
  chalk:
    bead: round 8/0
    name: chalk
    hex: "#EEEEEE"
"""


def test_reads_everything() -> None:
    shop, problems = read_shop_file(FULL, "shop.yaml")
    assert problems == []
    assert shop == Shop(
        title="Heron Loft",
        tagline="Patterns with feathers",
        maker="Ida Heron",
        language="en",
        currency="SEK",
        address="https://example.org/beads/",
        licence="Make and sell as many as you like.",
        about="A loft, a lamp.",
        theme="linen",
        needle="beading 10",
        thread="braided 0.15 mm",
        working_length_mm=1600.0,
        tail_mm=200.0,
        slack=1.25,
        pack_grams=10.0,
        spare=0.15,
        finding_passes=4,
        ticks=True,
        stock={
            "moss": StockBead("moss", "round 11/0", "moss", "#445522", "matte", 7.5, Decimal("2.40")),
            "chalk": StockBead("chalk", "round 8/0", "chalk", "#eeeeee"),
        },
    )
    assert shop.at["tail_mm"].line == 14


def test_what_is_not_said_is_usual() -> None:
    assert read_shop_file("title: A\n", "shop.yaml") == (Shop(title="A"), [])


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", ("header-empty", 1, 1)),
        ("- a\n", ("value-shape", 1, 1)),
        ("tagline: x\n", ("key-missing", 1, 1)),
        ("title: x\nmaster: y\n", ("key-unknown", 2, 1)),
        ("title: x\ncurrency: Euro\n", ("form", 2, 11)),
        ("title: x\ntheme: ../../etc\n", ("form", 2, 8)),
        ("title: x\neditions: [colour, tiny]\n", ("choice-unknown", 2, 20)),
        ("title: x\neditions: [ink, ink]\n", ("list-twice", 2, 17)),
        ("title: x\neditions: []\n", ("list-empty", 2, 11)),
        ("title: x\neditions: ink\n", ("value-shape", 2, 11)),
        ("title: x\naddress: javascript:alert(1)\n", ("form", 2, 10)),
        ("title: x\nspare: 0.1\n", ("percent", 2, 8)),
        ("title: x\nspare: 300 %\n", ("out-of-range", 2, 8)),
        ("title: x\npack: 5\n", ("mass", 2, 7)),
        ("title: x\nslack: 0.5\n", ("out-of-range", 2, 8)),
        ("title: x\nslack: loose\n", ("number", 2, 8)),
        ("title: x\nworking_length: 1 m 60\n", ("length", 2, 17)),
        ("title: x\nstock: {}\n", ("value-empty", 2, 8)),
        ('title: x\nstock: {Moss: {bead: round 11/0, name: a, hex: "#112233"}}\n', ("stock-key", 2, 9)),
    ],
)
def test_refuses(text: str, problem: tuple[str, int, int]) -> None:
    assert codes(read_shop_file(text, "shop.yaml")[1]) == [problem]


@given(st.text(max_size=80) | st.lists(st.sampled_from(FULL.splitlines(True)), max_size=8).map("".join))
def test_any_text_never_raises(text: str) -> None:
    shop, _ = read_shop_file(text, "shop.yaml")
    assert isinstance(shop, Shop)


def test_tails_leave_thread_to_work_with():
    _, problems = read_shop_file("title: x\ntail: 100 cm\nworking_length: 30 cm\n", "shop.yaml")
    assert [(problem.code, problem.where.line) for problem in problems] == [("tail-too-long", 2)]


def test_languages_and_the_texts_in_them() -> None:
    text = "title: Loft\nabout: A lamp.\nlanguages: [en, de]\ntranslations:\n  de: {about: Eine Lampe.}\n"
    shop, problems = read_shop_file(text, "shop.yaml")
    assert problems == []
    assert (shop.language, shop.languages, shop.folder) == ("en", ("en", "de"), "")
    german = shop.in_language("de")
    assert (german.title, german.about, german.folder) == ("Loft", "Eine Lampe.", "de/")
    assert german.foreign == {"title"}
    assert shop.in_language("en") is shop


@pytest.mark.parametrize(
    ("code", "where", "lines"),
    [
        ("languages-first", "shop.yaml:3:12", "language: de\nlanguages: [en, de]\n"),
        ("translation-unshown", "shop.yaml:3:3", "translations:\n  de: {about: Eine Lampe.}\n"),
        ("translation-language", "shop.yaml:3:3", "translations:\n  German: {about: Eine Lampe.}\n"),
        ("key-unknown", "shop.yaml:4:8", "languages: [en, de]\ntranslations:\n  de: {price: 3}\n"),
    ],
)
def test_languages_that_do_not_fit(code: str, where: str, lines: str) -> None:
    _, problems = read_shop_file(f"title: Loft\n{lines}", "shop.yaml")
    assert [(problem.code, str(problem.where)) for problem in problems] == [(code, where)]


def test_editions_are_put_in_the_order_of_the_offer() -> None:
    shop, problems = read_shop_file("title: Loft\neditions: [summary, colour, ink]\n", "shop.yaml")
    assert not problems
    assert shop.editions == ("colour", "ink", "summary")
