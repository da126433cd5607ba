"""Move after move of a thread path -> what lies there so far: passes, crossings of thread, neighbours."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.model.thread import Bridge, End, Move, MoveKind, Point, ThreadPath, way

Spot = tuple[int, End]
"""A bead and one end of its hole."""
TOUCH = 0.62
"""Mouths of touching beads are no further apart than this, in widths of the wider bead: half a width where
rows are staggered. And never as far as a bead is long, or a bead would lie between them."""
BESIDE = 0.8
"""Thread shorter than this, in widths, joins beads of different rows, or in line: no plain bridge."""
BRIDGE = 1.3
"""Thread between two mouths no further apart than this, in widths, can be hitched round."""
FABRIC = ("rows", "rounds", "turns")
"""What the lines of a part are where bead touches bead on all sides."""
PASSES = (MoveKind.PICK, MoveKind.THROUGH)
HOLDS = (MoveKind.UNDER, MoveKind.WARP)
"""What a thread on its way from bead to bead may be led round once more."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """Thread that lies from one bead to another, or back to the same one round what holds it."""

    to: Spot
    holds: tuple[Move, ...]
    """What it goes round on the way, in order from here."""


class Ground:
    """The work so far. Moves are added in order; all questions are answered from what is near."""

    def __init__(self, path: ThreadPath) -> None:
        self.path = path
        self.moves: list[Move] = []
        self.visits: list[list[int]] = [[] for _ in path.beads]
        """For each bead, the moves that pass it."""
        self._cell = max((max(bead.width, bead.length) for bead in path.beads), default=1.0) * 1.5
        self._cells: dict[tuple[int, int, int], list[int]] = defaultdict(list)
        self._touching: dict[Spot, tuple[Spot, ...]] = {}
        self._crossings: dict[Spot, tuple[Crossing, ...]] = {}
        """What was asked for since the work last grew."""

    def add(self, move: Move) -> None:
        """Let the work grow by one move."""
        if self._crossings or self._touching:
            self._crossings, self._touching = {}, {}
        if move.kind in PASSES:
            self.visits[move.bead].append(len(self.moves))
        if move.kind is MoveKind.PICK:
            bead = self.path.beads[move.bead]
            self._cells[bead.part, *self._cell_of((bead.x, bead.y))].append(move.bead)
        self.moves.append(move)

    def _cell_of(self, point: Point) -> tuple[int, int]:
        return math.floor(point[0] / self._cell), math.floor(point[1] / self._cell)

    def passes(self, bead: int) -> int:
        """How often the thread goes through it so far."""
        return len(self.visits[bead])

    def crossings(self, spot: Spot) -> tuple[Crossing, ...]:
        """All thread that lies at this end of a bead and leads to the end of a bead."""
        if spot not in self._crossings:
            self._crossings[spot] = tuple(self._find_crossings(spot))
        return self._crossings[spot]

    def _find_crossings(self, spot: Spot) -> Iterator[Crossing]:
        bead, end = spot
        for number in self.visits[bead]:
            onward = self.moves[number].enter is not end
            holds: list[Move] = []
            step = 1 if onward else -1
            at = number + step
            while 0 <= at < len(self.moves) and self.moves[at].kind in HOLDS:
                holds.append(self.moves[at])
                at += step
            if 0 <= at < len(self.moves) and self.moves[at].kind in PASSES:
                other = self.moves[at]
                yield Crossing((other.bead, other.enter if onward else other.enter.other), tuple(holds))

    def touching(self, spot: Spot) -> tuple[Spot, ...]:
        """Ends of other beads of the part, near enough for a thread to slip across unseen and onward."""
        if spot not in self._touching:
            self._touching[spot] = tuple(self._find_touching(spot))
        return self._touching[spot]

    def _find_touching(self, spot: Spot) -> Iterator[Spot]:
        bead, end = spot
        here = self.path.beads[bead]
        mouth = here.mouth(end)
        around, zipped = self.path.around(bead), self.path.zipped(bead)
        shifts = {(dx, dy) for dx in (0.0, -around, around) for dy in (0.0, -zipped, zipped)}
        seen: set[int] = {bead}
        for dx, dy in sorted(shifts):
            column, row = self._cell_of((mouth[0] + dx, mouth[1] + dy))
            for place in ((column + i, row + j) for i in (-1, 0, 1) for j in (-1, 0, 1)):
                for other in self._cells.get((here.part, *place), ()):
                    if other in seen:
                        continue
                    seen.add(other)
                    near = self.path.beads[other]
                    wide = min(TOUCH * max(here.width, near.width), 0.9 * min(here.length, near.length))
                    for enter in End:
                        if self.gap(spot, (other, enter)) <= wide and self._goes_on(spot, (other, enter)):
                            yield other, enter

    def gap(self, one: Spot, other: Spot) -> float:
        """Straight from mouth to mouth, mm."""
        return self.distance(self.mouth(one), self.mouth(other), one[0])

    def distance(self, here: Point, there: Point, bead: int) -> float:
        """Between two points of the part that the bead belongs to, mm."""
        return math.hypot(*way(here, there, self.path.around(bead), self.path.zipped(bead)))

    def mouth(self, spot: Spot) -> Point:
        """Where that end of the hole is."""
        return self.path.beads[spot[0]].mouth(spot[1])

    def _goes_on(self, out: Spot, into: Spot) -> bool:
        """Whether a thread out of one end and into the other does not double back."""
        one, other = heading(self.path, (out[0], out[1].other)), heading(self.path, into)
        return one[0] * other[0] + one[1] * other[1] > -0.25

    def bridge(self, spot: Spot) -> Bridge | None:
        """Thread at this end that a half hitch can go round: best a bridge between two beads side by side,
        else between two in line, else round the outside of the bead itself, as after a stop bead.
        """
        wide = self.path.beads[spot[0]].width
        joints = {crossing.to for crossing in self.crossings(spot) if not crossing.holds}
        near = [
            (other[0] == spot[0], gap < BESIDE * wide, gap, other)
            for other in joints
            if other != spot and (gap := self.gap(spot, other)) <= BRIDGE * wide
        ]
        if not near:
            return None
        ends = sorted((spot, min(near)[3]), key=lambda end: (self.path.beads[end[0]].x, end[0]))
        (left, end), (right, far) = ends
        return Bridge(left, right, end, None if far is end else far)


def heading(path: ThreadPath, into: Spot) -> Point:
    """The way a needle goes that enters there: a unit vector as the piece hangs."""
    bead = path.beads[into[0]]
    (x, y), (to_x, to_y) = bead.mouth(into[1]), bead.mouth(into[1].other)
    size = math.hypot(to_x - x, to_y - y) or 1.0
    return (to_x - x) / size, (to_y - y) / size
