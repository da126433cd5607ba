"""ThreadPath with the thread used after each step -> the lengths to cut and where each begins."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sitegen.model.measures import CutLength, ThreadUse
from sitegen.model.shop import Shop
from sitegen.model.thread import ThreadPath

CUT_STEP_MM = 10
"""Lengths to cut are rounded up to whole centimetres."""


def plan(path: ThreadPath, ends: Sequence[float], shop: Shop) -> ThreadUse:
    """Each length as long as the working length allows, changed only where a step says a new one may begin.

    `ends` is the thread used after each step, mm. Where no step within reach allows it, a length is longer.
    """
    room = shop.working_length_mm - 2 * shop.tail_mm
    lengths = []
    first, begun, rested = 0, 0.0, -1
    for index, step in enumerate(path.steps):
        if ends[index] - begun > room and rested >= first:
            lengths.append(_length(path, first, rested, ends[rested] - begun, shop))
            first, begun = rested + 1, ends[rested]
        if step.rest:
            rested = index
    used = ends[-1] if ends else 0.0
    if path.steps:
        lengths.append(_length(path, first, len(path.steps) - 1, used - begun, shop))
    return ThreadUse(used, used + 2 * shop.tail_mm * len(lengths), tuple(lengths))


def _length(path: ThreadPath, first: int, last: int, used: float, shop: Shop) -> CutLength:
    whole = used + 2 * shop.tail_mm
    cut = math.ceil(round(whole / CUT_STEP_MM, 9)) * CUT_STEP_MM
    return CutLength(cut, path.steps[first].number, path.steps[last].number)
