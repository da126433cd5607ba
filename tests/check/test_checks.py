"""Every check, by one change to a sound source; and its silence about what could not be read."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given

from sitegen.check import CHECKS, check_pattern
from sitegen.check.stitch import STITCHES, StitchShape
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Pattern
from sitegen.read.chart import RECTANGULAR
from sitegen.read.sources import load_pattern
from tests.read.samples import REED, changed, codes, read, sound
from tests.read.test_pattern import EXAMPLES, mangled

CHART = " G G\nG W G"
BEGIN = "begin: bottom"
STRANDS = "    mirror: true\n"
PIN = "  - {name: Pin, stitch: none, strands: [2G]}"


def found(*changes: tuple[str, str]) -> list[tuple[str, int, int]]:
    """What the checks say to the sample, changed; reading must find nothing."""
    return codes(check_pattern(sound(changed(*changes)), Shop()))


def test_the_sample_is_sound() -> None:
    assert found() == []


@pytest.mark.parametrize(
    ("changes", "problem"),
    [
        ([("{bead: round 11/0, name: reed", "{bead: round 99/0, name: reed")], ("bead-unknown", 11, 13)),
        ([("needle: beading 12", "needle: sewing 7")], ("needle-unknown", 7, 9)),
        ([("thread: nylon 0.25 mm", "thread: silk 0.25 mm")], ("thread-unknown", 8, 9)),
        ([("finding: ear wire\ncolours", "finding: ear hoop loop\ncolours")], ("finding-unknown", 9, 10)),
        ([("{finding: ear wire, from: top}", "{finding: wire, from: top}")], ("finding-unknown", 17, 21)),
        ([("stitch: brick", "stitch: brik")], ("stitch-unknown", 15, 13)),
        ([("name: Drops", "name: Wedge")], ("part-twice", 18, 11)),
        ([(f"```chart Wedge\n{CHART}\n```\n", "")], ("chart-needed", 14, 11)),
        ([(STRANDS, f"{STRANDS}{PIN}\n")], ("strands-needless", 26, 40)),
        ([(BEGIN, f"{BEGIN}\n    mirror: true")], ("mirror-needless", 17, 13)),
        ([("    hang: {from: Wedge, edge: bottom}\n", "")], ("hang-needed", 18, 11)),
        ([("{from: Wedge, edge: bottom}", "{finding: ear wire, from: top}")], ("hang-needed", 20, 11)),
        ([("{from: Wedge, edge", "{from: Wedges, edge")], ("hang-unknown", 20, 18)),
        ([("{from: Wedge, edge", "{from: Drops, edge")], ("hang-later", 20, 18)),
        ([("      - 3G 1W\n", "")], ("strand-count", 22, 5)),
        ([("edge: bottom", "edge: top")], ("strand-count", 22, 5)),
        ([("turn: 1", "turn: 5"), ("3G 1W", "9G")], None),
        ([("turn: 1", "turn: 5"), ("3G 1W", "5G")], ("strand-short", 23, 9)),
        ([(BEGIN, "begin: row 2")], None),
        ([(BEGIN, "begin: row 3")], ("begin-row", 16, 12)),
        ([(BEGIN, "begin: row 3\n    repeat: 2")], None),
        ([("3G 1W", "3G 1X")], ("letter-undefined", 23, 13)),
        ([("3G 1W", "3 G 1W")], ("letter-or-count", 23, 9)),
        ([("3G 1W", "4G"), ("4G 2W", "6G"), ("G W G", "G G G")], ("letter-unused", 12, 3)),
        ([(CHART, " G G\nG W  G")], ("row-out-of-step", 31, 6)),
        ([(CHART, "G G\nG W G")], ("row-shifted", 31, 1)),
        ([(CHART, " G G\nG W   G")], ("row-gap", 31, 7)),
        ([(CHART, " G G\nG . W G G")], ("row-gap", 31, 5)),
        ([(CHART, " G G\n      G W G")], ("row-adrift", 31, 7)),
        ([(CHART, " G\nG\n G G\nG W G")], ("rows-of-one", 31, 1)),
        ([(CHART, "G\n G G\nG W G\n G"), (BEGIN, f"{BEGIN}\n    repeat: 2")], None),
        ([("stitch: brick", "stitch: ladder"), (CHART, "G W\nG W G\nG W G")], ("row-width", 30, 1)),
        ([("stitch: brick", "stitch: ladder"), (CHART, "G W .\nG W G\nG W G")], None),
        ([("revision: 1", "revision: 1\nrevisions: [{number: 2, note: x}]")], ("revision-old", 5, 11)),
        ([("revision: 1", "revision: 3\nrevisions: [{number: 2, note: x}]")], ("revision-unlisted", 5, 11)),
        ([("colours:\n", 'colourways: [{name: D, B: {name: x, hex: "#111111"}}]\ncolours:\n')],
         ("colourway-letter", 10, 24)),
        ([(BEGIN, f"{BEGIN}\n    repeat: 1000"), (CHART, f" {'G ' * 30}\n{'G ' * 15}{'W ' * 15}G"),
          ("      - 4G 2W\n    mirror: true\n", "      - 4G 2W\n" * 30)], ("too-many-beads", 17, 13)),
    ],
)  # fmt: skip
def test_one_change_one_problem(changes: list[tuple[str, str]], problem: tuple[str, int, int] | None) -> None:
    strands_only = {"strand-count", "hang-no-edge"}  # a changed chart may leave other strands to hang
    said = found(*changes)
    if problem is None or problem[0] not in strands_only:
        said = [each for each in said if each[0] not in strands_only]
    assert said == ([] if problem is None else [problem])


def test_a_single_shifted_row_is_told_once() -> None:
    rows = ["  G G", " G W G", " G W W G", " G W W W G"]
    assert [code[:2] for code in found((CHART, "\n".join(rows))) if code[0] == "row-shifted"] == [
        ("row-shifted", 32)
    ]
    rows[3] = "  G W W W G"
    sides = [code[1] for code in found((CHART, "\n".join(rows))) if code[0] == "row-shifted"]
    assert sides == [32]


def test_letters_are_counted_and_told_once_a_part() -> None:
    problems = check_pattern(sound(changed(("G W G", "G X G"), ("3G 1W", "3X 1W"))), Shop())
    assert [(p.code, p.values["part"], p.values["times"]) for p in problems] == [
        ("letter-undefined", "Wedge", "1 time"),
        ("letter-undefined", "Drops", "3 times"),
    ]


def test_the_shop_is_checked_as_well() -> None:
    stock = {"moss": StockBead("moss", "round 99/0", "moss", "#112233")}
    shop = Shop(needle="darning", thread="rope", stock=stock)
    found = {problem.code for problem in check_pattern(sound(REED), shop)}
    assert found == {"needle-unknown", "thread-unknown", "bead-unknown"}


@pytest.mark.parametrize(
    ("change", "reading"),
    [
        (("3G 1W", "0G"), {"words-count"}),
        (("    strands:\n      - 3G 1W\n      - 4G 2W\n", "    strands: 3G\n"), {"rule-form"}),
        (("mirror: true", "mirror: maybe"), {"yes-or-no"}),
        ((CHART, " G\tG\nG W G"), {"chart-tab"}),
        ((CHART, " G ?\nG W G"), {"chart-character"}),
        ((f"{CHART}\n```", CHART), {"fence-unclosed"}),
        (("{from: Wedge, edge: bottom}", "{from: Wedge, edge: lower}"), {"choice-unknown"}),
        (("{bead: round 11/0, name: reed", "{name: reed"), {"key-missing"}),
        (("stitch: brick", "stitch:"), {"value-empty"}),
        (("name: Drops", "name: [Drops]"), {"value-shape"}),
        (("revision: 1", "revision: a\nrevisions: [{number: 1, note: x}]"), {"whole-number"}),
        (("revision: 1", "revision: 1\nrevisions: [{number: a, note: x}]"), {"whole-number"}),
    ],
)
def test_silent_about_what_could_not_be_read(change: tuple[str, str], reading: set[str]) -> None:
    pattern, problems = read(changed(change))
    assert {problem.code for problem in problems} == reading
    assert pattern is not None
    assert check_pattern(pattern, Shop()) == []


def test_patterns_made_by_a_program_can_be_checked() -> None:
    pattern = sound(REED)
    parts = tuple(replace(part, at={}) for part in pattern.parts)
    bare = replace(pattern, at={}, parts=parts, needle="none such")
    assert codes(check_pattern(bare, Shop())) == [("needle-unknown", 0, 0)]


def example_codes(name: str) -> list[str]:
    sources = load_pattern(EXAMPLES / f"{name}.md", Shop())
    (pattern,) = sources.patterns
    return [problem.code for problem in (*sources.problems, *check_pattern(pattern, sources.shop))]


def test_kelp_lantern_is_without_a_problem() -> None:
    assert example_codes("kelp-lantern") == []


def test_the_other_examples_want_only_what_is_not_known_yet() -> None:
    # To people without green cones, the plum and the slate of its colourway are 6.6 apart.
    assert set(example_codes("harbour-steps")) <= {"stitch-unknown", "finding-unknown", "colours-alike"}
    assert set(example_codes("gulls-bookmark")) <= {"stitch-unknown"}


def test_reading_and_checking_agree_on_rectangles() -> None:
    for name, shape in STITCHES.items():
        if shape.charted:
            assert (name in RECTANGULAR) == (shape is StitchShape.RECTANGULAR)


def test_one_check_a_file() -> None:
    names = [check.__name__ for check in CHECKS]
    assert len(set(names)) == len(names)
    for check in CHECKS:
        assert Path(check.__code__.co_filename).stem == check.__name__


@given(mangled())
def test_whatever_was_read_can_be_checked(text: str) -> None:
    pattern, _ = read(text)
    for problem in check_pattern(pattern, Shop()) if isinstance(pattern, Pattern) else []:
        assert problem.where.file in ("", "reed.md")
