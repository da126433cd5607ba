"""Random rounds, tubes and ropes: the needle has no objection, and the thread keeps within its bounds."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.measure import measure
from sitegen.measure.thread import move_lengths
from sitegen.model.codes import CODES
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.thread import MoveKind
from sitegen.weave.mirror import mirrored
from sitegen.weave.needle import REACH
from tests.weave.round_samples import path_of, piece, rounds, staggered

letters = st.sampled_from("ABC")


@st.composite
def circles(draw):
    """Rounds that grow (in brick also shrink) by any amount that can be stitched, on a ring or a centre."""
    stitch = draw(st.sampled_from(("circular brick", "circular peyote")))
    count = draw(st.integers(3, 12))
    ring = stitch == "circular brick" and draw(st.booleans())
    words = []
    for number in range(draw(st.integers(1, 5))):
        if number:
            least = -(-count // 2) if stitch == "circular brick" else count
            count = draw(st.integers(max(3, least), min(2 * count, 60)))
        words.append(" ".join(draw(st.lists(letters, min_size=count, max_size=count))))
    return rounds(stitch, words, f"around: {{ring: {draw(st.integers(4, 20))} mm}}" if ring else "")


@st.composite
def tubes(draw):
    """Tubes of any width and length, begun at either end."""
    stitch = draw(st.sampled_from(("tubular peyote", "tubular brick", "tubular herringbone")))
    begin = draw(st.sampled_from(("bottom", "top")))
    paired = stitch == "tubular herringbone"
    count = 2 * draw(st.integers(2, 6)) if paired else draw(st.integers(3, 9))
    size = draw(st.integers(2, 7))
    rows = ["".join(draw(st.lists(letters, min_size=count, max_size=count))) for _ in range(size)]
    chart = "\n".join(rows) if paired else staggered(rows, draw(st.integers(0, 1)))
    return piece(f"stitch: {stitch}\nbegin: {begin}", chart)


@st.composite
def ropes(draw):
    """Ropes whose outer beads are long enough, of one size or two."""
    core = draw(st.lists(letters, min_size=2, max_size=6))
    outer = draw(st.lists(st.sampled_from("ABCE"), min_size=1, max_size=9))
    stitches = draw(st.integers(1, 20))
    words = f"core: {' '.join(core)}, outer: {' '.join(outer)}, stitches: {stitches}"
    return piece(f"stitch: spiral rope\nrope: {{{words}}}")


def is_sound(pattern):
    """Whether the check stage has no fault to tell; advice may be."""
    found = check_pattern(pattern, Shop())
    return not any(CODES[problem.code].severity is Severity.FAULT for problem in found)


@settings(max_examples=120, deadline=None)
@given(pattern=st.one_of(circles(), tubes(), ropes()))
def test_what_the_checks_allow_can_be_made(pattern):
    """`path_of` holds that the needle has no objection: nothing bare or loose, nothing unlike the chart."""
    assume(is_sound(pattern))
    path = path_of(pattern)
    picks = Counter(move.bead for move in path.moves if move.kind is MoveKind.PICK)
    assert set(picks.values()) == {1}
    assert len(picks) == len(path.beads)
    written = Counter(letter for row in pattern.parts[0].all_rows for _, letter in row.cells)
    assert Counter(bead.letter for bead in path.beads) == written


@settings(max_examples=60, deadline=None)
@given(pattern=st.one_of(circles(), tubes(), ropes()))
def test_the_thread_keeps_within_its_bounds(pattern):
    """No less than all holes it goes through; a move adds at most the longest bare thread and a bend."""
    assume(is_sound(pattern))
    path = path_of(pattern)
    lengths = move_lengths(path, 0.15)
    holes = sum(path.beads[move.bead].length for move in path.moves if move.bead >= 0)
    widest = max(bead.width for bead in path.beads)
    assert holes <= sum(lengths) <= holes + len(path.moves) * (REACH * widest + 2.0)


@settings(max_examples=40, deadline=None)
@given(pattern=st.one_of(circles(), tubes()))
def test_a_mirrored_chart_is_worked_alike(pattern):
    """Rounds always run the same way, so the moves stay and each round's letters are read backwards."""
    assume(is_sound(pattern))
    other = mirrored(pattern)
    assume(other is not None)
    one, two = path_of(pattern), path_of(other)
    assert abs(len(one.moves) - len(two.moves)) <= 1  # a strung tube may begin one bead earlier
    assert Counter(bead.letter for bead in one.beads) == Counter(bead.letter for bead in two.beads)
    assert sum(move_lengths(one, 0.15)) == pytest.approx(sum(move_lengths(two, 0.15)), rel=0.05, abs=4.0)


@settings(max_examples=40, deadline=None)
@given(pattern=st.one_of(circles(), tubes(), ropes()))
def test_measures_do_not_depend_on_names_of_colours(pattern):
    assume(is_sound(pattern))
    path = path_of(pattern)
    swap = {"A": "B", "B": "C", "C": "A", "E": "E"}
    renamed = replace(path, beads=tuple(replace(bead, letter=swap[bead.letter]) for bead in path.beads))
    one, two = (measure(this, pattern, Shop()) for this in (path, renamed))
    assert (one.width_mm, one.height_mm, one.weight_g) == (two.width_mm, two.height_mm, two.weight_g)
    assert one.thread == two.thread
    assert one.passes == two.passes
