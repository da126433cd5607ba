"""Loom work: warps, the weft's two ways through a row, and random charts. Mechanics: weave/loom.py."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.thread import End, MoveKind
from sitegen.publish.report import measures_json
from sitegen.publish.words import Words
from sitegen.read.pattern import read_pattern
from sitegen.read.shop_file import read_shop_file
from sitegen.weave import weave
from sitegen.weave.needle import replay
from tests.weave.across_patterns import (
    faults,
    mirrored,
    passes,
    pattern_of,
    picked_once,
    rectangles,
    thread_bounds,
    trail,
)


def woven_of(rows, **keys):
    pattern = pattern_of(rows, "loom", **keys)
    path, problems = weave(pattern, Shop())
    assert not problems
    assert path is not None
    return pattern, path


@pytest.fixture
def gulls(examples):
    pattern, problems = read_pattern(
        (examples / "gulls-bookmark.md").read_text(), "gulls-bookmark.md", Shop()
    )
    assert pattern is not None
    assert not problems
    path, problems = weave(pattern, Shop())
    assert path is not None
    assert not problems
    return pattern, path


def codes(path, pattern):
    return {problem.code for problem in replay(path, pattern)}


@pytest.mark.parametrize(("across", "rows"), [(1, 1), (1, 4), (7, 1), (9, 12)])
def test_the_weft_passes_each_bead_twice(across, rows):
    _, path = woven_of(["A" * across] * rows)
    assert set(passes(path).values()) == {2}
    assert sum(move.kind is MoveKind.WARP for move in path.moves) == 2 * rows - 1


def test_warps_lie_between_the_beads_and_at_both_edges():
    _, path = woven_of(["AAA", "AAA"])
    xs = [warp.x for warp in path.warps]
    assert len(xs) == 4
    beads = sorted({bead.x for bead in path.beads})
    assert all(left < bead < right for left, bead, right in zip(xs, beads, xs[1:], strict=False))


def test_doubled_edges_are_two_threads_more():
    pattern, path = woven_of(["A" * 9], edge_warps="doubled")
    assert [warp.threads for warp in path.warps] == [2, *[1] * 8, 2]
    assert measure(path, pattern, Shop()).warps[0].count == 12


def test_a_warp_is_the_strip_and_its_allowance_long():
    """Ten rows of 2.1 mm and 600 mm more, rounded up to whole centimetres."""
    pattern, path = woven_of(["AAA"] * 10)
    line = measure(path, pattern, Shop()).warps[0]
    assert (line.each_mm, line.total_mm) == (630, 4 * 630)
    own, path = woven_of(["AAA"] * 10, loom_allowance_mm=100.0)
    assert measure(path, own, Shop()).warps[0].each_mm == 130
    assert measure(path, pattern, Shop(loom_allowance_mm=200.0)).warps[0].each_mm == 230


def test_thread_of_a_row_without_slack():
    """Twice the row's beads and the warps between them, and half way round both outer warps."""
    pattern, path = woven_of(["A" * 5] * 3)
    steps = measure(path, pattern, Shop(slack=1.0)).steps
    row = 2 * (5 * 1.5 + 4 * 0.15) + 2 * 3.14159265 * 0.15 + 2.1
    assert steps[2].thread_mm - steps[1].thread_mm == pytest.approx(row)


def test_pitch_and_gauge(sample, woven):
    _, path = woven_of(["AAA", "AAA"])
    assert path.parts[0].bead_pitch == pytest.approx(1.5 + 0.15)
    keys = "stitch: loom\ngauge: {beads: 10, width: 14 mm, rows: 10, height: 17 mm}"
    path = woven(sample("DDD\nDLD", keys))
    assert path.parts[0].bead_pitch == pytest.approx(1.4)
    assert path.parts[0].row_pitch == pytest.approx(1.7)


def test_a_loom_strip_has_no_empty_places():
    assert faults(pattern_of(["AAA", "A.A"], "loom")) == {"row-not-full"}


