"""Ladder: passes and the way the thread comes out. Source: the mechanics stated in weave/ladder.py."""

from __future__ import annotations

import pytest

from sitegen.model.thread import End, MoveKind


def row(beads: int) -> str:
    return " ".join("D" * beads)


@pytest.mark.parametrize("beads", [2, 3, 4, 7, 10])
def test_passes_are_two_at_the_ends_and_three_inside(sample, woven, passes, beads):
    path = woven(sample(row(beads), "stitch: ladder\nreinforce: false"))
    assert passes(path, 1) == [2] + [3] * (beads - 2) + [2]


@pytest.mark.parametrize("beads", [2, 3, 4, 7, 10])
def test_the_run_back_adds_one_to_each(sample, woven, passes, beads):
    path = woven(sample(row(beads), "stitch: ladder"))
    assert passes(path, 1) == [3] + [4] * (beads - 2) + [3]


@pytest.mark.parametrize("reinforce", ["true", "false"])
@pytest.mark.parametrize("beads", [2, 3, 4, 7, 10])
def test_the_thread_ends_going_up(sample, woven, beads, reinforce):
    path = woven(sample(row(beads), f"stitch: ladder\nreinforce: {reinforce}"))
    last = path.moves[-1]
    assert last.kind is MoveKind.THROUGH
    assert last.enter is End.BOTTOM
    assert path.beads[last.bead].place == (1 if reinforce == "true" else beads)


def test_it_may_start_at_the_right(sample, woven):
    path = woven(sample(row(5), "stitch: ladder\nstart: right"))
    assert [path.beads[bead].place for step in path.steps for bead in step.picks] == [5, 4, 3, 2, 1]


def test_its_letters_may_stand_close_together(sample, woven):
    close, apart = (woven(sample(chart, "stitch: ladder")) for chart in ("DLDLD", "D L D L D"))
    assert close == apart


def test_it_is_one_row(sample, problems_of):
    assert problems_of(sample("DD\nDD", "stitch: ladder")) == ["weave-ladder-rows"]


def test_neighbours_are_a_diameter_apart(sample, woven):
    path = woven(sample(row(3), "stitch: ladder"))
    xs = sorted(bead.x for bead in path.beads)
    assert xs == pytest.approx([xs[0], xs[0] + 2.1, xs[0] + 4.2])
