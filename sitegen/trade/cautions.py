"""What a piece is made of -> the names of the cautions that are told with it, and the limits they tell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any

from sitegen.trade.figures import figure, table

ANY = "any"
"""In the table: whatever it is."""


@dataclass(frozen=True, slots=True)
class Uses:
    """What a piece has that may hurt, each by its name in the tables."""

    threads: frozenset[str] = frozenset()
    """Materials of thread."""
    findings: frozenset[str] = frozenset()
    shapes: frozenset[str] = frozenset()
    """Shapes of bead."""
    stitches: frozenset[str] = frozenset()


def cautions_for(uses: Uses) -> tuple[str, ...]:
    """The cautions of a piece, in the table's order."""
    return told_with(table("cautions")["cautions"], uses)


def told_with(entries: Mapping[str, Any], uses: Uses) -> tuple[str, ...]:
    """The names of those entries that have no `when`, or one that the piece fits."""
    return tuple(
        name
        for name, entry in entries.items()
        if "when" not in entry or any(_has(uses, kind, names) for kind, names in entry["when"].items())
    )


def _has(uses: Uses, kind: str, names: str | list[str]) -> bool:
    found: frozenset[str] = getattr(uses, kind)
    return bool(found if names == ANY else found.intersection(names))


@cache
def limits() -> Mapping[str, float]:
    """Limits for metals, by name; their units stand in the table."""
    return MappingProxyType(
        {name: figure(entry).value for name, entry in table("cautions")["limits"].items()}
    )
