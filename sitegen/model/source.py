"""The pattern as its author wrote it: what the read stage makes and the weave stage works from.

Every record carries `at`, the places of its values, which never take part in equality.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from enum import Enum

from sitegen.model.location import NOWHERE, Location, Places
from sitegen.model.photo import Photo


class Makes(Enum):
    """How many pieces the pattern makes."""

    ONE = "one piece"
    PAIR = "pair"
    MIRRORED_PAIR = "mirrored pair"

    @property
    def pieces(self) -> int:
        """1 for a single piece, 2 for either kind of pair."""
        return 1 if self is Makes.ONE else 2


@dataclass(frozen=True, slots=True)
class Revision:
    """One line of the pattern's history."""

    number: int
    date: date | None
    note: str
    corrects: str = ""
    """What was wrong in the editions before; empty where nothing was."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Colour:
    """One bead of the pattern, called by its letter."""

    letter: str
    """A single character A-Z, a-z or 0-9; case matters."""
    bead: str
    """Bead kind in trade words, such as `round 11/0`."""
    name: str
    """Colour name for people."""
    hex: str
    """`#rrggbb`, lower case."""
    finish: str = "opaque"
    """Surface in trade words, such as `matte`."""
    stock: str | None = None
    """Key of the shop's stock this colour was taken from, if any."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class OwnBead:
    """A bead kind that the author has measured; no table knows it."""

    name: str
    """What `Colour.bead` calls it, lower case."""
    shape: str
    """`round`, `cylinder`, `cube`, `drop`, `bugle`, `bicone` or `faceted`: how it is drawn."""
    width_mm: float
    """Across the hole."""
    length_mm: float
    """Along the hole."""
    hole_mm: float
    per_gram: float
    """Beads in a gram, as weighed."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Swap:
    """What one letter becomes in a colourway."""

    name: str
    hex: str
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Colourway:
    """A named set of colour swaps; the weave stays the same."""

    name: str
    swaps: Mapping[str, Swap]
    """Letter -> its new colour."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Gauge:
    """The author's measured swatch; it overrules the computed pitch."""

    beads: int
    """Beads across the swatch."""
    width_mm: float
    rows: int
    height_mm: float
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Measured:
    """The author's measured finished piece, shown beside the computed size."""

    width_mm: float
    height_mm: float
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Words:
    """A word chart (`6D 2L 3(D A)`) and the beads it spells out, in order."""

    text: str
    """As written."""
    letters: tuple[str, ...]
    """One letter a bead, counts and brackets worked out."""
    where: Location = field(default=NOWHERE, compare=False, repr=False)
    """The whole word chart."""
    spots: tuple[Location, ...] = field(default=(), compare=False, repr=False)
    """Where each bead's letter stands; as long as `letters`."""
    branches: tuple[tuple[int, int], ...] = ()
    """The side branches `[...]` of a branched strand: (first bead, past the last) among `letters`."""


@dataclass(frozen=True, slots=True)
class StrandRule:
    """All strands in one rule: `each 5D 3A`, or `from 10D, each 2D longer to the centre, then 3A`."""

    first: Words
    """The beads of the shortest strand, or of the longest if they grow shorter, up to the rule's change."""
    change: Words | None = None
    """Beads each strand has more than the one before it."""
    count: int = 0
    """Instead of `change`: how often the last bead of `first` comes again; if negative, how many go."""
    toward: str = ""
    """`centre`, `right` or `left`: where the change leads; empty where all strands are alike."""
    then: Words | None = None
    """Beads at the end of every strand."""


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One line of a chart: its beads from left to right."""

    cells: tuple[tuple[int, str], ...]
    """(text column from 0, letter) for each bead."""
    where: Location = field(default=NOWHERE, compare=False, repr=False)
    """The line; `column` is that of the first bead."""
    empty: tuple[int, ...] = ()
    """Text columns of the places marked empty with `.`."""
    spots: tuple[Location, ...] = field(default=(), compare=False, repr=False)
    """Where each bead's letter stands, for a row written as a word chart; a drawn row needs none."""

    def spot(self, cell: int) -> Location:
        """Where the cell-th bead (from 0) stands in the source."""
        if self.spots:
            return self.spots[cell]
        first = self.cells[0][0]
        column = self.where.column + self.cells[cell][0] - first
        return Location(self.where.file, self.where.line, column, 1)


@dataclass(frozen=True, slots=True)
class Chart:
    """The picture of a part, top row first, as one drawn block of text."""

    name: str
    rows: tuple[ChartRow, ...]
    where: Location = field(default=NOWHERE, compare=False, repr=False)
    """The opening fence."""


