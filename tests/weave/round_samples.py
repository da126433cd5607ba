"""Patterns of one part in rounds, as a tube or as a rope, for several test files."""

from __future__ import annotations

from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

HEADER = """---
title: Sample
summary: A sample.
makes: one piece
revision: 1
price: free
thread: nylon 0.15 mm
colours:
  A: {bead: round 11/0, name: amber, hex: "#c8862c"}
  B: {bead: round 11/0, name: brown, hex: "#4a2f1f"}
  C: {bead: round 11/0, name: cream, hex: "#f3ead2"}
  E: {bead: round 8/0, name: ebony, hex: "#211d1c"}
parts:
  - name: Piece
"""


def piece(keys: str, chart: str = "") -> Pattern:
    """A pattern of one part with these header lines and this chart, read without problems."""
    lines = "".join(f"    {line}\n" for line in keys.strip().splitlines())
    drawn = f"```chart Piece\n{chart}\n```\n" if chart else ""
    pattern, problems = read_pattern(f"{HEADER}{lines}---\n\n{drawn}", "sample.md", Shop())
    assert pattern is not None
    assert not problems
    return pattern


def rounds(stitch: str, words: list[str], more: str = "") -> Pattern:
    """A part in rounds, each in words, from the middle outward."""
    return piece(f"stitch: {stitch}\nrounds: [{', '.join(words)}]\n{more}")


def staggered(rows: list[str], first: int = 0) -> str:
    """A tube's chart from its rows' letters, top row first; every other row moved by one column."""
    return "\n".join(" " * ((number + first) % 2) + " ".join(row) for number, row in enumerate(rows))


def path_of(pattern: Pattern) -> ThreadPath:
    """The path of a pattern the needle has nothing against."""
    path, problems = weave(pattern, Shop())
    assert not problems
    assert path is not None
    return path


def passes_of(path: ThreadPath, row: int) -> list[int]:
    """Passes of each bead of a round, in working order."""
    picked = [pick for step in path.steps for pick in step.picks if path.beads[pick].row == row]
    return [sum(move.bead == bead for move in path.moves) for bead in picked]
