"""A round of beads and what each is stitched to -> one round of brick stitch, closed into a ring.

Mechanics: a round starts with two beads and goes on one at a time, as a brick row does, and is closed by
going in through its first bead, round what that sits on, and out through it again: this is the step-up.
Passes of a round of m beads: 4 + 3 + 2(m - 2), before anything is stitched on them.
Increases use some bridges twice, spread evenly: https://viewer.joomag.com/shine-online-january-2017/0726832001481808685/p11
(read as a trade note); the order of the moves follows from flat brick stitch.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.model.thread import Bridge, Phrase, Point
from sitegen.weave.work import View, Work

Hold = Bridge | Point
"""What a bead is stitched to: a bridge, or a place on a ring."""


def spread(below: int, beads: int) -> list[int]:
    """For each of `beads` the bridge (of `below`, from 0) it is stitched to: evenly, from first to last."""
    return [(place * below + min(below, beads) - 1) // beads for place in range(beads)]


@dataclass(frozen=True, slots=True)
class BrickRound:
    """One round on its way."""

    work: Work
    number: int
    new: Sequence[int]
    """Its beads in working order."""
    holds: Sequence[Hold]
    """What they can be stitched to, in working order."""
    on: Sequence[int]
    """For each bead, which of the holds."""
    style: str
    """`hoop` round a ring, `circle` on a round inside it, `tube` on a round below it."""
    view: View
    ring: int = -1
    """The ring's index among the findings."""
    ahead: int = 0
    """How many bridges ahead of the thread the first hold is: 0 is the one just behind it."""

    def stitch(self) -> None:
        """Stitch the whole round; the thread comes out of its first bead."""
        work, view = self.work, self.view
        first, second = self.new[0], self.new[1]
        work.pick(first, view.down)
        work.pick(second, view.up)
        self._catch(self.on[1])
        work.through(second, view.down)
        work.through(first, view.up)
        work.through(second, view.down)
        ahead = self.on[1] + self.ahead
        here = "" if self.style == "hoop" or ahead else "-here"
        values = {} if self.style == "hoop" else {"bridge": ahead}
        self._close("pair", Phrase(f"{self.style}-pair{here}", values))
        for place in range(2, len(self.new)):
            work.pick(self.new[place], view.up)
            self._catch(self.on[place])
            work.through(self.new[place], view.down)
            step = self.on[place] - self.on[place - 1]
            motion = "next" if step == 1 or self.style == "hoop" else "skip" if step else "increase"
            self._close(motion, Phrase(f"{self.style}-{motion}"))
        work.through(first, view.up)
        self._catch(self.on[0])
        work.through(first, view.down)
        self._close("join", Phrase(f"{self.style}-join"), rest=True)
        for one, other in zip(self.new, (*self.new[1:], self.new[0]), strict=True):
            work.bridges.add(Bridge(one, other, view.up))

    def _catch(self, index: int) -> None:
        hold = self.holds[index]
        if isinstance(hold, Bridge):
            self.work.under(hold)
        else:
            self.work.loop(self.ring, hold)

    def _close(self, motion: str, phrase: Phrase, *, rest: bool = False) -> None:
        self.work.step(self.number, f"{self.style}-{motion}", (phrase,), turned=self.view.turned, rest=rest)


def bridges_of(ring: Sequence[int], view: View) -> list[Bridge]:
    """The bridges of a closed round in working order, from the one just behind its first bead."""
    return [Bridge(one, other, view.up) for one, other in zip((ring[-1], *ring), ring, strict=False)]
