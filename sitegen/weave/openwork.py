"""Bends and joints of openwork -> the gaps between holes there, and problems where thread would lie bare."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sitegen.model.problem import Problem
from sitegen.weave.work import Work

MOST_GAP = 1.32
"""The widest gap between two beads that follow each other on the thread, in widths of the wider: beyond it
bare thread would show. A judgement; no source."""


def bend_gap(width: float, degrees: float, closing: float) -> float:
    """Between the holes of two beads whose ways bend by an angle: the rims of plain cylinders of that width
    would touch at width * tan(angle / 2), and rounded ones close up to a share of it. mm."""
    return closing * width * math.tan(math.radians(degrees) / 2)


def uneven(work: Work, joints: Sequence[tuple[int, int, float]]) -> list[Problem]:
    """Joints (bead, bead, mm between their holes) that would leave thread bare: the beads differ too much."""
    for one, other, gap in joints:
        if gap > MOST_GAP * max(work.beads[one].width, work.beads[other].width):
            short = min(one, other, key=lambda bead: work.beads[bead].length)
            return [Problem("weave-uneven", work.beads[short].where, {"letter": work.beads[short].letter})]
    return []
