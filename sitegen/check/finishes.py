"""Pattern and shop -> problems: every finish is in words that drawings understand."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Colour, Pattern
from sitegen.read.faults import hint
from sitegen.trade.finishes import finish_kind, finish_words


def finishes(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The pattern's own colours, and all of the shop's stock."""
    own = [colour for colour in pattern.colours if colour.stock is None]
    beads: list[Colour | StockBead] = [*own, *shop.stock.values()]
    return [
        Problem(
            "finish-unknown",
            place(pattern, bead.at, "finish"),
            {"name": bead.finish, "hint": hint(bead.finish, finish_words())},
        )
        for bead in beads
        if finish_kind(bead.finish) is None
    ]
