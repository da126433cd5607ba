"""Pattern and shop -> problems: needle and thread are in the trade tables."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import hint
from sitegen.trade.needles import needle, needle_names
from sitegen.trade.threads import parse_thread


def needle_and_thread(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The pattern's own, and the shop's usual ones."""
    problems: list[Problem] = []
    for entry in (pattern, shop):
        if entry.needle is not None and needle(entry.needle) is None:
            values = {"name": entry.needle, "hint": hint(entry.needle, needle_names())}
            problems.append(Problem("needle-unknown", place(pattern, entry.at, "needle"), values))
        if entry.thread is not None and parse_thread(entry.thread) is None:
            where = place(pattern, entry.at, "thread")
            problems.append(Problem("thread-unknown", where, {"name": entry.thread}))
    return problems
