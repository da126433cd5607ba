"""ThreadPath -> Measures: everything counted or computed, one measure a module, in one order."""

from __future__ import annotations

import math

from sitegen.measure.difficulty import difficulty
from sitegen.measure.effort import effort
from sitegen.measure.holes import hole_fit
from sitegen.measure.materials import materials
from sitegen.measure.minutes import minutes
from sitegen.measure.plan import plan
from sitegen.measure.size import drop, part_sizes, whole
from sitegen.measure.steps import running
from sitegen.measure.thread import step_ends, tail_lengths
from sitegen.measure.tools import tools
from sitegen.measure.warps import warps
from sitegen.measure.weight import comfort, weight
from sitegen.model.measures import Measures
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath


def measure(path: ThreadPath, pattern: Pattern, shop: Shop) -> Measures:
    """All measures of a pattern without faults; LookupError for a bead, needle or thread no table knows."""
    in_hand = tools(pattern, shop)
    beads = materials(path, pattern, shop)
    width, height = whole(path)
    grams = weight(path, pattern.bead_kinds)
    ends = step_ends(path, in_hand.thread.diameter_mm, shop.slack)
    woven_in = tail_lengths(path, in_hand.thread.diameter_mm, shop.slack)
    thread = plan(path, ends, shop, woven_in)
    holes = hole_fit(path, in_hand, pattern.bead_kinds)
    asked = effort(path, pattern, thread, holes)
    time = minutes(asked)
    return Measures(
        pieces=pattern.makes.pieces,
        beads=beads,
        bead_each=len(path.beads),
        bead_total=len(path.beads) * pattern.makes.pieces,
        parts=part_sizes(path),
        width_mm=width,
        height_mm=height,
        drop_mm=drop(path),
        weight_g=grams,
        comfort=comfort(grams, path, pattern),
        thread=thread,
        passes=holes,
        difficulty=difficulty(asked),
        minutes_low=math.ceil(time.practised),
        minutes_high=math.ceil(time.novice),
        steps=running(path, ends),
        warps=warps(path, pattern, shop),
    )
