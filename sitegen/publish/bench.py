"""A pattern's page -> what helps to find one's way on it, to buy, and to work from it at the table."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.publish.blocks import Block, ChartBlock, StepsBlock
from sitegen.publish.piece import Piece
from sitegen.publish.view import Bench, Fact, Link, PatternView
from sitegen.publish.words import Words

SECOND = "second-"
"""How the anchors of a mirrored pair's other piece begin."""


def contents(view: PatternView, words: Words) -> tuple[Link, ...]:
    """The page's chapters in order, with the charts and step tables of the making in their place."""
    say = words.text
    places = [Link("#materials", say("beads.heading"))]
    if view.ways:
        places.append(Link("#colours", say("colourways.heading")))
    places.append(Link("#level", say("difficulty.heading")))
    if view.blocks:
        places.append(Link("#making", say("making.heading")))
    for block in view.blocks:
        if isinstance(block, ChartBlock | StepsBlock) and not block.anchor.startswith(SECOND):
            places.append(Link(f"#{block.anchor}", block.heading))
    places += [Link("#safety", say("caution.heading")), Link("#licence", say("licence.heading"))]
    if view.revisions:
        places.append(Link("#editions", say("revision.heading")))
    return tuple(places)


def level(view: PatternView, words: Words) -> Fact:
    """The level, and the two things it comes from most of all; its own chapter gives every reason."""
    hard = view.difficulty
    why = [reason.why for reason in hard.reasons[:2]]
    if len(why) < 2:
        return Fact(words.text("facts.level"), hard.level, hard.score)
    also = words.text("bench.level-why", score=hard.score, first=why[0], second=why[1])
    return Fact(words.text("facts.level"), hard.level, also)


def edition(view: PatternView, words: Words) -> Fact:
    """Which edition it is."""
    return Fact(words.text("bench.edition"), view.edition)


def ticks(piece: Piece, blocks: Sequence[Block]) -> Bench | None:
    """What the ticks are kept under and what is said at the end; nothing for a page without steps."""
    if not any(isinstance(block, StepsBlock) and block.rows for block in blocks):
        return None
    twice = piece.pattern.makes.pieces > 1 and piece.second is None
    done = piece.words.text("bench.done-pair" if twice else "bench.done")
    return Bench(piece.pattern.name, str(piece.pattern.revision), done)
