"""A path laid flat -> the beads an eye sees: a tube from its front, a rope with its outer beads wound round.

What the path lays unrolled or fanned out is for charts and diagrams; the finished piece is round.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from sitegen.model.thread import Bead, ThreadPath, WovenPart

EDGE = 0.12
"""Beads turned away so far that less than this share of them would show are left out."""


def as_seen(path: ThreadPath) -> ThreadPath:
    """The path with only the beads that show, where they show; the same path if it has no tube or rope."""
    if not any(part.thick_mm or part.zipped_mm for part in path.parts):
        return path
    beads: list[Bead] = []
    findings = list(path.findings)
    for index, part in enumerate(path.parts):
        if part.lines == "turns":
            beads += _wound(path, index)
        elif part.around_mm:
            hung = [number for number, finding in enumerate(findings) if finding.part == index]
            own = [bead for bead in path.beads if bead.part == index]
            front = findings[hung[0]].x if hung else (own[0].x + own[-1].x) / 2
            beads += _rolled(own, part, front)
            for number in hung:
                findings[number] = replace(findings[number], x=0.0)
        elif part.zipped_mm:
            beads += _zipped([bead for bead in path.beads if bead.part == index], part)
        else:
            beads += [bead for bead in path.beads if bead.part == index]
    return replace(path, beads=tuple(beads), findings=tuple(findings))


def _rolled(beads: list[Bead], part: WovenPart, front: float) -> Iterator[Bead]:
    """The front half of a tube, `front` being the x that faces the eye."""
    radius = part.around_mm / (2 * math.pi)
    for bead in beads:
        turn = (bead.x - front) / radius
        if math.cos(turn) < EDGE:
            continue
        lying = abs(math.sin(math.radians(bead.angle))) > 0.7
        yield replace(
            bead,
            x=radius * math.sin(turn),
            width=bead.width if lying else bead.width * math.cos(turn),
            length=bead.length * math.cos(turn) if lying else bead.length,
        )


def _zipped(beads: list[Bead], part: WovenPart) -> Iterator[Bead]:
    """The front half of a zipped strip, its middle row facing the eye; the tube lies across."""
    radius = part.zipped_mm / (2 * math.pi)
    front = (min(bead.y for bead in beads) + max(bead.y for bead in beads)) / 2
    for bead in beads:
        turn = (bead.y - front) / radius
        if math.cos(turn) >= EDGE:
            yield replace(bead, y=radius * math.sin(turn), width=bead.width * math.cos(turn))


def _wound(path: ThreadPath, index: int) -> list[Bead]:
    """A rope: each stitch's outer beads lie beside those of the stitch before, so that they wind round.

    Beads come from the back to the front, each with a row of its own, as layers to be drawn in turn.
    """
    stitches = [step.picks for step in path.steps if step.part == index and step.picks]
    outer = [bead for bead in (path.beads[pick] for picks in stitches for pick in picks) if bead.x]
    if not outer:
        return []
    out = max(-bead.x for bead in outer)
    turn = max(bead.width for bead in outer) / out
    placed: list[tuple[float, Bead]] = []
    for number, picks in enumerate(stitches):
        for bead in (path.beads[pick] for pick in picks):
            side, depth = math.sin(number * turn), math.cos(number * turn)
            if not bead.x:
                placed.append((0.0, bead))
                continue
            lean = math.radians(bead.angle)
            across, down = -math.sin(lean) * side, math.cos(lean)
            seen = replace(
                bead,
                x=-bead.x * side,
                angle=math.degrees(math.atan2(across, down)) % 360.0,
                length=max(math.hypot(across, down), 0.6) * bead.length,
            )
            placed.append((-bead.x * depth, seen))
    placed.sort(key=lambda pair: pair[0])
    return [replace(bead, row=layer) for layer, (_, bead) in enumerate(placed)]
