"""A part and the edge it is sewn to -> the places that hold its strands: bead holes or thread bridges."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Words
from sitegen.model.thread import Bridge, End, Phrase, Point
from sitegen.weave.across import lies_across, to
from sitegen.weave.teeth import behind, toothed
from sitegen.weave.travel import find_way, travel
from sitegen.weave.work import View, Work


@dataclass(frozen=True, slots=True)
class Hook:
    """One place that can hold a strand."""

    number: int
    """From 1, in order of working."""
    before: int
    """The bead whose hole it is; of a bridge, the bead on the side where the work begins."""
    end: End
    """The end of the beads' holes the strands hang at; BOTTOM for a lower edge, TOP for an upper one."""
    point: Point
    bridge: Bridge | None = None
    leave: End | None = None
    """Where the hole lies across: the end a strand begins at; it hangs under the middle of its bead."""
    on: tuple[int, ...] = ()
    """Beads of the row behind that lie between this place and the next: an edge of peyote."""

    @property
    def mouth(self) -> End:
        """The end of the hole a strand begins at."""
        return self.end if self.leave is None else self.leave

    def go_out(self, work: Work) -> None:
        """Bring the thread to where a strand begins: under the bridge; out of a bead it is already."""
        if self.bridge:
            work.under(self.bridge)

    def come_in(self, work: Work) -> None:
        """Secure the end of a strand: through the bead, or under the bridge."""
        if self.bridge:
            work.under(self.bridge)
        else:
            work.through(self.before, self.end if self.leave is None else self.leave.other)

    def go_on(self, work: Work, edge: Edge, following: Hook | None) -> None:
        """Bring the thread to the next place; after the last bridge, into the bead beyond it."""
        if following is None and self.bridge:
            work.through(edge.beads[self.number], self.end)
        elif following is not None and not self.bridge:
            for bead in (*self.on, following.before):
                work.through(bead, self.mouth.other)

    def on_phrases(self, following: Hook | None, edge: Edge) -> tuple[Phrase, ...]:
        """The way to the next place in words, where it leads through the row behind."""
        if following is None or not self.on:
            return ()
        values = {"count": len(self.on), "way": to(edge.view, self.mouth.other)}
        return (Phrase("edge-on", values),)

    def closes(self, following: Hook | None) -> bool:
        """Whether the words for a strand held in a bead stop there, without the way to the next place."""
        return following is None or bool(self.on)


@dataclass(frozen=True, slots=True)
class Edge:
    """The row a part is sewn to, in order of working."""

    beads: tuple[int, ...]
    hooks: tuple[Hook, ...]
    end: End
    view: View
    rightward: bool
    """Whether the work goes to the right, as the piece hangs."""
    source: int
    """The part it belongs to."""


HungStrand = tuple[Hook, Words, Hook | None]
"""Where a strand hangs, its words, and where the next one hangs."""


def edge_of(work: Work, part: Part, usual: str = "beads") -> Edge:
    """The edge a part hangs from, worked from the side nearer the thread; `usual` is what holds strands."""
    assert part.hang is not None and part.hang.part is not None  # the check stage holds it
    source = [woven.name for woven in work.parts].index(part.hang.part)
    end = End.BOTTOM if part.hang.edge == "bottom" else End.TOP
    row = work.rows[source][-1 if end is End.BOTTOM else 0]
    rightward = not _nearer_is_right(work, row, end)
    beads = tuple(row if rightward else row[::-1])
    points = part.hang.points or usual
    hooks = _bridges(work, beads, end) if points == "bridges" else _holes(work, beads, end)
    if points == "beads" and lies_across(work, beads[0]):
        hooks = _lying(work, beads, end, rightward)
    return Edge(beads, hooks, end, View(turned=end is End.TOP), rightward, source)


def _holes(work: Work, beads: tuple[int, ...], end: End) -> tuple[Hook, ...]:
    return tuple(
        Hook(number, bead, end, work.beads[bead].mouth(end)) for number, bead in enumerate(beads, start=1)
    )


def _lying(work: Work, beads: tuple[int, ...], end: End, rightward: bool) -> tuple[Hook, ...]:
    """Under (or over) the middle of each bead: the thread leaves on the side the work goes to."""
    leave = End.BOTTOM if rightward else End.TOP
    out = 0.5 if end is End.BOTTOM else -0.5
    row = [work.beads[bead] for bead in beads]
    on = [behind(work, *pair) if toothed(work, pair[0]) else () for pair in pairwise(beads)]
    return tuple(
        Hook(number, index, end, (bead.x, bead.y + out * bead.width), leave=leave, on=between)
        for number, (index, bead, between) in enumerate(zip(beads, row, [*on, ()], strict=True), start=1)
    )


def _bridges(work: Work, beads: tuple[int, ...], end: End) -> tuple[Hook, ...]:
    hooks = []
    for number, (one, other) in enumerate(pairwise(beads), start=1):
        a, b = work.beads[one].mouth(end), work.beads[other].mouth(end)
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        hooks.append(Hook(number, one, end, middle, work.bridge(one, other, end)))
    return tuple(hooks)


def _nearer_is_right(work: Work, row: list[int], end: End) -> bool:
    """Whether the right end of the hanging row is fewer passes away than the left."""
    ends = (End.BOTTOM, End.TOP) if lies_across(work, row[0]) else (end, end)
    ways = [find_way(work, {spot}) for spot in zip((row[0], row[-1]), ends, strict=True)]
    left, right = (math.inf if way is None else len(way) for way in ways)
    return right < left


def reach(work: Work, part: Part, edge: Edge, hook: Hook, row: int) -> bool:
    """Bring the thread out of the bead at a hook; False with a problem noted where there is no way."""
    if not travel(work, {(hook.before, hook.mouth)}, row, edge.view):
        where = part.strands[0].where
        work.problems.append(Problem("weave-no-way", where, {"row": max(1, row)}))
        return False
    return True


def open_strands(work: Work, part: Part) -> tuple[Edge, int, list[HungStrand]] | None:
    """Begin a part of strands and bring the thread to the first: the edge, the part's index, and the strands
    in order of working; None, with a problem noted, where the edge or the way to it is missing.
    """
    edge = edge_of(work, part)
    strands = part.all_strands if edge.rightward else part.all_strands[::-1]
    pitch = work.parts[edge.source].bead_pitch
    index = work.begin_part(part, len(strands), 0.0, pitch, lines="strands")
    if missing_bridge(work, part, edge) or not reach(work, part, edge, edge.hooks[0], 0):
        return None
    return edge, index, list(zip(edge.hooks, strands, (*edge.hooks[1:], None), strict=True))


def missing_bridge(work: Work, part: Part, edge: Edge) -> bool:
    """Whether an edge that should have bridges lacks one; a problem is noted then."""
    lacking = [hook for hook in edge.hooks if hook.bridge and hook.bridge not in work.bridges]
    if lacking:
        assert part.hang is not None
        values = {"part": part.hang.part, "bead": lacking[0].number, "after": lacking[0].number + 1}
        work.problems.append(Problem("weave-no-bridge", part.strands[0].where, values))
    return bool(lacking)
