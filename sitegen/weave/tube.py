"""Unrolled charts -> tubular peyote, brick and herringbone, laid flat: x begins anew after the circumference.

Worked towards the maker's right. Brick and herringbone start from a ladder joined into a ring, peyote from
its first two rounds strung as one ring. Herringbone: up through the first bead of a pair, pick up two, down
through the second, up through the first bead of the next pair; at the end of the round up through the first
new bead as well. Passes: 2 for every bead of a peyote or herringbone round but its first, which has 3.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase
from sitegen.weave.brick_round import BrickRound, bridges_of
from sitegen.weave.circle import hang_at_seam
from sitegen.weave.grid import working_order
from sitegen.weave.ladder import ladder_row
from sitegen.weave.peyote_round import firm, peyote_round, string_ring
from sitegen.weave.work import View, Work

TILT = 15.0
"""Degrees the beads of a herringbone pair lean towards each other. From memory; no source."""


@dataclass(frozen=True, slots=True)
class _Lie:
    """How the beads of a tube lie."""

    column_mm: float
    """From one text column to the next."""
    row_mm: float
    angle: float
    """Degrees; in herringbone of the second bead of a pair, the first leans the other way."""


@dataclass(frozen=True, slots=True)
class _Tube:
    """A tube whose beads have their places but no thread yet."""

    part: int
    rounds: list[list[int]]
    """In order of working; each from the maker's left."""
    columns: dict[int, int]
    """Bead -> its text column, counted from the maker's left."""
    around: int
    """Text columns once round."""
    view: View

    @property
    def ahead(self) -> End:
        """The end of a hole lying across at which the needle goes in towards the maker's right."""
        return self.view.up

    def from_bead(self, ring: Sequence[int], column: int) -> list[int]:
        """A round, begun at the first bead in or after this column."""
        start = min(ring, key=lambda bead: (self.columns[bead] - column) % self.around)
        place = ring.index(start)
        return [*ring[place:], *ring[:place]]


def tubular_peyote_part(work: Work, part: Part) -> None:
    """Even-count tubular peyote: the first two rounds strung as one ring, then round by round."""
    width, length = _size(work, part)
    tube = _lay(work, part, _pitch(work, part, _Lie(length, width / 2, 90.0)))
    view, enter = tube.view, tube.ahead
    first, second = tube.rounds[0], tube.rounds[1]
    ring = sorted((*first, *second), key=lambda bead: tube.columns[bead])
    extra = 1 if ring[0] in second else 2
    string_ring(work, ring, enter, extra, view, rises=True)
    here = ring[extra - 1]
    for number, (below, new) in enumerate(pairwise(tube.rounds[1:]), start=3):
        ahead = tube.from_bead(below, tube.columns[here] + 1)
        filled = [[bead] for bead in tube.from_bead(new, tube.columns[here])]
        peyote_round(work, number, ahead, filled, enter, view)
        here = filled[0][0]
        if number == len(tube.rounds):
            firm(work, ahead, filled, enter, number, view)


def tubular_brick_part(work: Work, part: Part) -> None:
    """Brick rounds, all of the same count, on a ladder joined into a ring."""
    width, length = _size(work, part)
    tube = _lay(work, part, _pitch(work, part, _Lie(width / 2, length, 0.0)))
    below = _ladder_ring(work, tube, reinforce=part.reinforce)
    for number, row in enumerate(tube.rounds[1:], start=2):
        new = tube.from_bead(row, tube.columns[below[0]] - 1)
        holds = bridges_of(below, tube.view)
        BrickRound(work, number, new, holds, range(len(new)), "tube", tube.view).stitch()
        below = new
    hang_at_seam(work, part, tube.part, below, tube.view, "tube")


