"""Beads that hang from a part, are sewn to it, or are strung -> their chart, as they lie or drawn apart."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise, takewhile

from sitegen.draw.chart_marks import (
    BOLD,
    COUNT_INK,
    COUNT_MM,
    COUNT_OUT_MM,
    EVERY,
    FINE,
    LABEL_MM,
    half_size,
)
from sitegen.draw.colour import INK, PALE_OUTLINE, WHITE, Dye
from sitegen.draw.finding import draw_finding
from sitegen.draw.pens import Outline, Paint, Pen, Text
from sitegen.draw.shapes import arrowhead, bead_outline
from sitegen.draw.step import PALE
from sitegen.model.thread import Bead, MoveKind, Point, ThreadPath

STRAND_PITCH = 2.15
"""Distance of strands in the chart, in bead widths: wide enough that no two tips touch."""
COVERED = 0.25
"""How much of a bead's width another may cover before their letters touch."""
TENTH_MM = 1.1
"""Font size of the tens beside a strand."""
TENTH_ROOM_MM = 2.3
"""Room for them."""

Draw = Callable[[Pen, list[Bead]], None]
"""Draws beads with their letters."""


def draw_strands(pen: Pen, path: ThreadPath, beads: Mapping[int, Bead], draw: Draw) -> None:
    """Strands side by side under the beads they hang from, drawn apart so that none hides another."""
    strands = _rows(beads)
    order = sorted(strands, key=lambda row: strands[row][0].x)
    widest = max(bead.width for bead in beads.values())
    hangers = _hangers(path, beads)
    spread: list[Bead] = []
    last = free = 0.0
    for row in order:
        held = hangers[row]
        middle = sum(hanger.x for hanger in held) / len(held)
        left, right = _reach([*strands[row], *held], middle)
        right = max(right, widest / 2 + TENTH_ROOM_MM)
        x = max(free + left, last + STRAND_PITCH * widest) if spread else 0.0
        last, free, shift = x, x + right + 0.4 * widest, x - middle
        spread += [replace(bead, x=bead.x + shift) for bead in strands[row]]
        _pale(pen, [replace(hanger, x=hanger.x + shift) for hanger in held])
        out = -1.0 if held[0].y < strands[row][0].y else 1.0
        y = held[0].y + out * (held[0].length / 2 + 1.1)
        pen.text(Text(x, y, str(row), LABEL_MM, INK, bold=True))
        _count(pen, spread[-len(strands[row]) :], x, -out)
    draw(pen, spread)
    for row in order:
        _tenths(pen, [bead for bead in spread if bead.row == row])


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
        _one_line(pen, beads)
        return
    heights = [holder.y for holder in _holders(path, beads)]
    level = sum(heights) / len(heights)
    for row, loop in sorted(_rows(beads).items()):
        foot = max(loop, key=lambda bead: abs(bead.y - level))
        middle = (min(bead.x for bead in loop) + max(bead.x for bead in loop)) / 2
        out = 1.0 if foot.y > level else -1.0
        y = foot.y + out * (foot.width / 2 + 1.3)
        pen.text(Text(middle, y, str(row), LABEL_MM, INK, bold=True))
        y += out * LABEL_MM
        pen.text(Text(middle, y, f"({len(loop)})", COUNT_MM, COUNT_INK))


def _one_line(pen: Pen, beads: Mapping[int, Bead]) -> None:
    """An arrow where the only line of a part begins, and how many beads it has at its end."""
    first, last = beads[min(beads)], beads[max(beads)]
    left = min(bead.x - half_size(bead)[0] for bead in beads.values())
    right = max(bead.x + half_size(bead)[0] for bead in beads.values())
    side, near, far = (-1.0, left, right) if first.x <= last.x else (1.0, right, left)
    pen.begin("numbers", {})
    pen.shapes([arrowhead((near + side * 0.45, first.y), (-side, 0.0), 0.9)], Paint(fill=INK))
    anchor = "start" if side < 0 else "end"
    x = far - side * COUNT_OUT_MM
    pen.text(Text(x, last.y, f"({len(beads)})", COUNT_MM, COUNT_INK, anchor))
    pen.end()


