"""A kind of finding and the place of its loop -> the outlines of its wire and plates, mm.

What is not in the table of findings is a judgement of what such a finding usually looks like; no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from sitegen.draw.pens import Outline
from sitegen.draw.shapes import ellipse, moved, polygon, scaled
from sitegen.model.thread import Point
from sitegen.trade.findings import FindingKind

DARK = "#67615a"
WIRE = "#a8a299"
SHINE = "#f1eee8"
RING_MM = 1.2
"""Radius a loop is drawn with."""
TOGGLE_MM = (5.0, 15.0)
"""Radius of a toggle clasp's ring, and length of its bar."""
BAR_MM = (22.0, 1.8)
"""Length and width of a slide clasp's or brooch's bar."""


@dataclass(frozen=True, slots=True)
class Metal:
    """What a finding is drawn of, from behind."""

    behind: tuple[Outline, ...] = ()
    """Middle lines of wire behind the plates."""
    plates: tuple[Outline, ...] = ()
    lights: tuple[Outline, ...] = ()
    """Where the plates shine."""
    wires: tuple[Outline, ...] = ()
    """Middle lines of wire before them."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a loop is, and which way its finding stands."""

    loop: Point
    side: float
    """1, or -1 for one seen in a mirror."""
    up: float
    """-1 where it stands above the work, 1 where it hangs below."""

    def at(self, aside: float, high: float) -> Point:
        """So far aside of the loop, and so far from it along the finding."""
        return self.loop[0] + self.side * aside, self.loop[1] + self.up * high

    def ring(self, high: float, radius: float) -> Outline:
        """A ring about a point so far from the loop."""
        return ellipse(self.at(0.0, high), radius, radius)

    def line(self, start: Point, *ways: tuple[Point, ...]) -> Outline:
        """An open line of straight and curved parts."""
        segments = tuple(tuple(value for point in way for value in self.at(*point)) for way in ways)
        return Outline(self.at(*start), segments, closed=False)


def metal(kind: FindingKind, spot: Spot) -> Metal:
    """The finding as it is seen; one that is not drawn otherwise shows its loop alone."""
    return SHAPES.get(kind.name, _loop)(kind, spot)


def _loop(kind: FindingKind, spot: Spot) -> Metal:
    del kind
    return Metal(wires=(_small(spot),))


def _small(spot: Spot) -> Outline:
    return spot.ring(RING_MM - 0.5, RING_MM)


def _jump_ring(kind: FindingKind, spot: Spot) -> Metal:
    radius = kind.drop_mm / 2
    return Metal(wires=(spot.ring(radius - 0.3, radius),))


def _ear_wire(kind: FindingKind, spot: Spot) -> Metal:
    """Up from the loop, over, and down behind the ear."""
    drop, neck = kind.drop_mm, 2 * RING_MM - 0.5
    bend = min(drop * 0.24, 4.6)
    over = drop - bend
    hook = spot.line(
        (0.0, neck),
        ((0.0, neck + 1.5), (0.8, over - 3.0), (0.6, over)),
        ((0.4, drop - bend * 0.2), (-0.2, drop), (-bend, drop)),
        ((-bend * 1.65, drop), (-2 * bend, over + bend * 0.35), (-2 * bend, over)),
        ((-2 * bend, over - drop * 0.37), (-2 * bend - 0.2, over - drop * 0.53),
         (-2 * bend - 1.4, over - drop * 0.62)),
    )  # fmt: skip
    return Metal(wires=(_small(spot), hook))


def _lever_back(kind: FindingKind, spot: Spot) -> Metal:
    """A bow over the ear, and behind it the lever that shuts it."""
    drop, neck = kind.drop_mm, 2 * RING_MM - 0.5
    wide, over = drop * 0.34, drop * 0.62
    bow = spot.line(
        (0.0, neck),
        ((0.9, neck + 2.0), (1.3, over - 1.0), (0.7, over + 1.0)),
        ((0.1, drop - 1.0), (-wide * 0.4, drop), (-wide, drop)),
        ((-1.7 * wide, drop), (-2.3 * wide, over), (-2.1 * wide, over * 0.55)),
    )
    lever = spot.line((-2.1 * wide, over * 0.55), ((-1.8 * wide, neck), (-0.9, neck - 0.3), (0.0, neck)))
    return Metal(behind=(lever,), wires=(_small(spot), bow))


