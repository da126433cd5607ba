"""The records that templates are filled from: every value is finished text or a finished drawing.

A template decides nothing: what a page must not show is not in its view at all.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup


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


SCREEN = Medium("screen", finished=(150, 170), chart=(210, 400), step=(80, 96), step_scale=4.2)
PRINT = Medium("print", finished=(120, 92), chart=(150, 185), step=(57, 62), step_scale=3.2)


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing in its place: inline SVG, or the image that stands for it."""

    svg: Markup
    caption: str
    """Empty where none is wanted."""


@dataclass(frozen=True, slots=True)
class Chip:
    """A run of beads of one letter: the count and the coloured letter."""

    count: str
    letter: str
    name: str
    """Colour name, for those who do not see the colour."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A labelled value; `also` is a second line, such as the same size in inches."""

    label: str
    value: str
    also: str = ""


@dataclass(frozen=True, slots=True)
class BeadLine:
    """One line of the materials table."""

    letter: str
    name: str
    bead: str
    each: str
    total: str
    grams: str
    buy: str
    packs: str


@dataclass(frozen=True, slots=True)
class ColourwayLine:
    """A named change of colours: (class suffix, letter, colour name) for each letter swapped."""

    name: str
    swaps: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class Ink:
    """The colours of one letter chip: a line of the page's own style sheet."""

    selector: str
    fill: str
    letter: str
    """`#000000` or `#ffffff`, whichever stands out more."""


@dataclass(frozen=True, slots=True)
class ReasonLine:
    """One factor of the difficulty."""

    points: str
    why: str


@dataclass(frozen=True, slots=True)
class Difficulty:
    """How hard, in words and points."""

    level: str
    score: str
    reasons: tuple[ReasonLine, ...]


@dataclass(frozen=True, slots=True)
class WordRow:
    """A row or strand as a word chart."""

    number: str
    runs: tuple[Chip, ...]
    """In order of picking up."""
    beads: str
    way: str
    """The side it begins at, as the piece hangs; empty for a strand."""


@dataclass(frozen=True, slots=True)
class StepRow:
    """One row of the step table."""

    number: str
    label: str
    """The row or strand it belongs to; may be empty."""
    tick: str
    """Label of the box to tick."""
    pick_up: tuple[Chip, ...]
    figure: Figure
    sentences: tuple[str, ...]
    notes: tuple[str, ...]
    """What to do before it."""
    beads: str
    thread: str


@dataclass(frozen=True, slots=True)
class ProseBlock:
    """The author's text, as HTML."""

    html: Markup
    kind: str = "prose"


@dataclass(frozen=True, slots=True)
class AsideBlock:
    """A text of the author's set off from the rest."""

    label: str
    html: Markup
    kind: str = "aside"


@dataclass(frozen=True, slots=True)
class ChartBlock:
    """A part's drawn chart with its rows as word charts."""

    part: str
    heading: str
    about: str
    figure: Figure
    row_label: str
    rows: tuple[WordRow, ...]
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


Block = LegendBlock | ProseBlock | AsideBlock | ChartBlock | StepsBlock


@dataclass(frozen=True, slots=True)
class Download:
    """A PDF that lies beside the page."""

    href: str
    label: str
    size: str
    """Pages and kilobytes."""


@dataclass(frozen=True, slots=True)
class ShopLine:
    """What stands on every page of a shop."""

    title: str
    tagline: str
    maker: str
    about: str
    language: str


@dataclass(frozen=True, slots=True)
class PatternView:
    """One pattern's page or printed sheets."""

    name: str
    title: str
    summary: str
    makes: str
    price: str
    edition: str
    """Revision number and date."""
    picture: Figure
    facts: tuple[Fact, ...]
    inks: tuple[Ink, ...]
    beads: tuple[BeadLine, ...]
    bead_each: str
    bead_total: str
    pieces: str
    """`each` column's heading is left out where this is `1`."""
    colourways: tuple[ColourwayLine, ...]
    supplies: tuple[Fact, ...]
    difficulty: Difficulty
    blocks: tuple[Block, ...]
    """Empty on the page of a pattern that is for sale."""
    cautions: tuple[Fact, ...]
    licence: str
    revisions: tuple[Fact, ...]
    downloads: tuple[Download, ...]
    buy: str
    """How to buy; empty for a free pattern."""
    canonical: str
    """Full address, or empty."""
    shop: ShopLine


@dataclass(frozen=True, slots=True)
class Card:
    """One pattern on the front page."""

    href: str
    title: str
    summary: str
    picture: str
    """Address of the picture."""
    picture_width: int
    picture_height: int
    """Pixels."""
    alt: str
    facts: tuple[Fact, ...]
    price: str


@dataclass(frozen=True, slots=True)
class FrontView:
    """The front page."""

    cards: tuple[Card, ...]
    count: str
    canonical: str
    description: str
    shop: ShopLine
