"""Pattern -> problems: every letter of charts and strands is a colour."""

from __future__ import annotations

from sitegen.check.spots import bead_spots
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted


def letters_defined(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Each unknown letter once a part, where it stands first."""
    del shop
    known = {colour.letter for colour in pattern.colours}
    problems: list[Problem] = []
    for part in pattern.parts if known else ():
        unknown: dict[str, list[Location]] = {}
        for letter, where in bead_spots(part):
            if letter not in known and letter.isascii() and letter.isalnum():
                unknown.setdefault(letter, []).append(where)
        for letter, places in unknown.items():
            values = {"letter": letter, "times": counted(len(places), "time"), "part": part.name}
            if letter.isdigit():
                problems.append(Problem("letter-or-count", places[0], values))
            else:
                problems.append(
                    Problem("letter-undefined", places[0], values | {"hint": _hint(letter, known)})
                )
    return problems


def _hint(letter: str, known: set[str]) -> str:
    if letter.swapcase() in known:
        return f"`{letter.swapcase()}` is one: capitals and small letters differ."
    return "So far there are: " + ", ".join(sorted(known)) + "."
