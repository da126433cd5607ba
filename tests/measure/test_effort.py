"""Effort: the amounts are read off the path of a woven piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sitegen.measure.effort import Effort, effort
from sitegen.model.source import Makes
from tests.measure.pieces import made, pattern, triangle


def asked(
    *lines: str, strands: tuple[str, ...] = (), bead: str = "round 11/0", finding: str = "ear wire"
) -> Effort:
    """The effort of one piece."""
    piece = made(pattern(*lines, strands=strands, bead=bead, finding=finding))
    return effort(piece.path, piece.pattern, piece.measures.thread, piece.measures.passes)


def test_a_colour_change_is_a_bead_after_one_of_another_letter() -> None:
    assert asked("A A B B A", finding="").colour_changes == 2
    assert asked("A A A A A", finding="").colour_changes == 0
    assert asked(*triangle(2, 1), strands=("AABB", "BBAA"), finding="").colour_changes == 2


def test_strands_are_counted_and_the_longest_measured() -> None:
    found = asked(*triangle(3, 2), strands=("AAA", "AAAAAAA", "AAAAA"))
    assert (found.strands, found.longest_strand) == (3, 7)
    assert (asked(*triangle(3, 2)).strands, asked(*triangle(3, 2)).longest_strand) == (0, 0)


def test_increases_are_rows_that_grow() -> None:
    assert asked("A A A", " A A", finding="").increases > 0
    assert asked(" A A", "A A A", finding="").increases == 0


def test_stitches_and_findings_are_counted_once_each() -> None:
    found = asked(*triangle(3, 2), strands=("AAA",) * 3)
    assert (found.stitches, found.findings, found.findings_sewn) == (("brick", "fringe"), 1, 1)
    bare = asked(*triangle(3, 2), finding="")
    assert (bare.stitches, bare.findings, bare.findings_sewn) == (("brick",), 0, 0)


def test_passes_beyond_the_holes_add_up() -> None:
    source = replace(pattern(*triangle(4, 3), strands=("AAAAA",) * 4), thread="nylon 0.30 mm")
    piece = made(source)
    found = effort(piece.path, source, piece.measures.thread, piece.measures.passes)
    assert (
        found.excess_passes == sum(tight.passes - tight.allowed for tight in piece.measures.passes.tight) > 0
    )


def test_width_is_the_mean_diameter() -> None:
    assert asked(*triangle(3, 2), bead="round 8/0").bead_width_mm == pytest.approx(3.0)


def test_a_mirrored_pair_is_two_pieces_and_mirrored() -> None:
    source = replace(pattern(*triangle(3, 2)), makes=Makes.MIRRORED_PAIR)
    piece = made(source)
    found = effort(piece.path, source, piece.measures.thread, piece.measures.passes)
    assert (found.pieces, found.mirrored) == (2, True)
