"""What lies there and where a thread comes out -> the way along which its end is woven in.

The end goes through a few beads along thread that is there already, with half hitches round the thread
between two of them, and on through some more before it is cut: never right at a hitch.
Source: http://www.thecraftking.com/beadwork/tie-off-bead-threads-using-a-half-hitch-knot/ (along the thread
path, several half hitches over bridges of inner rows, never cut right at a knot); read as trade notes. How
many beads lie between them is a judgement.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.model.thread import Bridge, Move, MoveKind, Point
from sitegen.trade.beads import BeadSize
from sitegen.weave.ground import FABRIC, Ground, Spot

HITCHES = 2
BETWEEN = 2
"""Beads gone through before each hitch, and after the last."""
MOST_PASSES = 12
"""Beads after which a way that found no place for its hitches is given up."""
KEPT = (12, 60)
"""Ways followed at a time; the second time round only where the first search found none."""
REACH = 1.3
"""The longest step from bead to bead, in widths of the wider bead."""
FULL_MM = 0.15
"""Cost of a pass where one thread lies in a hole of 1 mm; it grows with the square of how full a hole is."""
LONE_MM, STRAND_MM, ROUND_MM, BACK_MM, AGAIN_MM = 20.0, 4.0, 2.0, 6.0, 40.0
"""Cost of a bead on a single pass (it would be pulled out of its place), of one in a hanging strand (it would
stiffen), of going round a bridge or a warp, of turning back at a hitch, and of a bead used a second time."""


@dataclass(frozen=True, slots=True)
class Leg:
    """A pass of a way: first round what holds the thread, then into the bead."""

    into: Spot
    holds: tuple[Move, ...] = ()

    @property
    def out(self) -> Spot:
        """Where the thread comes out again."""
        return self.into[0], self.into[1].other


@dataclass(frozen=True, slots=True)
class _Way:
    """A way so far."""

    cost: float
    legs: tuple[Leg, ...]
    here: Spot
    point: Point
    """Where the thread was last held or came out."""
    hitched: Bridge | None
    """The bridge of a hitch just made."""
    hitches: int
    since: int
    """Beads since the last hitch."""


def find_way_in(ground: Ground, start: Spot, kinds: dict[str, BeadSize]) -> tuple[Leg, ...] | None:
    """The legs of the cheapest way for a thread that comes out at `start`; None where it cannot be held.

    `kinds` are the bead kinds on the piece by name.
    """
    return next((legs for kept in KEPT if (legs := _search(ground, start, kinds, kept))), None)


def _search(ground: Ground, start: Spot, kinds: dict[str, BeadSize], kept: int) -> tuple[Leg, ...] | None:
    """The cheapest way among those that stay among the `kept` cheapest, bead after bead."""
    ways = [_Way(0.0, (), start, ground.mouth(start), None, 0, 0)]
    for _ in range(MOST_PASSES):
        longer = [then for old in ways for then in _onward(ground, old, kinds)]
        done = [way for way in longer if way.hitches == HITCHES and way.since == BETWEEN]
        if done:
            return min(done, key=_order).legs
        best: dict[tuple[Spot, int, int], list[_Way]] = {}
        for way in sorted(longer, key=_order):
            best.setdefault((way.here, way.hitches, way.since), []).append(way)
        ways = sorted((way for same in best.values() for way in same[:2]), key=_order)[:kept]
    return None


def _order(way: _Way) -> tuple[float, tuple[Spot, ...]]:
    """By cost, and always the same among equals."""
    return round(way.cost, 6), tuple(leg.into for leg in way.legs)


def _onward(ground: Ground, old: _Way, kinds: dict[str, BeadSize]) -> Iterator[_Way]:
    """The way made longer by one bead, in every manner that leaves no thread bare."""
    used = {leg.into[0] for leg in old.legs}
    for leg, extra in _legs(ground, old):
        bead = ground.path.beads[leg.into[0]]
        wide = REACH * max(bead.width, ground.path.beads[old.here[0]].width)
        gap = ground.distance(old.point, ground.mouth(leg.into), old.here[0])
        if gap > wide and not (leg.holds and leg.holds[0].kind is not MoveKind.HITCH):
            continue
        threads = ground.passes(leg.into[0])
        cost = old.cost + extra + gap + bead.length + FULL_MM * (threads / kinds[bead.kind].hole_mm ** 2) ** 2
        cost += LONE_MM if threads == 1 else 0.0
        cost += AGAIN_MM if leg.into[0] in used else 0.0
        cost += STRAND_MM if ground.path.parts[bead.part].lines not in FABRIC else 0.0
        hitches = old.hitches + (old.hitched is not None)
        since = 1 if old.hitched is not None else old.since + 1
        due = hitches < HITCHES and since >= BETWEEN
        hitched = ground.bridge(leg.out) if due else None
        point = ground.path.bridge_middle(hitched) if hitched else ground.mouth(leg.out)
        yield _Way(cost, (*old.legs, leg), leg.out, point, hitched, hitches, since)


def _legs(ground: Ground, old: _Way) -> Iterator[tuple[Leg, float]]:
    """Where the thread can go next, and what that costs beyond the way itself."""
    hitch = (_hitch(old.hitched),) if old.hitched else ()
    seen: set[Spot] = set()
    for crossing in ground.crossings(old.here):
        if crossing.to in seen or (crossing.holds and hitch):
            continue
        seen.add(crossing.to)
        yield Leg(crossing.to, hitch or crossing.holds), ROUND_MM if crossing.holds else 0.0
    if ground.path.parts[ground.path.beads[old.here[0]].part].lines in FABRIC:
        for into in ground.touching(old.here):
            if into not in seen:
                seen.add(into)
                yield Leg(into, hitch), 0.0
    if hitch and old.here not in seen:
        yield Leg(old.here, hitch), BACK_MM
    if not old.legs and old.here not in seen and (bridge := ground.bridge(old.here)):
        yield Leg(old.here, (_hitch(bridge),)), BACK_MM


def _hitch(bridge: Bridge) -> Move:
    return Move(MoveKind.HITCH, bridge=bridge)


def reversed_way(legs: tuple[Leg, ...], start: Spot) -> tuple[Leg, ...]:
    """The same way from its far end: it comes out of the bead at `start` by the other end of its hole."""
    holds = [leg.holds[::-1] for leg in legs]
    outs = [start, *(leg.out for leg in legs)]
    return tuple(Leg(out, held) for out, held in zip(outs[::-1], [(), *holds[::-1]], strict=True))
