"""Netting: strung row, nets into nets, half nets at the edges. Source: weave/net.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.model.thread import MoveKind
from tests.weave.openwork import assert_sound, mirror_moves, mirrored, net_charts, passes, path_of


def net_chart(net: int, wide: int, high: int) -> str:
    """A net of A with B where legs meet, beginning at the left of its first line."""
    pitch = (net + 1) // 2
    lines = []
    for line in range(high * pitch + 1):
        level, inside = divmod(line, pitch)
        places = {
            column * pitch + step * inside
            for column in range(level % 2, wide + 1, 2)
            for step in ((-1, 1) if inside else (0,))
            if 0 <= column + step <= wide
        }
        sign = "A" if inside else "B"
        lines.append("".join(sign if place in places else " " for place in range(wide * pitch + 1)).rstrip())
    return "\n".join(lines)


@settings(max_examples=120, deadline=None)
@given(drawn=net_charts(), begin=st.sampled_from(("bottom", "top")))
def test_every_chart_is_proved(drawn, begin):
    net, chart = drawn
    assert_sound(chart, f"stitch: netting\nnet: {net}\nbegin: {begin}")


@settings(max_examples=30, deadline=None)
@given(drawn=net_charts(), begin=st.sampled_from(("bottom", "top")))
def test_a_mirrored_chart_gives_a_mirrored_path(drawn, begin):
    net, chart = drawn
    keys = f"stitch: netting\nnet: {net}\nbegin: {begin}"
    _, one = path_of(chart, keys)
    _, two = path_of(mirrored(chart), keys)
    assert mirror_moves(one, mirror=False) == mirror_moves(two, mirror=True)


@pytest.mark.parametrize("net", [3, 5, 7])
@pytest.mark.parametrize("wide", [3, 5, 9])
@pytest.mark.parametrize("high", [3, 6])
def test_moves_of_the_whole(net, wide, high):
    """k = (net - 1) / 2. Strung: (w + 1) + w k beads and the first again. A row: (w - 1) / 2 nets of `net`
    beads and one join each, and k + 1 beads at the edge. The end: k beads back and one join.
    """
    leg = (net - 1) // 2
    _, path = path_of(net_chart(net, wide, high), f"stitch: netting\nnet: {net}\nbegin: top")
    strung = (wide + 1) + wide * leg + 1
    row = (wide - 1) // 2 * (net + 1) + leg + 1
    assert len(path.moves) == strung + (high - 1) * row + leg + 1


@pytest.mark.parametrize("net", [3, 5, 7])
def test_only_what_is_not_joined_lies_on_one_pass(net):
    """Two passes: the first bead, each joined middle bead, the last leg; three only at the last join."""
    _, path = path_of(net_chart(net, 5, 5), f"stitch: netting\nnet: {net}\nbegin: top")
    count = passes(path)
    held = {index for index, number in count.items() if number > 1}
    joined = {move.bead for move in path.moves if move.kind is MoveKind.THROUGH}
    assert held == joined
    middles = [index for index in held if path.beads[index].letter == "B"]
    rows = 5
    assert len(middles) == 1 + (rows - 1) * 2  # the first bead, and two joins a row
    assert len(held) - len(middles) == (net - 1) // 2
    assert sorted(count[index] for index in middles) == [2] * (len(middles) - 1) + [3]


@pytest.mark.parametrize("net", [3, 5, 7])
def test_each_net_is_joined_in_its_middle_bead(net):
    _, path = path_of(net_chart(net, 7, 5), f"stitch: netting\nnet: {net}\nbegin: top")
    nets = {step.row: [] for step in path.steps}
    for step in path.steps:
        if step.motion.startswith(("net-first", "net-next")):
            nets[step.row].append(step)
            assert len(step.picks) == net
    for row in range(3, 6):
        middles = {step.picks[net // 2] for step in nets[row - 1]}
        joined = {path.moves[step.past_move - 1].bead for step in nets[row]}
        assert joined == middles


@pytest.mark.parametrize("net", [3, 5, 7])
def test_rows_go_on_from_the_edge_bead(net):
    """The row's first bead touches the edge bead the row before ended with: no thread shows between them."""
    _, path = path_of(net_chart(net, 5, 4), f"stitch: netting\nnet: {net}\nbegin: top")
    for row in (2, 3, 4):
        first = next(step for step in path.steps if step.row == row)
        before, after = path.moves[first.first_move - 1], path.moves[first.first_move]
        edge, bead = path.beads[before.bead], path.beads[after.bead]
        assert edge.x in (min(b.x for b in path.beads), max(b.x for b in path.beads))
        assert math.dist(edge.mouth(before.enter.other), bead.mouth(after.enter)) < bead.width


@pytest.mark.parametrize("net", [3, 5, 7])
def test_beads_of_a_leg_do_not_lie_inside_each_other(net):
    _, path = path_of(net_chart(net, 5, 4), f"stitch: netting\nnet: {net}\nbegin: top")
    least = min(
        math.dist((one.x, one.y), (other.x, other.y))
        for place, one in enumerate(path.beads)
        for other in path.beads[:place]
    )
    assert least > min(path.beads[0].length, path.beads[0].width) * 0.9


def test_it_may_begin_at_the_foot():
    chart = net_chart(3, 3, 3)
    _, path = path_of("\n".join(reversed(chart.splitlines())), "stitch: netting\nnet: 3")
    assert all(step.turned for step in path.steps)
    lowest = max(bead.y for bead in path.beads)
    assert path.beads[path.moves[0].bead].y == lowest


def test_gauge_counts_nets():
    keys = "stitch: netting\nnet: 5\nbegin: top\ngauge: {beads: 4, width: 36 mm, rows: 6, height: 21 mm}"
    _, path = path_of(net_chart(5, 5, 3), keys)
    assert (path.parts[0].bead_pitch, path.parts[0].row_pitch) == pytest.approx((9.0, 3.5))
