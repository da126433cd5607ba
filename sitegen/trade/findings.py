"""A finding in trade words, `ear wire` -> where it is worn and how far it hangs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sitegen.trade.figures import figure, table, tidy
from sitegen.trade.wire import wire_mm


@dataclass(frozen=True, slots=True)
class FindingKind:
    """A kind of metal part."""

    name: str
    worn: str
    """`ear`, `neck`, `wrist` or `none`."""
    drop_mm: float
    """From the loop the thread goes through up to the finding's top; 0 for one that lies in line."""
    wire_mm: float
    """Diameter of the wire its loop is made of."""


@cache
def _kinds() -> Mapping[str, FindingKind]:
    return {
        name: FindingKind(
            name, entry["worn"], figure(entry["drop"]).value, wire_mm(figure(entry["gauge"]).value)
        )
        for name, entry in table("findings").items()
    }


def finding_kind(name: str) -> FindingKind | None:
    """The finding of this name (case and blanks do not matter), or None."""
    return _kinds().get(tidy(name))


def finding_names() -> tuple[str, ...]:
    """Every finding, in the table's order."""
    return tuple(_kinds())
