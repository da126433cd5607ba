"""Pattern -> problems: no two fringes hang from the same places."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.hanging import points


def edge_taken(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Every part after the first on the beads, or the bridges, of one edge of one part."""
    del shop
    problems: list[Problem] = []
    taken: dict[tuple[str, str, str], str] = {}
    for part in pattern.parts:
        if part.hang is None or part.hang.part is None:
            continue
        edge = (part.hang.part, part.hang.edge, points(part))
        if edge in taken:
            values = {"edge": part.hang.edge, "part": part.hang.part, "first": taken[edge]}
            problems.append(Problem("edge-taken", place(pattern, part.hang.at, "part"), values))
        taken.setdefault(edge, part.name)
    return problems
