"""Bead sizes round by round -> how far from the middle each round lies, and how well its beads fill it.

Plain geometry of beads that touch; no published figure. Sizes are (diameter, length along the hole), mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

Size = tuple[float, float]

GAPE = 1.15
"""A brick round with more room than this, in bead widths a bead, shows gaps. A judgement; no source."""
BARE = 1.33
"""More thread than this between two beads, in bead widths, lies bare. A judgement; no source."""
BUCKLE = 0.93
"""A round with less room than this a bead (in widths for brick, lengths for peyote) will not lie flat.
A judgement; no source."""
PEYOTE_GAPE = 2.9
"""The same as GAPE for peyote, in bead lengths: two is the usual room, as every second place is empty.
A judgement; no source."""

EASE = 0.2
"""How far a peyote bead moves in its gap, as a share of the gap. A judgement; no source."""


@dataclass(frozen=True, slots=True)
class Round:
    """One round of beads as it lies."""

    radius_mm: float
    """From the middle of the piece to the middle of its beads."""
    beads: int
    bead_mm: float
    """What one bead takes along the circle: its diameter in brick, its length in peyote."""
    edge_mm: float
    """From the middle to where the thread goes from bead to bead."""

    @property
    def room_mm(self) -> float:
        """What the circle has for each bead."""
        return 2 * math.pi * self.radius_mm / self.beads

    @property
    def reach_mm(self) -> float:
        """How far apart the thread's ways out of neighbouring beads are."""
        return 2 * self.edge_mm * math.sin(math.pi / self.beads)

    @property
    def share(self) -> float:
        """Room over need."""
        return self.room_mm / self.bead_mm


def size_of(beads: Sequence[Size]) -> Size:
    """The size that decides how much space a round takes: its widest and its longest bead."""
    return max(width for width, _ in beads), max(length for _, length in beads)


def centre_radius(beads: Sequence[Size]) -> float:
    """Of a ring of beads strung one after the other: they touch, but none reaches over the middle."""
    width, _ = size_of(beads)
    around = sum(length for _, length in beads)
    flat = around / len(beads) / (2 * math.tan(math.pi / len(beads))) if len(beads) > 2 else 0.0
    return max(flat, width / 2)


def brick_rounds(rounds: Sequence[Sequence[Size]], ring_mm: float = 0.0, pitch: float = 0.0) -> list[Round]:
    """Circular brick: holes point to the middle; round a ring of this outside diameter, or a centre of beads.

    `pitch` is the author's measured row pitch, if there is one.
    """
    laid: list[Round] = []
    edge = ring_mm / 2
    for number, beads in enumerate(rounds):
        width, length = size_of(beads)
        if number == 0 and not ring_mm:
            radius = centre_radius(beads)
            laid.append(Round(radius, len(beads), length, radius))
            edge = radius + width / 2
            continue
        step = pitch or length
        laid.append(Round(edge + step / 2, len(beads), width, edge + (step + length) / 2))
        edge += step
    return laid


def peyote_rounds(rounds: Sequence[Sequence[Size]], pitch: float = 0.0) -> list[Round]:
    """Circular peyote: holes along the circle; a bead sinks half its diameter into a gap that is long enough.

    `pitch` is the author's measured pitch of rounds, if there is one.
    """
    first = rounds[0]
    radius = centre_radius(first)
    laid = [Round(radius, len(first), size_of(first)[1], radius)]
    for before, beads in pairwise(rounds):
        width, length = size_of(beads)
        below = laid[-1]
        unit = length * len(beads) / len(before)
        sunk = min(max((below.room_mm - size_of(before)[1]) / unit, 0.0), 1.0)
        step = pitch or (width + size_of(before)[0]) / 2 * (1 - sunk / 2)
        radius = below.radius_mm + step
        laid.append(Round(radius, len(beads), length, radius))
    return laid


