"""Strands in words -> twisted fringe: down one leg, round the foot, up the other, the two plied together.

Mechanics: down out of the hanging bead, both legs with the turn beads between them picked up, the thread
rolled between finger and thumb until the legs wrap round each other, up through the same bead and into the
next one. Common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import replace

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Words
from sitegen.model.thread import End, Phrase
from sitegen.weave.curves import Placed, upside_down
from sitegen.weave.fringe import hold_phrases, turn_places
from sitegen.weave.hooks import Hook, open_strands
from sitegen.weave.work import Work

TURN_WIDTHS = 6.0
"""A usual twist turns once in this many bead widths of a leg. A judgement; no source."""
STEEPEST = 0.7
"""A plied strand is at least this share as long as its legs; more twist makes it kink. Own judgement."""


def twisted_part(work: Work, part: Part) -> None:
    """Work all twisted strands, from the side nearer the thread to the other."""
    opened = open_strands(work, part)
    if opened is None:
        return
    edge, index, hung = opened
    for number, (hook, words, following) in enumerate(hung, start=1):
        turns = part.twist or _usual_twist(work, words, part.turn)
        side = 1.0 if edge.rightward else -1.0
        beads = _lay_plied(work, (index, hook, side), words, part.turn, turns)
        if not beads:
            return
        hook.go_out(work)
        for bead in beads:
            work.pick(bead, End.TOP)
        hook.come_in(work)
        hook.go_on(work, edge, following)
        phrases = (Phrase("twist", {"count": turns}), *hold_phrases(hook, following, edge))
        if hook.bridge:
            phrases = (Phrase("strand-under", {"number": hook.number}), *phrases)
        work.step(number, "twist", phrases, turned=edge.view.turned, rest=True)


def _leg(words: Words, turn: int) -> int:
    """Beads of one leg; the check stage holds that both are alike."""
    return (len(words.letters) - turn) // 2


def _usual_twist(work: Work, words: Words, turn: int) -> int:
    kinds = [work.kind(letter) for letter in words.letters[: _leg(words, turn)]]
    length = sum(kind.length_mm for kind in kinds)
    return max(1, round(length / (TURN_WIDTHS * max(kind.width_mm for kind in kinds))))


def _lay_plied(work: Work, where: tuple[int, Hook, float], words: Words, turn: int, turns: int) -> list[int]:
    """Lay both legs as a rope of two; [] with a problem noted where the twist is too tight.

    The first leg begins on the side the work comes from: left of the hook where it goes to the right.
    """
    part, hook, side = where
    leg = _leg(words, turn)
    sizes = [(work.kind(letter).width_mm, work.kind(letter).length_mm) for letter in words.letters]
    legs = (sizes[:leg], sizes[: -leg - 1 : -1])
    radius = max(size[0] for size in sizes[:leg]) / 2
    rise = [_rise(sum(size[1] for size in beads), radius, turns) for beads in legs]
    if min(rise) < STEEPEST:
        values = {"turns": turns, "most": _most(sum(size[1] for size in sizes[:leg]), radius)}
        work.problems.append(Problem("weave-twist-tight", words.where, values))
        return []
    down = _plied(legs[0], radius, (rise[0], turns), -1.0)
    up = [
        ((x, y, angle + 180.0), front)
        for (x, y, angle), front in _plied(legs[1], radius, (rise[1], turns), 1.0)
    ]
    foot = max(sum(size[1] for size in legs[0]) * rise[0], sum(size[1] for size in legs[1]) * rise[1])
    tip = [((x, foot + y, angle), 0) for x, y, angle in turn_places(sizes[leg - 1], sizes[leg : leg + turn])]
    placed = [*down, *tip, *up[::-1]]
    places = [(side * x, y, side * angle) for (x, y, angle), _ in placed]
    if hook.end is End.TOP:
        places = upside_down(places, 0.0)
    beads = []
    for number, ((x, y, angle), letter) in enumerate(zip(places, words.letters, strict=True), start=1):
        at = (hook.point[0] + x, hook.point[1] + y, angle % 360.0)
        bead = work.lay(part, hook.number, number, (letter, words.spots[number - 1]), at)
        work.beads[bead] = replace(work.beads[bead], front=placed[number - 1][1])
        beads.append(bead)
    return beads


def _rise(length: float, radius: float, turns: int) -> float:
    """How far a leg hangs down for each mm of its length, when it winds so often round the other."""
    wound = 2 * math.pi * radius * turns / length
    return math.sqrt(max(0.0, 1 - wound**2))


def _most(length: float, radius: float) -> int:
    """The most turns a leg of this length takes."""
    return math.floor(length * math.sqrt(1 - STEEPEST**2) / (2 * math.pi * radius))


def _plied(
    sizes: list[tuple[float, float]], radius: float, winding: tuple[float, int], side: float
) -> list[tuple[Placed, int]]:
    """A leg from the edge down: each bead's place, and 1 where it lies before the other leg, else -1."""
    rise, turns = winding
    height = sum(size[1] for size in sizes) * rise
    placed = []
    depth = 0.0
    for _, length in sizes:
        middle = depth + length * rise / 2
        phase = 2 * math.pi * turns * middle / height
        slope = -side * radius * math.sin(phase) * 2 * math.pi * turns / height
        angle = math.degrees(math.atan2(slope, 1.0))
        front = 1 if side * math.sin(phase) > 0 else -1
        placed.append(((side * radius * math.cos(phase), middle, angle), front))
        depth += length * rise
    return placed
