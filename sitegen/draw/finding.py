"""A placed finding -> the outlines of its wire."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence

from sitegen.draw.metal import DARK, RING_MM, SHINE, WIRE, Spot, metal
from sitegen.draw.pens import Outline, Paint, Pen
from sitegen.draw.shapes import ellipse, moved
from sitegen.model.thread import Bead, PlacedFinding, Point, ThreadPath
from sitegen.trade.findings import FindingKind, finding_kind

SEWING = ("finding", "strung-start", "strung-end")
"""Motions that sew a finding on."""
LOOP_MM = 1.05
"""The wire of a loop is no thicker than this, whatever it holds. A judgement; no source."""
CRIMP = "crimp tube"
CRIMP_MM = 1.5
"""A crimp's length and width as drawn. A judgement; no source."""


def draw_finding(pen: Pen, finding: PlacedFinding, shift: Point, mirrored: bool) -> None:
    """Draw the metal above (or below) its loop, moved by `shift`, its hook to the left if mirrored."""
    kind = finding_kind(finding.kind)
    if kind is None:
        return
    place = (finding.x + shift[0], finding.y + shift[1])
    if kind.name == CRIMP:
        _draw_crimp(pen, finding, place)
        return
    pen.begin("finding", {"name": finding.kind})
    if finding.ring_mm:
        _draw_wire(pen, [_ring(place, finding, kind)], kind.wire_mm)
    else:
        up = -1.0 if finding.edge == "top" else 1.0
        seen = metal(kind, Spot(place, -1.0 if mirrored else 1.0, up))
        _draw_wire(pen, seen.behind, kind.wire_mm)
        pen.shapes(seen.plates, Paint(fill=WIRE, stroke=DARK, width=0.14))
        pen.shapes(seen.lights, Paint(fill=SHINE, opacity=0.6))
        _draw_wire(pen, seen.wires, min(kind.wire_mm, LOOP_MM))
    pen.end()


def wires_of(finding: PlacedFinding, shift: Point, mirrored: bool) -> list[Outline]:
    """The middle lines of its wire and the edges of its plates: what throws its shadow."""
    kind = finding_kind(finding.kind)
    place = (finding.x + shift[0], finding.y + shift[1])
    if kind is None or kind.name == CRIMP:
        return []
    if finding.ring_mm:
        return [_ring(place, finding, kind)]
    spot = Spot(place, -1.0 if mirrored else 1.0, -1.0 if finding.edge == "top" else 1.0)
    seen = metal(kind, spot)
    return [*seen.behind, *seen.plates, *seen.wires]


def _draw_wire(pen: Pen, contours: Sequence[Outline], wire_mm: float) -> None:
    """Wire as it shines: a dark edge, the metal, a light line a little toward the light."""
    pen.shapes(contours, Paint(stroke=DARK, width=wire_mm * 1.15))
    pen.shapes(contours, Paint(stroke=WIRE, width=wire_mm * 0.85))
    lit = [moved(outline, (-0.12 * wire_mm, -0.14 * wire_mm)) for outline in contours]
    pen.shapes(lit, Paint(stroke=SHINE, width=wire_mm * 0.28))


def _draw_crimp(pen: Pen, finding: PlacedFinding, middle: Point) -> None:
    """A little tube, lying along the string, with a light line where it shines."""
    (x, y), half = middle, CRIMP_MM / 2
    tube = Outline((x - half, y - half), ((x + half, y - half), (x + half, y + half), (x - half, y + half)))
    light = Outline((x - half * 0.6, y - half * 0.35), ((x + half * 0.6, y - half * 0.35),), closed=False)
    pen.begin("finding", {"name": finding.kind})
    pen.shapes([tube], Paint(fill=WIRE, stroke=DARK, width=0.12))
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
    pen.shapes(contours, Paint(stroke=DARK, width=kind.wire_mm * 0.9))
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
    pen.shapes([ring], Paint(stroke=DARK, width=kind.wire_mm * 0.9))
    pen.shapes([ring], Paint(stroke=SHINE, width=kind.wire_mm * 0.5))
    pen.end()