def _post(kind: FindingKind, spot: Spot) -> Metal:
    """A domed head; the post lies behind it."""
    radius = max(1.6, (kind.drop_mm - 2 * RING_MM + 0.5) / 2)
    head = spot.ring(2 * RING_MM - 0.5 + radius, radius)
    light = moved(scaled(head, 0.56), (-0.2 * radius, -0.24 * radius))
    return Metal(plates=(head,), lights=(light,), wires=(_small(spot),))


def _hoop(kind: FindingKind, spot: Spot) -> Metal:
    return Metal(wires=(spot.ring(kind.drop_mm / 2 - 0.4, kind.drop_mm / 2),))


def _bail(kind: FindingKind, spot: Spot) -> Metal:
    """A folded leaf of metal that a chain runs through."""
    low, high, half = 2 * RING_MM - 0.9, kind.drop_mm, kind.drop_mm * 0.24
    ways = (
        (half * 0.4, low + 1.0), (half, high * 0.62), (half, high * 0.82),
        (half, high), (-half, high), (-half, high * 0.82),
        (-half, high * 0.62), (-half * 0.4, low + 1.0), (0.0, low),
    )  # fmt: skip
    placed = [spot.at(*way) for way in ways]
    segments = tuple(tuple(value for point in placed[n : n + 3] for value in point) for n in (0, 3, 6))
    leaf = Outline(spot.at(0.0, low), segments)
    return Metal(plates=(leaf,), lights=(moved(scaled(leaf, 0.66), (-0.2, -0.2)),), wires=(_small(spot),))


def _bar(spot: Spot, long: float, wide: float, high: float) -> Outline:
    return polygon([spot.at(-long / 2, high - wide / 2), spot.at(long / 2, high - wide / 2),
                    spot.at(long / 2, high + wide / 2), spot.at(-long / 2, high + wide / 2)])  # fmt: skip


def _brooch(kind: FindingKind, spot: Spot) -> Metal:
    long, wide = BAR_MM
    bar, light = _bar(spot, long, wide, kind.drop_mm), _bar(spot, long - 1.0, wide * 0.24, kind.drop_mm)
    return Metal(plates=(bar,), lights=(moved(light, (0.0, -wide * 0.2)),), wires=(_small(spot),))


def _slide(kind: FindingKind, spot: Spot) -> Metal:
    """Two tubes, one within the other."""
    del kind
    long, wide = BAR_MM
    inner, outer = _bar(spot, long, wide * 1.1, 2.6), _bar(spot, long * 0.86, wide * 1.6, 2.6)
    light = moved(_bar(spot, long * 0.84, wide * 0.3, 2.6), (0.0, -wide * 0.4))
    return Metal(plates=(inner, outer), lights=(light,), wires=(_small(spot),))


def _toggle(kind: FindingKind, spot: Spot) -> Metal:
    """A ring, and a bar put through it that lies across."""
    del kind
    radius, long = TOGGLE_MM
    bar = spot.line((-long / 2, radius - 0.4), ((long / 2, radius - 0.4),))
    stem = spot.line((0.0, 0.0), ((0.0, radius - 0.4),))
    return Metal(wires=(spot.ring(radius - 0.4, radius), stem, bar))


def _key_ring(kind: FindingKind, spot: Spot) -> Metal:
    """A split ring: two coils, seen one within the other."""
    radius = (kind.drop_mm - 1.0) / 2
    rings = spot.ring(radius + 0.9, radius), spot.ring(radius + 0.9, radius - kind.wire_mm * 0.9)
    return Metal(behind=rings, wires=(_small(spot),))


SHAPES: Mapping[str, Callable[[FindingKind, Spot], Metal]] = {
    "ear wire": _ear_wire,
    "lever-back ear wire": _lever_back,
    "ear post": _post,
    "ear clip": _post,
    "ear hoop": _hoop,
    "jump ring": _jump_ring,
    "bail": _bail,
    "brooch pin": _brooch,
    "key ring": _key_ring,
    "slide clasp": _slide,
    "toggle clasp": _toggle,
}
