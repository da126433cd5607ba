"""The places a needle goes in at -> small numbers beside them, where nothing else is drawn."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from sitegen.draw.colour import INK, THREAD, WHITE
from sitegen.draw.overlap import Box, Marks, ink_box, sampled
from sitegen.draw.pens import Outline, Paint, Recorder, Text, text_width
from sitegen.draw.route import Mark
from sitegen.draw.shapes import ellipse
from sitegen.model.thread import Point

SIZE_MM = 0.92
"""Font size of a number, at the true size of the piece, on a round bead 11/0."""
FEW = 10
"""So many places are all numbered; of more, the first, the last, and those where the thread turns."""
ENDS = (3, 2)
"""How many are numbered at the start and at the end of a long way."""
TURNS = (90, -90, 120, -120, 60, -60, 150, -150, 180, 30, -30, 0)
"""Where a number may stand, in degrees from the way the thread goes, best first."""
REACHES = (0.85, 1.1, 1.4, 1.75, 2.1, 2.5)
"""How far it may stand from its place, in font sizes, best first."""
LED = (3.0, 3.6, 4.2, 5.0, 6.0)
"""How far it stands where there is no such place; a line then leads to it."""
LEADER_MM = 0.07
"""Width of that line."""
ALONG = (0.0, 0.4, 0.7)
"""How far along a bead's hole that place may lie: where the needle goes in is best."""
ASIDE, INWARD, OUTWARD, ACROSS = 0.04, 1.2, 1.0, 0.6
"""What each turn further down the list, a share of the hole, a font size of reach and the far flank cost."""
ON_NEW, ON_OTHER, NEARER = 4.0, 1.6, 2.0
"""What it costs to stand on a bead that is picked up, on a bead it does not name, and where it would be read
as another's: nearer to that one's place, before a bead's mouth or on the near side of a bridge."""
BRIDGED_MM, DIP_MM = 1.6, 0.35
"""A bridge nearer than this is one at the bead's own mouth; so far the thread dips under it."""
PAD = 0.16
"""Free room round a number, in font sizes."""
APART = 0.4
"""Free room between two numbers side by side, in their heights: 1 and 3 must not read as 13."""


def chosen(marks: Sequence[Mark]) -> list[Mark]:
    """The places that get a number."""
    if len(marks) <= FEW:
        return list(marks)
    ends = [*marks[: ENDS[0]], *marks[-ENDS[1] :]]
    turning = [mark for mark in marks if mark.turns]
    kept = {mark.number for mark in (ends if len(turning) > FEW else [*ends, *turning])}
    return [mark for mark in marks if mark.number in kept]


def draw_order(recorder: Recorder, marks: Sequence[Mark], fine: float) -> None:
    """Number the places where there is room; `fine` is how much smaller than usual the beads are.

    Where nothing is free near its place, a number stands further off with a line to it. Where that fails
    too it is left out: the others still count it.
    """
    seen = Marks()
    for name, values in recorder.calls:
        getattr(seen, name)(*values)
    size = SIZE_MM * max(fine, 0.8)
    recorder.begin("order", {})
    for mark in chosen(marks):
        spot = _beside(_near(seen, mark, size, REACHES[-1]), mark, marks, size)
        leader = None
        if spot is None:
            spot, leader = _led(_near(seen, mark, size, LED[-1]), mark, size)
        if spot is not None:
            seen.labels.append(spot)
            if leader is not None:
                seen.dots += [(dot, LEADER_MM, "order") for dot in sampled(leader)]
            _draw_number(recorder, mark.number, spot, size, leader)
    recorder.end()


def _near(seen: Marks, mark: Mark, size: float, reach: float) -> Marks:
    """What lies near enough to a place to be in the way of a number so many font sizes off."""
    x, y = mark.at
    reach = (reach + 1.0) * size + math.dist(mark.at, mark.leave)
    around = Box(x - reach, y - reach, x + reach, y + reach)
    return Marks(
        glyphs=[box for box in seen.glyphs if box.meets(around)],
        labels=[box for box in seen.labels if box.meets(around)],
        dots=[dot for dot in seen.dots if around.touches(dot[0], dot[1])],
        new=[box for box in seen.new if box.meets(around)],
        there=[box for box in seen.there if box.meets(around)],
    )


def _beside(near: Marks, mark: Mark, marks: Sequence[Mark], size: float) -> Box | None:
    """The best free place beside where the needle goes in, or along the bead it goes into."""
    costs = []
    for place, dear in _places(mark):
        for reach, rank, spot in _around(place, mark, REACHES, size):
            cost = dear + reach * OUTWARD + rank * ASIDE + _misread(near, mark, marks, spot)
            costs.append((cost, spot))
    costs.sort(key=lambda one: one[0])
    return next((spot for _, spot in costs if _is_free(near, spot)), None)


