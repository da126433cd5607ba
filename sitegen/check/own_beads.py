"""Pattern -> problems: the author's own bead kinds can be beads, and stand apart from the trade's."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import OwnBead, Pattern
from sitegen.trade.beads import glass_per_gram, table_kind
from sitegen.trade.figures import tidy

WEIGHT_OFF = 2.5
"""A count to the gram so many times more or less than glass would give is worth a second look: metal is about
three times as heavy as glass, plastic half as heavy. Own judgement, no source."""


def own_beads(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Names the trade has already, holes as wide as the bead, unlikely weights, and kinds no colour uses."""
    problems: list[Problem] = []
    used = {tidy(colour.bead) for colour in pattern.colours}
    for name, kind in pattern.bead_kinds.items():
        values: dict[str, object] = {"name": name}
        if table_kind(name) is not None:
            problems.append(Problem("bead-kind-known", place(pattern, kind.at), values))
        if kind.hole_mm >= kind.width_mm:
            problems.append(Problem("bead-kind-hole", place(pattern, kind.at, "hole_mm"), values))
        else:
            problems += _weight(pattern, kind)
        if name not in used and shop.bead_kinds.get(name) != kind:
            problems.append(Problem("bead-kind-unused", place(pattern, kind.at), values))
    return problems


def _weight(pattern: Pattern, kind: OwnBead) -> list[Problem]:
    glass = glass_per_gram(kind)
    if 1 / WEIGHT_OFF <= kind.per_gram / glass <= WEIGHT_OFF:
        return []
    values = {"name": kind.name, "given": plain(kind.per_gram), "glass": plain(glass, 0 if glass > 10 else 1)}
    return [Problem("bead-kind-weight", place(pattern, kind.at, "per_gram"), values)]