def test_gulls_bookmark_as_it_stands(gulls):
    """60 rows of nine beads; strands of 9, 11 ... 17 ... 9 beads hang from nine beads."""
    pattern, path = gulls
    measures = measure(path, pattern, Shop())
    assert measures.bead_each == 60 * 9 + 2 * (9 + 11 + 13 + 15) + 17
    assert measures.warps[0].count == 10
    strands = [step for step in path.steps if step.motion == "strand"]
    assert [len(step.picks) for step in strands] == [9, 11, 13, 15, 17, 15, 13, 11, 9]


def test_a_strand_hangs_under_its_bead_and_is_held_at_both_ends_of_the_hole(gulls):
    _, path = gulls
    foot = [index for index, bead in enumerate(path.beads) if bead.part == 0 and bead.row == 1]
    strands = [step for step in path.steps if step.motion == "strand"]
    for bead, step in zip(foot, strands, strict=True):
        first = path.beads[step.picks[0]]
        assert first.x == pytest.approx(path.beads[bead].x)
        before = path.moves[step.first_move - 1]
        assert (before.bead, before.enter.other) == (bead, End.BOTTOM)
        again = [move for move in path.moves[step.first_move : step.past_move] if move.bead == bead]
        assert [move.enter for move in again] == [End.TOP]


def test_the_needle_sees_a_turn_that_misses_its_warp(gulls):
    pattern, path = gulls
    number = next(number for number, move in enumerate(path.moves) if move.kind is MoveKind.WARP)
    without = replace(path, moves=path.moves[:number] + path.moves[number + 1 :])
    assert {"path-pulls-out", "path-off-warps"} <= codes(without, pattern)
    far = replace(path.moves[number], warp=4)
    assert "path-bare-thread" in codes(
        replace(path, moves=(*path.moves[:number], far, *path.moves[number + 1 :])), pattern
    )


def test_the_needle_sees_a_missing_warp(gulls):
    pattern, path = gulls
    warps = list(path.warps)
    warps[4] = replace(warps[4], x=warps[3].x)
    assert "path-off-warps" in codes(replace(path, warps=tuple(warps)), pattern)


@settings(max_examples=80, deadline=None)
@given(
    rows=rectangles(),
    begin=st.sampled_from(("bottom", "top", "middle")),
    start=st.sampled_from(("left", "right")),
)
def test_random_charts(rows, begin, start):
    pattern, path = woven_of(rows, begin=begin, start=start)
    assert picked_once(path)
    assert min(passes(path).values()) >= 2
    least, length, most = thread_bounds(path, pattern)
    assert least <= length + 1e-6
    assert length <= most
    other = {"left": "right", "right": "left"}[start]
    _, turned = woven_of(mirrored(rows), begin=begin, start=other)
    assert trail(turned, flip=True) == trail(path)


def test_the_allowance_is_the_parts_or_the_shops(sample, woven):
    shop, problems = read_shop_file("title: A\nloom_allowance: 45 cm\n", "shop.yaml")
    assert (shop.loom_allowance_mm, problems) == (450.0, [])
    plain = sample("DLD", "stitch: loom")
    own = sample("DLD", "stitch: loom\nloom_allowance: 30 cm\nedge_warps: doubled")
    assert measure(woven(plain), plain, shop).warps[0].allowance_mm == 450.0
    line = measure(woven(own), own, shop).warps[0]
    assert (line.allowance_mm, line.count, line.doubled) == (300.0, 6, True)


def test_warps_close_the_json():
    pattern, path = woven_of(["AAA", "ABA"])
    words = Words(Path(__file__).parents[2] / "themes" / "linen", "en")
    report = measures_json(pattern, path, measure(path, pattern, Shop()), words)
    line = {"part": "Piece", "count": 4, "each_mm": 610, "total_mm": 2440, "edges_doubled": False}
    assert report["warps"] == [line]
