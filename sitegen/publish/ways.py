"""A piece in other colours -> what the pages and sheets of the pattern show of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from markupsafe import Markup

from sitegen.publish.blocks import LARGE, Figure, Medium
from sitegen.publish.chart_sheets import chart_sheets
from sitegen.publish.colourways import same_beads
from sitegen.publish.making import fitted
from sitegen.publish.materials import bead_table
from sitegen.publish.piece import Piece
from sitegen.publish.view import Way, WayChart

PICTURE = "picture.png"
"""The PNG beside each page."""
Pixels = Mapping[str, tuple[int, int]]
"""Folder of a page -> width and height of the PNG beside it."""
PRINTED_ROOM = (66.0, 66.0)
"""For a finished picture beside its bead list, mm."""
LARGEST_PRINTED = 2.4
CHARTS_MM = 96.0
"""Room for all charts of a colourway on the page where its picture and its bead list stand."""


def print_ways(piece: Piece, medium: Medium) -> tuple[Way, ...]:
    """Each colourway with its picture, its bead list and, where colours can be told, its charts.

    Without fills all colourways look alike: the bead list tells them apart.
    """
    return tuple(
        Way(
            number=str(number),
            name=way.colourway,
            href="",
            picture=Figure(Markup() if piece.unfilled else _drawn(way, f"way-{number}"), way.picture.title),
            beads=bead_table(way)[0],
            same=same_beads(way),
            charts=() if piece.unfilled else _charts(way, medium),
            language=_language(piece, number),
        )
        for number, way in enumerate(piece.ways, 1)
    )


def _charts(way: Piece, medium: Medium) -> tuple[WayChart, ...]:
    """The charts of a colourway, on one scale that suits one page where their letters can still be read.

    In large print those that need no further sheets: the letters of the others are those of the author's.
    """
    say, (wide, _) = way.words.text, medium.chart
    drawn = [(part.name, chart) for part, chart in zip(way.path.parts, way.charts, strict=True) if chart]
    scale = min(
        CHARTS_MM / sum(chart.height_mm for _, chart in drawn),
        *(wide / chart.width_mm for _, chart in drawn),
    )
    made = []
    for number, (part, chart) in enumerate(drawn, 1):
        uid = f"{way.folder}-chart-{number}"
        small = medium if medium is LARGE else replace(medium, chart=(wide, chart.height_mm * scale))
        sheets = chart_sheets(chart, uid, small, say)
        if len(sheets) > 1 and medium is LARGE:
            continue
        if len(sheets) > 1:
            sheets = chart_sheets(chart, uid, medium, say)
        made.append(WayChart(say("chart.heading", part=part), sheets))
    return tuple(made)


def _drawn(way: Piece, uid: str) -> Markup:
    return fitted(way.picture, uid, PRINTED_ROOM, LARGEST_PRINTED)[0]


def page_ways(piece: Piece, author: Piece, pixels: Pixels) -> tuple[Way, ...]:
    """The other colours of a page's pattern: with their bead lists on the page of the author's own.

    A page in one colourway shows the author's colours first, then the other colourways.
    """
    home = piece is author
    up = "" if home else "../"
    return tuple(
        Way(
            number=str(number),
            name=one.colourway or piece.words.text("colourways.own"),
            href=f"{up}{_below(one)}index.html",
            picture=Figure(_image(one, f"{piece.beside}{up}{_below(one)}{PICTURE}", pixels[one.folder]), ""),
            beads=bead_table(one)[0] if home else (),
            same=same_beads(one) if home else (),
            charts=(),
            language=_language(author, number),
        )
        for number, one in enumerate((author, *author.ways))
        if one.folder != piece.folder
    )


def _language(author: Piece, number: int) -> str:
    """Of a colourway's name, by its number from 1; 0 stands for the author's own colours."""
    return author.language_of(lambda pattern: pattern.colourways[number - 1].name) if number else ""


def _below(piece: Piece) -> str:
    return f"{piece.folder}/" if piece.folder else ""


def _image(piece: Piece, address: str, size: tuple[int, int]) -> Markup:
    """The small picture; what is read aloud is the link beside it."""
    text = '<img src="{}" width="{}" height="{}" alt="{}" loading="lazy">'
    return Markup(text).format(address, *size, piece.picture.title)
