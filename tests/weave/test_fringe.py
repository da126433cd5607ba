"""Fringe: down, round the turn beads, back up, on to the next. Source: weave/fringe.py."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest

from sitegen.model.shop import Shop
from sitegen.model.thread import End, MoveKind
from sitegen.weave import weave
from sitegen.weave.fringe import turn_places

FRINGE = """  - name: Fringe
    stitch: fringe
    hang: {{from: Piece, edge: {edge}}}
    turn: {turn}
    strands: [{strands}]
"""


def fringe(turn, strands="8D, 9D, 8D", edge="bottom"):
    return FRINGE.format(turn=turn, strands=strands, edge=edge)


@pytest.mark.parametrize("turn", [1, 2, 3, 4, 5])
def test_turn_beads_are_passed_once_and_the_rest_twice(sample, woven, turn):
    path = woven(sample(" D D\nD D D", parts=fringe(turn)))
    for strand in (1, 2, 3):
        count = {
            bead.place: sum(move.bead == index for move in path.moves)
            for index, bead in enumerate(path.beads)
            if bead.part == 1 and bead.row == strand
        }
        length = len(count)
        assert list(count.values()) == [2] * (length - turn) + [1] * turn


@pytest.mark.parametrize("turn", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("size", [(2.1, 1.5), (1.6, 1.3), (3.0, 2.3)])
def test_turn_beads_touch_but_do_not_sit_inside_each_other(turn, size):
    """Centres of neighbours are at least a bead's smaller size and at most 1.35 of its larger apart."""
    places = [(0.0, -size[1] / 2, 0.0), *turn_places(size, [size] * turn)]
    ring = [*places, places[0]] if turn > 1 else places
    for one, other in itertools.pairwise(ring):
        distance = math.dist(one[:2], other[:2])
        assert min(size) * 0.75 <= distance <= max(size) * 1.35


def test_the_thread_goes_on_through_the_next_hanging_bead(sample, woven):
    path = woven(sample(" D D\nD D D", parts=fringe(1)))
    strand = next(step for step in path.steps if step.motion == "strand")
    ends = path.moves[strand.past_move - 2 : strand.past_move]
    assert [(path.beads[move.bead].place, move.enter) for move in ends] == [(1, End.BOTTOM), (2, End.TOP)]


def test_strands_hang_from_the_side_the_thread_is_at(sample, woven):
    path = woven(sample(" D D\nD D D", parts=fringe(1, "3D, 4D, 5D")))
    first = next(step for step in path.steps if step.motion == "strand")
    came_out = path.moves[first.first_move - 1]
    assert came_out.enter is End.TOP
    assert path.beads[came_out.bead].place == (1 if len(first.picks) == 3 else 3)


def test_strands_may_stand_on_the_top_edge(sample, woven):
    path = woven(sample(" D D\nD D D", parts=fringe(3, "6D, 6D", "top")))
    heights = [bead.y for bead in path.beads if bead.part == 0]
    assert all(bead.y < min(heights) for bead in path.beads if bead.part == 1)
    assert all(step.turned for step in path.steps if step.motion == "strand")


def test_a_second_part_that_hangs_from_nothing_is_a_problem(sample, woven):
    pattern = sample("D D D", "stitch: ladder", "")
    twice = replace(pattern, parts=(pattern.parts[0], pattern.parts[0]))
    assert [problem.code for problem in weave(twice, Shop())[1]] == ["weave-part-apart"]


def test_a_finding_takes_the_shops_passes(sample, woven):
    path = woven(sample(" D D\nD D D", "stitch: brick\nhang: {finding: jump ring, from: top}"))
    assert sum(move.kind is MoveKind.LOOP for move in path.moves) == 3
