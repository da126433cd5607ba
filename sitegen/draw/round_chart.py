"""A part in rounds, or a rope -> its symbol chart: circles as they lie, tubes unrolled, ropes by stitches.

In rounds the bead that is picked up first has a bold edge, so that one sees where each round begins.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from sitegen.draw.chart_marks import (
    COUNT_INK,
    COUNT_MM,
    LABEL_MM,
    Row,
    column_numbers,
    heavier_lines,
    row_numbers,
)
from sitegen.draw.colour import INK
from sitegen.draw.pens import Outline, Paint, Pen, Text, text_width
from sitegen.draw.shapes import arrowhead, bead_outline
from sitegen.model.thread import Bead, ThreadPath

SHOWN = 12
"""Stitches of a rope that are drawn."""
ALIKE = 4
"""How many are drawn of a rope whose stitches repeat from the second on."""

Draw = Callable[[Pen, list[Bead]], None]
"""Draws beads with their letters."""


def draw_rounds(pen: Pen, path: ThreadPath, beads: dict[int, Bead], draw: Draw) -> None:
    """All rounds: a tube marked like rows; a circle with an arrow where its last round begins and a scale."""
    draw(pen, list(beads.values()))
    picked: dict[int, list[Bead]] = {}
    for step in path.steps:
        for pick in step.picks:
            if pick in beads:
                picked.setdefault(beads[pick].row, []).append(beads[pick])
    pen.begin("first-beads", {})
    pen.shapes([bead_outline(row[0]) for row in picked.values()], Paint(stroke=INK, width=0.22))
    pen.end()
    if not path.parts[next(iter(beads.values())).part].around_mm:
        _clockwise(pen, beads)
        _scale(pen, picked)
        return
    onward = not any(step.turned for step in path.steps)
    rounds = [Row(number, tuple(row), onward) for number, row in sorted(picked.items())]
    heavier_lines(pen, rounds)
    column_numbers(pen, rounds)
    row_numbers(pen, rounds)


def _clockwise(pen: Pen, beads: dict[int, Bead]) -> None:
    """An arrowhead above the beginning of the last round, pointing the way it is worked."""
    top = min(bead.y - max(bead.width, bead.length) / 2 for bead in beads.values())
    pen.begin("way-round", {})
    pen.shapes([arrowhead((1.3, top - 1.0), (1.0, 0.0), 1.3)], Paint(fill=INK))
    pen.end()


def _scale(pen: Pen, rounds: Mapping[int, Sequence[Bead]]) -> None:
    """Beside a circle how high each round's top lies, with its number and its count of beads."""
    right = max(bead.x + max(bead.width, bead.length) / 2 for row in rounds.values() for bead in row)
    levels = {
        number: -sum(math.hypot(bead.x, bead.y) for bead in row) / len(row) for number, row in rounds.items()
    }
    x = right + 1.2
    pen.begin("round-numbers", {})
    ticks = [Outline((x, y), ((x + 0.8, y),), closed=False) for y in levels.values()]
    spine = Outline((x, min(levels.values())), ((x, max(levels.values())),), closed=False)
    pen.shapes([spine, *ticks], Paint(stroke=INK, width=0.12))
    numbers_wide = max(text_width(str(number), LABEL_MM) for number in rounds)
    for number, y in levels.items():
        pen.text(Text(x + 1.3, y, str(number), LABEL_MM, INK, "start", bold=True))
        count = f"({len(rounds[number])})"
        pen.text(Text(x + 2.0 + numbers_wide, y, count, COUNT_MM, COUNT_INK, "start"))
    pen.end()


def draw_rope(pen: Pen, path: ThreadPath, beads: dict[int, Bead], draw: Draw) -> None:
    """The first stitches, lowest first: the core as a column, and to its left each stitch's outer beads.

    The outer beads stand level with the core bead they are picked up after, the nearest one first. Where all
    stitches after the first are alike, a few are drawn and the last stands for the rest.
    """
    stitches = [[pick for pick in step.picks if pick in beads] for step in path.steps]
    stitches = [picks for picks in stitches if picks]
    alike = len({"".join(beads[pick].letter for pick in picks) for picks in stitches[1:]}) == 1
    shown = stitches[: ALIKE if alike else SHOWN]
    rest = len(stitches) if alike else len(shown)
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
        words = f"{number}–{rest}" if number == len(shown) < rest else str(number)
        x = size * 0.5
        pen.shapes([arrowhead((x + 0.45, level), (-1.0, 0.0), 0.9)], Paint(fill=INK))
        pen.text(Text(x + 1.7, level, words, LABEL_MM, INK, "start", bold=True))
        reach = x + 2.4 + text_width(words, LABEL_MM)
        pen.text(Text(reach, level, f"({len(picks)})", COUNT_MM, COUNT_INK, "start"))
    pen.end()
    draw(pen, placed)
