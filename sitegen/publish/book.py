"""A pattern worked out and the view of its sheets -> what makes a book of them.

Contents, tools, what to look at before the first bead, and at the end whose pattern it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup

from sitegen.draw.scan_code import scan_code
from sitegen.publish import bench
from sitegen.publish.blocks import ChartBlock, Figure, LegendBlock, StepsBlock
from sitegen.publish.lessons import lesson_name
from sitegen.publish.materials import uses
from sitegen.publish.piece import Piece
from sitegen.publish.view import Book, Fact, Link, PatternView
from sitegen.trade.tools import tools_for

SIGNS = "#signs"
"""Where the key to the drawings stands in sheets."""


def book(piece: Piece, view: PatternView) -> Book:
    """What the sheets of a piece have beyond its page; the view is otherwise complete."""
    say = piece.words.text
    names = dict.fromkeys(lesson_name(part.stitch) for part in piece.pattern.parts)
    code = None
    if view.canonical:
        code = Figure(Markup(scan_code(view.canonical, say).svg("scan-code")), say("book.scan"))
    return Book(
        level=Fact(say("facts.level"), view.difficulty.level, view.difficulty.score),
        contents=tuple(_contents(piece, view)),
        tools=tuple(
            Fact(say(f"tool.{name}.label"), say(f"tool.{name}.text")) for name in tools_for(uses(piece))
        ),
        before=tuple(_before(piece, view)),
        stitches=tuple(name for name in names if piece.words.has(f"lesson.{name}.is")),
        colophon=tuple(_colophon(piece, view)),
        code=code,
    )


def _contents(piece: Piece, view: PatternView) -> Iterator[Link]:
    """Every chapter that these sheets have; of a mirrored pair's second piece only where it begins."""
    say = piece.words.text
    yield Link("#materials", say("book.materials"))
    yield Link("#before", say("book.before"))
    yield from (Link(SIGNS, block.heading) for block in view.blocks if isinstance(block, LegendBlock))
    yield Link("#making", say("making.heading"))
    second = False
    for block in view.blocks:
        if isinstance(block, ChartBlock | StepsBlock) and not second:
            second = block.anchor.startswith(bench.SECOND)
            yield Link(f"#{block.anchor}", say("second.heading") if second else block.heading)
    if _charted(view):
        yield Link("#word-chart", say("book.word-chart"))
    if view.ways:
        yield Link("#other-colours", say("colourways.heading"))
    yield Link("#template", say("template.heading"))
    yield Link("#glossary", say("book.glossary"))
    yield Link("#safety", say("caution.heading"))
    yield Link("#colophon", say("book.colophon"))


def _before(piece: Piece, view: PatternView) -> Iterator[Link]:
    """In the order in which it is done."""
    say = piece.words.text
    yield Link("#safety", say("book.check-safety"))
    yield Link("#materials", say("book.check-beads"))
    yield Link("#glossary", say("book.check-words"))
    if any(isinstance(block, LegendBlock) for block in view.blocks):
        yield Link(SIGNS, say("book.check-signs"))
    yield Link("#template", say("book.check-size"))


def _charted(view: PatternView) -> bool:
    return any(isinstance(block, ChartBlock) for block in view.blocks)


def _colophon(piece: Piece, view: PatternView) -> Iterator[Fact]:
    say, shop = piece.words.text, piece.shop
    if shop.maker:
        yield Fact(say("book.by"), shop.maker)
    yield Fact(say("book.from"), shop.title, language=view.shop.spoken["title"])
    if shop.contact:
        yield Fact(say("book.questions"), shop.contact)
    yield Fact(say("book.edition"), view.edition)
    if view.canonical:
        yield Fact(say("book.address"), view.canonical)
    yield Fact(say("licence.heading"), view.licence, language=view.shop.spoken["licence"])
