"""A piece -> what its page needs so that a reader can choose a colour or a bead in stock for each letter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from markupsafe import Markup

from sitegen.measure.materials import bead_count
from sitegen.model.measures import BeadCount
from sitegen.model.source import Colour
from sitegen.publish.materials import bead_line, colour_language
from sitegen.publish.piece import Piece
from sitegen.publish.view import BeadChoice, LetterChoice, OwnColours
from sitegen.trade.figures import tidy

ANY = "{hex}"
"""Stands in the name of a colour that is not in stock; the page fills it in."""


def own_colours(piece: Piece, after: str) -> OwnColours | None:
    """The letters and the beads they may be; nothing for a priced pattern: its page shows no drawing.

    A page in a colourway has them too: its own colours are then those to begin from and to go back to.
    """
    if piece.pattern.price is not None:
        return None
    letters = tuple(_letter(piece, bead) for bead in piece.measures.beads)
    stocked = any(one.beads[1:-1] for one in letters)
    return OwnColours(after, piece.words.text("own.about-stock" if stocked else "own.about"), letters)


def _letter(piece: Piece, bead: BeadCount) -> LetterChoice:
    say = piece.words.text
    return LetterChoice(
        letter=bead.letter,
        hex=bead.hex,
        kind=tidy(bead.bead),
        colour_label=say("own.colour", letter=bead.letter),
        bead_label=say("own.bead", letter=bead.letter),
        beads=tuple(_choices(piece, bead)),
    )


def _choices(piece: Piece, bead: BeadCount) -> Iterator[BeadChoice]:
    """The maker's own bead, every other one of its kind in stock, and any colour."""
    say, shop = piece.words.text, piece.shop
    own = piece.pattern.colour(bead.letter)
    assert own is not None, "every bead counted has a colour"
    values: list[str] = []
    language = colour_language(piece, bead.letter)
    yield _choice(piece, bead, _value(bead.hex, values), say("own.maker", name=bead.name), language)
    for one in shop.stock.values():
        same = (one.name, one.hex, one.finish) == (own.name, own.hex, own.finish)
        if tidy(one.bead) == tidy(own.bead) and not same:
            colour = replace(own, name=one.name, hex=one.hex, finish=one.finish, stock=one.key)
            key = "own.stock" if one.finish == "opaque" else "own.stock-finish"
            text = say(key, name=one.name, finish=one.finish)
            value, language = _value(one.hex, values), shop.author_language
            yield _choice(piece, _counted(piece, colour, bead), value, text, language)
    any_colour = replace(own, name=say("own.name", hex=ANY), stock=None)
    yield _choice(piece, _counted(piece, any_colour, bead), "", say("own.any"), "")


def _value(hex_colour: str, values: list[str]) -> str:
    """The digits of a colour, with a number if they stand among the values already; added to those."""
    digits = hex_colour.removeprefix("#")
    number = sum(value.partition("-")[0] == digits for value in values) + 1
    values.append(digits if number == 1 else f"{digits}-{number}")
    return values[-1]


def _counted(piece: Piece, colour: Colour, bead: BeadCount) -> BeadCount:
    return bead_count(colour, bead.each, piece.pattern, piece.shop)


def _choice(piece: Piece, bead: BeadCount, value: str, text: str, language: str) -> BeadChoice:
    title = piece.words.text("drawing.bead", letter=bead.letter, name=bead.name)
    return BeadChoice(value, text, title, bead_line(bead, piece.words, Markup(), language))
