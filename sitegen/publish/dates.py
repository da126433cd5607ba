"""Patterns -> the dates their authors wrote down: no other date stands in anything that is made."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from sitegen.model.source import Pattern, Revision


def dated(pattern: Pattern) -> tuple[tuple[date, Revision], ...]:
    """The revisions that have a date, each after it, the lowest number first."""
    known = ((one.date, one) for one in pattern.revisions if one.date is not None)
    return tuple(sorted(known, key=lambda pair: pair[1].number))


def published(pattern: Pattern) -> date | None:
    """The earliest date of its history; None where no revision has one."""
    return min((day for day, _ in dated(pattern)), default=None)


def changed(patterns: Iterable[Pattern]) -> date | None:
    """The newest date of all their histories; None where no revision has one."""
    return max((day for pattern in patterns for day, _ in dated(pattern)), default=None)
