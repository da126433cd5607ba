"""The keys of the header and of the shop file: the one table both reader and JSON Schema use."""

from __future__ import annotations

from sitegen.model.shop import EDITIONS
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
    Strands,
    Text,
    Whole,
    WordChart,
)
from sitegen.trade.pieces import PIECE_KINDS

LETTER = "[A-Za-z0-9]"
"""Regular expression for what may call a bead."""
STOCK_KEY = "[a-z][a-z0-9-]{0,39}"
"""Regular expression for a key of the stock."""

BEAD_NAME = "[a-z][a-z0-9 ./-]{0,39}"
"""Regular expression for the name of an author's own bead kind."""

_EDGE = Choice(("top", "bottom"))

_EDITIONS = ListOf(Choice(EDITIONS), len(EDITIONS), once=True)

_WHERE_TO_BUY = Form(
    r"(https://[^\s/{}]+(/([^\s{}]|\{name\})*)?|mailto:[^\s@{}]+@[^\s@{}?]+(\?([^\s{}]|\{name\})*)?)",
    "an address that begins with https:// or mailto:, where {name} may stand for the pattern's name",
)

_SITE = "https?://[^\\s/?#@:\\[\\]\"'<>]+(:[0-9]{1,5})?(/[^\\s?#\"'<>]*)?"

_NEEDLE = "Needle in trade words, such as beading 12."
_THREAD = "Thread by material and thickness, such as nylon 0.25 mm."

_BEAD = (
    Field("bead", Text(40), "Bead kind in trade words, such as round 11/0.", required=True),
    Field("name", Text(60), "The colour's name for people.", required=True),
    Field("hex", Hex(), 'The colour for pictures, in quotes, such as "#1f4d3a".', required=True),
    Field("finish", Text(40), "Surface in trade words, such as matte; opaque if not given."),
)

OWN_BEAD = Record(
    (
        Field(
            "shape",
            Choice(("round", "cylinder", "cube", "drop", "bugle", "bicone", "faceted")),
            "How the bead is drawn: round, cylinder, cube, drop, bugle, bicone or faceted.",
            required=True,
        ),
        Field("width", Length(0.5, 30), "Its measure across the hole, such as 3.1 mm.", required=True),
        Field("length", Length(0.5, 50), "Its measure along the hole, such as 2 mm.", required=True),
        Field("hole", Length(0.1, 20), "Diameter of the hole, such as 0.9 mm.", required=True),
        Field("per_gram", Decimals(0.05, 2000), "Beads in a gram: weigh ten or more of them.", required=True),
    )
)

_OWN_BEADS = Field(
    "bead_kinds",
    Record((), Named(BEAD_NAME, "bead-kind-name", OWN_BEAD, "A bead that you have measured yourself.")),
    "Bead kinds of your own, each under the name that colours call it by.",
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
        Field(
            "beads",
            Whole(1, 1000),
            "Beads counted across the swatch (squares of right-angle weave, nets of netting).",
            required=True,
        ),
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
            Field(
                "at",
                Choice(("beads", "bridges")),
                "What holds each strand: beads (their holes) or bridges; if not given, beads for a fringe "
                "and bridges for an edging.",
            ),
        )
    ),
)

OVER = Record(
    (
        Field("part", Text(60), "The earlier part that is embellished.", required=True),
        Field(
            "row", Whole(1, 1000), "Its chart row, counted from the top, whose gaps get beads.", required=True
        ),
    )
)

LOOSE_FINDING = Record(
    (
        Field("kind", Text(40), "Finding in trade words, such as jump ring.", required=True),
        Field("width", Length(), "Its width, such as 20 mm."),
    )
)

AROUND = Record(
    (Field("ring", Length(2, 200), "Outside of the ring worked around, such as 12 mm.", required=True),)
)

