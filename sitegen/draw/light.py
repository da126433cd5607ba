"""Beads and their finishes -> bodies in their colours, and light and shade upon them, as few merged paths.

Light comes from above, a little from the left, however a bead lies. Where it falls (a zone) follows from the
bead's shape; which zones there are, and how strong, follows from its finish.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise

from sitegen.draw.colour import INK, WHITE, Dye, Tint
from sitegen.draw.pens import Outline, Paint, Pen
from sitegen.draw.shapes import FACETED, SIDES, Frame, bead_end, bead_outline, polygon
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, Point
from sitegen.trade.finishes import PLAIN, Finish, finish_kind

LIGHT = (-0.34, -0.94)
"""Toward the light, y downward."""
EDGE_MM = 0.08
EDGE = 0.55
"""How much ink is in a bead's edge: a white bead's stands out 3:1 from white paper."""

BALL = {
    "shade": (180.0, 156.0, 0.97, 0.66),
    "deep": (180.0, 164.0, 0.97, 0.4),
    "glow": (0.0, 124.0, 0.84, 0.52),
    "haze": (0.0, 132.0, 0.86, 0.48),
    "gleam": (2.0, 112.0, 0.76, 0.52),
    "spark": (-10.0, 50.0, 0.74, 0.54),
    "rim": (180.0, 100.0, 0.88, 0.76),
    "caustic": (180.0, 116.0, 0.8, 0.5),
    "inner": (0.0, 150.0, 0.97, 0.84),
    "rose": (78.0, 74.0, 0.92, 0.56),
    "sea": (-86.0, 74.0, 0.92, 0.56),
    "violet": (176.0, 74.0, 0.9, 0.56),
}
"""Zone of a ball -> crescent: degrees from the light, degrees it spans, how far out its two edges are."""
TUBE = {
    "shade": (-0.95, -0.5, -0.88, 0.88),
    "deep": (-0.96, -0.22, -0.88, 0.88),
    "glow": (0.2, 0.84, -0.86, 0.86),
    "haze": (0.16, 0.8, -0.88, 0.88),
    "gleam": (0.36, 0.74, -0.88, 0.88),
    "spark": (0.5, 0.7, -0.66, 0.1),
    "rim": (-0.86, -0.7, -0.86, 0.86),
    "caustic": (-0.78, -0.34, -0.8, 0.8),
    "inner": (0.82, 0.95, -0.88, 0.88),
    "rose": (0.62, 0.95, -0.88, 0.3),
    "sea": (-0.55, -0.2, -0.3, 0.88),
    "violet": (-0.94, -0.62, -0.88, 0.88),
}
"""Zone of a tube or cube -> strip: near and far from its axis (1 faces the light), from and to along it."""
WELL = (0.0, 200.0, 0.96, -0.1)
"""The shade in a hole: its wall on the side of the light lies in the dark."""
THROUGH = {"channel": 0.36, "core": 0.42, "line": 0.13}
"""Zones seen inside the glass, along the hole: how wide."""
PANES = (-1.0, -0.42, 0.42, 1.0)
"""Where the ridges between facets stand, as shares of the half width."""
CORES = {"silver": "#eceae4", "gold": "#e8bd55", "copper": "#cf8a5e"}
"""A judgement; no source."""


Pane = tuple[float, list[Point]]
"""How much a facet faces the light, -1 to 1, and its corners."""


@dataclass(frozen=True, slots=True)
class Coat:
    """One layer of light or shade on a bead."""

    zone: str
    tint: Tint
    opacity: float


BODY = {"opaque": 0.0, "cloudy": 0.14, "clear": 0.2, "metal": 0.0, "lined": 0.16}
"""How much white is in the body's colour, for each glass."""
GLASS = {
    "opaque": (),
    "cloudy": (Coat("caustic", WHITE, 0.24),),
    "clear": (Coat("channel", INK, 0.2), Coat("inner", INK, 0.3), Coat("caustic", WHITE, 0.42)),
    "metal": (Coat("deep", INK, 0.34), Coat("gleam", WHITE, 0.42), Coat("rim", WHITE, 0.4)),
    "lined": (Coat("inner", INK, 0.22),),
}
SURFACE = {
    "gloss": (Coat("shade", INK, 0.2), Coat("glow", WHITE, 0.16), Coat("spark", WHITE, 0.6)),
    "soft": (Coat("shade", INK, 0.17), Coat("haze", WHITE, 0.15), Coat("spark", WHITE, 0.24)),
    "matte": (Coat("shade", INK, 0.14), Coat("haze", WHITE, 0.1)),
}
SHEEN = {
    "plain": (),
    "lustre": (Coat("glow", WHITE, 0.26), Coat("rim", WHITE, 0.34)),
    "rainbow": (Coat("rose", "#e0408f", 0.4), Coat("sea", "#25b79a", 0.4), Coat("violet", "#5a62e8", 0.42)),
}
FROST = 0.14
"""White in the body of glass that is frosted."""


