"""The name of a bead kind -> its size, hole and count to the gram: the trade's or the author's own."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType
from typing import Protocol

from sitegen.trade.figures import Figure, figure, table, tidy

_BUGLE = re.compile(r"bugle (\d{1,3}(?:\.\d{1,2})?) mm")
_UNIT = re.compile(r"(?<=\d)mm\b")


class BeadSize(Protocol):
    """What weaving and measuring ask of a bead kind, whoever measured it."""

    @property
    def name(self) -> str:
        """Trade words, such as `round 11/0`."""

    @property
    def shape(self) -> str:
        """`round`, `cylinder`, `cube`, `drop`, `bugle`, `bicone` or `faceted`: how it is drawn."""

    @property
    def width_mm(self) -> float:
        """Across the hole: the outside diameter."""

    @property
    def length_mm(self) -> float:
        """Along the hole."""

    @property
    def hole_mm(self) -> float:
        """Diameter of the hole."""

    @property
    def per_gram(self) -> float:
        """Beads in a gram."""


NO_OWN: Mapping[str, BeadSize] = MappingProxyType({})
"""No bead kinds beside those of the tables."""


@dataclass(frozen=True, slots=True)
class BeadKind:
    """A kind of bead from the tables of the trade."""

    name: str
    shape: str
    width_mm: float
    length_mm: float
    hole_mm: float
    per_gram: float
    figures: Mapping[str, Figure] = field(compare=False, repr=False)
    """`width`, `length`, `hole`, `per_gram`: the same numbers with their sources and ranges."""


def _kind(name: str, shape: str, figures: Mapping[str, Figure]) -> BeadKind:
    return BeadKind(
        name=name,
        shape=shape,
        width_mm=figures["width"].value,
        length_mm=figures["length"].value,
        hole_mm=figures["hole"].value,
        per_gram=figures["per_gram"].value,
        figures=figures,
    )


@cache
def _kinds() -> Mapping[str, BeadKind]:
    return {
        name: _kind(
            name,
            entry["shape"],
            {key: figure(entry[key]) for key in ("width", "length", "hole", "per_gram")},
        )
        for name, entry in table("beads").items()
    }


def bugle_lengths() -> tuple[float, float]:
    """Shortest and longest bugle taken for one, mm."""
    facts = table("bugles")
    return figure(facts["shortest"]).value, figure(facts["longest"]).value


@cache
def _bugle(length: float) -> BeadKind:
    """A bugle of this length, mm."""
    facts = table("bugles")
    heavy = figure(facts["grams_per_mm"])
    count = Figure(
        value=1 / (heavy.value * length),
        source=heavy.source,
        low=1 / (heavy.high * length),
        high=1 / (heavy.low * length),
    )
    figures = {
        "width": figure(facts["width"]),
        "length": Figure(length, "as it is named", length, length),
        "hole": figure(facts["hole"]),
        "per_gram": count,
    }
    return _kind(f"bugle {length:g} mm", "bugle", figures)


def table_kind(name: str) -> BeadKind | None:
    """The bead kind the trade calls so (case and blanks do not matter), or None."""
    words = " ".join(_UNIT.sub(" mm", tidy(name)).split())
    bugle = _BUGLE.fullmatch(words)
    if bugle is None:
        return _kinds().get(words)
    shortest, longest = bugle_lengths()
    length = float(bugle[1])
    return _bugle(length) if shortest <= length <= longest else None


def bead_kind(name: str, own: Mapping[str, BeadSize] = NO_OWN) -> BeadSize | None:
    """The bead kind of this name, or None: one of the author's own (keyed by tidy name), else the trade's."""
    return own.get(tidy(name)) or table_kind(name)


def bead_kind_names(own: Mapping[str, BeadSize] = NO_OWN) -> tuple[str, ...]:
    """Every bead kind, the author's own first, then those of the table in its order, and one bugle."""
    return (*(kind.name for kind in own.values()), *_kinds(), "bugle 6 mm")


def bead_kinds_listed(own: Mapping[str, BeadSize] = NO_OWN) -> str:
    """The same names in brief, the sizes of a family together: `round 15/0, 14/0, ...; cube 3, 4 mm`."""
    families: dict[str, list[str]] = {}
    for name in _kinds():
        family, size = name.split(" ", 1)
        families.setdefault(family, []).append(size)
    brief = [kind.name for kind in own.values()]
    for family, sizes in families.items():
        unit = " mm" if sizes[0].endswith(" mm") else ""
        brief.append(f"{family} {', '.join(size.removesuffix(unit) for size in sizes)}{unit}")
    return "; ".join([*brief, "bugle 6 mm (or another length)"])


def glass_per_gram(bead: BeadSize) -> float:
    """How many beads of this shape and size weigh a gram if they are glass."""
    glass = table("glass")
    section = figure(glass["fills"][bead.shape]).value * bead.width_mm**2 - math.pi / 4 * bead.hole_mm**2
    return 1000 / (max(section, 0.01) * bead.length_mm * figure(glass["density"]).value)
