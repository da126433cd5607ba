"""Whole sources: the three examples, their places, and texts that are none."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.location import Location
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Hang, LooseFinding, Pattern, Prose, Words
from sitegen.read.pattern import read_pattern
from tests.read.samples import REED, read, sound

EXAMPLES = Path(__file__).parent.parent / "examples"
NAMES = ("gulls-bookmark", "harbour-steps", "kelp-lantern")


def example(name: str) -> Pattern:
    text = (EXAMPLES / f"{name}.md").read_text(encoding="utf-8")
    pattern, problems = read_pattern(text, f"{name}.md", Shop())
    assert problems == []
    assert pattern is not None
    return pattern


def test_kelp_lantern() -> None:
    pattern = example("kelp-lantern")
    fan, fringe = pattern.parts
    assert [len(row.cells) for row in fan.all_rows] == list(range(2, 12))
    assert fan.hang == Hang("top", finding="ear wire")
    assert fringe.hang == Hang("bottom", part="Fan")
    assert fringe.turn == 3
    assert [len(words.letters) for words in fringe.all_strands] == [
        13,
        14,
        16,
        18,
        18,
        19,
        18,
        18,
        16,
        14,
        13,
    ]
    assert pattern.price is None
    assert [type(block).__name__ for block in pattern.body] == [
        "Prose", "ChartHere", "Prose", "StepsHere", "Aside", "StepsHere", "Prose",
    ]  # fmt: skip


def test_harbour_steps() -> None:
    pattern = example("harbour-steps")
    band, clasp = pattern.parts
    assert [len(row.cells) for row in band.all_rows] == [8, 7] * 54
    assert band.begin == "top"
    assert clasp.finding == LooseFinding("slide clasp", 20.0)
    assert pattern.price == Decimal("6.50")
    assert [revision.number for revision in pattern.revisions] == [2, 1]
    assert set(pattern.colourways[0].swaps) == {"N", "S", "R"}
    assert pattern.colours[2].finish == "matte"


def test_gulls_bookmark() -> None:
    strip, foot = example("gulls-bookmark").parts
    assert [len(row.cells) for row in strip.all_rows] == [9] * 60
    assert [len(words.letters) for words in foot.all_strands] == [9, 11, 13, 15, 17, 15, 13, 11, 9]


def locations(record: Any) -> Iterator[tuple[Any, str, Location]]:
    """(record, field, place) of every place in a record and all it holds."""
    if isinstance(record, tuple | list):
        for item in record:
            yield from locations(item)
    elif isinstance(record, dict):
        for item in record.values():
            yield from locations(item)
    elif is_dataclass(record) and not isinstance(record, Location):
        for name, where in getattr(record, "at", {}).items():
            yield record, name, where
        for field in fields(record):
            if field.name != "at":
                yield from locations(getattr(record, field.name))


def cut(text: str, where: Location) -> str:
    """The characters a place takes."""
    line = text.split("\n")[where.line - 1]
    return line[where.column - 1 : where.column - 1 + where.length]


def shown(value: Any, written: str) -> str:
    """A value as the author may have written it."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, float):
        return f"{value:g} mm"
    if value is None:
        return "free"
    return str(getattr(value, "value", value)) if not isinstance(value, Decimal) else f"{value:f}"


@pytest.mark.parametrize("name", NAMES)
def test_every_place_cuts_out_its_value(name: str) -> None:
    text = (EXAMPLES / f"{name}.md").read_text(encoding="utf-8")
    seen = 0
    for record, key, where in locations(example(name)):
        value = getattr(record, key, None) if key else None
        single = key and not isinstance(value, tuple | dict) and not is_dataclass(value)
        if single and hasattr(record, key):
            assert cut(text, where).lower() == shown(value, cut(text, where)).lower()
            seen += 1
        assert cut(text, where).strip()
    assert seen > 20


