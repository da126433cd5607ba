"""Word charts: what they spell out, and what is refused where."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.location import Location
from sitegen.model.wordchart import compress
from sitegen.read.faults import Faults
from sitegen.read.words import MOST_BEADS, parse_words

WHERE = Location("p.md", 7, 9, 40)


def refused(text: str) -> list[tuple[str, int, int]]:
    """Code, column and length of each problem."""
    faults = Faults()
    assert parse_words(text, WHERE, faults=faults) is None
    return [(p.code, p.where.column, p.where.length) for p in faults.problems]


@pytest.mark.parametrize(
    ("text", "beads"),
    [
        ("6D 2L 3(D A) 4D", "DDDDDDLLDADADADDDD"),
        ("D", "D"),
        ("2(2L 2D) 3L", "LLDDLLDDLLL"),
        ("2(A 2(B C))", "ABCBCABCBC"),
        ("3A2b", "AAAbb"),
        ("(A B)", "AB"),
        ("12", "2"),
        ("52", "22222"),
        ("3 A", "3A"),
        ("2(D 3)", "D3D3"),
        ("2(D 23)", "D33D33"),
        (" 2A\t B ", "AAB"),
        (f"{MOST_BEADS}A", "A" * MOST_BEADS),
    ],
)
def test_spells_out(text: str, beads: str) -> None:
    words = parse_words(text, WHERE)
    assert words is not None
    assert "".join(words.letters) == beads
    assert words.text == text


@pytest.mark.parametrize(
    ("text", "problems"),
    [
        ("", [("words-empty", 9, 1)]),
        ("0D", [("words-count", 9, 1)]),
        ("2D -3L", [("words-count", 12, 2)]),
        ("2D, 3L", [("words-character", 11, 1)]),
        ("2×D", [("words-character", 10, 1)]),
        ("2(D", [("words-unclosed", 10, 1)]),
        ("D)", [("words-stray", 10, 1)]),
        ("A 2()", [("words-hollow", 12, 2)]),
        ("A -)", [("words-count", 11, 1), ("words-stray", 12, 1)]),
        ("5001A", [("words-many", 9, 5)]),
        ("100(100A)", [("words-many", 9, 9)]),
        ("99999999A", [("words-many", 9, 8)]),
        ("(" * 13 + "A", [("words-deep", 21, 1)]),
    ],
)
def test_refuses(text: str, problems: list[tuple[str, int, int]]) -> None:
    assert refused(text) == problems


def test_each_bead_knows_its_letter() -> None:
    text = "2A 2(B 10C)"
    words = parse_words(text, WHERE)
    assert words is not None
    assert len(words.spots) == len(words.letters)
    for letter, spot in zip(words.letters, words.spots, strict=True):
        assert text[spot.column - WHERE.column] == letter
        assert spot.line == WHERE.line


def test_without_exact_text_the_whole_value_is_the_place() -> None:
    words = parse_words("2A B", WHERE, exact=False)
    assert words is not None
    assert set(words.spots) == {WHERE}


@given(st.lists(st.sampled_from("ABab019"), min_size=1, max_size=60))
def test_round_trip(letters: list[str]) -> None:
    words = parse_words(compress(tuple(letters)), WHERE)
    assert words is not None
    assert list(words.letters) == letters


CHARTS = st.recursive(
    st.tuples(st.integers(1, 9), st.sampled_from("ABab")).map(lambda t: (f"{t[0]}{t[1]}", t[1] * t[0])),
    lambda inner: st.tuples(st.integers(1, 4), st.lists(inner, min_size=1, max_size=3)).map(
        lambda t: (
            f"{t[0]}({' '.join(text for text, _ in t[1])})",
            "".join(beads for _, beads in t[1]) * t[0],
        )
    ),
    max_leaves=4,
)


@given(CHARTS)
def test_nested_repeats_multiply(chart: tuple[str, str]) -> None:
    text, beads = chart
    words = parse_words(text, WHERE)
    assert words is not None
    assert "".join(words.letters) == beads


@given(st.text(st.sampled_from("AB12 ()-+,.0\n"), max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    faults = Faults()
    words = parse_words(text, WHERE, faults=faults)
    assert (words is None) == bool(faults.problems)
