"""ThreadPath -> passes through each bead against the room in its hole, and a remedy where it is too little.

Area model: pass p fits while (p - 1) threads and the needle take no more of the hole's section than the
packing share. Sources stand beside the share in the trade tables.
"""

from __future__ import annotations

import math
from itertools import chain

from sitegen.measure.tools import Tools, kind_of
from sitegen.model.measures import HoleFit, TightBead
from sitegen.model.thread import MoveKind, Phrase, ThreadPath
from sitegen.trade.needles import finer_needles
from sitegen.trade.rules import rules
from sitegen.trade.threads import finer_threads


def passes_allowed(hole_mm: float, thread_mm: float, needle_mm: float) -> int:
    """How many passes of this thread, each with this needle, a hole takes; 0 if the needle alone fills it."""
    room = rules().packing_share * hole_mm**2 - needle_mm**2
    return 0 if room < 0 else math.floor(round(room / thread_mm**2, 9)) + 1


def hole_fit(path: ThreadPath, tools: Tools) -> HoleFit:
    """The most passes through any bead, the beads with more than fit, and what would help."""
    passes = _passes(path)
    tight = _tight(path, passes, tools)
    return HoleFit(max(map(len, passes), default=0), tight, _remedy(path, passes, tools) if tight else None)


def _passes(path: ThreadPath) -> list[list[int]]:
    """For each bead, the number of the step of each pass through it."""
    passes: list[list[int]] = [[] for _ in path.beads]
    for step in path.steps:
        for move in path.moves[step.first_move : step.past_move]:
            if move.kind in (MoveKind.PICK, MoveKind.THROUGH):
                passes[move.bead].append(step.number)
    return passes


def _tight(path: ThreadPath, passes: list[list[int]], tools: Tools) -> tuple[TightBead, ...]:
    thread, needle = tools.thread.diameter_mm, tools.needle.diameter_mm
    kinds = {bead.kind for bead in path.beads}
    allowed = {kind: passes_allowed(kind_of(kind).hole_mm, thread, needle) for kind in kinds}
    return tuple(
        TightBead(index, len(passes[index]), allowed[bead.kind], passes[index][allowed[bead.kind]])
        for index, bead in enumerate(path.beads)
        if len(passes[index]) > allowed[bead.kind]
    )


def _remedy(path: ThreadPath, passes: list[list[int]], tools: Tools) -> Phrase:
    """The mildest change that makes everything fit: a needle, else a thread, else both, else larger holes."""
    needles, threads = finer_needles(tools.needle), finer_threads(tools.thread)
    choices = chain(
        (Tools(needle, tools.thread) for needle in needles),
        (Tools(tools.needle, thread) for thread in threads),
        (Tools(needle, thread) for thread in threads for needle in needles),
    )
    fits = next((choice for choice in choices if not _tight(path, passes, choice)), None)
    if fits is None:
        return Phrase("holes-larger")
    values = {"needle": fits.needle.name, "thread": fits.thread.text}
    if fits.thread == tools.thread:
        return Phrase("holes-finer-needle", values)
    if fits.needle == tools.needle:
        return Phrase("holes-finer-thread", values)
    return Phrase("holes-finer-both", values)
