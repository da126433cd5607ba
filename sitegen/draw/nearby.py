"""Steps of a path -> the beads their diagram shows: those touched, those near by, and those at its rim."""

from __future__ import annotations

import math
from collections.abc import Sequence, Set
from dataclasses import dataclass

from sitegen.model.thread import MoveKind, Step, ThreadPath

AROUND = 1.7
"""Beads shown around what a step touches: as many widths to the sides as lengths above and below."""
AROUND_TAIL = 1.05
"""Bead lengths or widths, whichever is more, around what an end of thread is woven in through: the next
beads all round, so that no edge is seen where there is none."""


@dataclass(frozen=True, slots=True)
class Nearby:
    """Tells of any steps of a path which beads to show."""

    path: ThreadPath
    picked: tuple[int, ...]
    """For each bead, the move that picks it up."""

    def touched(self, steps: Sequence[Step]) -> set[int]:
        """The beads the steps go through or hang on, and the one the thread comes from."""
        touched: set[int] = set()
        first = steps[0].first_move
        taken = self.path.moves[first].kind is MoveKind.TAKE  # another end of thread comes from elsewhere
        for move in self.path.moves[first if taken else max(0, first - 1) : steps[-1].past_move]:
            if move.hangs is not None:
                touched.add(move.hangs[0])
            if move.bead >= 0:
                touched.add(move.bead)
            if move.bridge is not None:
                touched |= {move.bridge.left, move.bridge.right}
        return touched

    def there(self, touched: set[int], step: Step) -> set[int]:
        """The beads already there before a step, near enough to what is touched to show where it is."""
        box = [self.path.beads[index] for index in touched]
        width, length = max(bead.width for bead in box), max(bead.length for bead in box)
        aside, above = AROUND * width, AROUND * length
        if step.tail is not None:
            aside = above = AROUND_TAIL * max(width, length)
        left, right = min(bead.x for bead in box) - aside, max(bead.x for bead in box) + aside
        if self.path.around(min(touched)):  # what is near on a tube is told when it is unrolled
            left, right = -math.inf, math.inf
        top, bottom = min(bead.y for bead in box) - above, max(bead.y for bead in box) + above
        return {
            index
            for index, bead in enumerate(self.path.beads)
            if self.picked[index] < step.first_move and left <= bead.x <= right and top <= bead.y <= bottom
        }

    def rim(self, there: Set[int], before: int) -> set[int]:
        """The beads at the rim of what is shown, where the work goes on beyond the drawing."""
        if not there:
            return set()
        all_beads = self.path.beads
        shown = [all_beads[index] for index in there]
        reach = 1.15 * max(max(bead.width, bead.length) for bead in shown)
        left, right = min(bead.x for bead in shown) - reach, max(bead.x for bead in shown) + reach
        top, bottom = min(bead.y for bead in shown) - reach, max(bead.y for bead in shown) + reach
        beyond = [
            (bead.x, bead.y)
            for index, bead in enumerate(all_beads)
            if self.picked[index] < before
            and index not in there
            and left <= bead.x <= right
            and top <= bead.y <= bottom
        ]
        return {
            index
            for index in there
            if any(math.dist((all_beads[index].x, all_beads[index].y), place) < reach for place in beyond)
        }

    def layers(self, there: Set[int]) -> list[list[int]]:
        """Beads that may lie over each other in layers: what is not a strand, then strand after strand.

        What lies behind comes first in each.
        """
        layers: dict[tuple[int, int, int], list[int]] = {}
        for index in sorted(there):
            bead = self.path.beads[index]
            hangs = self.path.parts[bead.part].lines == "strands"
            layers.setdefault((bead.part, bead.row if hangs else 0, bead.front), []).append(index)
        return [layers[key] for key in sorted(layers)]


def nearby(path: ThreadPath) -> Nearby:
    """What to show of a path."""
    picked = [0] * len(path.beads)
    for number, move in enumerate(path.moves):
        if move.kind is MoveKind.PICK:
            picked[move.bead] = number
    return Nearby(path, tuple(picked))
