"""Pattern -> problems: no two parts share a name."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern


def part_names(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Every part whose name was given before."""
    del shop
    problems: list[Problem] = []
    seen: dict[str, Location] = {}
    for part in pattern.parts:
        where = place(pattern, part.at, "name")
        if part.name and part.name in seen:
            values = {"name": part.name, "line": seen[part.name].line}
            problems.append(Problem("part-twice", where, values))
        seen.setdefault(part.name, where)
    return problems
