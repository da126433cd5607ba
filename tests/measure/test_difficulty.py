"""Difficulty: more of anything is harder, and the points shown add up."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.measure.difficulty import difficulty, shown_points
from sitegen.measure.effort import Effort
from sitegen.measure.minutes import minutes

USUAL = Effort(
    beads=240,
    colours=4,
    colour_changes=60,
    bead_width_mm=2.1,
    stitches=("brick", "fringe"),
    findings=1,
    findings_sewn=1,
    increases=3,
    increase_weight=3.5,
    travels=2,
    strands=11,
    longest_strand=19,
    thread_changes=1,
    excess_passes=2,
    pieces=1,
    mirrored=False,
)

HARDER: dict[str, dict[str, Any]] = {
    "beads": {"beads": 241},
    "colours": {"colours": 5},
    "bead-size": {"bead_width_mm": 2.0},
    "stitches": {"stitches": ("brick", "fringe", "peyote")},
    "increases": {"increases": 4, "increase_weight": 4.5},
    "travels": {"travels": 3},
    "strand": {"longest_strand": 20},
    "thread-changes": {"thread_changes": 2},
    "tight-holes": {"excess_passes": 3},
    "pieces": {"pieces": 2},
}


@pytest.mark.parametrize("factor", HARDER)
def test_one_thing_harder_raises_the_score_by_that_factor_alone(factor: str) -> None:
    before, after = difficulty(USUAL), difficulty(replace(USUAL, **HARDER[factor]))
    gains = {
        name: points - {reason.factor: reason.points for reason in before.reasons}.get(name, 0.0)
        for name, points in ((reason.factor, reason.points) for reason in after.reasons)
    }
    assert gains.pop(factor) > 0
    assert set(gains.values()) <= {0.0}
    assert after.score > before.score


def test_a_mirrored_pair_is_harder_than_two_alike() -> None:
    pair = replace(USUAL, pieces=2)
    assert difficulty(replace(pair, mirrored=True)).score > difficulty(pair).score


def test_an_unknown_stitch_counts_and_does_no_harm() -> None:
    assert (
        difficulty(replace(USUAL, stitches=("brick", "fringe", "knitting"))).score > difficulty(USUAL).score
    )


SLOWER: dict[str, dict[str, Any]] = {
    "a bead": {"beads": 241},
    "a colour": {"colours": USUAL.colours + 1},
    "a colour change": {"colour_changes": 61},
    "smaller beads": {"bead_width_mm": 2.0},
    "an increase": {"increases": 4, "increase_weight": 4.5},
    "a strand": {"strands": 12},
    "a way through": {"travels": 3},
    "a finding": {"findings_sewn": 2},
    "a thread change": {"thread_changes": 2},
    "a tight pass": {"excess_passes": 3},
    "a second piece": {"pieces": 2},
}


@pytest.mark.parametrize("what", SLOWER)
def test_one_thing_more_takes_longer_for_both_makers(what: str) -> None:
    before, after = minutes(USUAL), minutes(replace(USUAL, **SLOWER[what]))
    assert after.practised > before.practised
    assert after.novice > before.novice


efforts = st.builds(
    Effort,
    beads=st.integers(1, 50_000),
    colours=st.integers(1, 60),
    colour_changes=st.integers(0, 50_000),
    bead_width_mm=st.floats(1.0, 6.0),
    stitches=st.lists(st.sampled_from(["brick", "fringe", "ladder", "peyote", "odd"]), unique=True).map(
        tuple
    ),
    findings=st.integers(0, 3),
    findings_sewn=st.integers(0, 4),
    increases=st.integers(0, 200),
    increase_weight=st.floats(0, 300),
    travels=st.integers(0, 50),
    strands=st.integers(0, 200),
    longest_strand=st.integers(0, 400),
    thread_changes=st.integers(0, 200),
    excess_passes=st.integers(0, 5_000),
    pieces=st.sampled_from([1, 2]),
    mirrored=st.booleans(),
)


@given(efforts)
def test_the_score_stays_on_its_scale_and_is_the_sum_of_its_points(effort: Effort) -> None:
    found = difficulty(effort)
    assert 0 < found.score < 100
    assert found.score == pytest.approx(sum(reason.points for reason in found.reasons))


@given(efforts)
def test_the_points_shown_add_up_to_the_score_shown(effort: Effort) -> None:
    found = difficulty(effort)
    score, points = shown_points(found)
    assert round(sum(points), 1) == score
    assert abs(score - found.score) <= 0.05 + 1e-9
    assert all(abs(shown - reason.points) < 0.1 for shown, reason in zip(points, found.reasons, strict=True))


@given(efforts)
def test_a_practised_maker_is_faster(effort: Effort) -> None:
    time = minutes(effort)
    assert 0 < time.practised < time.novice


def test_a_pair_of_450_beads_takes_an_afternoon_or_a_weekend() -> None:
    """Bands from the published paces, 150-250 and 60-100 beads an hour, with their allowances."""
    time = minutes(replace(USUAL, beads=225, pieces=2, increases=0, increase_weight=0.0))
    assert 2 <= time.practised / 60 <= 3
    assert 4 <= time.novice / 60 <= 6.5
