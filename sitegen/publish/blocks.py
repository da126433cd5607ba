"""What the making of a piece is shown in: the blocks a page or sheet is laid out from, as finished text.

A template decides nothing: what must not be shown is in no block.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publish.photo import PhotoBlock


@dataclass(frozen=True, slots=True)
class Medium:
    """The room drawings have on a kind of page, each as (width, height) in mm."""

    name: str
    """`screen` or `print`."""
    finished: tuple[float, float]
    chart: tuple[float, float]
    step: tuple[float, float]
    step_scale: float
    """The most a step is enlarged: all steps of a part share one scale."""
    strip: tuple[float, float]
    beside_mm: float = math.inf
    """A wider drawing of a step stands above its words, not beside them."""
    tall_step_mm: float = 0.0
    """A drawing of a step may be so high where its letters could not be read otherwise; 0 is no higher."""


SCREEN = Medium("screen", (150, 170), chart=(210, 400), step=(80, 96), step_scale=4.2, strip=(132, 200))


PRINT = Medium("print", finished=(120, 92), chart=(150, 185), step=(57, 54), step_scale=3.2, strip=(132, 90))
LARGE = Medium(
    "large",
    finished=(150, 92),
    chart=(174, 160),
    step=(156, 112),
    step_scale=5.8,
    strip=(156, 90),
    beside_mm=70,
    tall_step_mm=176,
)
"""Large print: no strips, and the letters of a drawing are as large as the text."""
SUMMARY = Medium(
    "summary", finished=(60, 60), chart=(184, 120), step=(57, 54), step_scale=3.2, strip=(132, 90)
)
"""The one-page summary has charts alone."""
LEAST_TEXT = {"large": 18.0 * 25.4 / 72}
"""Medium -> the smallest font size in its drawings, mm, where that is set: 18 pt in large print."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing in its place: inline SVG, or the image that stands for it."""

    svg: Markup
    caption: str
    """Empty where none is wanted."""


@dataclass(frozen=True, slots=True)
class FileLink:
    """A file beside the page, and the words that lead to it."""

    href: str
    label: str


@dataclass(frozen=True, slots=True)
class Chip:
    """A run of beads of one letter: the count and the coloured letter."""

    count: str
    letter: str
    name: str
    """Colour name, for those who do not see the colour."""


@dataclass(frozen=True, slots=True)
class WordRow:
    """A row or strand as a word chart."""

    number: str
    runs: tuple[Chip, ...]
    """In order of picking up."""
    beads: str
    way: str
    """The side it begins at, as the piece hangs; empty for a strand."""
    mark: str
    """Names its box to tick on the page, as `StepRow.mark` does."""
    tick: str
    """Label of the box to tick; empty in print."""


@dataclass(frozen=True, slots=True)
class SharedLine:
    """Words that several rows of the step table share, printed once before the first of them."""

    steps: str
    """The rows they are for."""
    numbers: str
    """Their numbers, with blanks between."""
    sentences: tuple[str, ...]
    see: str
    see_at: str = ""
    """In print: the mark of the row that `see` turns to."""


@dataclass(frozen=True, slots=True)
class StepRow:
    """One row of the step table."""

    number: str
    label: str
    """The row or strand it belongs to; may be empty."""
    mark: str
    """Names its box to tick, once in a page and alike in every edition of it."""
    tick: str
    """Label of the box to tick."""
    pick_up: tuple[Chip, ...]
    figures: tuple[Figure, ...]
    strip: Figure | None
    """Its beads as a band."""
    across: bool
    """Set across the width of the table, for a strip or many sentences."""
    see: str
    """Where to find the drawing; empty for a row that has its own."""
    drawn_at: str
    """Number of the last row before it that has the drawing, or empty."""
    sentences: tuple[str, ...]
    """Empty where `before` of this or of an earlier row has them."""
    notes: tuple[str, ...]
    """What to do before it."""
    before: tuple[SharedLine, ...]
    beads: str
    thread: str
    see_at: str = ""
    """In print: the mark of the row that `see` turns to."""
    long: bool = False
    """High in large print: it may go on on the next page, below its drawing."""
    above: bool = False
    """Set across, its drawing stands above its words, not beside them."""
    unlettered: str = ""
    """Says that the drawing goes without some of its letters; empty where it has them all."""


@dataclass(frozen=True, slots=True)
class ProseBlock:
    """The author's text, as HTML."""

    html: Markup
    language: str = ""
    """Of the text, where it is not that of the page."""
    kind: str = "prose"


@dataclass(frozen=True, slots=True)
class AsideBlock:
    """A text of the author's set off from the rest."""

    label: str
    html: Markup
    language: str = ""
    """Of the text, where it is not that of the page."""
    kind: str = "aside"


@dataclass(frozen=True, slots=True)
class ChartSheet:
    """A chart, or the part of a large one that stands on one sheet."""

    svg: Markup
    label: str
    """Names the box a large chart scrolls in."""
    key: Markup | None = None
    """The map of all sheets; none where there is but one."""
    caption: str = ""
    height_mm: float = 0.0
    """Of the drawing as it is shown."""


@dataclass(frozen=True, slots=True)
class ChartBlock:
    """A part's drawn chart with its rows as word charts."""

    part: str
    heading: str
    anchor: str
    about: str
    sheets: tuple[ChartSheet, ...]
    row_label: str
    rows: tuple[WordRow, ...]
    files: tuple[FileLink, ...] = ()
    """The chart as drawings of their own; none in print."""
    apart: str = ""
    """Where the word chart stands if it is not right after the chart: an anchor of the same sheets."""
    kind: str = "chart"


@dataclass(frozen=True, slots=True)
class StepsBlock:
    """A part's step table."""

    part: str
    heading: str
    anchor: str
    rows: tuple[StepRow, ...]
    kind: str = "steps"


@dataclass(frozen=True, slots=True)
class LegendBlock:
    """What the signs in the step drawings mean: each sign with its sentence."""

    heading: str
    signs: tuple[tuple[Markup, str], ...]
    kind: str = "legend"


Block = LegendBlock | ProseBlock | AsideBlock | ChartBlock | StepsBlock | PhotoBlock
