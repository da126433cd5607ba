"""Pattern -> problems: every finding is in the trade table."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.check.spots import place
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import hint
from sitegen.trade.findings import finding_kind, finding_names


def findings(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The piece's finding, those sewn to parts, and those that are parts."""
    del shop
    return [
        Problem("finding-unknown", where, {"name": name, "hint": hint(name, finding_names())})
        for name, where in _named(pattern)
        if name and finding_kind(name) is None
    ]


def _named(pattern: Pattern) -> Iterator[tuple[str, Location]]:
    if pattern.finding is not None:
        yield pattern.finding, place(pattern, pattern.at, "finding")
    for part in pattern.parts:
        if part.hang is not None and part.hang.finding is not None:
            yield part.hang.finding, place(pattern, part.hang.at, "finding")
        if part.clasp is not None:
            yield part.clasp, place(pattern, part.at, "clasp")
        if part.finding is not None:
            yield part.finding.kind, place(pattern, part.finding.at, "kind")
