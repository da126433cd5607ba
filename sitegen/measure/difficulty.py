"""Effort -> difficulty 0 to 100 with the points of each factor.

Each factor's points grow smoothly with its amount and never reach the factor's most, so that more of anything
is always harder and the sum stays below 100. The amounts, most and half, stand in the trade tables.
"""

from __future__ import annotations

import math

from sitegen.measure.effort import Effort, smallness
from sitegen.model.measures import Difficulty, Reason
from sitegen.model.numbers import plain
from sitegen.model.thread import Phrase
from sitegen.trade.rules import band, rules


def difficulty(effort: Effort) -> Difficulty:
    """Score, level and reasons, those with the most points first; the score is the sum of their points."""
    factors = rules().difficulty
    reasons = [
        Reason(name, factors[name].most * factors[name].share(amount), why)
        for name, (amount, why) in _amounts(effort).items()
        if amount > 0
    ]
    reasons.sort(key=lambda reason: -reason.points)
    score = sum(reason.points for reason in reasons)
    return Difficulty(score, band(rules().levels, round(score, 1)), tuple(reasons))


def _amounts(effort: Effort) -> dict[str, tuple[float, Phrase]]:
    """Factor -> its amount and the sentence that gives the reason."""

    def why(factor: str, count: float) -> Phrase:
        return Phrase(f"why-{factor}", {"count": count})

    weights = rules().stitch_weights
    technique = sum(weights.get(stitch, weights["other"]) for stitch in effort.stitches)
    more_pieces = (effort.pieces - 1) * (rules().mirrored_piece if effort.mirrored else 1.0)
    techniques = sum(weights.get(stitch, 1.0) > 0 for stitch in effort.stitches) + effort.findings
    return {
        "beads": (effort.beads, why("beads", effort.beads)),
        "colours": (max(0, effort.colours - 1), why("colours", effort.colours)),
        "bead-size": (
            smallness(effort.bead_width_mm),
            Phrase("why-bead-size", {"mm": plain(effort.bead_width_mm, 1)}),
        ),
        "stitches": (technique + effort.findings * weights["finding"], why("stitches", techniques)),
        "increases": (effort.increase_weight, why("increases", effort.increases)),
        "travels": (effort.travels, why("travels", effort.travels)),
        "strand": (effort.longest_strand, why("strand", effort.longest_strand)),
        "thread-changes": (effort.thread_changes, why("thread-changes", effort.thread_changes)),
        "tight-holes": (effort.excess_passes, why("tight-holes", effort.excess_passes)),
        "pieces": (more_pieces, why("mirrored" if effort.mirrored else "pieces", effort.pieces)),
    }


def shown_points(difficulty: Difficulty) -> tuple[float, tuple[float, ...]]:
    """Score and points to one decimal, rounded so that the points shown still add up to the score shown."""
    tenths = [reason.points * 10 for reason in difficulty.reasons]
    score = math.floor(sum(tenths) + 0.5)
    points = [math.floor(tenth) for tenth in tenths]
    nearest_up = sorted(range(len(tenths)), key=lambda index: points[index] - tenths[index])
    for index in nearest_up[: score - sum(points)]:
        points[index] += 1
    return score / 10, tuple(point / 10 for point in points)
