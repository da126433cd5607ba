"""Pattern and shop -> problems: every bead kind is in the trade table."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Colour, Pattern
from sitegen.read.faults import hint
from sitegen.trade.beads import bead_kind, bead_kind_names


def bead_kinds(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The pattern's colours, and all of the shop's stock."""
    entries: tuple[Colour | StockBead, ...] = (*pattern.colours, *shop.stock.values())
    return [
        Problem("bead-unknown", place(pattern, entry.at, "bead"), _values(entry.bead))
        for entry in entries
        if entry.bead and bead_kind(entry.bead) is None
    ]


def _values(name: str) -> dict[str, object]:
    return {"name": name, "hint": hint(name, bead_kind_names())}
