"""A part in rounds, or a rope -> its symbol chart: circles as they lie, tubes unrolled, ropes by stitches.

In rounds the bead that is picked up first has a bold edge, so that one sees where each round begins.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from sitegen.draw.colour import INK
from sitegen.draw.pens import Outline, Paint, Pen, Text
from sitegen.draw.shapes import arrowhead, bead_outline
from sitegen.model.thread import Bead, MoveKind, ThreadPath

LABEL_MM = 1.5
"""Font size of round numbers."""
ASIDE_MM = 2.6
"""How much further out every other number stands where rounds lie closer than the numbers are high."""
SHOWN = 12
"""Stitches of a rope that are drawn: they repeat."""

Draw = Callable[[Pen, list[Bead]], None]
"""Draws beads with their letters."""


def draw_rounds(pen: Pen, path: ThreadPath, beads: dict[int, Bead], draw: Draw) -> None:
    """All rounds; in a tube each with its number at the left, in a circle an arrow where the last begins."""
    draw(pen, list(beads.values()))
    first: dict[int, Bead] = {}
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            first.setdefault(beads[move.bead].row, beads[move.bead])
    pen.begin("first-beads", {})
    pen.shapes([bead_outline(bead) for bead in first.values()], Paint(stroke=INK, width=0.22))
    pen.end()
    rows = {bead.row: bead.y for bead in beads.values()}
    part = path.parts[next(iter(beads.values())).part]
    pen.begin("numbers", {})
    if part.around_mm:
        left = min(bead.x - max(bead.width, bead.length) / 2 for bead in beads.values())
        right = max(bead.x + max(bead.width, bead.length) / 2 for bead in beads.values())
        onward = not any(step.turned for step in path.steps)
        edge, side = (left, -1.0) if onward else (right, 1.0)
        close = part.row_pitch < LABEL_MM
        marked = [y for number, y in rows.items() if number % 2 or not close]
        pen.shapes([arrowhead((edge + side * 0.45, y), (-side, 0.0), 0.9) for y in marked], Paint(fill=INK))
        for number, y in rows.items():
            out = 1.7 if number % 2 or not close else 1.7 + ASIDE_MM
            anchor = "end" if onward else "start"
            pen.text(Text(edge + side * out, y, str(number), LABEL_MM, INK, anchor, bold=True))
    else:
        pen.shapes(_clockwise(beads), Paint(fill=INK))
    pen.end()


def _clockwise(beads: dict[int, Bead]) -> list[Outline]:
    """An arrowhead above the beginning of the last round, pointing the way it is worked."""
    top = min(bead.y - max(bead.width, bead.length) / 2 for bead in beads.values())
    return [arrowhead((1.3, top - 1.0), (1.0, 0.0), 1.3)]


def draw_rope(pen: Pen, path: ThreadPath, beads: dict[int, Bead], draw: Draw) -> None:
    """The first stitches, lowest first: the core as a column, and to its left each stitch's outer beads.

    The outer beads stand level with the core bead they are picked up after, the nearest one first.
    """
    stitches = [[pick for pick in step.picks if pick in beads] for step in path.steps]
    shown = [picks for picks in stitches if picks][:SHOWN]
    size = max(max(bead.width, bead.length) for bead in beads.values())
    placed: list[Bead] = []
    level = 0.0
    pen.begin("numbers", {})
    for number, picks in enumerate(shown, 1):
        core = [beads[pick] for pick in picks if not beads[pick].x]
        for bead in core:
            level -= size * 1.05
            placed.append(replace(bead, x=0.0, y=level, angle=0.0))
        outer = [beads[pick] for pick in picks if beads[pick].x]
        for place, bead in enumerate(outer, 1):
            placed.append(replace(bead, x=-size * (0.35 + 1.08 * place), y=level, angle=90.0))
        pen.text(Text(size * 1.2, level, str(number), LABEL_MM, INK, "start", bold=True))
    pen.end()
    draw(pen, placed)
