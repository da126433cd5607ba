"""Strands in words and the edge they hang from -> fringe: down, round the turn beads, back up, on.

Mechanics: down out of the hanging bead, all beads picked up, the turn beads skipped, back through the rest
and up through the hanging bead, into the next one. From bridges: under the bridge, all beads picked up, back
through the rest, and under the same bridge once more, so that both legs hang at one place.
A side branch is picked up on the way back, its last bead skipped, and left by the way it came.
Sources, read as trade notes: https://trantor.is/content/McY86QY3QIBaBRKh/html/10881_06_MoreBasicStitches_epub.html
(strand, turn bead), https://www.thesprucecrafts.com/brick-stitch-fringe-earrings-project-339438 (bridges).
Side branches: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.model.source import Part, Words
from sitegen.model.thread import End, Phrase
from sitegen.weave.across import to
from sitegen.weave.curves import Placed, upside_down
from sitegen.weave.hooks import Edge, Hook, open_strands
from sitegen.weave.work import Work

LEAN = 48.0
"""Degrees a side branch stands away from its strand. A judgement; no source."""


@dataclass(frozen=True, slots=True)
class _Strand:
    """The beads of one strand, laid."""

    trunk: list[int]
    """From the edge to the tip and round the turn, in order of picking up."""
    turn: int
    branches: tuple[tuple[int, list[int]], ...]
    """(how many beads of the trunk are above it, its beads from the trunk outward), lowest first."""


def fringe_part(work: Work, part: Part) -> None:
    """Work all strands of a fringe, straight or branched, from the side nearer the thread to the other."""
    opened = open_strands(work, part)
    if opened is None:
        return
    edge, index, hung = opened
    for hook, words, following in hung:
        strand = _lay_strand(work, index, words, (hook, _outward(edge, hook)), part.turn)
        _thread_strand(work, strand, hook, following, edge)


def _outward(edge: Edge, hook: Hook) -> float:
    """The side a strand's first branch stands to, away from the edge's middle: -1 left, 1 right."""
    middle = (edge.hooks[0].point[0] + edge.hooks[-1].point[0]) / 2
    return -1.0 if hook.point[0] < middle - 1e-6 else 1.0


def _lay_strand(work: Work, part: int, words: Words, where: tuple[Hook, float], turn: int) -> _Strand:
    """Lay the beads of one strand: the trunk straight down, branches standing away by turns."""
    hook, outward = where
    size = [(work.kind(letter).width_mm, work.kind(letter).length_mm) for letter in words.letters]
    aside = {bead for first, past in words.branches for bead in range(first, past)}
    trunk = [bead for bead in range(len(size)) if bead not in aside]
    places: dict[int, Placed] = {}
    depth = 0.0
    feet: dict[int, float] = {}
    for bead in trunk[: len(trunk) - turn]:
        places[bead] = (0.0, depth + size[bead][1] / 2, 0.0)
        depth += size[bead][1]
        feet[bead] = depth
    shaft = [size[bead] for bead in trunk[: len(trunk) - turn]]
    tip = turn_places(shaft[-1] if shaft else (0.0, 0.0), [size[bead] for bead in trunk[-turn:]])
    for bead, (right, down, angle) in zip(trunk[-turn:], tip, strict=True):
        places[bead] = (right, depth + down, angle)
    rooted = []
    for number, (first, past) in enumerate(words.branches):
        root = max(bead for bead in trunk if bead < first)
        side = -outward if number % 2 else outward
        places |= _branch_places(range(first, past), size, (side, feet[root], size[root][0]))
        rooted.append((trunk.index(root) + 1, range(first, past)))
    laid = _lay(work, part, hook, words, [places[bead] for bead in range(len(size))])
    branches = tuple((above, [laid[bead] for bead in beads]) for above, beads in reversed(rooted))
    return _Strand([laid[bead] for bead in trunk], turn, branches)


def _branch_places(
    beads: range, size: Sequence[tuple[float, float]], root: tuple[float, float, float]
) -> dict[int, Placed]:
    """A branch's beads in one line out and down from its root: (side, depth, width of the trunk)."""
    side, depth, width = root
    lean = math.radians(LEAN)
    out = 0.0
    places: dict[int, Placed] = {}
    for bead in beads:
        middle = out + size[bead][1] / 2
        x = side * (width * 0.42 + middle * math.sin(lean))
        places[bead] = (x, depth + middle * math.cos(lean), side * LEAN)
        out += size[bead][1]
    return places


