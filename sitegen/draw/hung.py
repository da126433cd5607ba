"""Beads that hang from a part, are sewn to it, or are strung -> their chart, as they lie or drawn apart."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.draw.colour import INK, PALE_OUTLINE, WHITE, Dye
from sitegen.draw.finding import draw_finding
from sitegen.draw.pens import Paint, Pen, Text
from sitegen.draw.shapes import bead_outline
from sitegen.draw.step import PALE
from sitegen.model.thread import Bead, MoveKind, ThreadPath

STRAND_PITCH = 2.15
"""Distance of strands in the chart, in bead widths: wide enough that no two tips touch."""
LABEL_MM = 1.5
"""Font size of the numbers of strands and loops."""
EVERY = 10
"""Every so many beads of a string its count stands beside it."""

Draw = Callable[[Pen, list[Bead]], None]
"""Draws beads with their letters."""


def draw_strands(pen: Pen, path: ThreadPath, beads: Mapping[int, Bead], draw: Draw) -> None:
    """Strands side by side under the beads they hang from, drawn apart so that none hides another."""
    strands = _rows(beads)
    order = sorted(strands, key=lambda row: strands[row][0].x)
    widest = max(bead.width for bead in beads.values())
    pitch = max(STRAND_PITCH * widest, *(_reach(strand) + 0.4 * widest for strand in strands.values()))
    hangers = _hangers(path, beads)
    spread: list[Bead] = []
    for column, row in enumerate(order):
        held = hangers[row]
        middle = sum(hanger.x for hanger in held) / len(held)
        shift = column * pitch - middle
        spread += [replace(bead, x=bead.x + shift) for bead in strands[row]]
        _pale(pen, [replace(hanger, x=hanger.x + shift) for hanger in held])
        out = -1.0 if held[0].y < strands[row][0].y else 1.0
        y = held[0].y + out * (held[0].length / 2 + 1.1)
        pen.text(Text(column * pitch, y, str(row), LABEL_MM, INK, bold=True))
    draw(pen, spread)


def draw_as_it_hangs(pen: Pen, path: ThreadPath, beads: Mapping[int, Bead], draw: Draw) -> None:
    """Loops, edgings and beads on top in their places, what holds them pale; each loop has its number.

    Loops so close that one would hide the next are drawn apart.
    """
    part = next(iter(beads.values())).part
    loops = sorted(_rows(beads).values(), key=lambda loop: loop[0].x)
    if path.parts[part].lines == "loops" and _crowded(loops):
        draw_strands(pen, path, beads, draw)
        return
    _pale(pen, _holders(path, beads))
    draw(pen, list(beads.values()))
    if path.parts[part].lines != "loops":
        return
    heights = [holder.y for holder in _holders(path, beads)]
    level = sum(heights) / len(heights)
    for row, loop in sorted(_rows(beads).items()):
        foot = max(loop, key=lambda bead: abs(bead.y - level))
        middle = (min(bead.x for bead in loop) + max(bead.x for bead in loop)) / 2
        out = 1.0 if foot.y > level else -1.0
        y = foot.y + out * (foot.width / 2 + 1.3)
        pen.text(Text(middle, y, str(row), LABEL_MM, INK, bold=True))


def draw_string(pen: Pen, path: ThreadPath, beads: Mapping[int, Bead], draw: Draw) -> None:
    """A string as a ring, its clasp at the top, with the count of beads inside it."""
    part = next(iter(beads.values())).part
    for finding in path.findings:
        if finding.part == part:
            draw_finding(pen, finding, (0.0, 0.0), False)
    draw(pen, list(beads.values()))
    for bead in beads.values():
        if bead.place % EVERY == 0:
            far = math.hypot(bead.x, bead.y) or 1.0
            inward = 1 - (bead.width / 2 + 1.6) / far
            label = Text(
                bead.x * inward, bead.y * inward, str(bead.place), LABEL_MM, INK, "middle", bold=True
            )
            pen.text(label)


def _rows(beads: Mapping[int, Bead]) -> dict[int, list[Bead]]:
    rows: dict[int, list[Bead]] = {}
    for bead in beads.values():
        rows.setdefault(bead.row, []).append(bead)
    return rows


def _reach(strand: Sequence[Bead]) -> float:
    """How wide a strand hangs."""
    widths = [max(bead.width, bead.length) / 2 for bead in strand]
    left = min(bead.x - half for bead, half in zip(strand, widths, strict=True))
    return max(bead.x + half for bead, half in zip(strand, widths, strict=True)) - left


def _crowded(loops: Sequence[Sequence[Bead]]) -> bool:
    """Whether two loops that follow each other from the left would lie over each other by half a bead."""
    sides = [(min(bead.x for bead in loop), max(bead.x for bead in loop)) for loop in loops]
    width = loops[0][0].width
    return any(other[0] < one[1] - width / 2 for one, other in pairwise(sides))


def _hangers(path: ThreadPath, beads: Mapping[int, Bead]) -> dict[int, list[Bead]]:
    """For each strand, what holds it: the bead the thread came out of before, or the two of the bridge."""
    found: dict[int, list[Bead]] = {}
    last: list[Bead] = []
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            found.setdefault(beads[move.bead].row, last)
        if move.bridge is not None:
            last = [path.beads[move.bridge.left], path.beads[move.bridge.right]]
        elif move.bead >= 0:
            last = [path.beads[move.bead]]
    return found


def _holders(path: ThreadPath, beads: Mapping[int, Bead]) -> list[Bead]:
    """All beads of other parts that the part's beads hang on, by hole or by bridge, in their order.

    Steps that add no bead lead to the edge, or hide an end of thread: what they touch holds nothing.
    """
    part = next(iter(beads.values())).part
    found: set[int] = set()
    for step in path.steps:
        if step.part != part or not step.picks:
            continue
        for move in path.moves[max(0, step.first_move - 1) : step.past_move]:
            found |= {move.bridge.left, move.bridge.right} if move.bridge else {move.bead}
    return [path.beads[index] for index in sorted(found - set(beads)) if index >= 0]


def _pale(pen: Pen, beads: Sequence[Bead]) -> None:
    for bead in beads:
        fill = Dye(bead.letter, WHITE, PALE)
        pen.begin("hanger", {})
        pen.shapes([bead_outline(bead)], Paint(fill=fill, stroke=PALE_OUTLINE, width=0.06))
        pen.end()