@pytest.mark.parametrize("name", NAMES)
def test_every_bead_knows_its_letter(name: str) -> None:
    text = (EXAMPLES / f"{name}.md").read_text(encoding="utf-8")
    pattern = example(name)
    beads = 0
    for part in pattern.parts:
        for row in part.chart.rows if part.chart else ():
            for cell, (_, letter) in enumerate(row.cells):
                assert cut(text, row.spot(cell)) == letter
                beads += 1
        for words in part.strands:
            assert cut(text, words.where) == words.text
            for letter, spot in zip(words.letters, words.spots, strict=True):
                assert cut(text, spot) == letter
                beads += 1
    assert beads > 50
    for block in pattern.body:
        first = block.text.split("\n")[0] if isinstance(block, Prose) else None
        assert cut(text, block.where) == first or first is None


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("", "header-missing", 1),
        ("Words.\n", "header-missing", 1),
        ("\n---\ntitle: x\n---\n", "header-missing", 1),
        ("---\ntitle: x\n", "header-unclosed", 1),
        ("---\n---\n", "header-empty", 1),
        ("---\n# later\n---\n", "header-empty", 1),
    ],
)
def test_no_header(text: str, code: str, line: int) -> None:
    pattern, problems = read(text)
    assert pattern is None
    assert [(problem.code, problem.where.line) for problem in problems] == [(code, line)]


def test_a_body_is_read_even_if_its_header_cannot_be() -> None:
    text = REED.replace("title: Reed", "title: 'Reed").replace("::: steps", "::: stepps")
    pattern, problems = read(text)
    assert pattern is None
    assert [problem.code for problem in problems] == ["yaml-quote", "mark-unknown"]


@pytest.mark.parametrize("sign", ["\x00", "\x1b", "\x7f", "\x85", "\u200b", "\u2028", "\ufeff"])
def test_hidden_characters_are_found(sign: str) -> None:
    _, problems = read(
        REED.replace("Light as", f"Light{sign} as").replace("makes: pair", f"makes: {sign}pair")
    )
    assert [(p.code, p.where.line, p.where.column) for p in problems] == [
        ("hidden-character", 4, 8),
        ("hidden-character", 27, 6),
    ]


def test_equality_does_not_look_at_places() -> None:
    moved = sound(REED.replace("makes: pair\n", "makes: pair\n\n"))
    assert moved == sound(REED)
    assert moved.at["price"] != sound(REED).at["price"]


LINES = REED.splitlines(keepends=True)
SIGNS = st.sampled_from([*"{}[]:,#&*!|>'\"%@`-.?\t\n\r ()0123456789GW\u2028\x00é", "```", ":::", "---\n"])


@st.composite
def mangled(draw: st.DrawFn) -> str:
    """The sample with some lines dropped, doubled or moved, and signs strewn in."""
    order = draw(st.lists(st.integers(0, len(LINES) - 1), max_size=6))
    lines = list(LINES)
    for number in order:
        line = lines.pop(number % len(lines))
        for _ in range(draw(st.integers(0, 2))):
            lines.insert(draw(st.integers(0, len(lines))), line)
    text = "".join(lines)
    for _ in range(draw(st.integers(0, 4))):
        place = draw(st.integers(0, len(text)))
        text = text[:place] + draw(SIGNS) + text[place + draw(st.integers(0, 3)) :]
    return text


@given(
    mangled() | st.text(max_size=200) | st.text(max_size=200).map(lambda text: f"---\n{text}\n---\n{text}")
)
def test_any_text_never_raises(text: str) -> None:
    pattern, problems = read(text)
    assert pattern is not None or problems
    for problem in problems:
        assert problem.where.line >= 1
        assert problem.where.column >= 1


def test_records_of_rows_and_words_are_compared_by_beads() -> None:
    one, two = Location("a", 1), Location("b", 2)
    assert Words("A", ("A",), one, (one,)) == Words("A", ("A",), two, (two,))
    assert Chart("F", (ChartRow(((0, "A"),), one),), one) == Chart("F", (ChartRow(((0, "A"),), two),), two)