def _count(pen: Pen, strand: Sequence[Bead], x: float, out: float) -> None:
    """How many beads a strand has, beyond its tip."""
    tip = max(out * bead.y + max(half_size(bead)) for bead in strand)
    pen.text(Text(x, out * (tip + 1.0), f"({len(strand)})", COUNT_MM, COUNT_INK))


def _tenths(pen: Pen, strand: Sequence[Bead]) -> None:
    """A tick to the right of every fifth bead, a heavier one with its number at every tenth.

    Counted down the middle, where the strand hangs straight: legs that cross and branches have none.
    """
    stem = list(takewhile(lambda bead: abs(bead.x - strand[0].x) < 0.1, strand))
    if len({bead.front for bead in strand}) > 1:
        return
    pen.begin("tenths", {})
    for number in range(EVERY, len(stem) + 1, EVERY):
        bead, tenth = stem[number - 1], number % (2 * EVERY) == 0
        x = bead.x + half_size(bead)[0] + 0.15
        tick = Outline((x, bead.y), ((x + 0.5, bead.y),), closed=False)
        pen.shapes([tick], Paint(stroke=INK, width=BOLD if tenth else FINE))
        if tenth:
            pen.text(Text(x + 0.65, bead.y, str(number), TENTH_MM, COUNT_INK, "start", bold=True))
    pen.end()


def draw_string(pen: Pen, path: ThreadPath, beads: Mapping[int, Bead], draw: Draw) -> None:
    """A string as a ring, its clasp at the top, with the count of beads inside it."""
    part = next(iter(beads.values())).part
    for finding in path.findings:
        if finding.part == part:
            draw_finding(pen, finding, (0.0, 0.0), False)
    draw(pen, list(beads.values()))
    pen.begin("tenths", {})
    for bead in beads.values():
        if bead.place % EVERY:
            continue
        tenth = bead.place % (2 * EVERY) == 0
        ends = [_inward(bead, bead.width / 2 + gap) for gap in (0.2, 0.8)]
        tick = Outline(ends[0], (ends[1],), closed=False)
        pen.shapes([tick], Paint(stroke=INK, width=BOLD if tenth else FINE))
        if tenth:
            x, y = _inward(bead, bead.width / 2 + 2.1)
            pen.text(Text(x, y, str(bead.place), LABEL_MM, INK, bold=True))
    pen.end()
    pen.text(Text(0.0, 0.0, f"({len(beads)})", 2 * COUNT_MM, COUNT_INK))


def _inward(bead: Bead, far: float) -> Point:
    """The point so far from a bead towards the middle of the ring."""
    share = 1 - far / (math.hypot(bead.x, bead.y) or 1.0)
    return bead.x * share, bead.y * share


def _rows(beads: Mapping[int, Bead]) -> dict[int, list[Bead]]:
    rows: dict[int, list[Bead]] = {}
    for bead in beads.values():
        rows.setdefault(bead.row, []).append(bead)
    return rows


def _reach(strand: Sequence[Bead], middle: float) -> Point:
    """How far a strand reaches to the left and to the right of the middle it hangs from."""
    left = max(middle - bead.x + max(half_size(bead)) for bead in strand)
    return left, max(bead.x - middle + max(half_size(bead)) for bead in strand)


def _crowded(loops: Sequence[Sequence[Bead]]) -> bool:
    """Whether two loops that follow each other from the left would cover each other's letters."""
    sides = [(min(bead.x for bead in loop), max(bead.x for bead in loop)) for loop in loops]
    width = loops[0][0].width
    return any(other[0] < one[1] + width * (1 - COVERED) for one, other in pairwise(sides))


def _hangers(path: ThreadPath, beads: Mapping[int, Bead]) -> dict[int, list[Bead]]:
    """For each strand, what holds it: the bead the thread came out of before, or the two of the bridge.

    A loop is also held by what the thread goes to at its end.
    """
    found: dict[int, list[Bead]] = {}
    last: list[Bead] = []
    ended = 0
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            ended = beads[move.bead].row
            found.setdefault(ended, last)
        if move.bridge is not None:
            last = [path.beads[move.bridge.left], path.beads[move.bridge.right]]
        elif move.bead >= 0:
            last = [path.beads[move.bead]]
        if ended and move.bead not in beads:
            if path.parts[next(iter(beads.values())).part].lines == "loops":
                found[ended] = [*found[ended], *(bead for bead in last if bead not in found[ended])]
            ended = 0
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
