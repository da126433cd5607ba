"""Pieces of a shop -> the small sign of its pages: a diamond of four beads in the colours of its first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import cycle, islice
from pathlib import Path

from sitegen.draw.colour import Palette
from sitegen.draw.light import EDGE_MM, draw_beads, finishes_of
from sitegen.draw.pens import Drawing, Recorder
from sitegen.model.shop import Shop
from sitegen.model.thread import Bead
from sitegen.publish.picture import picture_look, png
from sitegen.publish.piece import Piece
from sitegen.publish.words import Words
from sitegen.trade.finishes import Finish

ROWS = ((1, 1), (2, 0), (1, 2))
"""Row by row: how many beads, and in which of the colours, the commonest being 0."""
BEAD_MM = (2.1, 1.45)
"""Width and length: rounder than life, so that the sign is as wide as it is high."""
TABS, TOUCH = 32, 180
"""Pixels: a browser's tab, and the home screen of a hand-held device; common practice, no source."""
SHOWN = "round 11/0"
MARGIN = 0.16
"""Of the home screen's icon, as a share of its side: its corners are cut round."""


def icon_files(pieces: Sequence[Piece], shop: Shop, words: Words, theme: Path) -> Iterator[tuple[str, bytes]]:
    """(address in the site, contents) of the sign in each of its forms."""
    titles = words.text("icon.title", shop=shop.title), words.text("icon.says")
    whole, set_in = _sign(pieces, titles, theme, 0.0), _sign(pieces, titles, theme, MARGIN)
    yield "look/icon.svg", (whole.svg("icon") + "\n").encode()
    yield "look/icon-32.png", png(whole, None, (TABS, TABS))[0]
    yield "look/icon-180.png", png(set_in, picture_look(theme).paper, (TOUCH, TOUCH))[0]


def _sign(pieces: Sequence[Piece], titles: tuple[str, str], theme: Path, margin: float) -> Drawing:
    """The sign as a square drawing; `margin` is a share of its side."""
    palette, finishes, letters = _colours(pieces, theme)
    (width, length), beads = BEAD_MM, []
    for row, (count, colour) in enumerate(ROWS):
        for place in range(count):
            x, y = (place - (count - 1) / 2) * width, (row + 0.5) * length
            beads.append(
                Bead(letters[colour], 0, row + 1, place + 1, x, y, 0.0, width, length, "round", SHOWN)
            )
    recorder = Recorder()
    draw_beads(recorder, beads, finishes)
    high = length * len(ROWS)
    side = (high + EDGE_MM) / (1 - 2 * margin)
    return Drawing(*titles, -side / 2, (high - side) / 2, side, side, tuple(recorder.calls), palette)


def _colours(pieces: Sequence[Piece], theme: Path) -> tuple[Palette, Mapping[str, Finish], Sequence[str]]:
    """The colours, finishes and commonest letters of the first piece; a shop without one has its theme's."""
    if not pieces:
        look = picture_look(theme)
        return Palette({"A": look.accent, "B": look.rule, "C": look.soft}), {}, "ABC"
    piece = pieces[0]
    counts = {bead.letter: bead.each for bead in piece.measures.beads}
    letters = sorted(counts, key=lambda letter: -counts[letter])
    return piece.picture.palette, finishes_of(piece.pattern), list(islice(cycle(letters), len(ROWS)))
