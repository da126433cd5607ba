"""ThreadPath -> passes through each bead against the room in its hole, and a remedy where it is too little.

Area model: pass p fits while (p - 1) threads and the needle take no more of the hole's section than the
packing share. Sources stand beside the share in the trade tables.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import chain

from sitegen.measure.tools import Tools, kind_of
from sitegen.model.measures import HoleFit, TightBead
from sitegen.model.thread import Bead, MoveKind, Phrase, ThreadPath
from sitegen.trade.beads import NO_OWN, BeadSize
from sitegen.trade.needles import finer_needles
from sitegen.trade.rules import rules
from sitegen.trade.threads import finer_threads

STRANDS = "fringe"
"""The stitch whose rows are strands."""


def passes_allowed(hole_mm: float, thread_mm: float, needle_mm: float) -> int:
    """How many passes of this thread, each with this needle, a hole takes; 0 if the needle alone fills it."""
    room = rules().packing_share * hole_mm**2 - needle_mm**2
    return 0 if room < 0 else math.floor(round(room / thread_mm**2, 9)) + 1


def hole_fit(path: ThreadPath, tools: Tools, own: Mapping[str, BeadSize] = NO_OWN) -> HoleFit:
    """The most passes through any bead, the beads with more than fit, and what would help.

    `own` holds the author's bead kinds. Tight beads come in the order in which they get tight.
    """
    passes = _passes(path)
    holes = {kind: kind_of(kind, own).hole_mm for kind in {bead.kind for bead in path.beads}}
    tight = _tight(path, passes, tools, holes)
    remedy = _remedy(path, passes, tools, holes) if tight else None
    return HoleFit(max(map(len, passes), default=0), tight, remedy)


def _passes(path: ThreadPath) -> list[list[int]]:
    """For each bead, the number of the step of each pass through it."""
    passes: list[list[int]] = [[] for _ in path.beads]
    for step in path.steps:
        for move in path.moves[step.first_move : step.past_move]:
            if move.kind in (MoveKind.PICK, MoveKind.THROUGH):
                passes[move.bead].append(step.number)
    return passes


def _tight(
    path: ThreadPath, passes: list[list[int]], tools: Tools, holes: Mapping[str, float]
) -> tuple[TightBead, ...]:
    thread, needle = tools.thread.diameter_mm, tools.needle.diameter_mm
    allowed = {kind: passes_allowed(hole, thread, needle) for kind, hole in holes.items()}
    tight = [
        TightBead(
            bead=index,
            passes=len(passes[index]),
            allowed=allowed[bead.kind],
            step=passes[index][allowed[bead.kind]],
            spot=_spot(path, bead),
        )
        for index, bead in enumerate(path.beads)
        if len(passes[index]) > allowed[bead.kind]
    ]
    return tuple(sorted(tight, key=lambda bead: bead.step))


def _spot(path: ThreadPath, bead: Bead) -> Phrase:
    strand = path.parts[bead.part].stitch == STRANDS
    values = {"row": bead.row, "place": bead.place, "letter": bead.letter}
    return Phrase("tight.strand" if strand else "tight.row", values)


def _remedy(path: ThreadPath, passes: list[list[int]], tools: Tools, holes: Mapping[str, float]) -> Phrase:
    """The mildest change that makes everything fit: a needle, else a thread, else both, else larger holes."""
    needles, threads = finer_needles(tools.needle), finer_threads(tools.thread)
    choices = chain(
        (Tools(needle, tools.thread) for needle in needles),
        (Tools(tools.needle, thread) for thread in threads),
        (Tools(needle, thread) for thread in threads for needle in needles),
    )
    fits = next((choice for choice in choices if not _tight(path, passes, choice, holes)), None)
    if fits is None:
        return Phrase("holes-larger")
    values = {"needle": fits.needle.name, "thread": fits.thread.text}
    if fits.thread == tools.thread:
        return Phrase("holes-finer-needle", values)
    if fits.needle == tools.needle:
        return Phrase("holes-finer-thread", values)
    return Phrase("holes-finer-both", values)
