"""Flat herringbone: passes, turns, increases and ladders two high. Source: weave/herringbone.py."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.model.thread import MoveKind
from tests.weave.openwork import (
    assert_sound,
    mirror_moves,
    mirrored,
    pair_charts,
    passes,
    path_of,
)

BLOCK = "AABBAA\nAABBAA\nAABBAA\nAABBAA"
GROWN = "AABBAA\nAABBAA\nAA..AA\nAA..AA"


def motions(path, row):
    return [step.motion for step in path.steps if step.row == row]


def moves_of_row(path, row):
    return sum(
        step.past_move - step.first_move
        for step in path.steps
        if step.row == row and step.motion.startswith("herringbone") and step.motion != "herringbone-finish"
    )


@settings(max_examples=120, deadline=None)
@given(
    data=st.data(),
    begin=st.sampled_from(("bottom", "top")),
    base=st.sampled_from((1, 2)),
    start=st.sampled_from(("left", "right")),
    reinforce=st.booleans(),
    finding=st.sampled_from((None, "top", "bottom")),
)
def test_every_chart_is_proved(data, begin, base, start, reinforce, finding):
    chart = data.draw(pair_charts(begin, base))
    keys = f"stitch: herringbone\nbegin: {begin}\nbase: {base}\nstart: {start}"
    keys += "" if reinforce else "\nreinforce: false"
    if finding:
        keys += f"\nhang: {{finding: jump ring, from: {finding}}}"
    path = assert_sound(chart, keys)
    assert min(passes(path).values()) >= 2


@settings(max_examples=30, deadline=None)
@given(chart=pair_charts(), start=st.sampled_from(("left", "right")))
def test_a_mirrored_chart_gives_a_mirrored_path(chart, start):
    other = "right" if start == "left" else "left"
    _, one = path_of(chart, f"stitch: herringbone\nstart: {start}")
    _, two = path_of(mirrored(chart), f"stitch: herringbone\nstart: {other}")
    assert mirror_moves(one, mirror=False) == mirror_moves(two, mirror=True)


@pytest.mark.parametrize("pairs", [1, 2, 3, 5])
def test_moves_of_a_row(pairs):
    """A row of m beads over m: m picked up, m - 1 passes through the row below, two in the turn: 2m + 1."""
    beads = 2 * pairs
    _, path = path_of("\n".join(["A" * beads] * 4), "stitch: herringbone")
    assert [moves_of_row(path, row) for row in (2, 3, 4)] == [2 * beads + 1] * 3


def test_moves_of_a_row_that_grows():
    """A row of m + 2 beads over m: m + 2 picked up, m - 1 passes through the row below, four in the turn."""
    _, path = path_of(GROWN, "stitch: herringbone")
    assert moves_of_row(path, 3) == 2 * 4 + 5
    assert motions(path, 3) == ["herringbone-before", "herringbone-increase", "herringbone-turn-deep"]


def test_passes_of_the_rows():
    """Inside a piece a bead has two passes; the bead beside the edge where a row turned has three."""
    _, path = path_of(BLOCK, "stitch: herringbone")
    count = passes(path)
    rows = {row: [] for row in (2, 3, 4)}
    for index, bead in enumerate(path.beads):
        if bead.row > 1:
            rows[bead.row].append((bead.x, count[index]))
    assert {row: [number for _, number in sorted(found)] for row, found in rows.items()} == {
        2: [2, 3, 2, 2, 2, 2],
        3: [2, 2, 2, 2, 3, 2],
        4: [2, 2, 2, 2, 2, 2],
    }


def test_rows_go_back_and_forth():
    _, path = path_of(BLOCK, "stitch: herringbone")
    first = {step.row: path.beads[step.picks[0]].place for step in reversed(path.steps) if step.picks}
    assert first == {1: 1, 2: 1, 3: 6, 4: 1}


def test_the_edge_shows_no_thread():
    """From edge bead to edge bead the needle goes through the bead beside them."""
    _, path = path_of(BLOCK, "stitch: herringbone")
    turn = next(step for step in path.steps if step.motion == "herringbone-turn" and step.row == 3)
    seats = [
        (path.beads[move.bead].row, path.beads[move.bead].place)
        for move in path.moves[turn.first_move : turn.past_move]
        if move.kind is MoveKind.THROUGH
    ]
    assert seats == [(2, 1), (2, 2), (3, 1)]


@pytest.mark.parametrize("reinforce", ["true", "false"])
@pytest.mark.parametrize("pairs", [1, 2, 4])
def test_passes_of_a_ladder_two_high(pairs, reinforce):
    """Two at the ends, three inside; the run back adds one to each."""
    chart = "\n".join(["A" * 2 * pairs] * 2)
    _, path = path_of(chart, f"stitch: herringbone\nbase: 2\nreinforce: {reinforce}")
    count = passes(path)
    more = 1 if reinforce == "true" else 0
    wanted = [2 + more] + [3 + more] * (2 * pairs - 2) + [2 + more]
    for row in (1, 2):
        beads = sorted((bead.x, count[index]) for index, bead in enumerate(path.beads) if bead.row == row)
        assert [number for _, number in beads] == wanted


def test_pairs_lean_towards_each_other_and_ladders_stand_straight():
    _, path = path_of(BLOCK, "stitch: herringbone")
    assert {bead.angle for bead in path.beads if bead.row == 1} == {0.0}
    for bead in path.beads:
        if bead.row > 1:
            assert (bead.angle < 0) is (bead.place % 2 == 1)


def test_gauge_overrules_the_pitch():
    keys = "stitch: herringbone\ngauge: {beads: 10, width: 22 mm, rows: 10, height: 15 mm}"
    _, path = path_of("AABB\nAABB\nAABB", keys)
    xs, ys = (
        sorted({round(at, 6) for at in found})
        for found in zip(*((b.x, b.y) for b in path.beads), strict=True)
    )
    assert xs[1] - xs[0] == pytest.approx(2.2)
    assert ys[1] - ys[0] == pytest.approx(1.5)


def test_a_fringe_hangs_from_it(sample, woven):
    fringe = """  - name: Drops
    stitch: fringe
    hang: {from: Piece, edge: bottom}
    strands: [4D, 5L, 5L, 4D]
"""
    path = woven(sample("DDLL\nDDLL\nDDLL", "stitch: herringbone\nbegin: top", fringe))
    assert [part.name for part in path.parts] == ["Piece", "Drops"]
