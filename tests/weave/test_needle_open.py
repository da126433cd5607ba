"""The virtual needle on herringbone and openwork: every kind of broken path is caught."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sitegen.model.thread import MoveKind
from sitegen.weave.needle import replay
from tests.weave.openwork import path_of
from tests.weave.test_net import net_chart

SAMPLES = {
    "herringbone": ("AABBAA\nABABAB\nAA..AB\nAA..AA", "stitch: herringbone"),
    "squares": (".A.B.A.\nA B A B\n.B.A.A.\nA A A B\n.A.B.B.", "stitch: right-angle weave"),
    "net": (net_chart(5, 5, 4), "stitch: netting\nnet: 5\nbegin: top"),
}


@pytest.fixture(params=SAMPLES, ids=str)
def good(request):
    return path_of(*SAMPLES[request.param])


def codes(path, pattern):
    return {problem.code for problem in replay(path, pattern)}


def test_a_good_path_has_no_objection(good):
    pattern, path = good
    assert codes(path, pattern) == set()


def test_it_sees_two_letters_changed_about(good):
    pattern, path = good
    one = next(n for n, bead in enumerate(path.beads) if bead.letter == "A" and bead.row == 2)
    other = next(n for n, bead in enumerate(path.beads) if bead.letter == "B" and bead.row == 2)
    beads = list(path.beads)
    beads[one], beads[other] = replace(beads[one], letter="B"), replace(beads[other], letter="A")
    assert codes(replace(path, beads=tuple(beads)), pattern) == {"path-unlike-chart"}


def test_it_sees_bare_thread(good):
    pattern, path = good
    far = len(path.moves) // 2
    moves = list(path.moves)
    moves[far] = replace(path.moves[0], kind=MoveKind.THROUGH)
    assert "path-bare-thread" in codes(replace(path, moves=tuple(moves)), pattern)


def test_it_sees_beads_that_nothing_holds(good):
    """Without its last step the top row of herringbone, the edge or the last net hangs on one pass."""
    pattern, path = good
    cut = replace(path, moves=path.moves[: path.steps[-1].first_move], steps=path.steps[:-1])
    assert codes(cut, pattern) == {"path-single-pass"}


def test_single_passes_are_for_netting_alone(good):
    """Under the name of another stitch the same path is loose."""
    pattern, path = good
    parts = (replace(path.parts[0], stitch="herringbone"),)
    loose = "path-single-pass" in codes(replace(path, parts=parts), pattern)
    assert loose is (path.parts[0].stitch == "netting")