def finishes_of(pattern: Pattern) -> Mapping[str, Finish]:
    """Letter -> finish; what no table knows is drawn opaque and glossy."""
    return {colour.letter: finish_kind(colour.finish) or PLAIN for colour in pattern.colours}


def draw_beads(pen: Pen, beads: Sequence[Bead], finishes: Mapping[str, Finish]) -> None:
    """Draw beads that do not hide each other: bodies letter by letter, then each kind of light at once."""
    layers: dict[Coat, list[Outline]] = {}
    for letter in sorted({bead.letter for bead in beads}):
        same = [bead for bead in beads if bead.letter == letter]
        finish = finishes.get(letter, PLAIN)
        pen.begin("beads", {"letter": letter})
        edge = Dye(letter, INK, EDGE)
        paint = Paint(fill=_body(letter, finish), stroke=edge, width=EDGE_MM)
        pen.shapes([bead_outline(bead, 0.0) for bead in same], paint)
        pen.end()
        for coat in coats(letter, finish):
            layers.setdefault(coat, []).extend(part for bead in same for part in zone(bead, coat.zone))
    for coat, outlines in layers.items():
        pen.shapes(outlines, Paint(fill=coat.tint, opacity=coat.opacity))


def draw_end(pen: Pen, bead: Bead, hole_mm: float, finishes: Mapping[str, Finish]) -> None:
    """Draw a bead from the hole: its face, the light on it, and the depth of the hole."""
    finish, letter = finishes.get(bead.letter, PLAIN), bead.letter
    outline, hole = bead_end(bead, hole_mm)
    pen.begin("bead-end", {"letter": letter})
    pen.shapes([outline], Paint(fill=_body(letter, finish), stroke=Dye(letter, INK, EDGE), width=EDGE_MM))
    for coat in coats(letter, finish):
        if coat.zone in BALL:
            pen.shapes(_end_zone(bead, outline, coat.zone), Paint(fill=coat.tint, opacity=coat.opacity))
    wall = _hole_wall(letter, finish)
    pen.shapes([hole], Paint(fill=wall, stroke=Dye(letter, INK, EDGE), width=EDGE_MM))
    well = _ball(hole, letter)
    pen.shapes([_crescent(well, *WELL)], Paint(fill=INK, opacity=0.5))
    pen.end()


def _end_zone(bead: Bead, outline: Outline, name: str) -> list[Outline]:
    """Where light or shade lies on the face round the hole."""
    if bead.shape in SIDES:
        corners = [outline.start, *((x, y) for x, y in outline.segments)]
        middle, far = (bead.x, bead.y), bead.width / 2
        panes = []
        for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
            out = ((one[0] + other[0]) / 2 - bead.x, (one[1] + other[1]) / 2 - bead.y)
            bright = (out[0] * LIGHT[0] + out[1] * LIGHT[1]) / far
            panes.append((bright, [middle, one, other]))
        return _caught(panes, name)
    if bead.shape == "cube":
        return [_strip(replace(bead, angle=90.0, length=bead.width), *TUBE[name])]
    if bead.shape == "drop":
        return [_crescent(replace(bead, angle=90.0), *BALL[name])]
    return [_crescent(_ball(outline, bead.letter), *BALL[name])]


def _ball(outline: Outline, letter: str) -> Bead:
    """A ball as large as an outline, in its middle: the light on a face falls as it would on that."""
    xs, ys = zip(*outline.points(), strict=True)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return Bead(letter, 0, 1, 1, *middle, 0.0, max(xs) - min(xs), max(ys) - min(ys), "round", "")


def _hole_wall(letter: str, finish: Finish) -> Tint:
    """What is seen down the hole: its coat, or the glass in its own shade."""
    if finish.glass == "lined":
        return Dye(letter, INK, 0.1) if finish.core == "own" else CORES[finish.core]
    return Dye(letter, INK, 0.35 if finish.glass in ("clear", "cloudy") else 0.62)


def _body(letter: str, finish: Finish) -> Dye:
    if finish.glass == "lined" and finish.core == "own":
        return Dye(letter, WHITE, 0.58)
    frost = FROST if finish.glass in ("clear", "cloudy", "lined") and finish.surface == "matte" else 0.0
    return Dye(letter, WHITE, BODY[finish.glass] + frost)


@cache
def coats(letter: str, finish: Finish) -> tuple[Coat, ...]:
    """What lies on the body of a bead with this finish, from below."""
    inside: tuple[Coat, ...] = ()
    if finish.glass == "lined" and finish.core == "own":
        inside = (Coat("core", Dye(letter), 1.0),)
    elif finish.glass == "lined":
        inside = (Coat("core", CORES[finish.core], 0.78), Coat("line", WHITE, 0.7))
    matte = finish.glass == "metal" and finish.surface == "matte"
    glass = GLASS[finish.glass][:1] if matte else GLASS[finish.glass]
    return (*inside, *glass, *SHEEN[finish.sheen], *SURFACE[finish.surface])


