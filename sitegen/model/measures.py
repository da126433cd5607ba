"""Everything that is counted or computed from a thread path: numbers with their units in the names."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.model.thread import Phrase


@dataclass(frozen=True, slots=True)
class BeadCount:
    """One line of the materials list."""

    letter: str
    name: str
    bead: str
    hex: str
    finish: str
    each: int
    """In one piece."""
    total: int
    """In all pieces."""
    grams: float
    """For all pieces, without spare."""
    buy_grams: float
    """With spare, rounded up to whole packs."""
    packs: int
    pack_grams: float


@dataclass(frozen=True, slots=True)
class PartSize:
    """One part's share of the piece."""

    name: str
    stitch: str
    beads: int
    rows: int
    width_mm: float
    height_mm: float
    strung_mm: float = 0.0
    """Of a string, the length of its beads end to end, clasp excluded; its width is that of the ring."""


@dataclass(frozen=True, slots=True)
class CutLength:
    """One length of thread."""

    cut_mm: float
    """To cut, both tails included, rounded up to whole centimetres."""
    first_step: int
    """Number of the step it begins with."""
    last_step: int


@dataclass(frozen=True, slots=True)
class ThreadUse:
    """Thread for one piece."""

    path_mm: float
    """Slack included, tails not."""
    total_mm: float
    """With every tail: what all the lengths use together, before rounding up."""
    lengths: tuple[CutLength, ...]


@dataclass(frozen=True, slots=True)
class WarpUse:
    """The warps of one loom part, for one piece."""

    part: str
    count: int
    """Threads to cut; one edge warp that is doubled counts as two."""
    doubled: bool
    each_mm: float
    """To cut, rounded up to whole centimetres."""
    allowance_mm: float
    """How much of it is more than the strip is long."""

    @property
    def total_mm(self) -> float:
        """All of them together."""
        return self.count * self.each_mm


@dataclass(frozen=True, slots=True)
class TightBead:
    """A bead whose hole is nearly full."""

    bead: int
    """Index into the thread path's beads."""
    passes: int
    allowed: int
    """Passes that fit with the pattern's needle and thread."""
    step: int
    """The step whose pass is the first too many."""
    spot: Phrase
    """Where it is: row (or strand), place and letter."""


@dataclass(frozen=True, slots=True)
class HoleFit:
    """Passes through the beads against the room in their holes."""

    most: int
    """The most passes through any one bead."""
    tight: tuple[TightBead, ...]
    remedy: Phrase | None
    """A finer needle or thread, where one is needed and would do."""


@dataclass(frozen=True, slots=True)
class Reason:
    """One factor of the difficulty."""

    factor: str
    """Stable name, such as `beads` or `increases`."""
    points: float
    why: Phrase


@dataclass(frozen=True, slots=True)
class Difficulty:
    """How hard, 0 to 100, and why."""

    score: float
    level: str
    """`beginner`, `advanced beginner`, `intermediate` or `advanced`."""
    reasons: tuple[Reason, ...]


@dataclass(frozen=True, slots=True)
class StepMeasure:
    """Running figures after a step."""

    number: int
    beads_added: int
    beads_so_far: int
    thread_mm: float
    """Thread used so far, slack included, tails not."""


@dataclass(frozen=True, slots=True)
class Measures:
    """All measures of a pattern."""

    pieces: int
    beads: tuple[BeadCount, ...]
    bead_each: int
    bead_total: int
    parts: tuple[PartSize, ...]
    width_mm: float
    height_mm: float
    """Beadwork without findings."""
    drop_mm: float | None
    """From the top of the finding to the lowest bead; None without a finding that hangs."""
    weight_g: float
    """One piece, beads only."""
    comfort: str | None
    """For earrings: `very light`, `all day`, `noticeable` or `heavy`."""
    thread: ThreadUse
    passes: HoleFit
    difficulty: Difficulty
    minutes_low: int
    """For all pieces: a practised maker."""
    minutes_high: int
    """For all pieces: a first-time maker."""
    steps: tuple[StepMeasure, ...]
    warps: tuple[WarpUse, ...] = ()
    """For loom work: one for each strip."""
