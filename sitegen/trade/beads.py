"""The name of a bead kind -> its size, hole and count to the gram."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache

from sitegen.trade.figures import Figure, figure, table, tidy


@dataclass(frozen=True, slots=True)
class BeadKind:
    """A kind of seed bead."""

    name: str
    """Trade words, such as `round 11/0`."""
    shape: str
    """`round` or `cylinder`."""
    width_mm: float
    """Outside diameter."""
    length_mm: float
    """Along the hole."""
    hole_mm: float
    """Diameter of the hole."""
    per_gram: float
    """Beads in a gram."""
    figures: Mapping[str, Figure] = field(compare=False, repr=False)
    """`width`, `length`, `hole`, `per_gram`: the same numbers with their sources and ranges."""


@cache
def _kinds() -> Mapping[str, BeadKind]:
    kinds = {}
    for name, entry in table("beads").items():
        figures = {key: figure(entry[key]) for key in ("width", "length", "hole", "per_gram")}
        kinds[name] = BeadKind(
            name=name,
            shape=entry["shape"],
            width_mm=figures["width"].value,
            length_mm=figures["length"].value,
            hole_mm=figures["hole"].value,
            per_gram=figures["per_gram"].value,
            figures=figures,
        )
    return kinds


def bead_kind(name: str) -> BeadKind | None:
    """The bead kind of this name (case and blanks do not matter), or None."""
    return _kinds().get(tidy(name))


def bead_kind_names() -> tuple[str, ...]:
    """Every bead kind, in the table's order."""
    return tuple(_kinds())
