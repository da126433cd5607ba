"""Thread: the length of each move from plain geometry, and where a new length begins."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.measure.plan import plan
from sitegen.measure.thread import move_lengths, step_ends
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
    assert work.bridge_middle(bridge) == (1.0, -0.5)
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
    work, ends = steps_of([(300, True), (300, False), (200, True), (300, True), (50, True)])
    use = plan(work, ends, SHOP)
    assert [(cut.first_step, cut.last_step, cut.cut_mm) for cut in use.lengths] == [(1, 3, 1000), (4, 5, 550)]
    assert (use.path_mm, use.total_mm) == (1150, 1150 + 2 * 2 * 100)


def test_no_stub_is_begun_where_as_many_lengths_can_be_shared_out_better() -> None:
    """Of the 800 mm a length can work, a third is 267: 150 mm would be a stub, 350 is none."""
    work, ends = steps_of([(300, True), (300, True), (200, True), (100, True), (50, True)])
    cuts = plan(work, ends, SHOP).lengths
    assert [(cut.first_step, cut.last_step, cut.cut_mm) for cut in cuts] == [(1, 2, 800), (3, 5, 550)]


def test_a_row_longer_than_a_length_is_begun_anew_inside_and_no_other() -> None:
    work, ends = steps_of([(100, True), (700, False), (700, False), (300, True), (10, True)])
    cuts = plan(work, ends, SHOP).lengths
    assert [(cut.first_step, cut.last_step) for cut in cuts] == [(1, 2), (3, 3), (4, 5)]


def test_a_step_longer_than_a_length_is_never_cut() -> None:
    work, ends = steps_of([(300, True), (900, True), (300, True)])
    assert [cut.cut_mm for cut in plan(work, ends, SHOP).lengths] == [500, 1100, 500]


def test_lengths_are_rounded_up_to_whole_centimetres() -> None:
    work, ends = steps_of([(100.1, True)])
    assert plan(work, ends, SHOP).lengths[0].cut_mm == 310


def test_no_steps_need_no_thread() -> None:
    assert plan(replace(path([], []), steps=()), [], SHOP).lengths == ()


@given(st.lists(st.tuples(st.floats(0.1, 1200), st.booleans()), min_size=1, max_size=12))
def test_lengths_follow_each_other_and_are_as_few_as_can_be(lengths: list[tuple[float, bool]]) -> None:
    """The stops allowed are rests, and any step inside a row too long for one; going as far as each length
    reaches gives the fewest.
    """
    work, ends = steps_of(lengths)
    use = plan(work, ends, SHOP)
    assert [cut.first_step for cut in use.lengths] == [1] + [cut.last_step + 1 for cut in use.lengths[:-1]]
    assert use.lengths[-1].last_step == len(lengths)
    assert sum(cut.cut_mm for cut in use.lengths) >= use.total_mm - 1e-6
    rests = [0, *(at for at in range(1, len(lengths)) if lengths[at - 1][1]), len(lengths)]
    used = [0.0, *ends]
    allowed = set(rests)
    for one, other in pairwise(rests):
        if used[other] - used[one] > 800:
            allowed |= set(range(one, other))
    assert {cut.last_step for cut in use.lengths} <= allowed
    for cut in use.lengths:
        if used[cut.last_step] - used[cut.first_step - 1] > 800:
            assert cut.first_step == cut.last_step, "only a single step may be longer than a length"
    fewest, at = 0, 0
    while at < len(lengths):
        within = [stop for stop in allowed if stop > at and used[stop] - used[at] <= 800]
        at = max(within, default=min(stop for stop in allowed if stop > at))
        fewest += 1
    assert len(use.lengths) == fewest
