"""ThreadPath -> the warps of each loom strip: how many threads, and how long each is cut."""

from __future__ import annotations

import math

from sitegen.measure.plan import CUT_STEP_MM
from sitegen.measure.size import extent
from sitegen.model.measures import WarpUse
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath


def warps(path: ThreadPath, pattern: Pattern, shop: Shop) -> tuple[WarpUse, ...]:
    """A line for each part with warps: each as long as the strip and the loom allowance."""
    found = []
    for index in dict.fromkeys(warp.part for warp in path.warps):
        name = path.parts[index].name
        own = next(part.loom_allowance_mm for part in pattern.parts if part.name == name)
        allowance = shop.loom_allowance_mm if own is None else own
        _, length = extent(bead for bead in path.beads if bead.part == index)
        threads = [warp.threads for warp in path.warps if warp.part == index]
        each = math.ceil(round((length + allowance) / CUT_STEP_MM, 9)) * CUT_STEP_MM
        found.append(WarpUse(name, sum(threads), max(threads) > 1, each, allowance))
    return tuple(found)
