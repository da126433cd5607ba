"""Strands in words -> loops, swags and picots: out at one place of an edge, in at another.

Mechanics: down out of one bead, all beads picked up, up into another bead of the edge, and down through the
next, where the following loop begins. From bridges: under one, all beads picked up, under another, where the
following loop begins. The beads of a loop hang on one pass, held at both ends. Common practice, no source.
"""

from __future__ import annotations

import math

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Words
from sitegen.model.thread import End, Phrase
from sitegen.weave.across import to
from sitegen.weave.curves import along, hanging_line, upside_down
from sitegen.weave.hooks import Edge, Hook, edge_of, missing_bridge, reach
from sitegen.weave.work import Work

MOTIONS = {"looped fringe": "loop", "swags": "swag", "picot edge": "picot-loop"}
"""Stitch -> what one of its strands is called as a step."""
TAUT = 1.02
"""A string must be this many times as long as the distance it spans. A judgement; no source."""


def loops_part(work: Work, part: Part) -> None:
    """Work all loops of a part, from the side nearer the thread to the other."""
    edge = edge_of(work, part)
    strands = part.all_strands
    pitch = work.parts[edge.source].bead_pitch
    lines = "edging" if part.stitch == "picot edge" else "loops"
    index = work.begin_part(part, len(strands), 0.0, pitch, lines=lines)
    if missing_bridge(work, part, edge) or not reach(work, part, edge, edge.hooks[0], 0):
        return
    pairs = _pairs(part, edge)
    if pairs[0][0].bridge:
        pairs[0][0].go_out(work)
    order = strands if edge.rightward else strands[::-1]
    for number, ((one, other), words) in enumerate(zip(pairs, order, strict=True), start=1):
        following = pairs[number][0] if number < len(pairs) else None
        beads = _lay_loop(work, (index, number), words, (one, other), edge)
        if not beads:
            return
        enter = End.TOP if edge.rightward else End.BOTTOM
        for bead in beads if edge.rightward else beads[::-1]:
            work.pick(bead, enter)
        other.come_in(work)
        other.go_on(work, edge, following)
        motion = MOTIONS[part.stitch]
        values: dict[str, object] = {"places": other.number - one.number, "bridge": other.number}
        values |= {"first": one.number, "way": to(edge.view, other.mouth.other)}
        phrases: tuple[Phrase, ...] = (Phrase(_key(motion, one, other, following), values),)
        phrases += other.on_phrases(following, edge)
        if other.bridge:
            phrases = _over_bridges(values, first=number == 1, last=following is None)
        work.step(number, motion, phrases, turned=edge.view.turned, rest=True)


def _over_bridges(values: dict[str, object], *, first: bool, last: bool) -> tuple[Phrase, ...]:
    """A loop from bridge to bridge, in words."""
    said = [Phrase("strand-under", {"number": values["first"]})] if first else []
    said.append(Phrase("loop-bridge", values))
    if last:
        said.append(Phrase("loop-bridge-last"))
    return tuple(said)


def _key(motion: str, one: Hook, other: Hook, following: Hook | None) -> str:
    """How a loop from bead to bead is closed, in words."""
    key = "loop" if other.number - one.number == 1 else "swag"
    key = motion if motion == "picot-loop" else key
    if other.leave is not None:
        key = f"{key}-across"
    return f"{key}-last" if other.closes(following) else key


def _pairs(part: Part, edge: Edge) -> list[tuple[Hook, Hook]]:
    """Where each loop begins and ends, in order of working."""
    hooks = edge.hooks
    bridges = hooks[0].bridge is not None
    count = len(part.all_strands)
    span = (len(hooks) - 1) // count if bridges else len(hooks) // count - 1
    step = span if bridges else span + 1
    return [(hooks[place * step], hooks[place * step + span]) for place in range(count)]


def _lay_loop(
    work: Work, where: tuple[int, int], words: Words, pair: tuple[Hook, Hook], edge: Edge
) -> list[int]:
    """Lay one loop's beads from left to right; [] with a problem noted where they do not reach."""
    part, number = where
    one, other = (hook.point for hook in (pair if edge.rightward else pair[::-1]))
    kinds = [work.kind(letter) for letter in words.letters]
    lengths = [kind.length_mm for kind in kinds]
    apart, whole = math.dist(one, other), sum(lengths)
    if whole < TAUT * apart:
        values = {"mm": round(whole, 1), "apart": round(apart, 1)}
        work.problems.append(Problem("weave-swag-short", words.where, values))
        return []
    places = along(hanging_line(one, other, whole, max(kind.width_mm for kind in kinds)), lengths)
    if edge.end is End.TOP:
        places = upside_down(places, one[1])
    spots = zip(words.letters, words.spots, strict=True)
    return [
        work.lay(part, number, place, spot, at)
        for place, (spot, at) in enumerate(zip(spots, places, strict=True), 1)
    ]
