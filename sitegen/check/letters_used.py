"""Pattern -> advice: every colour is used."""

from __future__ import annotations

from sitegen.check.spots import bead_spots, half_read, place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern


def letters_used(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Colours that no chart and no strand names; silent while parts could not be read whole."""
    del shop
    if not pattern.parts or any(half_read(part) for part in pattern.parts):
        return []
    used = {letter for part in pattern.parts for letter, _ in bead_spots(part)}
    return [
        Problem("letter-unused", place(pattern, colour.at), {"letter": colour.letter})
        for colour in pattern.colours
        if colour.letter not in used
    ]
