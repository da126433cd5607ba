"""Effort -> minutes of work for all pieces, for a practised maker and for a first-time maker.

The time of the beads at a published pace, scaled by their size, and an allowance for everything that slows
the work. Paces and allowances stand in the trade tables.
"""

from __future__ import annotations

from sitegen.measure.effort import Effort, smallness
from sitegen.trade.rules import Pace, rules


def minutes(effort: Effort) -> Pace:
    """Minutes for all pieces, not rounded."""
    practised, novice = 0.0, 0.0
    if effort.beads:
        size = _size_share(effort.bead_width_mm)
        paces = rules().beads_per_hour
        practised = effort.beads * 60 / paces.practised * size
        novice = effort.beads * 60 / paces.novice * size
    for name, times in _slow_parts(effort).items():
        allowance = rules().allowances[name]
        practised += times * allowance.practised
        novice += times * allowance.novice
    return Pace(practised * effort.pieces, novice * effort.pieces)


def _size_share(width_mm: float) -> float:
    """1 for the usual bead, more for smaller ones."""
    share = rules().difficulty["bead-size"].share
    return 1 + rules().small_beads * (share(smallness(width_mm)) - share(smallness(rules().usual_width_mm)))


def _slow_parts(effort: Effort) -> dict[str, float]:
    """Allowance -> how many times it is due in one piece."""
    return {
        "begin-and-end": 1,
        "colour": effort.colours,
        "colour-change": effort.colour_changes,
        "increase": effort.increase_weight,
        "strand-turn": effort.strands,
        "travel": effort.travels,
        "finding": effort.findings_sewn,
        "thread-change": effort.thread_changes,
        "tight-pass": effort.excess_passes,
    }
