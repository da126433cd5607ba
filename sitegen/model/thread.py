"""The thread path: every bead in its place and every move of the needle, in order.

Millimetres throughout; x grows to the right and y downward, as the finished piece hangs.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum, IntEnum

from sitegen.model.location import NOWHERE, Location

Point = tuple[float, float]


class End(IntEnum):
    """One of the two ends of a bead's hole, as the finished piece hangs."""

    TOP = 0
    BOTTOM = 1

    @property
    def other(self) -> End:
        """The end at which the needle comes out again."""
        return End.BOTTOM if self is End.TOP else End.TOP


@dataclass(frozen=True, slots=True)
class Bead:
    """A bead in its place."""

    letter: str
    part: int
    """Index into `ThreadPath.parts`."""
    row: int
    """Row or strand number, from 1, in order of working."""
    place: int
    """Place in the row from the left (in a strand: from the top), from 1, as it hangs."""
    x: float
    y: float
    angle: float
    """Degrees the hole is turned: 0 hangs straight (TOP above BOTTOM), 90 has TOP at the left."""
    width: float
    """Diameter, across the hole, mm."""
    length: float
    """Along the hole, mm."""
    shape: str
    """`round` or `cylinder`, ...: how it is drawn."""
    kind: str
    """Bead kind in trade words; a key of the trade tables."""
    where: Location = field(default=NOWHERE, compare=False, repr=False)
    """The letter in the source that asked for it."""

    def mouth(self, end: End) -> Point:
        """The middle of the hole's rim at that end."""
        sign = -0.5 if end is End.TOP else 0.5
        turn = math.radians(self.angle)
        return (
            self.x + sign * self.length * math.sin(turn),
            self.y + sign * self.length * math.cos(turn),
        )


class MoveKind(Enum):
    """What the needle does next."""

    PICK = "pick"
    """Pick up a new bead; `enter` is the end the thread goes in at, once the bead sits."""
    THROUGH = "through"
    """Pass through a bead that is already there."""
    UNDER = "under"
    """Pass under the thread bridge between two beads."""
    LOOP = "loop"
    """Pass through the loop of a finding."""


@dataclass(frozen=True, slots=True)
class Bridge:
    """The thread lying between two side-by-side beads at one end of their holes."""

    left: int
    right: int
    end: End


@dataclass(frozen=True, slots=True)
class Move:
    """One move of the needle."""

    kind: MoveKind
    bead: int = -1
    """Index into `ThreadPath.beads` for PICK and THROUGH."""
    enter: End = End.TOP
    """The end of the hole the needle goes in at, for PICK and THROUGH."""
    bridge: Bridge | None = None
    """For UNDER."""
    finding: int = -1
    """Index into `ThreadPath.findings` for LOOP."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """A sentence to be: the key of a message and what fills it."""

    key: str
    values: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Step:
    """One stitch, one strand, or one other thing a maker does at a time."""

    number: int
    """From 1 through the whole piece."""
    part: int
    """Index into `ThreadPath.parts`."""
    row: int
    """Row or strand number, from 1; 0 for what belongs to no row (a finding, a way through)."""
    motion: str
    """What kind of step: `ladder-first`, `brick-next`, `strand`, `travel`, `finding` ..."""
    phrases: tuple[Phrase, ...]
    """Where the needle goes, in order."""
    first_move: int
    """Index of the step's first move."""
    past_move: int
    """Index after its last move."""
    picks: tuple[int, ...]
    """The beads added, in order of picking up (indexes into `ThreadPath.beads`)."""
    turned: bool = False
    """The work is held upside down: words and diagrams are as the maker sees them."""
    rest: bool = False
    """A new thread may begin after this step (a row, a strand or a finding is done)."""


@dataclass(frozen=True, slots=True)
class WovenPart:
    """A part after weaving."""

    name: str
    stitch: str
    rows: int
    """Rows or strands worked."""
    row_pitch: float
    """mm from row to row; 0 for a fringe."""
    bead_pitch: float
    """mm from bead to bead along a row, or from strand to strand."""


@dataclass(frozen=True, slots=True)
class PlacedFinding:
    """A finding and the loop the thread goes through."""

    kind: str
    """Trade words, such as `ear wire`."""
    part: int
    x: float
    y: float
    """The loop, mm."""
    edge: str
    """`top` or `bottom`: the edge it hangs at."""


@dataclass(frozen=True, slots=True)
class ThreadPath:
    """One piece, as the path of its needle."""

    beads: tuple[Bead, ...]
    moves: tuple[Move, ...]
    steps: tuple[Step, ...]
    parts: tuple[WovenPart, ...]
    findings: tuple[PlacedFinding, ...] = ()
