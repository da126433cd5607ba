"""Pattern -> problems: colourways swap colours of the pattern, each under a name of its own."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import hint


def colourways(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Unknown letters, and names given before."""
    del shop
    letters = [colour.letter for colour in pattern.colours]
    problems: list[Problem] = []
    seen: dict[str, Location] = {}
    for way in pattern.colourways:
        where = place(pattern, way.at, "name")
        if way.name and way.name in seen:
            values = {"name": way.name, "line": seen[way.name].line}
            problems.append(Problem("colourway-twice", where, values))
        seen.setdefault(way.name, where)
        for letter, swap in way.swaps.items():
            if letters and letter not in letters:
                unknown = {"name": way.name, "letter": letter, "hint": hint(letter, letters)}
                problems.append(Problem("colourway-letter", place(pattern, swap.at), unknown))
    return problems
