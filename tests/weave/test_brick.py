"""Brick: starts, ends, passes and ways. Sources: the mechanics stated in weave/brick.py."""

from __future__ import annotations

import pytest

from sitegen.model.thread import MoveKind


def phrases(path, row):
    return [
        (step.motion, phrase.key, dict(phrase.values))
        for step in path.steps
        if step.row == row
        for phrase in step.phrases
    ]


def test_a_decrease_row_starts_at_the_second_bridge(sample, woven):
    path = woven(sample(" D D D\nD D D D"))
    assert phrases(path, 2) == [
        ("brick-first", "brick-first", {"bridge": 2}),
        ("brick-next", "brick-next", {}),
    ]


def test_an_increase_row_starts_at_the_first_bridge_and_uses_the_last_twice(sample, woven):
    path = woven(sample("D D D D\n D D D"))
    assert phrases(path, 2) == [
        ("brick-increase", "brick-first", {"bridge": 1}),
        ("brick-increase", "brick-out", {}),
        ("brick-next", "brick-next", {}),
        ("brick-increase", "brick-increase", {}),
    ]
    under = [move.bridge for move in path.moves if move.kind is MoveKind.UNDER][1:]
    assert under[-1] == under[-2]


@pytest.mark.parametrize(("chart", "bridge"), [("D D D\n D D D", 1), (" D D D\nD D D", 2)])
def test_an_even_row_steps_out_or_in(sample, woven, chart, bridge):
    path = woven(sample(chart))
    assert phrases(path, 2)[0] == ("brick-first", "brick-first", {"bridge": bridge})


@pytest.mark.parametrize("width", [3, 4, 8, 11])
def test_passes_of_a_row(sample, woven, passes, width):
    """2 + 3 + 2(m - 2) for a row of m beads, nothing above it."""
    path = woven(sample(" " + " ".join("D" * (width - 1)) + "\n" + " ".join("D" * width)))
    row = passes(path, 2)
    assert sorted(row) == [2] * (width - 2) + [3]
    assert row[1] == 3  # the second bead of the start


def test_rows_go_back_and_forth(sample, woven):
    path = woven(sample("   D D\n  D D D\n D D D D\nD D D D D"))
    first = {step.row: path.beads[step.picks[0]].place for step in reversed(path.steps) if step.picks}
    assert first == {1: 1, 2: 1, 3: 3, 4: 1}


def test_a_row_may_start_at_the_other_side(sample, woven):
    path = woven(sample(" D D D\nD D D D", "stitch: brick\nstart: right"))
    first = next(step for step in path.steps if step.row == 2)
    assert path.beads[first.picks[0]].place == 3


def test_both_ways_from_the_middle_row(sample, woven):
    chart = "  D\n D D\nD D D\n D D\n  D"
    path = woven(sample(chart, "stitch: brick\nbegin: middle"))
    from_the_top = sorted({(bead.y, bead.row) for bead in path.beads})
    assert [row for _, row in from_the_top] == [3, 2, 1, 4, 5]
    assert [step.turned for step in path.steps if step.picks] == [False] * 4 + [True] * 2
    way = next(step for step in path.steps if step.motion == "travel")
    assert [phrase.values["way"] for phrase in way.phrases] == ["up"]


def test_a_deep_step_in_weaves_to_its_start(sample, woven):
    path = woven(sample("     D D D\nD D D D D D D"))
    assert [step.motion for step in path.steps if step.row == 2] == ["travel", "brick-first", "brick-next"]


@pytest.mark.parametrize("beads", [7, 8, 9])
def test_a_far_step_out_is_ladder_stitched_at_both_edges(sample, woven, beads):
    chart = " ".join("D" * beads) + "\n   " + " ".join("D" * (beads - 3))
    motions = [step.motion for step in woven(sample(chart)).steps if step.row == 2 and step.picks]
    assert motions.count("brick-extend") == 2
    assert len(motions) == beads - 1


def test_a_point_of_one_bead(sample, woven, passes):
    path = woven(sample(" D\nD D"))
    assert passes(path, 2) == [2]
    assert phrases(path, 2) == [("brick-first", "brick-single", {"bridge": 1})]


def test_a_start_from_one_bead(sample, woven, passes):
    path = woven(sample("D D D\n D D\n  D"))
    assert passes(path, 1) == [2]
    assert phrases(path, 2)[0][1] == "brick-first-on-one"


def test_a_row_without_footing_is_a_problem(sample, problems_of):
    assert problems_of(sample(" D D D\nD")) == ["weave-no-footing"]


def test_gauge_overrules_the_pitch(sample, woven):
    keys = "stitch: brick\ngauge: {beads: 10, width: 25 mm, rows: 10, height: 17 mm}"
    path = woven(sample(" D D\nD D D", keys))
    xs, ys = sorted({bead.x for bead in path.beads}), sorted({bead.y for bead in path.beads})
    assert xs[1] - xs[0] == pytest.approx(1.25)
    assert ys[1] - ys[0] == pytest.approx(1.7)