def zone(bead: Bead, name: str) -> list[Outline]:
    """Where on a bead this kind of light or shade lies; empty where its shape has no such place."""
    if name in THROUGH:
        return [_through(bead, THROUGH[name])]
    if bead.shape in FACETED:
        return _panes(bead, name)
    if bead.shape in ("cylinder", "cube", "bugle"):
        return [_strip(bead, *TUBE[name])]
    return [_crescent(bead, *BALL[name])]


def _toward_light(frame: Frame, width: float, length: float) -> Point:
    """The place on a unit ball that faces the light, across and along the hole."""
    across, along = frame.within(LIGHT)
    across, along = across * width, along * length
    far = math.hypot(across, along)
    return across / far, along / far


def _crescent(bead: Bead, turn: float, span: float, outer: float, inner: float) -> Outline:
    """A crescent on the ball of a bead, between two curves that meet in its tips."""
    frame = Frame(bead)
    middle, half_across, half_along = 0.0, bead.width / 2, bead.length / 2
    if bead.shape == "drop":
        middle, half_across = half_along - half_across, half_along
    light = _toward_light(frame, half_across, half_along)
    base, half = math.atan2(light[1], light[0]) + math.radians(turn), math.radians(span) / 2

    def at(angle: float, far: float) -> Point:
        x, y = far * math.cos(base + angle), far * math.sin(base + angle)
        return frame.at(middle + half_across * x, half_along * y)

    # Controls of a quarter's cubic, for any span; those of the inner edge give it its middle `inner` out.
    away = math.atan(4 / 3 * math.tan(half / 2))
    near = (inner - 0.25 * outer * math.cos(half)) / (0.75 * math.cos(half / 2))
    far = outer / math.cos(away)
    out = (*at(away - half, far), *at(half - away, far), *at(half, outer))
    back = (*at(half / 2, near), *at(-half / 2, near), *at(-half, outer))
    return Outline(at(-half, outer), (out, back))


def _strip(bead: Bead, near: float, far: float, first: float, last: float) -> Outline:
    """A strip along a tube, on the side that faces the light or the one that does not."""
    frame = Frame(bead)
    across, along = frame.within(LIGHT)
    side = math.copysign(bead.width / 2, across)
    end = math.copysign(bead.length / 2, -along or 1.0)
    return polygon([frame.at(near * side, first * end), frame.at(far * side, first * end),
                    frame.at(far * side, last * end), frame.at(near * side, last * end)])  # fmt: skip


def _through(bead: Bead, share: float) -> Outline:
    """The hole as it shows through the glass; that of a drop lies in its neck."""
    frame, half, middle = Frame(bead), bead.width * share / 2, 0.0
    end = bead.length * (0.36 if bead.shape in FACETED else 0.46)
    if bead.shape == "drop":
        middle, half, end = bead.width * 0.22, half * 0.6, bead.length * 0.2
    return polygon([frame.at(middle - half, -end), frame.at(middle + half, -end),
                    frame.at(middle + half, end), frame.at(middle - half, end)])  # fmt: skip


def _panes(bead: Bead, name: str) -> list[Outline]:
    """The facets of its side that catch this light."""
    return _caught(_facets(bead), name)


def _caught(panes: list[Pane], name: str) -> list[Outline]:
    """Of panes with their brightness, those where this light or shade lies."""
    least, most = min(bright for bright, _ in panes), max(bright for bright, _ in panes)
    if name == "spark":
        return [_drawn_in(corners, 0.8) for bright, corners in panes if bright == most][:1]
    if name in ("rose", "sea", "violet"):
        first = ("rose", "sea", "violet").index(name)
        dim = [corners for bright, corners in panes if bright < most]
        return [polygon(corners) for corners in dim[first::3]]
    low, high = {
        "shade": (-9.0, -0.2), "deep": (-9.0, -0.05), "glow": (0.2, 9.0), "haze": (0.2, 9.0),
        "gleam": (0.6, 9.0), "rim": (least, least), "caustic": (least, -0.35), "inner": (-0.2, 0.1),
    }[name]  # fmt: skip
    return [polygon(corners) for bright, corners in panes if low <= bright <= high]


def _facets(bead: Bead) -> list[Pane]:
    """Each facet of the side that is seen: how much it faces the light, -1 to 1, and its corners."""
    frame, profile = Frame(bead), FACETED[bead.shape]
    across, along = frame.within(LIGHT)
    found = []
    for (near, first), (far, last) in pairwise(profile):
        slope = math.atan2((near - far) * bead.width, (last - first) * bead.length)
        for left, right in pairwise(PANES):
            aside = math.sin((left + right) / 2 * math.pi / 2)
            bright = across * aside * math.cos(slope) + along * math.sin(slope)
            corners = [(near * left, first), (near * right, first), (far * right, last), (far * left, last)]
            found.append((bright, [frame.at(x * bead.width, y * bead.length) for x, y in corners]))
    return found


def _drawn_in(corners: list[Point], share: float) -> Outline:
    """A pane, smaller, about its middle."""
    x, y = (sum(values) / len(corners) for values in zip(*corners, strict=True))
    return polygon([(x + share * (one - x), y + share * (other - y)) for one, other in corners])
