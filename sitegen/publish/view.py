"""The records that templates are filled from: every value is finished text or a finished drawing.

A template decides nothing: what a page must not show is not in its view at all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from sitegen.model.shop import COLOUR
from sitegen.publish.blocks import Block, ChartBlock, ChartSheet, Figure
from sitegen.publish.downloads import DownloadGroup
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
    locale: str = ""
    """Language and country, such as `en_GB`; empty where no country is known."""
    published: str = ""
    changed: str = ""
    """Dates of a pattern's first and newest edition; empty where it has none."""


@dataclass(frozen=True, slots=True)
class ForMachines:
    """What stands in a page's head for programs that read it."""

    data: Markup
    """Linked data as JSON, without any `<`."""
    feed: str
    """Where the feed stands, from the top of the site; empty where there is none."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A labelled value; `also` is a second line, such as the same size in inches."""

    label: str
    value: str
    also: str = ""
    language: str = ""
    """Of the value, where it is not that of the page."""


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
    language: str = ""
    """Of the name, where it is not that of the page."""


@dataclass(frozen=True, slots=True)
class BeadChoice:
    """A bead that a reader may take for a letter."""

    value: str
    """The six digits of its colour; a hyphen and a number follow where an earlier choice has the same."""
    text: str
    """As it stands among the choices."""
    title: str
    """The name of the drawing of the bead."""
    line: BeadLine
    """Of the materials table; its `key` is empty."""


@dataclass(frozen=True, slots=True)
class LetterChoice:
    """A letter whose colour a reader may choose."""

    letter: str
    hex: str
    kind: str
    """The kind of its bead: only beads of one kind may be taken for each other."""
    colour_label: str
    bead_label: str
    beads: tuple[BeadChoice, ...]
    """The maker's own first, then those in stock; one with an empty value is any other colour, `{hex}`."""


@dataclass(frozen=True, slots=True)
class OwnColours:
    """What a page needs to be shown in a reader's own colours."""

    after: str
    """The chapter that it follows, as an address on the page."""
    about: str
    letters: tuple[LetterChoice, ...]


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
    language: str = ""
    """Of the name, where it is not that of the page."""


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
class Bench:
    """What the page says to those who work from it; fields of the script's own stand in {braces}."""

    pattern: str
    revision: str
    """Ticks are kept for each pattern and revision."""
    done: str
    """What is said when every step is ticked."""


@dataclass(frozen=True, slots=True)
class ToList:
    """The button that puts a pattern on the shopping list."""

    name: str
    """What the list calls it."""
    pieces: str
    """How many the pattern makes."""
    most: str


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere."""

    href: str
    """A page, from the top of the site; a place on the same page, `#steps`; or where a pattern is sold."""
    text: str
    also: str = ""
    """A second line, such as a pattern's summary."""
    language: str = ""
    """Of the words, where it is not that of the page."""
    also_language: str = ""


@dataclass(frozen=True, slots=True)
class Tongue:
    """A language that the site can be read in."""

    language: str
    name: str
    """In the language itself."""
    folder: str
    """Where its pages stand below the top of the site; empty for the first language."""
    home: str
    """Full address of that folder; empty for a shop that has none."""


@dataclass(frozen=True, slots=True)
class ShopLine:
    """What stands on every page of a shop."""

    title: str
    tagline: str
    maker: str
    about: str
    language: str
    folder: str
    """Where the pages of this language stand below the top of the site."""
    tongues: tuple[Tongue, ...]
    """All languages of the site, the first one first."""
    spoken: Mapping[str, str]
    """Name of a text of the shop's -> its language, empty where that is the page's."""
    head: tuple[Link, ...] = ()
    """The shop's own pages that the head of every page links to."""
    foot: tuple[Link, ...] = ()
    """Those that the foot links to."""


@dataclass(frozen=True, slots=True)
class Book:
    """What makes a book of the printed sheets: what they have beyond the page."""

    level: Fact
    """How hard it is, among the facts of the cover."""
    contents: tuple[Link, ...]
    """Chapters, and the charts and steps of each part, in their order."""
    tools: tuple[Fact, ...]
    before: tuple[Link, ...]
    """What to do before the first bead, and the place to turn to; empty where there is none."""
    stitches: tuple[str, ...]
    """Its stitches, as message keys name them: they are explained too."""
    colophon: tuple[Fact, ...]
    """Whose it is, where one may ask, which edition, and the address of its page."""
    code: Figure | None
    """The QR code of that page; None for a shop without an address."""


@dataclass(frozen=True, slots=True)
class Imprint:
    """What a PDF says of itself beside its title and its summary."""

    author: str
    keywords: tuple[str, ...]
    published: str
    """Date of the first edition, such as `2026-05-02`; empty where the pattern has none."""
    changed: str
    """Date of the newest edition."""
    ticks: bool
    """Whether its boxes can be ticked on a screen."""


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
    own_language: str
    """Of that title, where it is not that of the page."""
    supplies: tuple[Fact, ...]
    difficulty: Difficulty
    blocks: tuple[Block, ...]
    """Empty on the page of a pattern that is for sale."""
    cautions: tuple[Fact, ...]
    licence: str
    revisions: tuple[Fact, ...]
    downloads: tuple[DownloadGroup, ...]
    """On the page of a free pattern alone: one group for each edition."""
    buy: str
    """How to buy; empty for a free pattern."""
    address: str
    """Where the page stands in the site."""
    beside: str
    """The way to the folder of its files without words, which all languages share."""
    language: str
    """Of title and summary, where it is not that of the page."""
    canonical: str
    """Full address, or empty."""
    shop: ShopLine
    imprint: Imprint
    """For the printed sheets."""
    sharing: Sharing | None
    """On the page of a shop that has an address."""
    lessons: tuple[Link, ...]
    """On the page alone: where its stitches are taught."""
    template: TemplateView | None
    """On the printed sheets alone."""
    photo: PhotoImage | None
    """The lead photo."""
    machines: ForMachines | None = None
    """On the page alone."""
    printed_as: str = COLOUR
    """Which edition of the printed sheets it is."""
    columns: tuple[tuple[tuple[ChartBlock, ...], ...], ...] = ()
    """On the summary alone: its word charts, page by page in two columns."""
    book: Book | None = None
    """On the printed sheets alone."""
    bundles: tuple[Link, ...] = ()
    """On the page alone: those that hold the pattern."""
    contents: tuple[Link, ...] = ()
    """On the page alone: its chapters, and the charts and steps of each part."""
    buy_link: Link | None = None
    """On the page alone: where a priced pattern is bought, if the shop says where."""
    bench: Bench | None = None
    """On the page alone, where there are steps to work."""
    to_list: ToList | None = None
    """On the page alone: the button for the shopping list."""
    chooser: OwnColours | None = None
    """On the page of a free pattern alone."""

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
    language: str = ""
    """Of title and summary, where it is not that of the page."""
