"""Small sources, read and woven, for the tests of the weave."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from sitegen.check import check_pattern
from sitegen.model.codes import CODES
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import MoveKind, ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

HEADER = """---
title: Sample
summary: A sample.
makes: one piece
revision: 1
price: free
finding: jump ring
colours:
  D: {bead: round 11/0, name: dark, hex: "#1f4d3a"}
  L: {bead: round 11/0, name: light, hex: "#a9b665"}
parts:
"""

Sample = Callable[..., Pattern]
Woven = Callable[[Pattern], ThreadPath]


@pytest.fixture
def sample() -> Sample:
    """Make a pattern of one brick (or other) part from its chart, with more keys and parts if wanted."""

    def make(chart: str, keys: str = "stitch: brick", parts: str = "") -> Pattern:
        lines = "".join(f"    {line}\n" for line in keys.splitlines())
        text = f"{HEADER}  - name: Piece\n{lines}{parts}---\n\n```chart Piece\n{chart}\n```\n"
        pattern, problems = read_pattern(text, "sample.md", Shop())
        assert pattern is not None
        assert not problems
        return pattern

    return make


@pytest.fixture
def woven() -> Woven:
    """Weave a pattern that must have no problem."""

    def make(pattern: Pattern) -> ThreadPath:
        path, problems = weave(pattern, Shop())
        assert not problems
        assert path is not None
        return path

    return make


@pytest.fixture
def problems_of() -> Callable[[Pattern], list[str]]:
    """The codes of all that check and weave find wrong."""

    def find(pattern: Pattern) -> list[str]:
        problems: list[Problem] = check_pattern(pattern, Shop())
        faults = [problem.code for problem in problems if CODES[problem.code].severity is Severity.FAULT]
        return faults or [problem.code for problem in weave(pattern, Shop())[1]]

    return find


@pytest.fixture
def passes() -> Callable[[ThreadPath, int], list[int]]:
    """Passes of each bead of a row, from the left as it hangs."""

    def count(path: ThreadPath, row: int) -> list[int]:
        total = Counter(move.bead for move in path.moves if move.kind in (MoveKind.PICK, MoveKind.THROUGH))
        beads = [index for index, bead in enumerate(path.beads) if bead.row == row and bead.part == 0]
        return [total[index] for index in sorted(beads, key=lambda index: path.beads[index].x)]

    return count


@pytest.fixture(scope="session")
def examples() -> Path:
    """The sources every release must build as they stand."""
    return Path(__file__).parent.parent / "examples"
