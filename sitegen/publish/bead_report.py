"""Pattern and measures -> the bead kinds used with the figures reckoned with, for the author's report."""

from __future__ import annotations

from typing import Any

from sitegen.model.measures import Measures
from sitegen.model.numbers import plain
from sitegen.model.source import Pattern
from sitegen.trade.beads import bead_kind, table_kind
from sitegen.trade.figures import Figure, tidy

UNITS = {"width": "mm", "length": "mm", "hole": "mm", "per_gram": "to the gram"}
"""The figures of a bead kind, and what they count."""
OWN = "measured by the author"


def kinds_used(pattern: Pattern, measures: Measures) -> dict[str, dict[str, Figure]]:
    """Bead kind -> its figures, in the order of the materials; an own kind's stand without a range."""
    used = {}
    for name in dict.fromkeys(tidy(line.bead) for line in measures.beads):
        kind = bead_kind(name, pattern.bead_kinds)
        found = None if name in pattern.bead_kinds else table_kind(name)
        if found is not None:
            used[found.name] = dict(found.figures)
        elif kind is not None:
            values = (kind.width_mm, kind.length_mm, kind.hole_mm, kind.per_gram)
            used[kind.name] = {
                key: Figure(value, OWN, value, value) for key, value in zip(UNITS, values, strict=True)
            }
    return used


def kinds_json(pattern: Pattern, measures: Measures) -> list[dict[str, Any]]:
    """One object a kind: every figure with its range and source; lengths in mm."""
    return [
        {
            "bead": name,
            **{
                key if key == "per_gram" else f"{key}_mm": {
                    "value": round(figure.value, 3),
                    "low": round(figure.low, 3),
                    "high": round(figure.high, 3),
                    "source": figure.source,
                }
                for key, figure in figures.items()
            },
        }
        for name, figures in kinds_used(pattern, measures).items()
    ]


def kind_rows(pattern: Pattern, measures: Measures) -> list[tuple[str, ...]]:
    """A row of column heads and one row a kind; a range in brackets where the sources disagree."""
    rows: list[tuple[str, ...]] = [("", "across mm", "along mm", "hole mm", "to the gram")]
    for name, figures in kinds_used(pattern, measures).items():
        rows.append((name, *(_ranged(figures[key]) for key in UNITS)))
    return rows


def _ranged(figure: Figure) -> str:
    places = 2 if figure.value < 10 else 1
    value, low, high = (plain(number, places) for number in (figure.value, figure.low, figure.high))
    return value if low == high else f"{value} ({low} to {high})"