def gaps(below: int, beads: int) -> list[int]:
    """How many beads of a peyote round go into each gap of one of `below`: one or two, spread evenly."""
    return [(gap + 1) * beads // below - gap * beads // below for gap in range(below)]


def evenly(first: float, beads: int) -> list[float]:
    """Where beads of a round lie, radians clockwise from the top, the first one given."""
    return [first + 2 * math.pi * place / beads for place in range(beads)]


def between(before: Sequence[float], counts: Sequence[int]) -> list[float]:
    """Where the beads of a peyote round lie: in their gaps, and there as evenly as may be.

    One bead takes the middle of its gap, of two each has a half of it to itself; from there they move
    towards an even spacing, by EASE of the gap at most.
    """
    wanted: list[tuple[float, float]] = []
    for here, there, count in zip(before, [*before[1:], before[0] + 2 * math.pi], counts, strict=True):
        middle, quarter = (here + there) / 2, (there - here) / 4
        places = [middle] if count == 1 else [middle - quarter, middle + quarter]
        wanted += [(place, (there - here) * EASE / count) for place in places]
    even = evenly(0.0, len(wanted))
    off = [want - place for (want, _), place in zip(wanted, even, strict=True)]
    shift = (min(off) + max(off)) / 2
    return [
        min(max(place + shift, want - ease), want + ease)
        for (want, ease), place in zip(wanted, even, strict=True)
    ]


def peyote_bare(laid: Sequence[Round]) -> list[float]:
    """For each peyote round the longest thread between two beads, mm; of a strung ring, between its beads."""
    angles = evenly(0.0, laid[0].beads)
    found = [_longest([(laid[0], angle) for angle in angles])]
    for before, this in pairwise(laid):
        counts = gaps(before.beads, this.beads)
        placed = iter(between(angles, counts))
        way: list[tuple[Round, float]] = []
        here = []
        for angle, count in zip(angles, counts, strict=True):
            new = [next(placed) for _ in range(count)]
            way += [(before, angle), *((this, place) for place in new)]
            here += new
        angles = here
        found.append(_longest(way))
    return found


def _longest(way: Sequence[tuple[Round, float]]) -> float:
    """The longest of the threads from bead to bead, all the way round."""
    ends = [[_mouth(ring, angle, side) for side in (-0.5, 0.5)] for ring, angle in way]
    return max(math.dist(one[1], other[0]) for one, other in pairwise([*ends, ends[0]]))


def _mouth(ring: Round, angle: float, side: float) -> tuple[float, float]:
    """Where the hole of a bead that lies along its circle ends."""
    along = side * ring.bead_mm
    return (
        ring.radius_mm * math.sin(angle) + along * math.cos(angle),
        along * math.sin(angle) - ring.radius_mm * math.cos(angle),
    )


@dataclass(frozen=True, slots=True)
class Arc:
    """How the outer beads of one rope stitch lie: half an ellipse beside the core."""

    out_mm: float
    """From the core's middle to the middle of the bead that is furthest out."""
    gap_mm: float
    """Thread that shows between two beads."""
    places: tuple[tuple[float, float, float], ...]
    """For each bead from the top: out from the core, down from the arc's middle, angle of its hole."""


ARC_PARTS = 64
"""Straight pieces an arc is measured in: its length is then right to a thousandth."""


def rope_arc(core_width: float, high: float, outer: Sequence[Size]) -> Arc:
    """Outer beads from the top of the core beads to their foot, `high` mm below, spread evenly.

    They touch the core if they are just long enough; more of them stand further out.
    """
    least = (core_width + size_of(outer)[0]) / 2
    need = sum(length for _, length in outer)
    high -= size_of(outer)[0] / 2  # the first and the last lie beside the core's ends, not on them
    low, out = least, least
    while _arc(high, out)[-1][0] < need:
        low, out = out, out * 1.5
    for _ in range(40 if out > least else 0):
        middle = (low + out) / 2
        low, out = (middle, out) if _arc(high, middle)[-1][0] < need else (low, middle)
    points = _arc(high, out)
    gap = (points[-1][0] - need) / (len(outer) + 1)
    places = []
    along = 0.0
    for _, length in outer:
        along += gap + length / 2
        places.append(_on_arc(points, along))
        along += length / 2
    return Arc(out, gap, tuple(places))


def _arc(high: float, out: float) -> list[tuple[float, float, float]]:
    """Half an ellipse from top to foot: (way so far, out, down)."""
    points = [(0.0, 0.0, -high / 2)]
    for part in range(1, ARC_PARTS + 1):
        turn = math.pi * part / ARC_PARTS
        x, y = out * math.sin(turn), -high / 2 * math.cos(turn)
        way, *before = points[-1]
        points.append((way + math.dist(before, (x, y)), x, y))
    return points


def _on_arc(points: Sequence[tuple[float, float, float]], along: float) -> tuple[float, float, float]:
    """The point so far along an arc laid to the left, and the angle of a hole that lies along it there."""
    for here, there in pairwise(points):
        if there[0] >= along:
            share = (along - here[0]) / (there[0] - here[0])
            dx, dy = there[1] - here[1], there[2] - here[2]
            return here[1] + share * dx, here[2] + share * dy, math.degrees(math.atan2(-dx, dy)) % 360.0
    return points[-1][1], points[-1][2], 0.0
