"""A small sound source to break in the tests."""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.pattern import read_pattern

REED = """---
title: Reed drops
summary: A small wedge with four short strands.
makes: pair
revision: 1
price: 4.50
needle: beading 12
thread: nylon 0.25 mm
finding: ear wire
colours:
  G: {bead: round 11/0, name: reed, hex: "#5d7a3a"}
  W: {bead: round 11/0, name: foam, hex: "#eef0e6"}
parts:
  - name: Wedge
    stitch: brick
    begin: bottom
    hang: {finding: ear wire, from: top}
  - name: Drops
    stitch: fringe
    hang: {from: Wedge, edge: bottom}
    turn: 1
    strands:
      - 3G 1W
      - 4G 2W
    mirror: true
---
Light as a reed in the wind.

```chart Wedge
 G G
G W G
```

::: steps Wedge
"""


def changed(*changes: tuple[str, str]) -> str:
    """The sample with each text, found exactly once, replaced."""
    text = REED
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return text


def read(text: str, shop: Shop | None = None) -> tuple[Pattern | None, list[Problem]]:
    """The text read as `reed.md`."""
    return read_pattern(text, "reed.md", shop or Shop())


def sound(text: str, shop: Shop | None = None) -> Pattern:
    """The text read; it must be without a problem."""
    pattern, problems = read(text, shop)
    assert problems == []
    assert pattern is not None
    return pattern


def codes(problems: list[Problem]) -> list[tuple[str, int, int]]:
    """Code, line and column of each problem."""
    return [(problem.code, problem.where.line, problem.where.column) for problem in problems]
