"""The keys of the header and of the shop file: the one table both reader and JSON Schema use."""

from __future__ import annotations

from sitegen.model.source import Makes
from sitegen.read.kinds import (
    Choice,
    Day,
    Decimals,
    Either,
    Field,
    Flag,
    Form,
    Hex,
    Length,
    ListOf,
    Mass,
    Named,
    Percent,
    Price,
    Record,
    Text,
    Whole,
    WordChart,
)

LETTER = "[A-Za-z0-9]"
"""Regular expression for what may call a bead."""
STOCK_KEY = "[a-z][a-z0-9-]{0,39}"
"""Regular expression for a key of the stock."""

_EDGE = Choice(("top", "bottom"))

_NEEDLE = "Needle in trade words, such as beading 12."
_THREAD = "Thread by material and thickness, such as nylon 0.25 mm."

_BEAD = (
    Field("bead", Text(40), "Bead kind in trade words, such as round 11/0.", required=True),
    Field("name", Text(60), "The colour's name for people.", required=True),
    Field("hex", Hex(), 'The colour for pictures, in quotes, such as "#1f4d3a".', required=True),
    Field("finish", Text(40), "Surface in trade words, such as matte; opaque if not given."),
)

COLOUR = Either(
    "stock",
    having=Record((Field("stock", Text(40), "Key of a bead in the shop's stock.", required=True),)),
    lacking=Record(_BEAD),
)

SWAP = Record(
    (
        Field("name", Text(60), "The new colour's name.", required=True),
        Field("hex", Hex(), "The new colour for pictures, in quotes.", required=True),
    )
)

COLOURWAY = Record(
    (Field("name", Text(60), "The colourway's name.", required=True),),
    Named(LETTER, "letter", SWAP, "What this letter's colour becomes."),
)

GAUGE = Record(
    (
        Field("beads", Whole(1, 1000), "Beads counted across the swatch.", required=True),
        Field("width", Length(), "How wide those beads are, such as 43 mm.", required=True),
        Field("rows", Whole(1, 1000), "Rows counted in the swatch.", required=True),
        Field("height", Length(), "How high those rows are, such as 16 mm.", required=True),
    )
)

MEASURED = Record(
    (
        Field("width", Length(), "Width of the finished piece, such as 31 mm.", required=True),
        Field("height", Length(), "Height of the finished piece, such as 78 mm.", required=True),
    )
)

HANG = Either(
    "finding",
    having=Record(
        (
            Field("finding", Text(40), "Finding in trade words, such as ear wire.", required=True),
            Field("from", _EDGE, "The edge of this part the finding is sewn to.", required=True),
        )
    ),
    lacking=Record(
        (
            Field("from", Text(60), "The part this one hangs from.", required=True),
            Field("edge", _EDGE, "The edge of that part.", required=True),
        )
    ),
)

LOOSE_FINDING = Record(
    (
        Field("kind", Text(40), "Finding in trade words, such as jump ring.", required=True),
        Field("width", Length(), "Its width, such as 20 mm."),
    )
)

PART = Record(
    (
        Field("name", Text(60), "The part's name; its chart is named alike.", required=True),
        Field(
            "stitch", Text(40), "Stitch in trade words; none for a part that is not stitched.", required=True
        ),
        Field(
            "begin",
            Form(
                "bottom|top|middle|row [1-9][0-9]{0,3}",
                "bottom, top, middle, or row and its number from the top",
            ),
            "The chart row that is worked first: bottom (if not given), top, middle or row N.",
        ),
        Field("start", Choice(("left", "right")), "The side the first row starts at; left if not given."),
        Field("reinforce", Flag(), "Whether the ladder row is sewn through once more; true if not given."),
        Field("repeat", Whole(1, 1000), "How many times the chart is worked, one above the other."),
        Field("hang", HANG, "What the part hangs from, or the finding sewn to it."),
        Field("turn", Whole(1, 5), "Beads at a strand's end that are not passed on the way back."),
        Field("strands", ListOf(WordChart(), 1000), "A word chart for each strand, from left to right."),
        Field("mirror", Flag(), "Whether the strands go on as a mirror image; the last one stands once."),
        Field(
            "rows", ListOf(WordChart(), 1000), "A word chart for each row, top row first, instead of a chart."
        ),
        Field("finding", LOOSE_FINDING, "A finding that is a part by itself."),
        Field("gauge", GAUGE, "Your measured swatch in this part's stitch."),
    )
)