def _lay(work: Work, part: int, hook: Hook, words: Words, places: list[Placed]) -> list[int]:
    """Beads at these places, right and down from the hook (or up, where the strands stand)."""
    if hook.end is End.TOP:
        places = upside_down(places, 0.0)
    x, y = hook.point
    spots = zip(words.letters, words.spots, strict=True)
    return [
        work.lay(part, hook.number, place, spot, (x + right, y + down, angle % 360.0))
        for place, (spot, (right, down, angle)) in enumerate(zip(spots, places, strict=True), 1)
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
    touches = [last, *beads]
    chords = [
        (sum(one) + sum(other)) / 4 for one, other in zip(touches, [*touches[1:], touches[0]], strict=True)
    ]
    radius = _ring_radius(chords)
    places = []
    turn = 0.0
    for chord in chords[:-1]:
        turn += 2 * math.asin(min(1.0, chord / (2 * radius)))
        right, up = -radius * math.sin(turn), radius * math.cos(turn)
        places.append((right, radius - last[1] / 2 - up, math.degrees(turn) - 90.0))
    return places


def _ring_radius(chords: Sequence[float]) -> float:
    """The radius of the circle on which points so far apart, one after the other, close up."""
    low, high = max(chords) / 2, sum(chords)
    for _ in range(50):
        middle = (low + high) / 2
        if sum(2 * math.asin(min(1.0, chord / (2 * middle))) for chord in chords) > 2 * math.pi:
            low = middle
        else:
            high = middle
    return high


def _thread_strand(work: Work, strand: _Strand, hook: Hook, following: Hook | None, edge: Edge) -> None:
    """Down the trunk, round the turn, back up with each branch on the way, and on to the next place."""
    trunk, turn = strand.trunk, strand.turn
    hook.go_out(work)
    for bead in trunk:
        work.pick(bead, End.TOP)
    stops = [*(above for above, _ in strand.branches), 0]
    back = trunk[stops[0] : len(trunk) - turn]
    for bead in reversed(back):
        work.through(bead, End.BOTTOM)
    values: dict[str, object] = {"count": turn, "back": len(back), "number": hook.number}
    if not strand.branches:
        hook.come_in(work)
        hook.go_on(work, edge, following)
        last = "-last" if hook.closes(following) else ""
        key = f"strand-bridge{last}" if hook.bridge else f"strand{last}"
        if hook.leave is not None:
            key = f"strand-across{last}"
            values["way"] = to(edge.view, hook.leave.other)
        said = [Phrase(key, values), *hook.on_phrases(following, edge)]
        work.step(hook.number, "strand", tuple(said), turned=edge.view.turned, rest=True)
        return
    phrases = (Phrase("strand-under", values),) if hook.bridge else ()
    phrases = (*phrases, Phrase("strand-branched", values))
    work.step(hook.number, "strand", phrases, turned=edge.view.turned)
    for (above, branch), stop in zip(strand.branches, stops[1:], strict=True):
        for bead in branch:
            work.pick(bead, End.TOP)
        for bead in reversed(branch[:-1]):
            work.through(bead, End.BOTTOM)
        for bead in reversed(trunk[stop:above]):
            work.through(bead, End.BOTTOM)
        said = [Phrase("branch", {"count": len(branch) - 1})]
        if above > stop:
            said.append(Phrase("branch-up", {"count": above - stop}))
        if not stop:
            hook.come_in(work)
            hook.go_on(work, edge, following)
            said += hold_phrases(hook, following, edge)
        work.step(hook.number, "branch", tuple(said), turned=edge.view.turned, rest=not stop)


def hold_phrases(hook: Hook, following: Hook | None, edge: Edge) -> tuple[Phrase, ...]:
    """How a strand that came back to its own place is secured, in words, and the way to the next place."""
    last = "-last" if hook.closes(following) else ""
    if hook.leave is not None:
        values = {"way": to(edge.view, hook.leave.other)}
        return Phrase(f"hold-across{last}", values), *hook.on_phrases(following, edge)
    key = f"hold-bridge{last}" if hook.bridge else f"hold{last}"
    return (Phrase(key, {"number": hook.number}),)
