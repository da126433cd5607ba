"""Layers of beads: none is lost, what lies in front stays in front, and there are few."""

from __future__ import annotations

from sitegen.draw.stacked import stacked
from sitegen.model.thread import Bead


def bead(x: float, y: float = 0.0, angle: float = 0.0) -> Bead:
    return Bead("A", 0, 1, 1, x, y, angle, 2.0, 1.5, "round", "own")


def strand(number: int, x: float) -> list[tuple[tuple[int, int, int], Bead]]:
    return [((0, number, 0), bead(x, 1.5 * place)) for place in range(20)]


def test_no_beads_no_layers() -> None:
    assert stacked([]) == []


def test_strands_that_only_touch_share_a_layer() -> None:
    assert len(stacked([*strand(1, 0.0), *strand(2, 2.0), *strand(3, 4.0)])) == 1


def test_a_strand_that_hides_another_lies_above_it() -> None:
    below, above = strand(1, 0.0), strand(2, 1.2)
    layers = stacked([*below, *above])
    assert [sorted(bead.y for bead in layer) for layer in layers] == [
        [1.5 * place for place in range(20)],
        [1.5 * place for place in range(20)],
    ]
    assert {bead.x for bead in layers[0]} == {0.0}
    assert {bead.x for bead in layers[1]} == {1.2}


def test_only_what_hides_is_lifted() -> None:
    crossing = [((1, 1, 0), bead(0.4, 15.0, 90.0)), ((1, 1, 0), bead(30.0, 15.0))]
    layers = stacked([*strand(1, 0.0), *crossing])
    assert [len(layer) for layer in layers] == [21, 1]


def test_no_bead_is_lost() -> None:
    runs = [one for number in range(9) for one in strand(number, 0.7 * number)]
    layers = stacked(runs)
    assert sorted(map(id, (bead for layer in layers for bead in layer))) == sorted(
        id(bead) for _, bead in runs
    )
