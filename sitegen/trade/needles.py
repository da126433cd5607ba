"""A needle in trade words, `beading 12` -> its diameter and length."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sitegen.trade.figures import figure, table, tidy


@dataclass(frozen=True, slots=True)
class Needle:
    """A needle to sew with."""

    name: str
    """Class and number, such as `beading 12`."""
    diameter_mm: float
    length_mm: float


@cache
def _needles() -> Mapping[str, Needle]:
    return {
        name: Needle(name, figure(entry["diameter"]).value, figure(entry["length"]).value)
        for name, entry in table("needles").items()
    }


def needle(name: str) -> Needle | None:
    """The needle of this name (case and blanks do not matter), or None."""
    return _needles().get(tidy(name))


def needle_names() -> tuple[str, ...]:
    """Every needle, in the table's order."""
    return tuple(_needles())


def finer_needles(than: Needle) -> tuple[Needle, ...]:
    """The needles of the same class that are thinner, the thickest of them first."""
    family = than.name.split()[0]
    thinner = [
        other
        for other in _needles().values()
        if other.name.split()[0] == family and other.diameter_mm < than.diameter_mm
    ]
    return tuple(sorted(thinner, key=lambda other: -other.diameter_mm))
