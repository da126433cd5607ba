"""Every bead in its place and every move of the needle, in order -> the thread path.

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
    front: int = 0
    """Of beads of one strand that cross, those with the higher number lie in front."""

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
    WARP = "warp"
    """Turn round a warp, from under the warps to over them or back."""
    HITCH = "hitch"
    """Half hitch: under the thread between two beads, and through the loop that this makes."""
    TAKE = "take"
    """Take up another end of thread: the tail that hangs out of `hangs`, or else a new thread."""


class Tail(Enum):
    """Which end of a thread a step weaves in, through beads that are there already."""

    OLD = "old"
    """The end of the thread in work."""
    NEW = "new"
    """The beginning of a new thread, which comes out where the old one did."""
    FIRST = "first"
    """The tail that was left before the first bead."""


@dataclass(frozen=True, slots=True)
class Bridge:
    """The thread lying between two side-by-side beads at one end of their holes."""

    left: int
    right: int
    end: End
    far: End | None = None
    """The end of `right` it lies at, where that is the other one: between beads strung in line."""

    @property
    def right_end(self) -> End:
        """The end of the right-hand bead."""
        return self.end if self.far is None else self.far


@dataclass(frozen=True, slots=True)
class Move:
    """One move of the needle."""

    kind: MoveKind
    bead: int = -1
    """Index into `ThreadPath.beads` for PICK and THROUGH."""
    enter: End = End.TOP
    """The end of the hole the needle goes in at, for PICK and THROUGH."""
    bridge: Bridge | None = None
    """For UNDER and HITCH."""
    finding: int = -1
    """Index into `ThreadPath.findings` for LOOP."""
    warp: int = -1
    """Index into `ThreadPath.warps` for WARP."""
    hangs: tuple[int, End] | None = None
    """For TAKE: the bead the tail hangs out of, and at which end; None takes a new thread."""
    at: Point | None = None
    """For LOOP round a ring that is worked all the way round: the place on it; else the finding's own."""


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
    tail: Tail | None = None
    """For a step that does nothing but weave in an end of thread."""


def stop_bead(step: Step) -> bool:
    """Whether a first step puts a stop bead or a clip on the tail, to be taken off before it is woven in."""
    return step.motion in ("peyote-string", "square-string")


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
    around_mm: float = 0.0
    """Of a tube, laid unrolled: its circumference along the beads' middles, after which x begins anew."""
    thick_mm: float = 0.0
    """Of a tube or rope: its outside diameter; 0 where the beads' own places tell the width."""
    lines: str = "rows"
    """What its rows are: `rows`, `strands` (each hangs free), `edging` (sewn to another part), `string`,
    `rounds` or, of a rope, `turns`."""
    strung_mm: float = 0.0
    """How long the beads of a string are, end to end; 0 for all else."""
    zipped_mm: float = 0.0
    """Of a strip zipped into a tube: its circumference, after which y begins anew."""


def way(here: Point, there: Point, around_mm: float = 0.0, zipped_mm: float = 0.0) -> Point:
    """The shortest way (dx, dy) between two points; on a tube x begins anew after its circumference.

    Of a strip zipped into a tube it is y that begins anew, after `zipped_mm`.
    """
    dx, dy = there[0] - here[0], there[1] - here[1]
    if around_mm:
        dx -= around_mm * round(dx / around_mm)
    if zipped_mm:
        dy -= zipped_mm * round(dy / zipped_mm)
    return dx, dy


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
    """`top` or `bottom`: the edge it hangs at; `round` for a ring that is worked around."""
    ring_mm: float = 0.0
    """Outside diameter of a ring that is worked around."""


@dataclass(frozen=True, slots=True)
class Warp:
    """One of the threads stretched on a loom, between beads or at an edge; two where an edge is doubled."""

    part: int
    """Index into `ThreadPath.parts`."""
    x: float
    threads: int = 1
    """How many threads lie together."""


@dataclass(frozen=True, slots=True)
class ThreadPath:
    """One piece, as the path of its needle."""

    beads: tuple[Bead, ...]
    moves: tuple[Move, ...]
    steps: tuple[Step, ...]
    parts: tuple[WovenPart, ...]
    findings: tuple[PlacedFinding, ...] = ()
    warps: tuple[Warp, ...] = ()
    """Those of all loom parts, each part's from left to right."""

    def around(self, bead: int) -> float:
        """The circumference of the tube a bead belongs to; 0 in flat work."""
        return self.parts[self.beads[bead].part].around_mm if bead >= 0 else 0.0

    def zipped(self, bead: int) -> float:
        """The circumference of the zipped strip a bead belongs to; 0 in all other work."""
        return self.parts[self.beads[bead].part].zipped_mm if bead >= 0 else 0.0

    def bridge_middle(self, bridge: Bridge) -> Point:
        """Midway between the two mouths a bridge joins."""
        here = self.beads[bridge.left].mouth(bridge.end)
        dx, dy = way(here, self.beads[bridge.right].mouth(bridge.right_end), self.around(bridge.left))
        return here[0] + dx / 2, here[1] + dy / 2
