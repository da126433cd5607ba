"""Rules for strands: `each ...` and `from ..., each ... longer to the ...`, and where they go wrong."""

from __future__ import annotations

import pytest

from sitegen.model.location import Location
from sitegen.read.faults import Faults
from sitegen.read.strand_rule import parse_rule, strands_of
from sitegen.read.words import parse_words

WHERE = Location("s.md", 7, 20, 1)


def strands(text: str, count: int) -> list[str]:
    faults = Faults()
    rule = parse_rule(text, WHERE, faults=faults)
    assert rule is not None, faults.problems
    return ["".join(strand.letters) for strand in strands_of(rule, count, faults)]


@pytest.mark.parametrize(
    ("rule", "expected"),
    [
        ("each 2D A", ["DDA"] * 5),
        ("from D, each 2L longer to the centre", ["D", "DLL", "DLLLL", "DLL", "D"]),
        ("from 2D, each 1 longer to the centre, then A", ["DDA", "DDDA", "DDDDA", "DDDA", "DDA"]),
        ("from D, each L longer to the right", ["D", "DL", "DLL", "DLLL", "DLLLL"]),
        ("from D, each L longer to the left", ["DLLLL", "DLLL", "DLL", "DL", "D"]),
        ("from 5D L, each 2 shorter to the centre, then A", ["DDDDDLA", "DDDDA", "DDA", "DDDDA", "DDDDDLA"]),
        ("  from  D ,  each  L  longer  to  the  centre ", ["D", "DL", "DLL", "DL", "D"]),
    ],
)
def test_a_rule_gives_strands(rule, expected):
    assert strands(rule, 5) == expected


def test_an_even_number_has_two_in_the_middle():
    assert strands("from D, each L longer to the centre", 4) == ["D", "DL", "DL", "D"]


@pytest.mark.parametrize(
    ("rule", "code", "column", "length"),
    [
        ("10D 3A", "rule-form", 20, 6),
        ("from 10D each 2D longer to the centre", "rule-form", 25, 32),
        ("from 10D, 2D longer to the centre", "rule-form", 30, 23),
        ("from 10D, each 2D more to the centre", "rule-form", 35, 21),
        ("from 10D, each 2D longer to the middle", "rule-form", 45, 13),
        ("from 10D, each 2D longer to the centre, with 3A", "rule-form", 58, 9),
        ("from 1?D, each 2D longer to the centre", "words-character", 26, 1),
        ("from 10D, each 0D longer to the centre", "words-count", 35, 1),
        ("from 10D, each 0 longer to the centre", "rule-form", 35, 1),
        ("from 10D, each 2D shorter to the centre", "rule-shorter", 35, 2),
        ("from 10D, each 2D longer to the centre, then (3A", "words-unclosed", 65, 1),
        ("each 3(D", "words-unclosed", 26, 1),
        ("each 3D, 2A", "rule-form", 27, 4),
    ],
)
def test_a_fault_is_at_its_place(rule, code, column, length):
    faults = Faults()
    assert parse_rule(rule, WHERE, faults=faults) is None
    found = [(problem.code, problem.where.column) for problem in faults.problems]
    assert found == [(code, column)]
    assert faults.problems[0].where.line == 7
    assert faults.problems[0].where.length == length


def test_beads_of_a_rule_know_where_they_stand():
    rule = parse_rule("from 2D, each L longer to the right, then A", WHERE)
    assert rule is not None
    strand = strands_of(rule, 2, Faults())[1]
    assert [spot.column for spot in strand.spots] == [26, 26, 34, 62]


def test_too_few_beads_to_shorten():
    faults = Faults()
    rule = parse_rule("from 3D, each 2 shorter to the right", WHERE)
    assert rule is not None
    assert strands_of(rule, 4, faults) == ()
    assert [problem.code for problem in faults.problems] == ["rule-none-left"]


def test_branches_stand_in_square_brackets():
    words = parse_words("2D [2L A] 2(D [2A]) D", branched=True)
    assert words is not None
    assert "".join(words.letters) == "DDLLADAADAAD"
    assert words.branches == ((2, 5), (6, 8), (9, 11))


@pytest.mark.parametrize(
    ("text", "code", "column"),
    [
        ("[2A] D", "branch-start", 1),
        ("D [A] D", "branch-short", 3),
        ("D [2A [2A]] D", "branch-nested", 7),
        ("D [2A D", "words-unclosed", 3),
        ("D 2A] D", "words-stray", 5),
        ("D (2A] D", "words-stray", 6),
        ("D [] D", "words-hollow", 3),
    ],
)
def test_a_fault_in_a_branch_is_at_its_place(text, code, column):
    faults = Faults()
    assert parse_words(text, Location("s.md", 1, 1, 1), branched=True, faults=faults) is None
    assert (faults.problems[0].code, faults.problems[0].where.column) == (code, column)


def test_only_strands_take_branches():
    faults = Faults()
    assert parse_words("D [2A] D", Location("s.md", 1, 1, 1), faults=faults) is None
    assert {problem.code for problem in faults.problems} == {"words-character"}
