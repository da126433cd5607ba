"""A piece and an edition of its sheets -> the piece as that shows it, and the room of its drawings.

All editions come from one piece: none is woven, measured or worded again.
"""

from __future__ import annotations

from dataclasses import replace

from sitegen.draw.colour import INK_SAVER, WHITE
from sitegen.draw.spared import spared
from sitegen.model.shop import COLOUR, INK, LARGE_PRINT, ONE_PAGE
from sitegen.model.source import Colourway, Pattern
from sitegen.publish.blocks import LARGE, PRINT, SUMMARY, Medium
from sitegen.publish.piece import Piece

ROOMS: dict[str, Medium] = {COLOUR: PRINT, INK: PRINT, LARGE_PRINT: LARGE, ONE_PAGE: SUMMARY}
"""Edition -> the room of its drawings."""
TEMPLATES = {COLOUR: "sheets.html", INK: "sheets.html", LARGE_PRINT: "sheets.html", ONE_PAGE: "summary.html"}


def editions_of(piece: Piece) -> tuple[str, ...]:
    """What a piece is printed as."""
    return piece.shop.editions_of(piece.pattern)


def in_edition(piece: Piece, edition: str) -> Piece:
    """The piece as an edition shows it."""
    return in_ink(piece) if edition == INK else piece


def in_ink(piece: Piece) -> Piece:
    """The piece without fills: outlines and letters alone, and no lead photo."""
    return replace(
        piece,
        pattern=replace(_white(piece.pattern), photo=None),
        picture=spared(piece.picture),
        charts=tuple(chart and chart.dyed(INK_SAVER) for chart in piece.charts),
        table=tuple(
            replace(section, rows=tuple(row.dyed(INK_SAVER) for row in section.rows))
            for section in piece.table
        ),
        second=piece.second and in_ink(piece.second),
        ways=tuple(in_ink(way) for way in piece.ways),
        unfilled=True,
    )


def _white(pattern: Pattern) -> Pattern:
    """The pattern with every bead white: chips and keys are drawn in these colours."""
    colours = tuple(replace(colour, hex=WHITE) for colour in pattern.colours)
    return replace(pattern, colours=colours, colourways=tuple(map(_white_way, pattern.colourways)))


def _white_way(way: Colourway) -> Colourway:
    return replace(way, swaps={letter: replace(swap, hex=WHITE) for letter, swap in way.swaps.items()})
