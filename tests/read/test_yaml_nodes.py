"""YAML: raw text in, nodes with places out; no conveniences."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.location import Location
from sitegen.read.faults import Faults
from sitegen.read.text import clean
from sitegen.read.yaml_nodes import Entries, Items, Node, Scalar, core_value, read_yaml


def node(text: str) -> Node:
    faults = Faults()
    tree = read_yaml(text, "f", 1, faults)
    assert faults.problems == []
    assert tree is not None
    return tree


def values(text: str) -> dict[str, object]:
    tree = node(text)
    assert isinstance(tree, Entries)
    return {key.text: core_value(value) for key, value in tree.pairs if isinstance(value, Scalar)}


def refused(text: str) -> list[tuple[str, int, int]]:
    faults = Faults()
    read_yaml(text, "f", 1, faults)
    return [(problem.code, problem.where.line, problem.where.column) for problem in faults.problems]


@pytest.mark.parametrize(
    "word", ["no", "on", "off", "Yes", "1:30", "11/0", "1_000", "2026-03-14", "=", "1,5"]
)
def test_what_older_rules_convert_stays_text(word: str) -> None:
    """YAML 1.1 made these booleans, base-60 numbers, dates ...; in YAML 1.2 (core schema) they are text."""
    assert values(f"a: {word}") == {"a": word}


@pytest.mark.parametrize(
    ("word", "value"),
    [
        *[("true", True), ("False", False), ("null", None), ("~", None), ("", None), ("-3", -3), ("012", 12)],
        *[("1.50", 1.5), ("1e3", 1000.0), (".5", 0.5), ('"3"', "3"), ("'true'", "true")],
    ],
)
def test_core_values(word: str, value: object) -> None:
    assert values(f"a: {word}") == {"a": value}


def test_places_are_those_of_the_text_inside_quotes() -> None:
    text = 'a: "#fff"\nb: [x,  yy]\nc: plain words   # comment\n'
    tree = node(text)
    assert isinstance(tree, Entries)
    found = {key.text: value for key, value in tree.pairs}
    assert found["a"].where == Location("f", 1, 5, 4)
    assert found["b"].where == Location("f", 2, 4, 8)
    assert isinstance(found["b"], Items)
    assert [item.where for item in found["b"].nodes] == [Location("f", 2, 5, 1), Location("f", 2, 9, 2)]
    assert found["c"].where == Location("f", 3, 4, 11)


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("a: &x 1\n", ("yaml-alias", 1, 4)),
        ("a: 1\nb: *x\n", ("yaml-alias", 2, 4)),
        ("<<: {a: 1}\n", ("yaml-merge", 1, 1)),
        ("a: !!int 3\n", ("yaml-tag", 1, 4)),
        ("a: ! 3\n", ("yaml-tag", 1, 4)),
        ("a: 1\nb: 2\na: 3\n", ("yaml-twice", 3, 1)),
        ("{a: 1, a: 2}\n", ("yaml-twice", 1, 8)),
        ("? {a: 1}\n: 2\n", ("yaml-key", 1, 3)),
        ("a:\n\tb: 1\n", ("yaml-tab", 2, 1)),
        ("a:\n  \tb: 1\n", ("yaml-tab", 2, 3)),
        ("a: 1\n---\nb: 2\n", ("yaml-second", 2, 1)),
        ('a: "x\n', ("yaml-quote", 1, 4)),
        ("a: 'x\nb: 'y'\n", ("yaml-quote", 1, 4)),
        ("a: {b: 1\nc: 2\n", ("yaml-bracket", 1, 4)),
        ("a: [1, 2\n", ("yaml-bracket", 1, 4)),
        ("a: b: c\n", ("yaml-colon", 1, 5)),
        ("a: @x\n", ("yaml-character", 1, 4)),
        ("a:\n  b: 1\n c: 2\n", ("yaml-indent", 3, 2)),
        ("a: #5d7a3a\n", ("value-comment", 1, 4)),
        ("a: {hex: #5d7a3a}\nb: 1\n", ("value-comment", 1, 10)),
        ("[" * 50 + "]" * 50, ("yaml-deep", 1, 20)),
        ('a: "x\\0y"\n', ("hidden-character", 1, 5)),
        ('"\\u202e": y\n', ("hidden-character", 1, 2)),
        ('a: "x\\u2066y"\n', ("hidden-character", 1, 5)),
        ('a: "\\ud800"\n', ("yaml-escape", 1, 7)),
    ],
)
def test_refuses(text: str, problem: tuple[str, int, int]) -> None:
    assert refused(text) == [problem]


def test_thousands_of_levels_are_no_danger() -> None:
    assert [code for code, _, _ in refused("[" * 100_000)] == ["yaml-deep"]
    assert [code for code, _, _ in refused("- " * 100_000)] == ["yaml-deep"]


def test_an_empty_document_is_none() -> None:
    faults = Faults()
    assert read_yaml("# nothing\n", "f", 1, faults) is None
    assert faults.problems == []


YAML_LIKE = st.text(st.sampled_from("ab:- \n\t#'\"{}[],&*!|>%@`?1.\\~<=é\u3042"), max_size=60)


@given(YAML_LIKE | st.text(max_size=60))
def test_any_text_is_read_or_refused_within_its_lines(text: str) -> None:
    faults = Faults()
    even = clean(text, "f", faults)
    before = len(faults.problems)
    tree = read_yaml(even, "f", 1, faults)
    lines = even.split("\n")
    for problem in faults.problems[before:]:
        assert 1 <= problem.where.line <= len(lines)
        assert 1 <= problem.where.column <= len(lines[problem.where.line - 1]) + 2
    assert tree is None or isinstance(tree.where, Location)
