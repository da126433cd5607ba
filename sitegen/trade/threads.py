"""A thread in trade words, `nylon 0.25 mm` -> its material and diameter."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from sitegen.trade.figures import figure, table, tidy

_WORDS = re.compile(r"([a-z]+) (\d+(?:\.\d+)?|\.\d+) ?mm")


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread to sew with."""

    material: str
    """`nylon`, `braided` or `polyester`."""
    diameter_mm: float

    @property
    def text(self) -> str:
        """As the trade says it: `nylon 0.25 mm`."""
        return f"{self.material} {self.diameter_mm:g} mm"


@cache
def _usual() -> Mapping[str, tuple[float, ...]]:
    materials = table("threads")["materials"]
    return {
        name: tuple(sorted(figure(entry).value for entry in facts["usual"]))
        for name, facts in materials.items()
    }


def thread_materials() -> tuple[str, ...]:
    """Every material, in the table's order."""
    return tuple(_usual())


def thread_bounds() -> tuple[float, float]:
    """Thinnest and thickest diameter taken for beading thread, mm."""
    bounds = table("threads")["bounds"]
    return figure(bounds["thinnest"]).value, figure(bounds["thickest"]).value


def parse_thread(words: str) -> Thread | None:
    """The thread these words name, or None for an unknown material or a diameter out of bounds."""
    found = _WORDS.fullmatch(tidy(words))
    if found is None or found[1] not in _usual():
        return None
    diameter = float(found[2])
    thinnest, thickest = thread_bounds()
    return Thread(found[1], diameter) if thinnest <= diameter <= thickest else None


def finer_threads(thread: Thread) -> tuple[Thread, ...]:
    """The usual threads of the same material that are thinner, the thickest of them first."""
    return tuple(
        Thread(thread.material, diameter)
        for diameter in reversed(_usual()[thread.material])
        if diameter < thread.diameter_mm
    )
