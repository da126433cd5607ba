"""Beads in words and the row they cover -> beads sewn on top of the gaps between the row's beads.

Mechanics: out of one bead of the row, one bead picked up, into the next bead of the row; the new bead settles
in the gap, on top of the work. Upright beads are passed up and down by turns, lying ones straight on. Common
practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Words
from sitegen.model.thread import End, Phrase
from sitegen.weave.travel import find_way, travel
from sitegen.weave.work import View, Work


def ditch_part(work: Work, part: Part) -> None:
    """Sew the beads of each strand over the gaps of one row, beginning with the row named."""
    assert part.over is not None  # the check stage holds it
    source = [woven.name for woven in work.parts].index(part.over.part)
    rows = work.rows[source][part.over.row - 1 : part.over.row - 1 + len(part.strands)]
    pitch = work.parts[source].bead_pitch
    index = work.begin_part(part, len(rows), work.parts[source].row_pitch, pitch, lines="edging")
    for row, words in zip(rows, part.strands, strict=True):
        number = work.beads[row[0]].row
        if not _cover(work, index, number, row, words):
            work.problems.append(Problem("weave-no-way", words.where, {"row": number}))
            return


def _cover(work: Work, part: int, number: int, row: list[int], words: Words) -> bool:
    """One row, from the side nearer the thread; False where the thread cannot get there."""
    starts = _starts(work, row)
    best = min(starts, key=lambda start: _far(work, start[0]))
    if math.isinf(_far(work, best[0])):
        return False
    (first, end), beads = best
    view = View()
    travel(work, {(first, end)}, number, view)
    for gap, (one, other) in enumerate(pairwise(beads)):
        assert work.here is not None
        end = work.here[1]
        upright = work.beads[one].angle % 180 == 0
        enter = end if upright else end.other
        place = gap if beads[0] == row[0] else len(words.letters) - 1 - gap
        bead = _lay(work, (part, number, place + 1), words, (one, other), end)
        rightward = work.beads[other].x > work.beads[one].x
        work.pick(bead, End.TOP if rightward else End.BOTTOM)
        work.through(other, enter)
        last = gap == len(beads) - 2
        key = "ditch-up" if upright else "ditch"
        work.step(number, key, (Phrase(key, {"way": view.way(enter)}),), rest=last)
    return True


def _starts(work: Work, row: list[int]) -> list[tuple[tuple[int, End], list[int]]]:
    """Where the thread may come out to begin, each with the row in that order of working."""
    if work.beads[row[0]].angle % 180 == 0:
        ends: tuple[tuple[int, End], ...] = tuple((bead, end) for bead in (row[0], row[-1]) for end in End)
    else:
        ends = ((row[0], End.BOTTOM), (row[-1], End.TOP))
    return [((bead, end), row if bead == row[0] else row[::-1]) for bead, end in ends]


def _far(work: Work, spot: tuple[int, End]) -> float:
    way = find_way(work, {spot})
    return math.inf if way is None else float(len(way))


def _lay(work: Work, where: tuple[int, int, int], words: Words, gap: tuple[int, int], end: End) -> int:
    """A bead over the gap, between the mouths the thread leaves and enters, its hole along the row."""
    part, number, place = where
    one, other = (work.beads[bead] for bead in gap)
    a, b = one.mouth(end), other.mouth(end if one.angle % 180 == 0 else end.other)
    spot = (words.letters[place - 1], words.spots[place - 1])
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, 90.0)
    bead = work.lay(part, number, place, spot, middle)
    work.beads[bead] = replace(work.beads[bead], front=1)
    return bead