ROPE = Record(
    (
        Field("core", WordChart(), "The core beads a stitch goes through, such as 4C.", required=True),
        Field("outer", WordChart(), "A stitch's beads that lie outside, such as 1A 1B 1A.", required=True),
        Field("stitches", Whole(1, 5000), "How many stitches are made.", required=True),
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
        Field(
            "reinforce",
            Flag(),
            "Whether the ladder row, or a row of square stitch, is sewn through again; true if not given.",
        ),
        Field("drop", Whole(1, 3), "Beads that go into each stitch: 2 for two-drop; 1 if not given."),
        Field("zip", Flag(), "Whether a peyote strip is zipped into a tube; false if not given."),
        Field("base", Whole(1, 2), "Height in beads of the ladder under herringbone: 1 (if not given) or 2."),
        Field("net", Whole(3, 7), "Beads in each net of netting: 3, 5 (if not given) or 7."),
        Field("repeat", Whole(1, 1000), "How many times the chart is worked, one above the other."),
        Field("hang", HANG, "What the part hangs from, or the finding sewn to it."),
        Field("turn", Whole(1, 9), "Beads at a strand's end that are not passed on the way back."),
        Field(
            "strands",
            Strands(1000),
            "A word chart for each strand, from left to right; or one rule for all, such as each 5D 3A, or "
            "from 10D, each 2D longer to the centre, then 3A.",
        ),
        Field("span", Whole(1, 1000), "How many places on a loop or swag is joined again."),
        Field("twist", Whole(1, 99), "Whole turns that the legs of a twisted strand make round each other."),
        Field("over", OVER, "The row that beads are sewn over."),
        Field("clasp", Text(40), "The finding that closes a strung part, such as toggle clasp."),
        Field(
            "ends",
            Choice(("crimps", "knots")),
            "How the ends of a strung part are held; if not given, crimps on wire and knots on thread.",
        ),
        Field("mirror", Flag(), "Whether the strands go on as a mirror image; the last one stands once."),
        Field(
            "rows", ListOf(WordChart(), 1000), "A word chart for each row, top row first, instead of a chart."
        ),
        Field("rounds", ListOf(WordChart(), 1000), "A word chart for each round, from the middle outward."),
        Field("around", AROUND, "The ring that round work is worked around, if it has no centre of beads."),
        Field("rope", ROPE, "What a spiral rope is made of."),
        Field(
            "edge_warps",
            Choice(("single", "doubled")),
            "Whether the two outer warps of loom work are doubled; single if not given.",
        ),
        Field("loom_allowance", Length(0, 3000), "What warps are longer than the loom strip, such as 60 cm."),
        Field("finding", LOOSE_FINDING, "A finding that is a part by itself."),
        Field("gauge", GAUGE, "Your measured swatch in this part's stitch."),
    )
)

REVISION = Record(
    (
        Field("number", Whole(1, 9999), "The revision's number.", required=True),
        Field("date", Day(), "Its date, year-month-day."),
        Field("note", Text(400), "What is new in it.", required=True),
        Field("corrects", Text(400), "What was wrong in the editions before, for those who work from one."),
    )
)

PHOTO_WORDS = Text(300)
"""What is said of a photo, above and under it."""

PHOTO = Record(
    (
        Field("file", Text(200), "Its file beside the pattern, such as on-linen.jpg.", required=True),
        Field("alt", PHOTO_WORDS, "What is seen, for those who do not see it.", required=True),
        Field("caption", PHOTO_WORDS, "A line under the photo."),
    )
)

HEADER = Record(
    (
        Field("title", Text(80), "The pattern's title.", required=True),
        Field("summary", Text(300), "One sentence that says what it is.", required=True),
        Field("makes", Choice(tuple(m.value for m in Makes)), "How many pieces are made.", required=True),
        Field("piece", Choice(PIECE_KINDS), "What is made: the catalogue is ordered by it."),
        Field("revision", Whole(1, 9999), "Number of this revision; 1 if not given."),
        Field("revisions", ListOf(REVISION, 1000), "What was new in each revision."),
        Field(
            "price", Price(), "Either free, or an amount in the shop's currency, such as 5.50.", required=True
        ),
        Field("buy", _WHERE_TO_BUY, "Where this pattern is bought; if not given, as the shop file says."),
        Field("editions", _EDITIONS, "What this pattern is printed as; if not given, as the shop file says."),
        Field("needle", Text(40), _NEEDLE),
        Field("thread", Text(40), _THREAD),
        Field("finding", Text(40), "The piece's finding in trade words, such as ear wire."),
        Field(
            "colours",
            Record((), Named(LETTER, "letter", COLOUR, "The bead called by this letter.")),
            "The beads, each called by a letter or digit.",
            required=True,
        ),
        _OWN_BEADS,
        Field("colourways", ListOf(COLOURWAY, 100), "Named sets of other colours for the same weave."),
        Field("parts", ListOf(PART, 100), "The parts, in the order of making.", required=True),
        Field("gauge", GAUGE, "Your measured swatch; it overrules the computed size of a bead."),
        Field("measured", MEASURED, "The finished piece as you measured it."),
        Field("photo", PHOTO, "A photo of the finished piece, shown after the drawn picture."),
    )
)

PAGE = Record(
    (
        Field("title", Text(60), "The page's title; links to it say the same.", required=True),
        Field("summary", Text(300), "One sentence that says what stands on it."),
        Field("shown", Choice(("head", "foot")), "Where every page links to it; foot if not given."),
        Field("order", Whole(1, 999), "Its place among the shop's pages; those without one come last."),
    )
)

STOCK_BEAD = Record(
    (
        *_BEAD,
        Field("pack", Mass(), "Grams in a pack as sold, such as 10 g."),
        Field("price", Price(), "Price of a pack in the shop's currency."),
    )
)

