"""Pattern -> problems: the revision is the newest of its history."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern


def revisions(pattern: Pattern, shop: Shop) -> list[Problem]:
    """A revision that is not listed or not the newest, and numbers listed twice."""
    del shop
    numbers = [revision.number for revision in pattern.revisions]
    problems = [
        Problem("revision-twice", place(pattern, revision.at, "number"), {"number": revision.number})
        for index, revision in enumerate(pattern.revisions)
        if revision.number and revision.number in numbers[:index]
    ]
    if not numbers or 0 in (pattern.revision, *numbers):
        return problems
    where = place(pattern, pattern.at, "revision", "revisions")
    if max(numbers) > pattern.revision:
        problems.append(Problem("revision-old", where, {"newest": max(numbers), "number": pattern.revision}))
    elif pattern.revision not in numbers:
        problems.append(Problem("revision-unlisted", where, {"number": pattern.revision}))
    return problems
