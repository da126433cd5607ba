"""The virtual needle: random charts are proved, and every kind of broken path is caught."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.check.tell import severity
from sitegen.model.location import NOWHERE
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Hang, Makes, Part, Pattern, Words
from sitegen.model.thread import End, Move, MoveKind
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave
from sitegen.weave.needle import replay

LETTERS = "ABC"
COLOURS = tuple(Colour(letter, "round 11/0", letter, "#112233") for letter in LETTERS)


@st.composite
def charts(draw):
    """Staggered charts whose rows overlap and step in or out by up to two and a half beads."""
    rows = []
    left, width = 12, draw(st.integers(1, 9))
    for _ in range(draw(st.integers(1, 7))):
        letters = draw(st.lists(st.sampled_from(LETTERS), min_size=width, max_size=width))
        rows.append(ChartRow(tuple((left + 2 * place, letter) for place, letter in enumerate(letters))))
        step = draw(st.sampled_from((-5, -3, -1, 1, 3, 5)))
        right = left + 2 * width - 2 + draw(st.sampled_from((-5, -3, -1, 1, 3, 5)))
        if right < left + step or left + step > left + 2 * width or right < left:
            break
        left, width = left + step, (right - left - step) // 2 + 1
    return Chart("Piece", tuple(rows))


def pattern_of(*parts: Part) -> Pattern:
    return Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, parts)


@settings(max_examples=150, deadline=None)
@given(
    chart=charts(),
    begin=st.sampled_from(("bottom", "top", "middle")),
    start=st.sampled_from(("left", "right")),
    reinforce=st.booleans(),
    finding=st.sampled_from((None, "top", "bottom")),
    turn=st.integers(0, 5),
)
def test_every_chart_that_can_be_stitched_is_proved(chart, begin, start, reinforce, finding, turn):
    hang = Hang(finding, finding="jump ring") if finding else None
    parts = [
        Part(
            "Piece",
            "brick",
            begin=begin,
            start=start,
            reinforce=reinforce,
            hang=hang,
            chart=chart,
            at={"": NOWHERE},
        )
    ]
    if turn:
        letters = tuple("ABCABCABC"[: turn + 3])
        strand = Words("", letters, NOWHERE, (NOWHERE,) * len(letters))
        parts.append(
            Part(
                "Fringe",
                "fringe",
                hang=Hang("bottom", part="Piece"),
                turn=turn,
                strands=(strand,) * len(chart.rows[-1].cells),
                at={"": NOWHERE},
            )
        )
    pattern = pattern_of(*parts)
    assume(sum(len(row.cells) for row in chart.rows) > 1)  # nothing holds a bead that is all alone
    assume(not any(severity(problem) is Severity.FAULT for problem in check_pattern(pattern, Shop())))
    path, problems = weave(pattern, Shop())
    assert {problem.code for problem in problems} <= {"weave-no-footing", "weave-no-way", "weave-no-hold"}
    assert (path is None) == bool(problems)
    for step in path.steps if path else ():
        for phrase in step.phrases:
            behind = phrase.key.endswith("-behind")
            assert behind or int(str(phrase.values.get("bridge", 1))) >= 1, phrase


def test_all_ways_are_found_where_every_row_has_two_beads(sample, woven):
    """A chart with steps of every kind, from one bead and a half in to two and a half out."""
    chart = "        D D D\n D D D D D D D D D D\n      D D D\n     D D D D\nD D D D D D D"
    woven(sample(chart))


@pytest.fixture
def good(examples):
    pattern, problems = read_pattern((examples / "kelp-lantern.md").read_text(), "kelp-lantern.md", Shop())
    assert pattern is not None
    assert not problems
    path, problems = weave(pattern, Shop())
    assert path is not None
    assert not problems
    return pattern, path


def swap_move(path, number, move):
    return replace(path, moves=(*path.moves[:number], move, *path.moves[number + 1 :]))


def first(path, kind, after=0):
    return next(n for n, move in enumerate(path.moves) if n >= after and move.kind is kind)


def codes(path, pattern):
    return {problem.code for problem in replay(path, pattern)}


def test_a_good_path_has_no_objection(good):
    pattern, path = good
    assert codes(path, pattern) == set()


def test_it_sees_a_bead_picked_twice(good):
    pattern, path = good
    number = first(path, MoveKind.THROUGH)
    assert "path-picked-twice" in codes(
        swap_move(path, number, replace(path.moves[number], kind=MoveKind.PICK)), pattern
    )


def test_it_sees_a_pass_through_a_bead_not_yet_there(good):
    pattern, path = good
    number = first(path, MoveKind.PICK)
    assert "path-not-there" in codes(
        swap_move(path, number, replace(path.moves[number], kind=MoveKind.THROUGH)), pattern
    )


def test_it_sees_bare_thread(good):
    pattern, path = good
    number = first(path, MoveKind.UNDER, after=40)
    far = Move(MoveKind.THROUGH, bead=path.moves[0].bead, enter=End.TOP)
    assert "path-bare-thread" in codes(swap_move(path, number, far), pattern)


def test_it_sees_a_pass_that_undoes_the_last(good):
    pattern, path = good
    number = first(path, MoveKind.UNDER, after=40)
    without = replace(path, moves=path.moves[:number] + path.moves[number + 1 :])
    assert {"path-pulls-out", "path-step-astray"} <= codes(without, pattern)


def test_it_sees_a_bridge_that_is_not_there(good):
    pattern, path = good
    number = first(path, MoveKind.UNDER, after=40)
    bridge = path.moves[number].bridge
    nowhere = replace(path.moves[number], bridge=replace(bridge, right=bridge.left + 3))
    assert "path-no-bridge" in codes(swap_move(path, number, nowhere), pattern)


def test_it_sees_a_bead_on_a_single_pass(good):
    pattern, path = good
    step = next(step for step in path.steps if step.motion == "brick-next" and step.rest)
    cut = replace(path, moves=path.moves[: step.past_move - 2])
    assert "path-single-pass" in codes(cut, pattern)


def test_it_sees_beads_left_out(good):
    pattern, path = good
    assert "path-left-out" in codes(replace(path, moves=path.moves[: -1 - 30]), pattern)


def test_it_sees_a_wrong_letter_and_a_wrong_place(good):
    pattern, path = good
    for change in ({"letter": "A"}, {"x": path.beads[0].x + 1.05}):
        beads = (replace(path.beads[0], **change), *path.beads[1:])
        assert "path-unlike-chart" in codes(replace(path, beads=beads), pattern)
