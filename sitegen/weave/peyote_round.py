"""A round of beads and the round before it -> one round of peyote with its step-up.

Mechanics: a ring is strung and gone through once more; each stitch picks up a bead (two where the round
grows) and goes through the next bead of the round before; after the last stitch the thread steps up through
the round's first bead. Terms: step up = move into the first bead of the new round [sagescupboard S2].
Passes: 2 for every bead but the first of a round, which has 3 (4 in a strung ring it was begun with).
"""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.model.thread import End, Phrase
from sitegen.weave.work import View, Work

UPRIGHT = View()


def string_ring(
    work: Work, ring: Sequence[int], enter: End, extra: int, view: View = UPRIGHT, *, rises: bool = False
) -> None:
    """String beads into a ring, go through all again and through as many more as `extra` tells.

    `rises`: the ring is the first two rounds of a tube, of which every second bead will rise.
    """
    for bead in ring:
        work.pick(bead, enter)
    again = (*ring, *ring[:extra])
    for bead in again:
        work.through(bead, enter)
    phrases = [Phrase("ring-strung", {"count": extra})]
    if rises:
        phrases.append(Phrase("ring-rise"))
    work.step(1, "ring-strung", tuple(phrases), turned=view.turned, rest=True)


def peyote_round(
    work: Work,
    number: int,
    below: Sequence[int],
    new: Sequence[Sequence[int]],
    enter: End,
    view: View = UPRIGHT,
) -> None:
    """A round: `new[i]` goes before `below[i]`; the thread comes out of the bead before `new[0]`."""
    for beads, following in zip(new, below, strict=True):
        for bead in beads:
            work.pick(bead, enter)
        work.through(following, enter)
        motion = "gap-next" if len(beads) == 1 else "gap-pair"
        work.step(number, motion, (Phrase(motion),), turned=view.turned)
    work.through(new[0][0], enter)
    work.step(number, "step-up", (Phrase("step-up"),), turned=view.turned, rest=True)


def firm(
    work: Work,
    below: Sequence[int],
    new: Sequence[Sequence[int]],
    enter: End,
    number: int,
    view: View = UPRIGHT,
) -> None:
    """Go round the last two rounds once more, from the last round's first bead to that same bead."""
    order = [bead for beads, following in zip(new, below, strict=True) for bead in (*beads, following)]
    for bead in (*order[1:], order[0]):
        work.through(bead, enter)
    work.step(number, "round-firm", (Phrase("round-firm"),), turned=view.turned, rest=True)
