"""Square stitch: the sum of passes, edges, two-drop, and random charts. Mechanics: weave/square.py."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.thread import End, MoveKind
from sitegen.weave import weave
from sitegen.weave.needle import replay
from tests.weave.across_patterns import (
    COLOURS,
    faults,
    mirrored,
    passes,
    pattern_of,
    picked_once,
    rectangles,
    stepped,
    thread_bounds,
    trail,
)


def woven_of(rows, **keys):
    pattern = pattern_of(rows, "square", **keys)
    path, problems = weave(pattern, Shop())
    assert not problems
    assert path is not None
    return pattern, path


def motions(path):
    return [step.motion for step in path.steps]


@pytest.mark.parametrize("width", [1, 2, 5])
@pytest.mark.parametrize("rows", [2, 3, 6])
def test_the_sum_of_passes(width, rows):
    """Not firmed: strung once, or sewn twice; once more for the bead above. Firmed: twice more, but once at
    the first and last row."""
    _, path = woven_of(["A" * width] * rows, reinforce=False)
    assert len(passes(path)) == width * rows
    assert sum(passes(path).values()) == width * (1 + 2 * (rows - 1) + (rows - 1))
    _, firm = woven_of(["A" * width] * rows)
    assert sum(passes(firm).values()) == sum(passes(path).values()) + 2 * width * (rows - 1)


def test_a_new_bead_is_sewn_to_the_one_beneath():
    _, path = woven_of(["ABC", "ABC"])
    step = next(step for step in path.steps if step.motion == "square-next")
    moves = path.moves[step.first_move : step.past_move]
    new, beneath = path.beads[moves[0].bead], path.beads[moves[1].bead]
    assert [move.enter for move in moves] == [End.BOTTOM, End.TOP, End.BOTTOM]
    assert moves[0].bead == moves[2].bead
    assert new.x == beneath.x
    assert beneath.y > new.y


@pytest.mark.parametrize("drop", [2, 3])
def test_some_at_a_time(drop):
    _, path = woven_of(["A" * 7] * 3, drop=drop)
    whole = [len(step.picks) for step in path.steps if step.row == 2 and step.picks]
    assert whole == [drop] * (7 // drop) + [7 % drop]
    _, single = woven_of(["A" * 7] * 3)
    assert passes(path).total() == passes(single).total()


def test_a_row_that_steps_out_where_it_ends_is_strung_on():
    _, path = woven_of(["AAAA", "AAAA", "AA..", "AA.."])
    assert motions(path).count("square-extend") + motions(path).count("square-pair") > 0
    assert min(passes(path).values()) >= 2


@pytest.mark.parametrize("reinforce", [True, False])
def test_rows_that_step_out_at_both_edges(reinforce):
    """One edge is strung on and held by the next row, the other made with it, two beads at a time."""
    _, path = woven_of([".AAA.", "AAAAA", "AAAAA", ".AAA.", ".AAA."], reinforce=reinforce)
    pair = "square-pair" if reinforce else "square-pair-last"
    assert (motions(path).count("square-extend"), motions(path).count(pair)) == (1, 1)
    assert min(passes(path).values()) >= 2


def test_a_row_that_steps_in_begins_where_the_firming_run_comes_out():
    _, path = woven_of([".AAA.", "AAAAA", "AAAAA"])
    assert "travel" not in motions(path)
    firm = [step for step in path.steps if step.motion == "square-firm"]
    assert firm[0].phrases[0].key == "square-firm-part"
    assert firm[0].phrases[0].values["count"] == 4


def test_without_firming_it_weaves_to_where_the_row_begins():
    _, path = woven_of([".AAA.", "AAAAA", "AAAAA"], reinforce=False)
    assert "travel" in motions(path)


def test_both_ways_from_the_middle_row():
    _, path = woven_of(["AAA", "BBB", "CCC"], begin="middle")
    assert [row for _, row in sorted({(bead.y, bead.row) for bead in path.beads})] == [2, 1, 3]
    assert {step.turned for step in path.steps if step.row == 3} == {True}


def test_the_step_where_no_bead_holds_is_a_fault_at_the_bead():
    pattern = pattern_of(["AAAAA", "AAA..", ".AAA."], "square")
    assert faults(pattern) == {"bead-unheld"}
    assert faults(pattern_of(["AAA", "A.A", "AAA"], "square")) == {"row-broken"}
    assert faults(pattern_of(["AAA"], "square")) == {"bead-unheld"}


def test_pitch_is_the_length_and_a_share_of_the_thread():
    _, path = woven_of(["AAA", "AAA"])
    assert path.parts[0].bead_pitch == pytest.approx(1.5 + 0.15)
    assert path.parts[0].row_pitch == pytest.approx(2.1)
    _, two = woven_of(["AAA", "AAA"], drop=2)
    assert two.parts[0].bead_pitch == pytest.approx(1.5 + 0.075)


def test_thread_of_one_stitch_without_slack():
    """About three lengths and two diameters [D], and the thread between two beads."""
    pattern, path = woven_of(["A" * 6] * 2)
    steps = measure(path, pattern, Shop(slack=1.0)).steps
    assert steps[3].thread_mm - steps[2].thread_mm == pytest.approx(3 * 1.5 + 2 * 2.1 + 0.15)


@pytest.mark.parametrize("edge", ["top", "bottom"])
@pytest.mark.parametrize("rows", [["AAA", "AAA"], ["AAAA", "AAAA"], [".AA.", "AAAA", "AAAA"]])
def test_a_finding_hangs_in_the_middle_of_its_edge(sample, woven, edge, rows):
    pattern = sample(
        "\n".join(rows).replace("A", "D"), f"stitch: square\nhang: {{finding: jump ring, from: {edge}}}"
    )
    path = woven(pattern)
    row = path.beads[: len(rows[0].strip("."))] if edge == "top" else path.beads[-len(rows[-1]) :]
    assert path.findings[0].x == pytest.approx((row[0].x + row[-1].x) / 2)
    assert sum(move.kind is MoveKind.LOOP for move in path.moves) == 3


@settings(max_examples=150, deadline=None)
@given(
    rows=st.one_of(rectangles(), stepped()),
    begin=st.sampled_from(("bottom", "top", "middle")),
    start=st.sampled_from(("left", "right")),
    reinforce=st.booleans(),
    drop=st.integers(1, 3),
)
def test_random_charts(rows, begin, start, reinforce, drop):
    keys = {"begin": begin, "start": start, "reinforce": reinforce, "drop": drop}
    pattern = pattern_of(rows, "square", **keys)
    assume(not faults(pattern))
    path, problems = weave(pattern, Shop())
    assert {problem.code for problem in problems} <= {"weave-no-way"}
    assume(path is not None)
    assert picked_once(path)
    assert min(passes(path).values()) >= 2
    least, length, most = thread_bounds(path, pattern)
    assert least <= length + 1e-6
    assert length <= most
    other = {"left": "right", "right": "left"}[start]
    turned, _ = weave(pattern_of(mirrored(rows), "square", **{**keys, "start": other}), Shop())
    assert turned is not None
    assert trail(turned, flip=True) == trail(path)
    renamed = replace(pattern, colours=tuple(replace(colour, name="x", hex="#445566") for colour in COLOURS))
    assert measure(path, renamed, Shop()).thread == measure(path, pattern, Shop()).thread


@settings(max_examples=60, deadline=None)
@given(rows=rectangles(), start=st.sampled_from(("left", "right")))
def test_every_full_chart_can_be_worked(rows, start):
    assume(len(rows) > 1)
    path, problems = weave(pattern_of(rows, "square", start=start), Shop())
    assert not problems
    assert path is not None


def test_the_needle_sees_a_bead_in_the_wrong_place_and_a_missed_stitch():
    pattern, path = woven_of(["ABC", "ABC", "CBA"])
    for change in ({"letter": "C"}, {"y": path.beads[0].y - 2.1}):
        beads = (replace(path.beads[0], **change), *path.beads[1:])
        assert "path-unlike-chart" in {
            problem.code for problem in replay(replace(path, beads=beads), pattern)
        }
    step = next(step for step in path.steps if step.motion == "square-next")
    bare = path.moves[: step.first_move + 1] + path.moves[step.past_move :]
    assert replay(replace(path, moves=bare), pattern)
