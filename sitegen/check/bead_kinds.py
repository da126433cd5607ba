"""Pattern and shop -> problems: every bead kind is in the trade tables or the author's own."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Colour, OwnBead, Pattern
from sitegen.read.faults import hint
from sitegen.trade.beads import bead_kind, bead_kind_names, bead_kinds_listed

Entry = tuple[Colour | StockBead, Mapping[str, OwnBead]]
"""What names a bead kind, and the author's own kinds that it may name."""


def bead_kinds(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The pattern's colours, and all of the shop's stock."""
    colours: list[Entry] = [(colour, pattern.bead_kinds) for colour in pattern.colours]
    stock: list[Entry] = [(bead, shop.bead_kinds) for bead in shop.stock.values()]
    return [
        Problem("bead-unknown", place(pattern, entry.at, "bead"), _values(entry.bead, own))
        for entry, own in (*colours, *stock)
        if entry.bead and bead_kind(entry.bead, own) is None
    ]


def _values(name: str, own: Mapping[str, OwnBead]) -> dict[str, object]:
    return {"name": name, "hint": hint(name, bead_kind_names(own), bead_kinds_listed(own))}
