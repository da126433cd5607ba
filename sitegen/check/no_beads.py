"""Pattern -> problems: there is something to stitch."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.check.stitch import StitchShape, shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern


def no_beads(pattern: Pattern, shop: Shop) -> list[Problem]:
    """A pattern all of whose parts are findings."""
    del shop
    if pattern.parts and all(shape(part) is StitchShape.NONE for part in pattern.parts):
        return [Problem("no-beads", place(pattern, pattern.at, "parts"))]
    return []
