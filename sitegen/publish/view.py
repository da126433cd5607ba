"""The records that templates are filled from: every value is finished text or a finished drawing.

A template decides nothing: what a page must not show is not in its view at all.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publish.blocks import Block, ChartSheet, Figure
from sitegen.publish.photo import PhotoBlock, PhotoFile, PhotoImage, files_of
from sitegen.publish.true_size import TemplateView


@dataclass(frozen=True, slots=True)
class Sharing:
    """What a page says of itself to whoever passes its address on."""

    title: str
    kind: str
    """`website` or `article`."""
    address: str
    image: str
    """Full address of the cover."""
    width: int
    height: int
    """Pixels."""
    alt: str
    shop: str


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
    key: Markup
    """The bead from the side and from its hole."""
    bead: str
    each: str
    total: str
    grams: str
    buy: str
    packs: str


@dataclass(frozen=True, slots=True)
class WayChart:
    """A part's chart in other colours, without its word chart: the letters stay the same."""

    heading: str
    sheets: tuple[ChartSheet, ...]


@dataclass(frozen=True, slots=True)
class Way:
    """The piece in other colours, as another page or sheet shows it."""

    number: str
    """Its chips are `bead-NUMBER-LETTER`."""
    name: str
    href: str
    picture: Figure
    beads: tuple[BeadLine, ...]
    """Empty where the picture alone is wanted."""
    same: tuple[str, ...]
    """A sentence for each bead that several letters stand for."""
    charts: tuple[WayChart, ...]
    """In print."""


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
class Download:
    """A PDF that lies beside the page."""

    href: str
    label: str
    size: str
    """Pages and kilobytes."""


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead to another page."""

    href: str
    """From the top of the site."""
    text: str
    also: str = ""
    """A second line, such as a pattern's summary."""


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
    bead_scale: str
    """How much larger than life they are drawn."""
    bead_each: str
    bead_total: str
    pieces: str
    """`each` column's heading is left out where this is `1`."""
    same: tuple[str, ...]
    """In a colourway, a sentence for each bead that several letters stand for."""
    ways: tuple[Way, ...]
    """The other colours it is shown in."""
    own_colours: str
    """On the page of a colourway, the pattern's title in the way back to the author's colours."""
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
    address: str
    """Where the page stands in the site."""
    canonical: str
    """Full address, or empty."""
    shop: ShopLine
    sharing: Sharing | None
    """On the page of a shop that has an address."""
    lessons: tuple[Link, ...]
    """On the page alone: where its stitches are taught."""
    template: TemplateView | None
    """On the printed sheets alone."""
    photo: PhotoImage | None
    """The lead photo."""

    @property
    def photo_files(self) -> tuple[PhotoFile, ...]:
        """The files that this page or these sheets show, and no other."""
        lead = (self.photo,) if self.photo else ()
        return files_of((*lead, *(block.photo for block in self.blocks if isinstance(block, PhotoBlock))))


@dataclass(frozen=True, slots=True)
class Card:
    """One pattern on the front page."""

    href: str
    title: str
    summary: str
    picture: str
    """Address of the picture."""
    picture_large: str
    """Address of the same at twice the size, for fine screens."""
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
    sharing: Sharing | None