REVISION = Record(
    (
        Field("number", Whole(1, 9999), "The revision's number.", required=True),
        Field("date", Day(), "Its date, year-month-day."),
        Field("note", Text(400), "What is new in it.", required=True),
    )
)

HEADER = Record(
    (
        Field("title", Text(80), "The pattern's title.", required=True),
        Field("summary", Text(300), "One sentence that says what it is.", required=True),
        Field("makes", Choice(tuple(m.value for m in Makes)), "How many pieces are made.", required=True),
        Field("revision", Whole(1, 9999), "Number of this revision; 1 if not given."),
        Field("revisions", ListOf(REVISION, 1000), "What was new in each revision."),
        Field(
            "price", Price(), "Either free, or an amount in the shop's currency, such as 5.50.", required=True
        ),
        Field("needle", Text(40), _NEEDLE),
        Field("thread", Text(40), _THREAD),
        Field("finding", Text(40), "The piece's finding in trade words, such as ear wire."),
        Field(
            "colours",
            Record((), Named(LETTER, "letter", COLOUR, "The bead called by this letter.")),
            "The beads, each called by a letter or digit.",
            required=True,
        ),
        Field("colourways", ListOf(COLOURWAY, 100), "Named sets of other colours for the same weave."),
        Field("parts", ListOf(PART, 100), "The parts, in the order of making.", required=True),
        Field("gauge", GAUGE, "Your measured swatch; it overrules the computed size of a bead."),
        Field("measured", MEASURED, "The finished piece as you measured it."),
    )
)

STOCK_BEAD = Record(
    (
        *_BEAD,
        Field("pack", Mass(), "Grams in a pack as sold, such as 10 g."),
        Field("price", Price(), "Price of a pack in the shop's currency."),
    )
)

SHOP = Record(
    (
        Field("title", Text(80), "The shop's name.", required=True),
        Field("tagline", Text(200), "A few words under the name."),
        Field("maker", Text(80), "Whose name stands on the patterns."),
        Field(
            "language",
            Form("[a-z]{2,3}(-[A-Z]{2})?", "a language code such as en"),
            "Language of your texts.",
        ),
        Field("currency", Form("[A-Z]{3}", "three capitals such as EUR"), "Currency code by ISO 4217."),
        Field(
            "address",
            Form("https?://[^\\s/]+(/[^\\s]*)?", "an address such as https://example.org/"),
            "Where the site will live.",
        ),
        Field("licence", Text(2000), "What a buyer may do with a pattern and with pieces made from it."),
        Field("about", Text(2000), "A paragraph for the foot of the front page."),
        Field(
            "theme",
            Form("[a-z][a-z0-9-]{0,39}", "a theme's name such as linen"),
            "The look of site and PDFs.",
        ),
        Field("needle", Text(40), _NEEDLE),
        Field("thread", Text(40), _THREAD),
        Field("working_length", Length(300, 10_000), "The longest thread to handle at once, such as 1.6 m."),
        Field("tail", Length(10, 1000), "Thread left over at each end, such as 15 cm."),
        Field("slack", Decimals(1, 2), "Thread used over thread computed, such as 1.2."),
        Field("pack", Mass(), "Grams in the usual pack of beads, such as 5 g."),
        Field("spare", Percent(100), "Beads bought on top of the count, such as 10 %."),
        Field("finding_passes", Whole(1, 9), "Times the thread goes through a finding's loop."),
        Field(
            "stock",
            Record((), Named(STOCK_KEY, "stock-key", STOCK_BEAD, "A bead that patterns take by this key.")),
            "Beads that several patterns share, each under a key of its own.",
        ),
    )
)