def tubular_herringbone_part(work: Work, part: Part) -> None:
    """Herringbone rounds, all of the same even count, on a ladder joined into a ring."""
    width, length = _size(work, part)
    tube = _lay(work, part, _pitch(work, part, _Lie(width, length, TILT)))
    below = _ladder_ring(work, tube, reinforce=True)
    for number, new in enumerate(tube.rounds[1:], start=2):
        _herringbone_round(work, number, below, new, tube.view)
        below = new
    up, down = tube.view.down, tube.view.up
    for place, bead in enumerate((*below[1:], below[0])):
        work.through(bead, up if place % 2 else down)
    phrase = Phrase("stack-firm")
    work.step(len(tube.rounds), "stack-firm", (phrase,), turned=tube.view.turned, rest=True)


def _herringbone_round(work: Work, number: int, below: Sequence[int], new: Sequence[int], view: View) -> None:
    for place in range(0, len(new), 2):
        work.pick(new[place], view.down)
        work.pick(new[place + 1], view.up)
        work.through(below[place + 1], view.up)
        work.through(below[(place + 2) % len(below)], view.down)
        work.step(number, "stack-pair", (Phrase("stack-pair"),), turned=view.turned)
    work.through(new[0], view.down)
    work.step(number, "stack-up", (Phrase("stack-up"),), turned=view.turned, rest=True)


def _ladder_ring(work: Work, tube: _Tube, *, reinforce: bool) -> list[int]:
    """The first round as a ladder with its ends joined; -> its beads from the one the thread comes out of."""
    row, view = tube.rounds[0], tube.view
    ladder_row(work, row, view, reinforce=reinforce)
    assert work.here is not None
    here = work.here[0]
    other = row[-1] if here == row[0] else row[0]
    work.through(other, view.up)
    work.through(here, view.down)
    work.step(1, "ladder-ring", (Phrase("ladder-ring"),), turned=view.turned, rest=True)
    return tube.from_bead(row, tube.columns[here])


def _size(work: Work, part: Part) -> tuple[float, float]:
    """The widest and the longest bead."""
    kinds = [work.kind(letter) for row in part.all_rows for _, letter in row.cells]
    return max(kind.width_mm for kind in kinds), max(kind.length_mm for kind in kinds)


def _pitch(work: Work, part: Part, lie: _Lie) -> _Lie:
    """The same, with the author's gauge if there is one."""
    gauge = part.gauge or work.pattern.gauge
    if gauge is None:
        return lie
    share = 0.5 if part.stitch == "tubular brick" else 1.0
    return _Lie(gauge.width_mm / gauge.beads * share, gauge.height_mm / gauge.rows, lie.angle)


def _lay(work: Work, part: Part, lie: _Lie) -> _Tube:
    rows = part.all_rows
    order = working_order(part.begin, len(rows))
    first = min(row.cells[0][0] for row in rows)
    staggered = part.stitch != "tubular herringbone"
    count = len(rows[0].cells) * (2 if staggered else 1)
    around = count * lie.column_mm
    width, _ = _size(work, part)
    pitch = lie.column_mm * (2 if staggered else 1)
    index = work.begin_part(part, len(rows), lie.row_mm, pitch, lines="rounds")
    work.tube(around, around / math.pi + width)
    view = View(turned=part.begin == "top" and len(rows) > 1)
    number = {row: place + 1 for place, row in enumerate(order)}
    columns: dict[int, int] = {}
    for chart_row, row in enumerate(rows):
        beads = []
        for cell, (column, letter) in enumerate(row.cells):
            place = column - first if staggered else cell
            angle = lie.angle if lie.angle != TILT else _lean(number[chart_row], place + view.turned)
            at = (place * lie.column_mm, (chart_row + 0.5) * lie.row_mm, angle)
            bead = work.lay(index, number[chart_row], cell + 1, (letter, row.spot(cell)), at)
            columns[bead] = count - 1 - place if view.turned else place
            work.seats[bead] = chart_row
            beads.append(bead)
        work.rows[index].append(beads)
    rounds = [view.from_left(work.rows[index][row]) for row in order]
    return _Tube(index, rounds, columns, count, view)


def _lean(number: int, place: int) -> float:
    """Herringbone beads lean towards their partner, but for those of the ladder."""
    if number == 1:
        return 0.0
    return 360.0 - TILT if place % 2 == 0 else TILT
