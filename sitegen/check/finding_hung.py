"""Pattern -> problems: the finding named in the header is sewn to something."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.trade.findings import finding_kind


def finding_hung(pattern: Pattern, shop: Shop) -> list[Problem]:
    """A header finding that no part hangs from, or that differs from the one sewn on."""
    del shop
    if pattern.finding is None:
        return []
    sewn = [part.hang.finding for part in pattern.parts if part.hang and part.hang.finding]
    loose = [part.finding.kind for part in pattern.parts if part.finding]
    if pattern.finding in (*sewn, *loose):
        return []
    if any(finding_kind(name) is None for name in (pattern.finding, *sewn)):
        return []
    where = place(pattern, pattern.at, "finding")
    if sewn:
        return [Problem("finding-differs", where, {"name": pattern.finding, "sewn": sewn[0]})]
    return [Problem("finding-not-hung", where, {"name": pattern.finding})]