def _led(near: Marks, mark: Mark, size: float) -> tuple[Box | None, Outline | None]:
    """The nearest free place further off, and the line from it to where the needle goes in.

    The line may cross the thread, but nothing that is read.
    """
    read = [*near.glyphs, *near.labels]
    for _, _, spot in _around(mark.at, mark, LED, size):
        (x, y), (u, v) = mark.at, _middle(spot)
        share = 1.0 - 0.5 * size / math.dist((x, y), (u, v))
        leader = Outline((x, y), ((x + (u - x) * share, y + (v - y) * share),), closed=False)
        crossed = any(box.touches(dot, LEADER_MM) for dot in sampled(leader) for box in read)
        if not crossed and _is_free(near, spot):
            return spot, leader
    return None, None


def _places(mark: Mark) -> Iterator[tuple[Point, float]]:
    """Where a number may be put to, and what that costs: also along a bead's hole and at its far flank."""
    yield mark.at, 0.0
    if mark.bead is None:
        return
    (x, y), (dx, dy) = mark.bead, mark.heading
    aside = (mark.at[0] - x) * -dy + (mark.at[1] - y) * dx  # how far to the left of the hole the thread lies
    for share in ALONG:
        u, v = (one + (other - one) * share for one, other in zip(mark.at, mark.leave, strict=True))
        if share:
            yield (u, v), share * INWARD
        yield (u + 2 * aside * dy, v - 2 * aside * dx), share * INWARD + ACROSS


def _misread(near: Marks, mark: Mark, marks: Sequence[Mark], spot: Box) -> float:
    """What a place costs because its number would be read as another's."""
    middle = _middle(spot)
    cost = ON_NEW if any(spot.meets(box) for box in near.new) else 0.0
    if mark.bead is not None:
        on = [box for box in (*near.new, *near.there) if box.touches(middle, 0.0)]
        cost += ON_OTHER * any(not box.touches(mark.bead, 0.0) for box in on)
    end = math.dist(middle, mark.at)
    own = min(end, math.dist(middle, mark.bead or mark.at))
    for other in marks:
        here = end if other.bead == mark.bead else own
        apart = other.bead != mark.bead or other.heading != mark.heading
        cost = cost + NEARER if apart and math.dist(middle, other.at) < here else cost
    ahead = sum((one - at) * way for one, at, way in zip(middle, mark.at, mark.heading, strict=True))
    if mark.bead is None:
        return cost + NEARER * (ahead < DIP_MM)
    return cost + NEARER * (ahead < 0.0 and _bridged(mark, marks))


def _bridged(mark: Mark, marks: Sequence[Mark]) -> bool:
    """Whether the thread comes to a bead from under a bridge close by."""
    return any(other.bead is None and math.dist(other.at, mark.at) < BRIDGED_MM for other in marks)


def _around(at: Point, mark: Mark, reaches: Sequence[float], size: float) -> Iterator[tuple[float, int, Box]]:
    """Places for a number around a point: how far off, how far down the list of turns, and its box."""
    way = math.atan2(mark.heading[1], mark.heading[0])
    pad = PAD * size
    for reach in reaches:
        for rank, turn in enumerate(TURNS):
            angle = way + math.radians(turn)
            x, y = at[0] + reach * size * math.cos(angle), at[1] + reach * size * math.sin(angle)
            ink = ink_box(x, y, str(mark.number), size)
            yield reach, rank, Box(ink.left - pad, ink.top - pad, ink.right + pad, ink.bottom + pad, ink.what)


def _is_free(near: Marks, box: Box) -> bool:
    """Whether nothing that is read, and no line, lies where a number would."""
    wide = APART * (box.bottom - box.top)
    alone = Box(box.left - wide, box.top, box.right + wide, box.bottom)
    if any(box.meets(other) for other in near.glyphs) or any(alone.meets(other) for other in near.labels):
        return False
    return not any(box.touches(dot, half) for dot, half, _ in near.dots)


def _middle(box: Box) -> Point:
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2


def _draw_number(recorder: Recorder, number: int, spot: Box, size: float, leader: Outline | None) -> None:
    """A number on a white ground, so that it reads on any bead, and the line that leads to its place."""
    x, y = _middle(spot)
    radius = size * 0.52
    recorder.begin("mark", {"place": str(number)})
    if leader is not None:
        recorder.shapes([leader], Paint(stroke=WHITE, width=3 * LEADER_MM))
        recorder.shapes([leader], Paint(stroke=INK, width=LEADER_MM))
    ground = ellipse((x, y), max(radius, text_width(str(number), size) / 2), radius)
    recorder.shapes([ground], Paint(fill=WHITE, opacity=0.85))
    recorder.text(Text(x, y, str(number), size, THREAD, bold=True))
    recorder.end()
