"""A placed finding -> the outlines of its wire."""

from __future__ import annotations

import math
from collections.abc import Collection

from sitegen.draw.pens import Outline, Paint, Pen
from sitegen.draw.shapes import ellipse
from sitegen.model.thread import Bead, PlacedFinding, Point, ThreadPath
from sitegen.trade.findings import FindingKind, finding_kind

WIRE = "#9a958c"
SHINE = "#e6e3dc"
SEWING = ("finding", "strung-start", "strung-end")
"""Motions that sew a finding on."""
CRIMP = "crimp tube"
CRIMP_MM = 1.5
"""A crimp's length and width as drawn. A judgement; no source."""
RING_MM = 1.2
"""Radius a loop is drawn with. A judgement; no source."""


def draw_finding(pen: Pen, finding: PlacedFinding, shift: Point, mirrored: bool) -> None:
    """Draw the wire above (or below) its loop, moved by `shift`, its hook to the left if mirrored."""
    kind = finding_kind(finding.kind)
    if kind is None:
        return
    if finding.ring_mm:
        ring = _ring((finding.x + shift[0], finding.y + shift[1]), finding, kind)
        _draw_wire(pen, finding, [ring], kind)
        return
    side = -1.0 if mirrored else 1.0
    up = -1.0 if finding.edge == "top" else 1.0
    x, y = finding.x + shift[0], finding.y + shift[1]
    if kind.name == CRIMP:
        _draw_crimp(pen, finding, (x, y))
        return
    _draw_wire(pen, finding, _wire((x, y), kind, side, up), kind)


def _draw_wire(pen: Pen, finding: PlacedFinding, contours: list[Outline], kind: FindingKind) -> None:
    """Wire as it shines: a dark edge, the metal, a light line."""
    pen.begin("finding", {"name": finding.kind})
    pen.shapes(contours, Paint(stroke="#6d675f", width=kind.wire_mm * 1.15))
    pen.shapes(contours, Paint(stroke=WIRE, width=kind.wire_mm * 0.85))
    pen.shapes(contours, Paint(stroke=SHINE, width=kind.wire_mm * 0.25))
    pen.end()


def _draw_crimp(pen: Pen, finding: PlacedFinding, middle: Point) -> None:
    """A little tube, lying along the string, with a light line where it shines."""
    (x, y), half = middle, CRIMP_MM / 2
    tube = Outline((x - half, y - half), ((x + half, y - half), (x + half, y + half), (x - half, y + half)))
    light = Outline((x - half * 0.6, y - half * 0.35), ((x + half * 0.6, y - half * 0.35),), closed=False)
    pen.begin("finding", {"name": finding.kind})
    pen.shapes([tube], Paint(fill=WIRE, stroke="#6d675f", width=0.12))
    pen.shapes([light], Paint(stroke=SHINE, width=0.2))
    pen.end()


def _ring(middle: Point, finding: PlacedFinding, kind: FindingKind) -> Outline:
    """The middle line of a closed ring's wire."""
    radius = (finding.ring_mm - kind.wire_mm) / 2
    return ellipse(middle, radius, radius)


def draw_rings(pen: Pen, path: ThreadPath, beads: Collection[Bead], motion: str, turned: bool) -> None:
    """The rings that show in the diagram of a step: those being sewn on, and one that is worked around."""
    for finding in path.findings:
        if finding.ring_mm:
            _draw_ring_part(pen, finding, [b for b in beads if b.part == finding.part and b.row == 1])
        elif motion in SEWING:
            draw_ring(pen, finding, turned)


def _draw_ring_part(pen: Pen, finding: PlacedFinding, beads: list[Bead]) -> None:
    """Draw a ring that is worked around, but only where these beads sit on it."""
    kind = finding_kind(finding.kind)
    if kind is None or not beads:
        return
    radius = (finding.ring_mm - kind.wire_mm) / 2
    contours = []
    for bead in beads:
        middle = math.atan2(bead.y - finding.y, bead.x - finding.x)
        reach = bead.width / finding.ring_mm
        turns = [middle + reach * part / 4 for part in range(-4, 5)]
        start, *others = (
            (finding.x + radius * math.cos(turn), finding.y + radius * math.sin(turn)) for turn in turns
        )
        contours.append(Outline(start, tuple(others), closed=False))
    pen.begin("finding", {"name": finding.kind})
    pen.shapes(contours, Paint(stroke="#6d675f", width=kind.wire_mm * 0.9))
    pen.shapes(contours, Paint(stroke=SHINE, width=kind.wire_mm * 0.5))
    pen.end()


def draw_ring(pen: Pen, finding: PlacedFinding, turned: bool) -> None:
    """Draw only the loop the thread goes through, in the coordinates of turned work if it is turned."""
    kind = finding_kind(finding.kind)
    if kind is None:
        return
    sign = -1.0 if turned else 1.0
    if kind.name == CRIMP:
        _draw_crimp(pen, finding, (finding.x * sign, finding.y * sign))
        return
    up = -1.0 if (finding.edge == "top") is not turned else 1.0
    ring = ellipse((finding.x * sign, finding.y * sign + up * (RING_MM - 0.5)), RING_MM, RING_MM)
    pen.begin("finding", {"name": finding.kind})
    pen.shapes([ring], Paint(stroke="#6d675f", width=kind.wire_mm * 0.9))
    pen.shapes([ring], Paint(stroke=SHINE, width=kind.wire_mm * 0.5))
    pen.end()


def _wire(loop: Point, kind: FindingKind, side: float, up: float) -> list[Outline]:
    """A loop, and for an ear wire its hook: up from the loop, over, and down behind the ear."""
    centre = (loop[0], loop[1] + up * (RING_MM - 0.5))
    ring = ellipse(centre, RING_MM, RING_MM)
    if kind.name != "ear wire":
        return [ring]
    bend = min(kind.drop_mm * 0.24, 4.6)
    neck = (loop[0], centre[1] + up * RING_MM)
    top = loop[1] + up * kind.drop_mm
    over = top - up * bend
    across = loop[0] - side * 2 * bend
    back = math.copysign(kind.drop_mm * 0.62, -up)
    hook = Outline(
        neck,
        (
            (neck[0], neck[1] + up * 1.5, loop[0] + side * 0.8, over - up * 3.0, loop[0] + side * 0.6, over),
            (
                loop[0] + side * 0.4,
                top - up * bend * 0.2,
                loop[0] - side * 0.2,
                top,
                loop[0] - side * bend,
                top,
            ),
            (across + side * bend * 0.35, top, across, over + up * bend * 0.35, across, over),
            (
                across,
                over + back * 0.6,
                across - side * 0.2,
                over + back * 0.85,
                across - side * 1.4,
                over + back,
            ),
        ),
        closed=False,
    )
    return [ring, hook]
