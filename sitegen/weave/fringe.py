"""Strands in words and the edge they hang from -> fringe: down, round the turn beads, back up, on.

Mechanics: down out of the hanging bead, all beads picked up, the turn beads skipped, back through the rest
and up through the hanging bead, into the next one.
Source, read as trade notes:
https://trantor.is/content/McY86QY3QIBaBRKh/html/10881_06_MoreBasicStitches_epub.html
"""

from __future__ import annotations

import math

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Words
from sitegen.model.thread import End, Phrase
from sitegen.weave.travel import find_way, travel
from sitegen.weave.work import View, Work

Placed = tuple[float, float, float]
"""x, y in mm and the angle of the hole."""


def fringe_part(work: Work, part: Part) -> None:
    """Work all strands of a fringe, from the side nearer the thread to the other."""
    assert part.hang is not None and part.hang.part is not None  # the check stage holds it
    source = [woven.name for woven in work.parts].index(part.hang.part)
    end = End.BOTTOM if part.hang.edge == "bottom" else End.TOP
    view = View(turned=end is End.TOP)
    row = work.rows[source][-1 if end is End.BOTTOM else 0]
    strands = part.all_strands
    index = work.begin_part(part, len(strands), 0.0, work.parts[source].bead_pitch)
    pairs = list(zip(row, strands, strict=True))
    if _nearer_is_right(work, row, end):
        pairs.reverse()
    if not travel(work, {(pairs[0][0], end)}, 0, view):
        work.problems.append(Problem("weave-no-way", strands[0].where, {"row": 1}))
        return
    for number, (hanger, strand) in enumerate(pairs, start=1):
        following = pairs[number][0] if number < len(pairs) else None
        beads = _lay_strand(work, index, number, strand, hanger, end, part.turn)
        _thread_strand(work, beads, part.turn, hanger, following, end)
        phrase = Phrase(
            "strand" if following is not None else "strand-last",
            {"count": part.turn, "back": len(beads) - part.turn, "number": number},
        )
        work.step(number, "strand", (phrase,), turned=view.turned, rest=True)


def _nearer_is_right(work: Work, row: list[int], end: End) -> bool:
    """Whether the right end of the hanging row is fewer passes away than the left."""
    ways = [find_way(work, {(bead, end)}) for bead in (row[0], row[-1])]
    left, right = (math.inf if way is None else len(way) for way in ways)
    return right < left


def _lay_strand(
    work: Work, part: int, number: int, strand: Words, hanger: int, end: End, turn: int
) -> list[int]:
    """Beads of one strand from the hanger to the tip and round the turn, in order of picking up."""
    sign = 1.0 if end is End.BOTTOM else -1.0
    x, y = work.beads[hanger].mouth(end)
    sizes = [(work.kind(letter).width_mm, work.kind(letter).length_mm) for letter in strand.letters]
    shaft = sizes[: len(sizes) - turn]
    places: list[Placed] = []
    depth = 0.0
    for _, length in shaft:
        places.append((x, y + sign * (depth + length / 2), 0.0 if sign > 0 else 180.0))
        depth += length
    last = shaft[-1] if shaft else (0.0, 0.0)
    for dx, dy, angle in turn_places(last, sizes[len(shaft) :]):
        places.append(
            (x + sign * dx, y + sign * (depth + dy), angle if sign > 0 else (angle + 180.0) % 360.0)
        )
    spots = zip(strand.letters, strand.spots, strict=True)
    return [
        work.lay(part, number, place, spot, at)
        for place, (spot, at) in enumerate(zip(spots, places, strict=True), 1)
    ]


def turn_places(last: tuple[float, float], beads: list[tuple[float, float]]) -> list[Placed]:
    """Where turn beads settle below a strand's last passed bead, (width, length) each in mm.

    The beads close up into a loop whose neighbours touch: one lies across, two hang side by side, three
    make a point, more a ring. -> (right, down, angle) from the foot of the last passed bead; the angle is
    that of the thread's way through the bead. Geometry of touching beads; no published figure.
    """
    count = len(beads)
    width = max(size[0] for size in beads)
    length = max(size[1] for size in beads)
    if count == 1:
        return [(0.0, width / 2, 90.0)]
    if count == 2:
        lean = 14.0
        return [(-width / 2, length * 0.55, -lean), (width / 2, length * 0.55, 180.0 + lean)]
    touch = (width + length) / 2
    if count == 3:
        half = width * 0.51
        drop = math.sqrt(touch**2 - half**2)
        first = max(drop - last[1] / 2, length * 0.45)
        return [(-half, first, -28.0), (0.0, first + drop, 90.0), (half, first, 208.0)]
    corners = count + 1
    radius = touch / (2 * math.sin(math.pi / corners))
    places = []
    for corner in range(1, corners):
        turn = 2 * math.pi * corner / corners
        right, up = -radius * math.sin(turn), radius * math.cos(turn)
        places.append((right, radius - last[1] / 2 - up, math.degrees(turn) - 90.0 + 0.0))
    return places


def _thread_strand(
    work: Work, beads: list[int], turn: int, hanger: int, following: int | None, end: End
) -> None:
    for bead in beads:
        work.pick(bead, End.TOP)
    for bead in reversed(beads[: len(beads) - turn]):
        work.through(bead, End.BOTTOM)
    work.through(hanger, end)
    if following is not None:
        work.through(following, end.other)