LANGUAGE = "[a-z]{2,3}(-[A-Z]{2})?"
"""Regular expression for the code of a language."""
_LANGUAGE = Form(LANGUAGE, "a language code such as en")
_TITLE, _TAGLINE = Text(80), Text(200)

SHOP_WORDS = Record(
    (
        Field("title", _TITLE, "The shop's name in this language."),
        Field("tagline", _TAGLINE, "A few words under the name."),
        Field("contact", Text(200), "Where buyers reach the maker."),
        Field("licence", Text(2000), "What a buyer may do with a pattern and with pieces made from it."),
        Field("about", Text(2000), "A paragraph for the foot of the pages."),
    )
)

BUNDLE_WORDS = Record(
    (
        Field("title", _TITLE, "The bundle's title in this language."),
        Field("summary", Text(300), "One sentence that says what it holds."),
    )
)

BUNDLE = Record(
    (
        Field(
            "name",
            Form("[a-z0-9]+(-[a-z0-9]+)*", "small letters, digits and hyphens, such as spring-set"),
            "Names its page and its files.",
            required=True,
        ),
        Field("title", _TITLE, "The bundle's title.", required=True),
        Field("summary", Text(300), "One sentence that says what it holds.", required=True),
        Field(
            "patterns",
            ListOf(Text(80), 100, once=True),
            "Names of the patterns in it, at least two, in the order they are printed.",
            required=True,
        ),
        Field("price", Price(), "Price of the whole bundle in the shop's currency; not for free patterns."),
        Field("date", Day(), "Since when there is this bundle, year-month-day; the feed tells of it then."),
        Field("buy", _WHERE_TO_BUY, "Where this bundle is bought; if not given, as the shop file says."),
        Field(
            "translations",
            Record((), Named(LANGUAGE, "translation-language", BUNDLE_WORDS, "Texts in this language.")),
            "Its texts in other languages, each under its language code.",
        ),
    )
)

SHOP = Record(
    (
        Field("title", Text(80), "The shop's name.", required=True),
        Field("tagline", Text(200), "A few words under the name."),
        Field("maker", Text(80), "Whose name stands on the patterns."),
        Field("contact", Text(200), "Where buyers reach the maker: a mail address or a web page."),
        Field("buy", _WHERE_TO_BUY, "Where patterns are bought; {name} stands for a pattern's name."),
        Field("language", _LANGUAGE, "Language of your texts, if the site has one language."),
        Field(
            "languages",
            ListOf(_LANGUAGE, 20),
            "All languages of the site, such as [en, de]; the first is that of your texts.",
        ),
        Field(
            "translations",
            Record((), Named(LANGUAGE, "translation-language", SHOP_WORDS, "Texts in this language.")),
            "The shop's texts in other languages, each under its language code.",
        ),
        Field("currency", Form("[A-Z]{3}", "three capitals such as EUR"), "Currency code by ISO 4217."),
        Field(
            "address",
            Form(_SITE, "an address such as https://example.org/, with nothing behind a ? or #"),
            "Where the site will live.",
        ),
        Field("licence", Text(2000), "What a buyer may do with a pattern and with pieces made from it."),
        Field("about", Text(2000), "A paragraph for the foot of the front page."),
        Field(
            "theme",
            Form("[a-z][a-z0-9-]{0,39}", "a theme's name such as linen"),
            "The look of site and PDFs.",
        ),
        Field(
            "editions",
            _EDITIONS,
            "What patterns are printed as: colour (if not given), ink, large, summary, or some of them.",
        ),
        Field("ticks", Flag(), "Whether the steps of the PDFs can be ticked on a screen; if not given, no."),
        Field("needle", Text(40), _NEEDLE),
        Field("thread", Text(40), _THREAD),
        Field("working_length", Length(300, 10_000), "The longest thread to handle at once, such as 1.6 m."),
        Field("tail", Length(10, 1000), "Thread left over at each end, such as 15 cm."),
        Field("slack", Decimals(1, 2), "Thread used over thread computed, such as 1.2."),
        Field("pack", Mass(), "Grams in the usual pack of beads, such as 5 g."),
        Field("spare", Percent(100), "Beads bought on top of the count, such as 10 %."),
        Field("loom_allowance", Length(0, 3000), "What warps are longer than a loom strip, such as 60 cm."),
        Field("finding_passes", Whole(1, 9), "Times the thread goes through a finding's loop."),
        Field(
            "stock",
            Record((), Named(STOCK_KEY, "stock-key", STOCK_BEAD, "A bead that patterns take by this key.")),
            "Beads that several patterns share, each under a key of its own.",
        ),
        Field("bundles", ListOf(BUNDLE, 100), "Several patterns in one file, with one shopping list."),
        _OWN_BEADS,
    )
)
