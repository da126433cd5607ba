"""A piece -> the same piece in each of its colourways: dyed and renamed, neither woven nor measured again.

Thread path, sizes, step sentences and pen calls are the author's own; what changes is the palette, the names
of the colours, and with them the words of the finished picture and the lines of the bead list.
"""

from __future__ import annotations

from dataclasses import replace

from sitegen.draw.colour import Palette, palette_of
from sitegen.draw.finished import finished
from sitegen.measure.materials import materials
from sitegen.model.measures import BeadCount
from sitegen.model.source import Colour, Colourway, Pattern
from sitegen.publish.piece import Piece
from sitegen.publish.slugs import slugs
from sitegen.publish.table import TableSection

UNNAMED = "colours"
"""What the folder of a colourway is called where its name has no Latin letter."""


def in_colourways(piece: Piece) -> tuple[Piece, ...]:
    """The piece in each of its colourways, in the order of the source."""
    ways = piece.pattern.colourways
    folders = slugs([way.name for way in ways], UNNAMED)
    return tuple(
        _in(replace(piece, colourway=way.name, folder=f"in-{folder}"), number)
        for number, (way, folder) in enumerate(zip(ways, folders, strict=True))
    )


def _in(piece: Piece, number: int) -> Piece:
    """The piece in its colourway of this number, from 0."""
    way = piece.pattern.colourways[number]
    say, title = piece.words.text, piece.pattern.title
    pattern = recoloured(piece.pattern, way)
    names = ", ".join(dict.fromkeys(colour.name for colour in pattern.colours))
    pattern = replace(
        pattern,
        title=say("colourways.title", title=title, colourway=way.name),
        summary=say("colourways.summary", title=title, colours=names),
    )
    palette = palette_of(pattern)
    return replace(
        piece,
        pattern=pattern,
        written=piece.written and _written(piece.written, number),
        measures=replace(piece.measures, beads=materials(piece.path, pattern, piece.shop)),
        picture=finished(piece.path, pattern, say),
        charts=tuple(chart and chart.dyed(palette) for chart in piece.charts),
        table=tuple(_dyed(section, palette) for section in piece.table),
        second=piece.second and _in(piece.second, number),
    )


def _written(author: Pattern, number: int) -> Pattern:
    """The author's words for a colourway; title and summary are sentences of the page's own language."""
    return replace(recoloured(author, author.colourways[number]), title="", summary="")


def recoloured(pattern: Pattern, way: Colourway) -> Pattern:
    """The pattern with the colours of a colourway in place of the author's, and no colourways of its own."""
    return replace(pattern, colours=tuple(_swapped(one, way) for one in pattern.colours), colourways=())


def _swapped(colour: Colour, way: Colourway) -> Colour:
    """A letter's colour in a colourway: its own where the colourway leaves it alone.

    Another colour is not the bead that the shop has in stock, so its packs are the shop's usual ones.
    """
    swap = way.swaps.get(colour.letter)
    return replace(colour, name=swap.name, hex=swap.hex, stock=None) if swap else colour


def _dyed(section: TableSection, palette: Palette) -> TableSection:
    return replace(section, rows=tuple(row.dyed(palette) for row in section.rows))


def same_beads(piece: Piece) -> tuple[str, ...]:
    """A sentence for each bead that several letters stand for in these colours: it is bought once."""
    alike: dict[tuple[str, ...], list[BeadCount]] = {}
    for bead in piece.measures.beads:
        alike.setdefault((bead.name.casefold(), bead.hex, bead.bead, bead.finish), []).append(bead)
    return tuple(
        piece.words.text(
            "colourways.same",
            letters=", ".join(bead.letter for bead in beads),
            name=beads[0].name,
            total=sum(bead.total for bead in beads),
        )
        for beads in alike.values()
        if len(beads) > 1
    )
