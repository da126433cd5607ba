"""A peyote chart -> its beads laid in a lattice, and the shortest ways of a thread through them.

A unit is what one stitch adds: a bead, or two side by side in two-drop. Units stand in columns; each row
stands half a bead beside the next. Holes lie across: a thread goes to the right (1) or to the left (-1).
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from sitegen.model.source import Part
from sitegen.model.thread import Bridge, End, Phrase
from sitegen.weave.grid import working_order
from sitegen.weave.work import Work

ACROSS = 90.0
"""The angle of a hole that lies across."""
PASS_COST = 0.05
"""Millimetres added for each pass a unit already has. A judgement; no source, like the two below."""
CATCH_COST = 1.0
"""For turning round the thread at an edge, mm: easier for a maker than a way of more than one bead."""
BARE_COST = 9.0
"""For thread that would lie along the outside of a bead, mm: only where there is no other way."""

Place = tuple[int, int]
"""Column and chart row (from the top) of a unit."""
Spot = tuple[int, int, int]
"""Column and chart row of the unit the thread comes out of, and the way it comes out: 1 right, -1 left."""


@dataclass(frozen=True, slots=True)
class Leg:
    """One unit on the way, perhaps after catching the thread at the edge."""

    spot: Spot
    catch: Bridge | None = None
    rounds: bool = False
    """Not a whole unit: round its last bead, and back through its others."""


class Lattice:
    """The units of one part, where the thread is among them, and the threads lying at the edges."""

    def __init__(self, work: Work, part: Part) -> None:
        self.work = work
        self.part = work.begin_part(part, len(part.all_rows), *_pitches(work, part))
        self.order = working_order(part.begin, len(part.all_rows))
        self.number = {row: index + 1 for index, row in enumerate(self.order)}
        """Chart row -> its number in order of working."""
        self.drop = part.drop
        self.units: dict[Place, tuple[int, ...]] = {}
        self.row_of: dict[int, list[int]] = {}
        """Chart row -> columns of its units, from the left."""
        self.picked: set[Place] = set()
        self.single: dict[Place, None] = {}
        """Units on one pass, in order of picking up."""
        self.here: Spot = (0, 0, 0)
        self.edges: dict[Spot, dict[int, Bridge]] = {}
        """Unit and side -> chart row of the unit above or below -> the thread lying between the two."""
        self.around = 0
        """Rows after which a strip begins anew; 0 until it is zipped."""
        if part.zip:
            woven = work.parts[self.part]
            work.parts[self.part] = replace(woven, zipped_mm=woven.rows * woven.row_pitch)
        self._lay(part)

    def _lay(self, part: Part) -> None:
        rows = part.all_rows
        first = min(row.cells[0][0] for row in rows)
        woven = self.work.parts[self.part]
        for chart_row, row in enumerate(rows):
            beads: list[int] = []
            for cell, (column, letter) in enumerate(row.cells):
                at = ((column - first) * woven.bead_pitch, chart_row * woven.row_pitch, ACROSS)
                spot = (letter, row.spot(cell))
                bead = self.work.lay(self.part, self.number[chart_row], cell + 1, spot, at)
                self.work.seats[bead] = chart_row
                beads.append(bead)
                place = ((column - first) // self.drop, chart_row)
                self.units[place] = (*self.units.get(place, ()), bead)
            self.work.rows[self.part].append(beads)
            self.row_of[chart_row] = sorted({(column - first) // self.drop for column, _ in row.cells})

    def at(self, column: int, row: int) -> Place:
        """The place of a column and row; beyond the last row of a zipped strip lies its first."""
        return column, row % self.around if self.around else row

    def has(self, column: int, row: int) -> bool:
        """Whether the chart has a unit there."""
        return self.at(column, row) in self.units

    def made(self, column: int, row: int) -> bool:
        """Whether a unit is there already."""
        return self.at(column, row) in self.picked

    def go(self, column: int, row: int, heading: int) -> None:
        """Pass through a unit, or pick it up if it is not there yet."""
        place = self.at(column, row)
        self._turned(place, heading)
        for bead in self.units[place][::heading]:
            enter = End.TOP if heading > 0 else End.BOTTOM
            if place in self.picked:
                self.work.through(bead, enter)
            else:
                self.work.pick(bead, enter)
        if place in self.picked:
            self.single.pop(place, None)
        else:
            self.single[place] = None
        self.picked.add(place)
        self.here = (*place, heading)

    def back_round(self, heading: int) -> None:
        """Skip the last bead and go back through the rest of its unit, if there is any."""
        place = self.here[:2]
        for bead in self.units[place][::heading][1:]:
            self.work.through(bead, End.TOP if heading > 0 else End.BOTTOM)
        self.here = (*place, heading)

    def _turned(self, place: Place, heading: int) -> None:
        """Note the thread that a turn lays at an edge."""
        column, row, out = self.here
        if out != -heading or column != place[0] or row == place[1]:
            return
        end = End.BOTTOM if out > 0 else End.TOP
        outer = -1 if out > 0 else 0
        bridge = Bridge(self.units[(column, row)][outer], self.units[place][outer], end)
        self.edges.setdefault((column, row, out), {})[place[1]] = bridge
        self.edges.setdefault((*place, out), {})[row] = bridge

    def follow(self, legs: list[Leg]) -> None:
        """Go a way."""
        for leg in legs:
            if leg.catch is not None:
                self.work.under(leg.catch)
                self.here = (0, 0, 0)
            if leg.rounds:
                self.back_round(leg.spot[2])
            else:
                self.go(*leg.spot)

    def find_way(self, goals: set[Spot], *, whole: bool = False) -> list[Leg] | None:
        """The cheapest way from where the thread is to any of the goals; None if there is none.

        `whole`: the goal must be gone through whole, not by a turn round one bead of several.
        """
        best: dict[Spot, float] = {self.here: 0.0}
        came: dict[Spot, tuple[Spot, Leg]] = {}
        begin, _, ahead = self.here
        queue: list[tuple[float, Spot, Spot]] = [(0.0, self.here, self.here)]
        while queue:
            cost, _, spot = heapq.heappop(queue)
            if spot in goals:
                return _trace(came, self.here, spot)
            if cost > best[spot]:
                continue
            for leg, extra in self._legs(spot):
                if whole and leg.rounds and leg.spot in goals:
                    continue
                total = cost + extra
                if total < best.get(leg.spot, math.inf) - 1e-9:
                    best[leg.spot] = total
                    came[leg.spot] = (spot, leg)
                    column, row, heading = leg.spot
                    seen = ((column - begin) * ahead, row, heading * ahead)  # ties go alike in a mirror
                    heapq.heappush(queue, (total, seen, leg.spot))
        return None

    def _legs(self, spot: Spot) -> Iterator[tuple[Leg, float]]:
        """Straight on; back above or below; round the thread at the edge; along the side of a bead."""
        column, row, heading = spot
        for aside in (-1, 1):
            if self.made(column + heading, row + aside):
                yield self._leg(column + heading, row + aside, heading, 0.0)
        for away in (-2, 2):
            if self.made(column, row + away):
                hidden = self.made(column + heading, row + away // 2)
                yield self._leg(column, row + away, -heading, 1.0 if hidden else 2.0)
        for bridge in list(self.edges.get(spot, {}).values())[:1]:
            leg, cost = self._leg(column, row, -heading, CATCH_COST)
            yield Leg(leg.spot, bridge), cost
        if self.drop > 1:
            yield Leg((column, row, -heading), rounds=True), BARE_COST
        for aside in (-1, 1) if self.drop == 1 else ():
            for beside in (column - heading, column + heading):
                if self.made(beside, row + aside):
                    yield self._leg(beside, row + aside, -heading, BARE_COST)

    def _leg(self, column: int, row: int, heading: int, extra: float) -> tuple[Leg, float]:
        place = self.at(column, row)
        beads = self.units[place]
        length = sum(self.work.beads[bead].length for bead in beads)
        return Leg((*place, heading)), length + extra + PASS_COST * max(
            self.work.passes[bead] for bead in beads
        )

    def weave(self, goals: set[Spot], row: int, *, whole: bool = False) -> bool:
        """Bring the thread to one of the goals as a step of its own; False if no way exists."""
        legs = self.find_way(goals, whole=whole)
        if legs is None:
            return False
        if legs:
            phrases = self._phrases(legs)
            self.follow(legs)
            self.work.step(row, "travel", phrases)
        return True

    def _phrases(self, legs: list[Leg]) -> tuple[Phrase, ...]:
        """A way in words: what goes in one direction is one sentence."""
        phrases = []
        run: list[Leg] = []
        for leg, following in zip(legs, [*legs[1:], None], strict=True):
            run.append(leg)
            if following is None or following.catch or following.rounds or following.spot[2] != leg.spot[2]:
                key = "peyote-catch" if run[0].catch else "peyote-round" if run[0].rounds else "peyote-way"
                count = len(run) * self.drop - run[0].rounds
                phrases.append(Phrase(key, {"count": count, **self.named(leg.spot)}))
                run = []
        return tuple(phrases)

    def named(self, spot: Spot) -> dict[str, object]:
        """The bead the thread leaves a unit by, in words: row, place from the nearer side, and which way."""
        column, row, heading = spot
        columns = self.row_of[row]
        left = columns.index(column) * self.drop + (self.drop if heading > 0 else 1)
        right = len(columns) * self.drop + 1 - left
        side, place = ("left", left) if left <= right else ("right", right)
        number = self.work.beads[self.units[(column, row)][0]].row
        return {"row": number, "side": side, "place": place, "way": "right" if heading > 0 else "left"}


def _pitches(work: Work, part: Part) -> tuple[float, float]:
    """From row to row (half a diameter) and from column to column (a length), mm.

    The author's gauge counts beads of both rows that lie beside each other, and rows zig-zag.
    """
    gauge = part.gauge or work.pattern.gauge
    if gauge:
        return gauge.height_mm / gauge.rows, gauge.width_mm / gauge.beads
    kinds = [work.kind(letter) for row in part.all_rows for _, letter in row.cells]
    return max(kind.width_mm for kind in kinds) / 2, max(kind.length_mm for kind in kinds)


def _trace(came: dict[Spot, tuple[Spot, Leg]], start: Spot, goal: Spot) -> list[Leg]:
    legs: list[Leg] = []
    spot = goal
    while spot != start:
        spot, leg = came[spot]
        legs.append(leg)
    return legs[::-1]