@dataclass(frozen=True, slots=True)
class Hang:
    """What a part hangs from, or what hangs from it."""

    edge: str
    """`top` or `bottom`."""
    part: str | None = None
    """The part it hangs from (for a fringe)."""
    finding: str | None = None
    """The finding attached to that edge of this very part, in trade words."""
    points: str = ""
    """What holds each strand: `beads` (their holes) or `bridges`; empty for what is usual in the stitch."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class LooseFinding:
    """A finding that is a part by itself, such as a clasp."""

    kind: str
    width_mm: float | None
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Over:
    """The row of an earlier part whose gaps are covered with beads."""

    part: str
    row: int
    """Chart row, from 1 at the top; further strands cover the rows below it."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Around:
    """What round work begins at, if not at a centre of beads."""

    ring_mm: float
    """Outside diameter of a closed ring or hoop."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Rope:
    """A spiral rope: a core of beads, and in each stitch a few beads that lie round it."""

    core: Words
    """The core beads a stitch goes through; new core beads take these letters in turn."""
    outer: Words
    """The beads of each stitch that lie outside."""
    stitches: int
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the piece, worked in one stitch."""

    name: str
    stitch: str
    begin: str = "bottom"
    """Which chart row is worked first: `bottom`, `top`, `middle` or `row N` (N from the top)."""
    start: str = "left"
    """The side the first row starts at: `left` or `right`."""
    reinforce: bool = True
    """Whether the ladder row, or each row of square stitch, is run through once more."""
    repeat: int = 1
    """How many times the chart is worked, one above the other."""
    hang: Hang | None = None
    turn: int = 1
    """How many beads at a strand's end are not passed on the way back."""
    strands: tuple[Words, ...] = ()
    """As written; `mirror` is not yet applied."""
    mirror: bool = False
    """The strands go on to the right as a mirror image; the last one stands once."""
    chart: Chart | None = None
    """From the body's fenced block, or built from `rows:`; `repeat` is not yet applied."""
    finding: LooseFinding | None = None
    gauge: Gauge | None = None
    around: Around | None = None
    """For work in rounds; None begins at a centre of beads."""
    rope: Rope | None = None
    """For a spiral rope; its beads stand in `chart`, one row a stitch, in order of working."""
    rule: StrandRule | None = None
    """The rule the strands were written as, if any; `strands` holds what it gives."""
    span: int | None = None
    """How many places on a loop or a swag is joined again; None for what is usual in the stitch."""
    twist: int | None = None
    """Whole turns the two legs of a twisted strand make round each other; None for a usual twist."""
    over: Over | None = None
    """Where beads are sewn on top."""
    clasp: str | None = None
    """The finding that closes a strung part, in trade words."""
    base: int = 1
    """For herringbone: how many beads high the ladder it stands on is, 1 or 2."""
    net: int = 5
    """For netting: how many beads a net has, 3, 5 or 7."""
    drop: int = 1
    """How many beads go into each stitch: 2 for two-drop."""
    zip: bool = False
    """Whether a peyote strip's last row is zipped to its first, so that it becomes a tube."""
    edge_warps: str = "single"
    """For loom work: `single`, or `doubled` for two threads at each edge."""
    loom_allowance_mm: float | None = None
    """For loom work: how much longer a warp is than the strip; None takes the shop's."""
    ends: str | None = None
    """How the ends of a strung part are held: `crimps` or `knots`; None for what suits the thread."""
    at: Places = field(default_factory=dict, compare=False, repr=False)

    @property
    def all_strands(self) -> tuple[Words, ...]:
        """Every strand from the left edge to the right edge."""
        if self.mirror:
            return self.strands + self.strands[-2::-1]
        return self.strands

    @property
    def all_rows(self) -> tuple[ChartRow, ...]:
        """Every chart row, top first, with `repeat` applied."""
        return self.chart.rows * self.repeat if self.chart else ()


@dataclass(frozen=True, slots=True)
class Prose:
    """A stretch of the author's Markdown."""

    text: str
    where: Location = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class ChartHere:
    """The place in the body where a part's drawn chart appears."""

    part: str
    where: Location = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class StepsHere:
    """The place in the body where a part's step table appears."""

    part: str
    where: Location = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Aside:
    """A block set off from the text."""

    kind: str
    """`note`, `tip` or `caution`."""
    text: str
    """Markdown."""
    where: Location = field(default=NOWHERE, compare=False, repr=False)


Block = Prose | ChartHere | StepsHere | Aside | Photo


@dataclass(frozen=True, slots=True)
class Pattern:
    """One pattern source, read."""

    name: str
    """From the file name: lower case, digits and hyphens; names the pages and PDFs."""
    title: str
    summary: str
    makes: Makes
    revision: int
    price: Decimal | None
    """In the shop's currency; None is free."""
    colours: tuple[Colour, ...]
    parts: tuple[Part, ...]
    piece: str | None = None
    """What it is, one of `trade.pieces.PIECE_KINDS`; None where the author does not say."""
    revisions: tuple[Revision, ...] = ()
    needle: str | None = None
    """In trade words, such as `beading 12`; None takes the shop's."""
    thread: str | None = None
    """Material and diameter, such as `nylon 0.25 mm`; None takes the shop's."""
    finding: str | None = None
    """In trade words, such as `ear wire`."""
    buy: str = ""
    """Address where it is bought, `{name}` for its name; empty takes the shop's."""
    editions: tuple[str, ...] = ()
    """What it is printed as, in the order of `model.shop.EDITIONS`; empty takes the shop's."""
    colourways: tuple[Colourway, ...] = ()
    gauge: Gauge | None = None
    measured: Measured | None = None
    photo: Photo | None = None
    """The lead photo."""
    body: tuple[Block, ...] = ()
    translations: Mapping[str, Pattern] = field(default_factory=dict, compare=False, repr=False)
    """Language -> the same pattern in its words; charts, stitches and numbers are the same."""
    bead_kinds: Mapping[str, OwnBead] = field(default_factory=dict)
    """The author's own bead kinds by name: the shop's, and over them the pattern's."""
    file: str = ""
    """The source file."""
    at: Places = field(default_factory=dict, compare=False, repr=False)

    @property
    def photos(self) -> tuple[Photo, ...]:
        """Every photo, the lead photo first."""
        lead = (self.photo,) if self.photo is not None else ()
        return (*lead, *(block for block in self.body if isinstance(block, Photo)))

    def colour(self, letter: str) -> Colour | None:
        """The colour called by this letter, or None."""
        return next((colour for colour in self.colours if colour.letter == letter), None)

    def part(self, name: str) -> Part | None:
        """The part of this name, or None."""
        return next((part for part in self.parts if part.name == name), None)
