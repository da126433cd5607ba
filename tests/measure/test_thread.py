"""Thread: the length of each move from plain geometry, and where a new length begins."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.measure.plan import plan
from sitegen.measure.thread import bridge_point, move_lengths, step_ends
from sitegen.model.shop import Shop
from sitegen.model.thread import (
    Bead,
    Bridge,
    End,
    Move,
    MoveKind,
    PlacedFinding,
    Step,
    ThreadPath,
    WovenPart,
)

T, B = End.TOP, End.BOTTOM


def bead(x: float, y: float, angle: float = 0.0) -> Bead:
    """A bead 2 mm across and 1 mm long."""
    return Bead("A", 0, 1, 1, x, y, angle, 2.0, 1.0, "round", "round 11/0")


def step(number: int, first: int, past: int, *, rest: bool) -> Step:
    """A step of those moves."""
    return Step(number, 0, 1, "anything", (), first, past, (), rest=rest)


def path(beads: list[Bead], moves: list[Move], *findings: PlacedFinding) -> ThreadPath:
    """A path of one step."""
    whole = step(1, 0, len(moves), rest=True)
    return ThreadPath(tuple(beads), tuple(moves), (whole,), (WovenPart("P", "brick", 1, 1, 2),), findings)


def test_the_first_bead_uses_its_own_length() -> None:
    assert move_lengths(path([bead(0, 0)], [Move(MoveKind.PICK, 0, T)]), 0.2) == (1.0,)


def test_side_by_side_costs_a_width_and_in_line_costs_nothing() -> None:
    row = path([bead(0, 0), bead(2, 0)], [Move(MoveKind.PICK, 0, T), Move(MoveKind.PICK, 1, B)])
    strand = path([bead(0, 0), bead(0, 1)], [Move(MoveKind.PICK, 0, T), Move(MoveKind.PICK, 1, T)])
    assert move_lengths(row, 0.2) == pytest.approx((1.0, 2.0 + 1.0))
    assert move_lengths(strand, 0.2) == pytest.approx((1.0, 1.0))


def test_a_lying_bead_has_its_mouths_at_the_sides() -> None:
    pair = path([bead(0, 0), bead(0, 0.5 + 3, 90)], [Move(MoveKind.PICK, 0, T), Move(MoveKind.PICK, 1, T)])
    assert move_lengths(pair, 0.2)[1] == pytest.approx(math.hypot(0.5, 3) + 1)


def test_a_bridge_is_reached_rounded_and_left_again() -> None:
    beads = [bead(0, 0), bead(2, 0), bead(1, -1)]
    bridge = Bridge(0, 1, T)
    moves = [Move(MoveKind.PICK, 2, T), Move(MoveKind.UNDER, bridge=bridge), Move(MoveKind.THROUGH, 2, B)]
    work = path(beads, moves)
    assert bridge_point(work, bridge) == (1.0, -0.5)
    assert move_lengths(work, 0.2) == pytest.approx((1.0, math.pi * 0.2, 1.0))


def test_a_loop_is_reached_and_rounded_on_its_wire() -> None:
    """The wire of an ear wire is 20 gauge, 0.812 mm."""
    moves = [Move(MoveKind.PICK, 0, B), Move(MoveKind.LOOP, finding=0), Move(MoveKind.THROUGH, 0, T)]
    work = path([bead(0, 0)], moves, PlacedFinding("ear wire", 0, 0, -1.5, "top"))
    assert move_lengths(work, 0.2) == pytest.approx((1.0, 1 + math.pi / 2 * 1.0118, 1 + 1.0), abs=1e-3)


def test_slack_stretches_every_step() -> None:
    work = path([bead(0, 0), bead(2, 0)], [Move(MoveKind.PICK, 0, T), Move(MoveKind.PICK, 1, B)])
    assert step_ends(work, 0.2, 1.25) == pytest.approx((5.0,))


def steps_of(lengths: list[tuple[float, bool]]) -> tuple[ThreadPath, list[float]]:
    """A path of empty steps, and the thread used after each when they use these lengths."""
    steps = tuple(step(number, 0, 0, rest=rest) for number, (_, rest) in enumerate(lengths, 1))
    ends = [sum(length for length, _ in lengths[:past]) for past in range(1, len(lengths) + 1)]
    return replace(path([], []), steps=steps), ends


SHOP = Shop(working_length_mm=1000, tail_mm=100)


def test_a_length_is_filled_up_to_the_last_rest_that_fits() -> None:
    work, ends = steps_of([(300, True), (300, False), (200, True), (100, True), (50, True)])
    use = plan(work, ends, SHOP)
    assert [(cut.first_step, cut.last_step, cut.cut_mm) for cut in use.lengths] == [(1, 3, 1000), (4, 5, 350)]
    assert (use.path_mm, use.total_mm) == (950, 950 + 2 * 2 * 100)


def test_a_stretch_without_rest_is_never_cut() -> None:
    work, ends = steps_of([(100, True), (900, False), (900, True), (10, True)])
    cuts = plan(work, ends, SHOP).lengths
    assert [(cut.first_step, cut.last_step, cut.cut_mm) for cut in cuts] == [
        (1, 1, 300),
        (2, 3, 2000),
        (4, 4, 210),
    ]


def test_lengths_are_rounded_up_to_whole_centimetres() -> None:
    work, ends = steps_of([(100.1, True)])
    assert plan(work, ends, SHOP).lengths[0].cut_mm == 310


def test_no_steps_need_no_thread() -> None:
    assert plan(replace(path([], []), steps=()), [], SHOP).lengths == ()


@given(st.lists(st.tuples(st.floats(0.1, 1200), st.booleans()), min_size=1, max_size=30))
def test_lengths_follow_each_other_and_change_at_rests_only(lengths: list[tuple[float, bool]]) -> None:
    work, ends = steps_of(lengths)
    use = plan(work, ends, SHOP)
    assert [cut.first_step for cut in use.lengths] == [1] + [cut.last_step + 1 for cut in use.lengths[:-1]]
    assert use.lengths[-1].last_step == len(lengths)
    assert all(lengths[cut.last_step - 1][1] for cut in use.lengths[:-1])
    assert sum(cut.cut_mm for cut in use.lengths) >= use.total_mm - 1e-6
    for cut in use.lengths:
        if cut.cut_mm > 1000:
            inside = lengths[cut.first_step - 1 : cut.last_step - 1]
            assert not any(rest for _, rest in inside), "too long though a new one could have begun sooner"
