"""ThreadPath -> the same beads as they fall: strands sway and spread, loops swing, a rope lies in a curve.

Every bead keeps its place on its strand, and a strand its length: its axis is bent, never stretched. Nothing
is left to chance: the same path always falls alike, and the second of a pair a little otherwise.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import replace

from sitegen.model.thread import Bead, PlacedFinding, Point, ThreadPath

SPREAD = 3.0
"""How far the outermost strands lean out where they begin, degrees: crowded strands push each other."""
SWAY = 3.4
"""How far a strand leans to either side, at most, degrees."""
CURL = 3.2
"""How much more it leans at its tip, degrees."""
SWING = 2.0
"""How far a loop swings, at most, degrees."""
SLENDER = 7.0
"""A rope longer than this many times its width is laid in a curve."""
OPEN = 70.0
"""Degrees that the curve of a rope leaves open between its ends."""
STEP_MM = 0.25
"""Bends are added up in steps of this length."""


def as_it_hangs(path: ThreadPath, piece: int = 0) -> ThreadPath:
    """The path with its beads and findings where they come to rest; `piece` counts the pieces from 0."""
    beads, findings = list(path.beads), list(path.findings)
    for index, part in enumerate(path.parts):
        own = [number for number, bead in enumerate(beads) if bead.part == index]
        if not own:
            continue
        if part.lines == "strands":
            _let_fall(beads, own, piece)
        elif part.lines == "loops":
            _swing(beads, own, piece)
        elif part.lines == "turns" and len(path.parts) == 1:
            findings = _lay_round(beads, own, findings)
    return replace(path, beads=tuple(beads), findings=tuple(findings))


def _rows(beads: list[Bead], own: Iterable[int]) -> dict[int, list[int]]:
    rows: dict[int, list[int]] = {}
    for number in own:
        rows.setdefault(beads[number].row, []).append(number)
    return rows


def _wave(row: int, piece: int, beat: float) -> float:
    """A number from -1 to 1 that differs from strand to strand without a pattern one could see."""
    turn = row * beat + piece * 1.7
    return 0.6 * math.sin(turn) + 0.4 * math.sin(2.71 * turn + 0.8)


def _let_fall(beads: list[Bead], own: list[int], piece: int) -> None:
    strands = _rows(beads, own)
    axes = {row: beads[strand[0]].x for row, strand in strands.items()}
    middle = (min(axes.values()) + max(axes.values())) / 2
    half = max(max(axes.values()) - middle, 1e-6)
    for row, strand in strands.items():
        tops = [beads[number].y - _tall(beads[number]) / 2 for number in strand]
        top, long = min(tops), max(beads[number].y for number in strand) - min(tops)
        axis = _axis(beads, strand)
        if beads[strand[0]].y > top + long / 2:
            continue
        out = (axis - middle) / half
        loose = min(1.0, long / 12.0)
        lean, curl = _wave(row, piece, 2.4) * SWAY * loose, _wave(row, piece, 1.3) * CURL * loose

        def bend(down: float, out: float = out, lean: float = lean, curl: float = curl) -> float:
            # A strand stands off at first and hangs more and more plumb; its lean comes in softly.
            soft = 1.0 - math.exp(-down / 3.0)
            fall = lean * math.exp(-down / 30.0) + curl * down / 30.0
            return out * SPREAD * math.exp(-down / 14.0) + soft * fall

        _bend(beads, strand, (axis, top), bend)


def _axis(beads: list[Bead], strand: list[int]) -> float:
    """The line a strand hangs along: the middle of its beads nearest the hold."""
    first = sorted(strand, key=lambda number: beads[number].y)[:2]
    twisted = any(beads[number].front for number in strand)
    if twisted:
        return beads[max(strand, key=lambda number: beads[number].y)].x
    return beads[first[0]].x


def _tall(bead: Bead) -> float:
    lying = abs(math.sin(math.radians(bead.angle))) > 0.7
    return bead.width if lying else bead.length


def _bend(beads: list[Bead], strand: list[int], hold: Point, bend: Callable[[float], float]) -> None:
    """Bend a strand that hangs plumb below its hold; `bend` gives its slant so far down, in degrees."""
    deepest = max(beads[number].y for number in strand) - hold[1]
    line: list[tuple[float, float, float]] = []
    x, y = hold
    for step in range(int(deepest / STEP_MM) + 2):
        slant = math.radians(bend((step + 0.5) * STEP_MM))
        line.append((x, y, slant))
        x, y = x + STEP_MM * math.sin(slant), y + STEP_MM * math.cos(slant)
    for number in strand:
        bead = beads[number]
        down = max(0.0, bead.y - hold[1])
        x, y, slant = line[int(down / STEP_MM)]
        rest, aside = down % STEP_MM, bead.x - hold[0]
        beads[number] = replace(
            bead,
            x=x + rest * math.sin(slant) + aside * math.cos(slant),
            y=y + rest * math.cos(slant) - aside * math.sin(slant) + min(0.0, bead.y - hold[1]),
            angle=(bead.angle + math.degrees(slant)) % 360.0,
        )


def _swing(beads: list[Bead], own: list[int], piece: int) -> None:
    """Each loop swings as one about the middle of its hold."""
    for row, loop in _rows(beads, own).items():
        first, last = beads[loop[0]], beads[loop[-1]]
        x, y = (first.x + last.x) / 2, min(first.y, last.y) - first.length / 2
        turn = _wave(row, piece, 1.9) * SWING
        slant = math.radians(turn)
        for number in loop:
            bead = beads[number]
            across, down = bead.x - x, bead.y - y
            beads[number] = replace(
                bead,
                x=x + across * math.cos(slant) + down * math.sin(slant),
                y=y + down * math.cos(slant) - across * math.sin(slant),
                angle=(bead.angle + turn) % 360.0,
            )


def _lay_round(beads: list[Bead], own: list[int], findings: list[PlacedFinding]) -> list[PlacedFinding]:
    """Lay a rope in an open curve, as it lies on a table, its ends apart at the top."""
    ends = [beads[number].y for number in own]
    wide = max(abs(beads[number].x) + beads[number].width / 2 for number in own)
    top, long = min(ends), max(ends) - min(ends)
    if long < SLENDER * 2 * wide:
        return findings
    sweep = math.radians(360.0 - OPEN)
    radius = long / sweep

    def placed(x: float, y: float) -> tuple[float, float, float]:
        turn = math.radians(OPEN / 2) + (y - top) / radius
        far = radius + x
        return far * math.sin(turn), -far * math.cos(turn), 90.0 - math.degrees(turn)

    for number in own:
        x, y, turn = placed(beads[number].x, beads[number].y)
        beads[number] = replace(beads[number], x=x, y=y, angle=(beads[number].angle + turn) % 360.0)
    return [replace(one, x=placed(one.x, one.y)[0], y=placed(one.x, one.y)[1]) for one in findings]
