"""Pieces and their cards -> the catalogue: each pattern on the shelf of its kind, and ways to narrow it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import isinf

from sitegen.model.numbers import MM_PER_INCH, plain
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.bundle_links import bundle_links
from sitegen.publish.compose import canonical, shop_line
from sitegen.publish.dates import changed
from sitegen.publish.lessons import stitches
from sitegen.publish.piece import Piece
from sitegen.publish.slugs import slugs
from sitegen.publish.units import in_both
from sitegen.publish.view import Card, ForMachines, Link, Sharing, ShopLine
from sitegen.publish.words import Words
from sitegen.trade.families import colour_family, families, least_share, size_band, size_bands
from sitegen.trade.pieces import PIECE_KINDS

CATALOGUE = "catalogue/index.html"
"""Where it stands in the site."""
LEVELS = ("beginner", "advanced beginner", "intermediate", "advanced")
PRICES = ("free", "priced")
ORDERS = ("kind", "newest", "level", "time", "beads", "name")
"""The orders the list can be put in; the first is that of the page."""
OTHER = "other"
"""The shelf of patterns that do not say what they make."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One value a list can be narrowed to."""

    value: str
    label: str
    count: str
    """How many patterns have it."""


@dataclass(frozen=True, slots=True)
class ChoiceGroup:
    """All values of one kind; a pattern may have several."""

    name: str
    """`piece`, `stitch`, `level`, `size`, `colour` or `price`: also the name of the data attribute."""
    heading: str
    choices: tuple[Choice, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """A pattern in the catalogue."""

    card: Card
    traits: tuple[tuple[str, str], ...]
    """(group, its values with blanks between) for narrowing."""
    ranks: tuple[tuple[str, str], ...]
    """(order, what it is ordered by): a date, a number or a name."""
    find: str
    """What a search looks through."""


@dataclass(frozen=True, slots=True)
class Shelf:
    """The patterns of one kind of piece."""

    name: str
    heading: str
    count: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class CatalogueView:
    """The catalogue."""

    count: str
    shelves: tuple[Shelf, ...]
    groups: tuple[ChoiceGroup, ...]
    orders: tuple[tuple[str, str], ...]
    """(value, label)."""
    canonical: str
    shop: ShopLine
    bundles: tuple[Link, ...] = ()
    """Several patterns in one file."""
    sharing: Sharing | None = None
    machines: ForMachines | None = None


def catalogue_view(pieces: Sequence[Piece], cards: Sequence[Card], shop: Shop, words: Words) -> CatalogueView:
    """All patterns, with the choices that at least one of them answers."""
    say = words.text
    entries = [(piece, _entry(piece, card, words)) for piece, card in zip(pieces, cards, strict=True)]
    shelves = []
    for kind in (*PIECE_KINDS, OTHER):
        here = tuple(entry for piece, entry in entries if _kind(piece.pattern) == kind)
        if here:
            count = say("front.count", count=len(here))
            shelves.append(Shelf(kind, say(f"piece.{kind}"), count, here))
    return CatalogueView(
        count=say("front.count", count=len(entries)),
        shelves=tuple(shelves),
        groups=tuple(_groups([entry for _, entry in entries], pieces, words)),
        orders=tuple((order, say(f"catalogue.by-{order}")) for order in ORDERS),
        canonical=canonical(shop, CATALOGUE),
        shop=shop_line(shop),
        bundles=bundle_links(shop),
    )


def colour_families(piece: Piece) -> tuple[str, ...]:
    """The families that take a fair share of the beads, in the order of the trade table.

    The author's own colours alone: they are what the picture shows.
    """
    counts: Counter[str] = Counter()
    for bead in piece.measures.beads:
        counts[colour_family(bead.hex)] += bead.total
    least = least_share() * sum(counts.values())
    return tuple(family for family in families() if counts[family] >= max(least, 1))


def size_label(name: str, words: Words) -> str:
    """A band of size with its limits in both units; inches are whole, as the bands are rough."""
    _, start, end = next(band for band in size_bands() if band[0] == name)
    say, limits = words.text, [mm for mm in (start, end) if mm and not isinf(mm)]
    told = []
    for unit, unit_mm, places in (("cm", 10.0, 1), ("in", MM_PER_INCH, 0)):
        shown = [plain(mm / unit_mm, places) for mm in limits]
        one = len(shown) == 1
        told.append(
            say(f"unit.{unit}", value=shown[0])
            if one
            else say(f"size.range-{unit}", **{"from": shown[0], "to": shown[1]})
        )
    return say(f"size.{name}", size=in_both(*told))


def _kind(pattern: Pattern) -> str:
    return pattern.piece or OTHER


def _entry(piece: Piece, card: Card, words: Words) -> Entry:
    pattern, measures = piece.pattern, piece.measures
    done_in = stitches(pattern, words)
    longest = max(measures.width_mm, measures.height_mm)
    traits = {
        "piece": _kind(pattern),
        "stitch": " ".join(done_in),
        "level": _value(measures.difficulty.level),
        "size": size_band(longest),
        "colour": " ".join(colour_families(piece)),
        "price": PRICES[pattern.price is not None],
    }
    day = changed([pattern])
    ranks = {
        "newest": day.isoformat() if day else "",
        "level": plain(measures.difficulty.score, 1),
        "time": str(measures.minutes_low),
        "beads": str(measures.bead_total),
        "name": pattern.title,
    }
    beads = (
        word
        for bead in measures.beads
        for word in (bead.name, words.term("bead", bead.bead), words.term("finish", bead.finish))
    )
    findings = (words.term("finding", name) for name in piece.findings)
    kind = words.text(f"piece.{_kind(pattern)}")
    families_here = (words.text(f"colour.{family}") for family in colour_families(piece))
    find = dict.fromkeys(
        (pattern.title, pattern.summary, kind, *done_in.values(), *beads, *families_here, *findings)
    )
    return Entry(card, tuple(traits.items()), tuple(ranks.items()), " ".join(find))


def _value(name: str) -> str:
    return name.replace(" ", "-")


def _groups(entries: Sequence[Entry], pieces: Sequence[Piece], words: Words) -> Iterator[ChoiceGroup]:
    """The groups in the order they are shown; what no pattern has is left out."""
    say = words.text
    titles = {key: title for piece in pieces for key, title in stitches(piece.pattern, words).items()}
    by_title = sorted(titles, key=lambda key: slugs((titles[key],), key))
    labels: dict[str, dict[str, str]] = {
        "piece": {kind: say(f"piece.{kind}") for kind in (*PIECE_KINDS, OTHER)},
        "stitch": {key: titles[key] for key in by_title},
        "level": {_value(level): say(f"level.{level}") for level in LEVELS},
        "colour": {family: say(f"colour.{family}") for family in families()},
        "size": {name: size_label(name, words) for name, _, _ in size_bands()},
        "price": {price: say(f"catalogue.{price}") for price in PRICES},
    }
    for name, values in labels.items():
        counts = Counter(value for entry in entries for value in dict(entry.traits)[name].split())
        choices = [Choice(key, label, str(counts[key])) for key, label in values.items() if counts[key]]
        if choices:
            yield ChoiceGroup(name, say(f"catalogue.{name}"), tuple(choices))
