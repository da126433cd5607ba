"""Right-angle weave: squares that share sides, circles by turns, the edge round. Source: weave/unit.py."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.model.shop import Shop
from sitegen.model.thread import MoveKind
from sitegen.weave import weave
from tests.weave.openwork import (
    assert_sound,
    mirror_moves,
    mirrored,
    passes,
    path_of,
    source,
    square_charts,
)

STITCH = "stitch: right-angle weave"


def block(wide: int, high: int) -> str:
    return "\n".join(
        [f".{'.'.join('A' * wide)}.", " ".join("B" * (wide + 1))] * high + [f".{'.'.join('A' * wide)}."]
    )


@settings(max_examples=100, deadline=None)
@given(
    chart=square_charts(),
    begin=st.sampled_from(("bottom", "top")),
    start=st.sampled_from(("left", "right")),
    finding=st.sampled_from((None, "top", "bottom")),
)
def test_every_chart_is_proved(chart, begin, start, finding):
    keys = f"{STITCH}\nbegin: {begin}\nstart: {start}"
    if finding and len(chart.splitlines()[1].split()) % 2 == 0:
        keys += f"\nhang: {{finding: jump ring, from: {finding}}}"
    path = assert_sound(chart, keys)
    assert min(passes(path).values()) >= 2


@settings(max_examples=30, deadline=None)
@given(chart=square_charts(), start=st.sampled_from(("left", "right")))
def test_a_mirrored_chart_gives_a_mirrored_path(chart, start):
    other = "right" if start == "left" else "left"
    _, one = path_of(chart, f"{STITCH}\nstart: {start}")
    _, two = path_of(mirrored(chart), f"{STITCH}\nstart: {other}")
    assert mirror_moves(one, mirror=False) == mirror_moves(two, mirror=True)


@pytest.mark.parametrize(("wide", "high"), [(1, 1), (4, 1), (1, 4), (3, 2), (5, 4)])
def test_shared_beads_are_counted_once(wide, high):
    """wide x high squares: high + 1 lines of `wide` lying beads, `high` lines of wide + 1 upright ones."""
    _, path = path_of(block(wide, high), STITCH)
    assert len(path.beads) == (high + 1) * wide + high * (wide + 1)


@pytest.mark.parametrize("wide", [2, 3, 6])
def test_picks_of_the_squares(wide):
    """Four for the first square, three for each beside it; above them three, then two for each."""
    _, path = path_of(block(wide, 3), STITCH)
    picks = {row: [len(step.picks) for step in path.steps if step.row == row] for row in (1, 2, 3)}
    assert picks == {1: [4, *[3] * (wide - 1)], 2: [3, *[2] * (wide - 1)], 3: [3, *[2] * (wide - 1)]}


def test_passes_of_the_first_row():
    """Four picked up, three passed again; then for each square three picked up, one closing, two onward."""
    _, path = path_of(block(5, 1), STITCH)
    assert [step.past_move - step.first_move for step in path.steps if step.row][:4] == [7, 6, 6, 6]


def test_circles_run_one_way_and_the_other_by_turns():
    _, path = path_of(block(6, 3), STITCH)
    ways = []
    for step in path.steps:
        if not step.row:
            continue
        beads = [path.beads[move.bead] for move in path.moves[step.first_move : step.past_move]]
        points = [(bead.x, bead.y) for bead in beads]
        turn = sum(
            (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
            for (a, b), (_, c) in pairwise(pairwise(points))
        )
        ways.append((step.row, turn > 0))
    for (row, one), (other_row, other) in pairwise(ways):
        if row == other_row:
            assert one is not other


def test_the_thread_never_crosses_a_corner_straight_but_at_the_edge():
    _, path = path_of(block(5, 4), STITCH)
    for step in path.steps:
        if step.row:
            moves = path.moves[step.first_move : step.past_move]
            for one, other in pairwise(moves):
                assert path.beads[one.bead].angle != path.beads[other.bead].angle


def test_the_edge_is_passed_once_round():
    _, path = path_of(block(5, 4), STITCH)
    edge = next(step for step in path.steps if step.motion == "unit-edge")
    passed = [move.bead for move in path.moves[edge.first_move : edge.past_move]]
    assert len(passed) == len(set(passed)) == 2 * (5 + 4)


def test_a_square_is_wider_than_a_bead_is_long_and_less_than_rims_allow():
    _, path = path_of(block(3, 3), STITCH)
    bead = path.beads[0]
    assert bead.length < path.parts[0].bead_pitch < bead.length + bead.width
    assert path.parts[0].bead_pitch == pytest.approx(1.5 + 0.75 * 2.1)


def test_gauge_counts_squares():
    keys = f"{STITCH}\ngauge: {{beads: 10, width: 32 mm, rows: 10, height: 31 mm}}"
    _, path = path_of(block(3, 3), keys)
    assert (path.parts[0].bead_pitch, path.parts[0].row_pitch) == pytest.approx((3.2, 3.1))
    upright = sorted({bead.x for bead in path.beads if bead.angle == 0})
    assert upright[1] - upright[0] == pytest.approx(3.2)


def test_a_finding_hangs_from_the_middle():
    _, path = path_of(block(5, 2), f"{STITCH}\nhang: {{finding: jump ring, from: top}}")
    assert sum(move.kind is MoveKind.LOOP for move in path.moves) == 3
    assert path.findings[0].x == pytest.approx(sum(bead.x for bead in path.beads) / len(path.beads))
    assert math.isclose(path.findings[0].x, 2.5 * path.parts[0].bead_pitch)


def test_an_even_edge_has_no_middle():
    pattern, _ = source(block(4, 2), f"{STITCH}\nhang: {{finding: jump ring, from: top}}")
    assert [problem.code for problem in weave(pattern, Shop())[1]] == ["weave-no-middle"]


def test_beads_of_very_unlike_length_are_a_problem():
    """One long bugle among the sides would leave thread bare at the short ones."""
    pattern, _ = source(".A.B.\nA A A\n.A.A.", STITCH)
    colours = tuple(
        replace(colour, bead="bugle 6 mm") if colour.letter == "B" else colour for colour in pattern.colours
    )
    path, problems = weave(replace(pattern, colours=colours), Shop())
    assert path is None
    assert [problem.code for problem in problems] == ["weave-uneven"]


def test_every_bead_of_a_row_has_a_number_of_its_own():
    for begin in ("bottom", "top"):
        _, path = path_of(block(3, 3), f"{STITCH}\nbegin: {begin}")
        seats = [(bead.row, bead.place) for bead in path.beads]
        assert len(set(seats)) == len(seats)
        for row in (1, 2, 3):
            counted = sorted((bead for bead in path.beads if bead.row == row), key=lambda bead: bead.place)
            assert [bead.place for bead in counted] == list(range(1, len(counted) + 1))
            assert all(one.x <= other.x for one, other in pairwise(counted))
