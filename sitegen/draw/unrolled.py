"""Moves on a tube + the beads around them -> the same on a flat strip that the seam does not cut.

Beads keep their places beside each other in the order the thread meets them; a bead that it meets again
after going all the way round is drawn a second time at the other end of the strip.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from sitegen.model.thread import Bead, Bridge, Move, MoveKind, Step, ThreadPath

ASIDE = 2.2
"""Beads shown beyond those touched, in bead widths to each side."""


@dataclass(frozen=True, slots=True)
class Strip:
    """A stretch of a tube, unrolled."""

    path: ThreadPath
    """Holds only the moves of this stretch and the one before them."""
    first: int
    """Index, in the whole path, of its first move."""
    beads: dict[int, Bead]
    """By index; those drawn a second time have numbers beyond the path's own beads."""

    def local(self, moves: range) -> range:
        """Moves of the whole path as they are numbered here."""
        return range(moves.start - self.first, moves.stop - self.first)


@dataclass(slots=True)
class _Unroller:
    path: ThreadPath
    around: float
    at: float
    """x the thread has come to on the strip."""
    beads: dict[int, Bead] = field(default_factory=dict)
    copies: dict[int, int] = field(default_factory=dict)
    """Bead -> its newest copy on the strip."""

    def near(self, bead: int) -> int:
        """The bead, or a copy of it, as near as can be to where the thread is."""
        seen = self._shifted(self.path.beads[bead])
        known = self.copies.get(bead, bead)
        if known in self.beads and abs(self.beads[known].x - seen.x) > self.around / 2:
            known = len(self.path.beads) + len(self.beads)
        if known not in self.beads:
            self.beads[known] = seen
            self.copies[bead] = known
        self.at = seen.x
        return known

    def _shifted(self, bead: Bead) -> Bead:
        return replace(bead, x=bead.x - self.around * round((bead.x - self.at) / self.around))

    def move(self, move: Move) -> Move:
        """The move as it goes on the strip."""
        if move.bridge is not None:
            left, right = self.near(move.bridge.left), self.near(move.bridge.right)
            return replace(move, bridge=Bridge(left, right, move.bridge.end, move.bridge.far))
        if move.hangs is not None:
            return replace(move, hangs=(self.near(move.hangs[0]), move.hangs[1]))
        return replace(move, bead=self.near(move.bead)) if move.bead >= 0 else move


def unroll(path: ThreadPath, steps: Sequence[Step], touched: set[int], there: set[int]) -> Strip:
    """Lay the beads that the steps touch, and those around them, on a strip."""
    taken = path.moves[steps[0].first_move].kind is MoveKind.TAKE  # nothing leads there from the move before
    start = steps[0].first_move if taken else max(steps[0].first_move - 1, 0)
    moves = path.moves[start : steps[-1].past_move]
    first = next(move.bead for move in moves if move.bead >= 0)
    roller = _Unroller(path, path.around(first), path.beads[first].x)
    local = tuple(roller.move(move) for move in moves)
    for bead in sorted(touched - roller.copies.keys()):
        roller.near(bead)
    xs = [bead.x for bead in roller.beads.values()]
    middle, reach = (min(xs) + max(xs)) / 2, (max(xs) - min(xs)) / 2 + ASIDE * path.beads[first].width
    for index in sorted(there - roller.copies.keys()):
        roller.at = middle
        known = roller.near(index)
        if abs(roller.beads[known].x - middle) > reach:
            del roller.beads[known]
    return Strip(replace(path, moves=local), start, roller.beads)
