"""Pieces -> the materials page: each bead, thread, needle and finding of the shop, and where it is used."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from sitegen.draw.bead_key import bead_keys
from sitegen.draw.pens import Drawing
from sitegen.model.measures import BeadCount
from sitegen.model.numbers import plain
from sitegen.model.shop import Shop
from sitegen.publish.compose import TITLE, canonical, page_address, shop_line
from sitegen.publish.materials import colour_language
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.slugs import slugs
from sitegen.publish.view import Fact, ForMachines, Link, Sharing, ShopLine
from sitegen.publish.words import Words
from sitegen.trade.beads import bead_kind
from sitegen.trade.families import drawer
from sitegen.trade.figures import tidy

MATERIALS = "materials/index.html"
"""Where it stands in the site."""
SCALE = 4.2
"""How much larger than life beads are drawn; a bead too large for the room is drawn smaller."""
KEY_ROOM = (19.0, 13.0)
"""Width and height in mm that the drawing of a bead may take."""


@dataclass(frozen=True, slots=True)
class StockLine:
    """A bead of one kind and colour."""

    name: str
    language: str
    """Of the name, where it is not that of the page."""
    finish: str
    """Empty for plain opaque beads."""
    picture: Markup
    pack: str
    """How it is sold."""
    used: tuple[Link, ...]
    """The patterns it is used in, each with its beads, grams and packs."""


@dataclass(frozen=True, slots=True)
class StockShelf:
    """All colours of one kind of bead."""

    name: str
    heading: str
    facts: tuple[Fact, ...]
    """Size, hole and beads in a gram."""
    count: str
    lines: tuple[StockLine, ...]


@dataclass(frozen=True, slots=True)
class SupplyLine:
    """A thread, a needle or a finding, and the patterns that take it."""

    name: str
    used: tuple[Link, ...]


@dataclass(frozen=True, slots=True)
class StockView:
    """The materials page."""

    lead: str
    shelves: tuple[StockShelf, ...]
    supplies: tuple[tuple[str, str, tuple[SupplyLine, ...]], ...]
    """(anchor, heading, lines) for threads, needles and findings."""
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


Use = tuple[Piece, BeadCount]
Keys = Mapping[str, Mapping[str, Drawing]]
"""Pattern -> letter -> how its bead looks."""


def stock_view(pieces: Sequence[Piece], shop: Shop, words: Words) -> StockView:
    """Every bead of every pattern, in the author's colours; kinds and colours in the order of a drawer."""
    by_bead: dict[tuple[str, str, str, str], list[Use]] = {}
    for piece in pieces:
        for bead in piece.measures.beads:
            key = (tidy(bead.bead), tidy(bead.finish), piece.author_name(bead.letter).casefold(), bead.hex)
            by_bead.setdefault(key, []).append((piece, bead))
    shelves: dict[str, list[list[Use]]] = {}
    for key, uses in by_bead.items():
        shelves.setdefault(key[0], []).append(uses)
    names = sorted(shelves)
    anchors = slugs(names, "bead")
    say = words.text
    keys = {piece.pattern.name: bead_keys(piece.pattern, say) for piece in pieces}
    return StockView(
        lead=say("stock.lead", count=len(by_bead)),
        shelves=tuple(
            _shelf(anchor, sorted(shelves[name], key=_drawer), keys, words)
            for name, anchor in zip(names, anchors, strict=True)
        ),
        supplies=tuple(_supplies(pieces, words)),
        canonical=canonical(shop, MATERIALS),
        shop=shop_line(shop),
    )


def _drawer(uses: list[Use]) -> tuple[int, float, str]:
    bead = uses[0][1]
    return drawer(bead.hex, bead.name)


def _shelf(anchor: str, beads: list[list[Use]], keys: Keys, words: Words) -> StockShelf:
    say, tell = words.text, Quantities(words)
    piece, first = beads[0][0]
    kind = bead_kind(first.bead, piece.pattern.bead_kinds)
    facts: tuple[Fact, ...] = ()
    if kind is not None:
        facts = (
            Fact(say("stock.across"), tell.mm(kind.width_mm)),
            Fact(say("stock.along"), tell.mm(kind.length_mm)),
            Fact(say("stock.hole"), say("unit.mm", value=plain(kind.hole_mm, 2))),
            Fact(say("stock.per-gram"), words.number(plain(kind.per_gram, 0 if kind.per_gram >= 10 else 1))),
        )
    return StockShelf(
        name=anchor,
        heading=say("beads.kind", bead=first.bead),
        facts=facts,
        count=say("stock.colours", count=len(beads)),
        lines=tuple(_line(uses, f"{anchor}-{number}", keys, words) for number, uses in enumerate(beads, 1)),
    )


def _line(uses: list[Use], uid: str, keys: Keys, words: Words) -> StockLine:
    say, tell = words.text, Quantities(words)
    piece, bead = next((use for use in uses if not colour_language(use[0], use[1].letter)), uses[0])
    drawn = keys[piece.pattern.name].get(bead.letter)
    picture = Markup("")
    if drawn is not None:
        scale = min(SCALE, KEY_ROOM[0] / drawn.width_mm, KEY_ROOM[1] / drawn.height_mm)
        picture = Markup(drawn.svg(uid, scale))
    stock = piece.shop.stocked(piece.pattern.colour(bead.letter))
    pack = say("stock.pack", grams=plain(bead.pack_grams, 1))
    if stock is not None and stock.price is not None:
        price = tell.price(stock.price, piece.shop.currency)
        pack = say("stock.pack-price", grams=plain(bead.pack_grams, 1), price=price)
    return StockLine(
        name=bead.name,
        language=colour_language(piece, bead.letter),
        finish="" if bead.finish == "opaque" else words.term("finish", bead.finish),
        picture=picture,
        pack=pack,
        used=tuple(_use(one, count, words) for one, count in uses),
    )


def _use(piece: Piece, bead: BeadCount, words: Words) -> Link:
    tell = Quantities(words)
    packs = words.text("stock.packs", count=bead.packs)
    also = words.text("stock.use", count=bead.total, grams=tell.both_weights(bead.grams), packs=packs)
    return _to(piece, also)


def _to(piece: Piece, also: str = "") -> Link:
    """The link to a pattern, with what it takes."""
    return Link(page_address(piece.pattern.name), piece.pattern.title, also, piece.language_of(TITLE))


def _supplies(pieces: Sequence[Piece], words: Words) -> Iterator[tuple[str, str, tuple[SupplyLine, ...]]]:
    say, tell = words.text, Quantities(words)
    threads: dict[str, list[Link]] = {}
    needles: dict[str, list[Link]] = {}
    findings: dict[str, list[Link]] = {}
    for piece in pieces:
        pieces_made = piece.measures.pieces
        length = piece.measures.thread.total_mm * pieces_made
        also = tell.both_threads(length)
        thread = say("supplies.thread-is", thread=piece.thread)
        threads.setdefault(thread, []).append(_to(piece, also))
        needle = say("supplies.needle-is", needle=piece.needle)
        needles.setdefault(needle, []).append(_to(piece))
        for kind, count in piece.findings.items():
            number = say("stock.count", number=count * pieces_made)
            findings.setdefault(words.term("finding", kind), []).append(_to(piece, number))
    for name, found in (("threads", threads), ("needles", needles), ("findings", findings)):
        if found:
            lines = tuple(SupplyLine(kind, tuple(found[kind])) for kind in sorted(found))
            yield name, say(f"stock.{name}"), lines
