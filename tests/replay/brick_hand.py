"""Printed rows of ladder, brick and fringe -> beads on the table: the hand that follows them.

It knows which bead its thread comes out of and at which end, that a bead sewn to a bridge sits over its
middle, that a row goes on away from its start, and left from right. Beads lie at half places across and rows
upward; turning the work turns all of it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from tests.replay.hand import ORDINALS, Row

Found = Mapping[str, str]
UP, DOWN = 1, -1
WAY = {"up": UP, "down": DOWN}


@dataclass(eq=False)
class Lying:
    """A bead on the table."""

    letter: str
    x: int
    y: int


@dataclass
class Hand:
    """The work and the thread."""

    rows: dict[tuple[str, int], list[Lying]] = field(default_factory=dict)
    strands: dict[tuple[str, int], list[str]] = field(default_factory=dict)
    at: Lying | None = None
    """The bead the thread comes out of ..."""
    way: int = UP
    """... and whether at its top or its bottom."""
    base: list[Lying] = field(default_factory=list)
    """The row that is stitched on."""
    bridge: int = 0
    """The bridge last used, counted from the side the row starts at, from 0."""
    sign: int = 1
    """1 where the row goes to the right."""
    turned: bool = False
    resume: tuple[Lying, int] | None = None
    begun: tuple[Lying, int] | None = None
    """The first bead, and the end its tail hangs out of."""
    woven_in: list[str] = field(default_factory=list)

    def row(self, row: Row) -> list[Lying]:
        """The row a label names."""
        found = re.match(r"Row (\d+)", row.label)
        assert found, row.label
        return self.rows.setdefault((row.part, int(found[1])), [])

    def from_left(self, part: str, number: int) -> list[Lying]:
        return sorted(self.rows[part, number], key=lambda bead: bead.x)

    def add(self, row: Row, x: int, y: int) -> Lying:
        bead = Lying(row.letters.pop(0), x, y)
        assert all((lying.x, lying.y) != (x, y) for beads in self.rows.values() for lying in beads)
        self.row(row).append(bead)
        return bead

    def come_out(self, bead: Lying, way: int) -> None:
        self.at, self.way = bead, way

    # Ladder

    def ladder_first(self, row: Row, found: Found) -> None:
        first, second = self.add(row, 0, 0), self.add(row, 2, 0)
        self.begun = (first, -WAY[found["first"]])
        self.come_out(second, WAY[found["second"]])

    def ladder_single(self, row: Row, found: Found) -> None:
        del found
        bead = self.add(row, 0, 0)
        self.begun = (bead, DOWN)
        self.come_out(bead, UP)

    def ladder_next(self, row: Row, found: Found) -> None:
        assert self.at is not None
        for _ in range(int(found.get("count") or 1)):
            bead = self.add(row, self.at.x + 2 * self._onward(row), self.at.y)
            self.come_out(bead, -self.way)

    def _onward(self, row: Row) -> int:
        """Away from the beads the row has already."""
        assert self.at is not None
        others = [bead.x for bead in self.row(row) if bead is not self.at]
        return 1 if not others or others[0] < self.at.x else -1

    def ladder_back(self, row: Row, found: Found) -> None:
        beads = self.row(row)
        assert int(found.get("count") or 1) == len(beads) - 1
        assert WAY[found["way"]] == -self.way
        self.come_out(beads[0], UP)

    # Brick

    def brick_start(self, row: Row) -> None:
        """The thread comes out at the top of a bead of the row that is stitched on, or near its edge."""
        assert self.at is not None
        assert self.way is UP
        self.base = next(
            sorted(beads, key=lambda bead: bead.x) for beads in self.rows.values() if self.at in beads
        )
        self.sign = 1 if self.base.index(self.at) <= (len(self.base) - 1) / 2 else -1
        self.base = self.base[:: self.sign]
        self.bridge = self.base.index(self.at)

    def brick_first(self, row: Row, found: Found) -> None:
        self.brick_start(row)
        self.bridge += ORDINALS[found["bridge"]] - 1 if found.get("bridge") else -1
        self._pair_or_one(row, two="second bead" in found["rest"])

    def _pair_or_one(self, row: Row, *, two: bool) -> None:
        over = self._over()
        beads = [self.add(row, over[0] - 2 * self.sign, over[1])] if two else []
        beads.append(self.add(row, *over))
        self.come_out(beads[-1], UP)

    def _over(self) -> tuple[int, int]:
        """The place over the bridge."""
        one, other = self.base[self.bridge], self.base[self.bridge + 1]
        return (one.x + other.x) // 2, one.y + 1

    def brick_on_one(self, row: Row, found: Found) -> None:
        self.brick_start(row)
        (below,) = self.base
        self.sign = 1 if found["side"] == "left" else -1
        self.add(row, below.x - self.sign, below.y + 1)
        self.come_out(self.add(row, below.x + self.sign, below.y + 1), UP)

    def brick_next(self, row: Row, found: Found) -> None:
        for _ in range(int(found.get("count") or 1)):
            self.bridge += 1
            self.come_out(self.add(row, *self._over()), UP)

    def brick_increase(self, row: Row, found: Found) -> None:
        del found
        x, y = self._over()
        self.come_out(self.add(row, x + 2 * self.sign, y), UP)

    def stands_out(self, row: Row, found: Found) -> None:
        del found
        first = self.row(row)[0]
        assert (first.x - self.base[0].x) * self.sign < 0

    def back_down(self, row: Row, found: Found) -> None:
        del found
        self.come_out(self.row(row)[0], DOWN)

    def back_along(self, row: Row, found: Found) -> None:
        """From a bead added beyond the start back to the far side of those the row began with."""
        assert self.at is not None
        inward = sorted(self.row(row), key=lambda bead: bead.x * self.sign)
        place = inward.index(self.at) + int(found.get("count") or 1)
        ups = self.way * (-1) ** int(found.get("count") or 1)
        self.come_out(inward[place], ups)

    # Ways through beads

    def weave(self, row: Row, found: Found) -> None:
        first, last = int(found["first"]), int(found.get("last") or found["first"])
        for number in range(first, last + (1 if last >= first else -1), 1 if last >= first else -1):
            beads = self.from_left(self.body(row), number)
            place = int(found.get("place") or 1)
            bead = beads[place - 1 if found["side"] == "left" else -place]
            self.passes(bead, WAY[found["way"]])

    def body(self, row: Row) -> str:
        """Ways lead through the part that has rows."""
        return row.part if any(part == row.part for part, _ in self.rows) else next(iter(self.rows))[0]

    def passes(self, bead: Lying, way: int) -> None:
        """Go through a bead that touches the one the thread comes out of, at that end."""
        assert self.at is not None
        there = bead.y if way is self.way else bead.y - self.way
        beyond = self.at.y + self.way
        beside = bead.y == self.at.y and abs(bead.x - self.at.x) == 2 and way is not self.way
        inward = way is not self.way and abs(bead.y - self.at.y) == 1 and abs(bead.x - self.at.x) == 1
        onward = there == beyond and abs(bead.x - self.at.x) == 1
        assert beside or onward or inward, f"no thread gets from {self.at} to {bead}"
        self.come_out(bead, way)

    def turn_back(self, row: Row, found: Found) -> None:
        beads = self.from_left(self.body(row), int(found["first"]))
        place = int(found.get("place") or 1)
        bead = beads[place - 1 if found["side"] == "left" else -place]
        assert bead is self.at
        self.come_out(bead, WAY[found["way"]])

    # Findings

    def loop(self, row: Row, found: Found) -> None:
        assert self.at is not None
        bead = self.at
        if found.get("side"):
            aside = -2 if found["side"] == "left" else 2
            beads = next(beads for beads in self.rows.values() if bead in beads)
            (bead,) = [other for other in beads if other.x == bead.x + aside]
        self.come_out(bead, DOWN)
        row.marks["stop"] = (bead, DOWN)

    def again(self, row: Row, found: Found) -> None:
        del found
        self.come_out(*row.marks["stop"])

    # Strands

    def strand(self, row: Row, found: Found) -> None:
        number = re.match(r"Strand (\d+)", row.label)
        assert number
        assert self.at is not None
        assert self.way is DOWN
        assert int(found.get("count") or 1) + int(found["back"]) == len(row.letters)
        self.strands[row.part, int(number[1])] = row.letters[:]
        row.letters.clear()
        edge = sorted(next(beads for beads in self.rows.values() if self.at in beads), key=lambda b: b.x)
        if not row.marks.get("edge") and len(self.strands) == 1:
            self.sign = 1 if edge.index(self.at) == 0 else -1
        self.way = UP
        if found["on"]:
            self.come_out(edge[edge.index(self.at) + self.sign], DOWN)

    # Ends of thread

    def bead(self, row: Row, place: str, number: str, part: str | None, letter: str) -> Lying:
        part = part or row.marks.get("part", row.part)
        bead = self.from_left(part, int(number))[int(place) - 1]
        assert bead.letter == letter
        return bead

    def spots(self, row: Row, text: str) -> list[tuple[Lying, int]]:
        spot = r"(up|down) through bead (\d+) of row (\d+)(?: of the (\w+))? \((\w)\)"
        assert re.fullmatch(rf"{spot}(, then {spot})*", text), text
        return [(self.bead(row, *named), WAY[way]) for way, *named in _all(spot, text)]

    def name_part(self, row: Row, found: Found) -> None:
        row.marks["part"] = found["part"]

    def old_end(self, row: Row, found: Found) -> None:
        (spot,) = self.spots(row, found["spot"])
        assert spot == (self.at, self.way)
        self.resume = spot

    def old_done(self, row: Row, found: Found) -> None:
        assert self.spots(row, found["spot"]) == [(self.at, self.way)]
        self.woven_in.append("old")

    def new_end(self, row: Row, found: Found) -> None:
        del row, found
        self.at = None

    def new_done(self, row: Row, found: Found) -> None:
        assert self.spots(row, found["spot"]) == [(self.at, self.way)] == [self.resume]
        self.woven_in.append("new")

    def first_end(self, row: Row, found: Found) -> None:
        bead = self.bead(row, found["place"], found["row"], found["part"], found["letter"])
        way = {"top": UP, "bottom": DOWN}[found["side"]]
        assert (bead, way) == self.begun
        self.come_out(bead, way)

    def first_done(self, row: Row, found: Found) -> None:
        assert self.spots(row, found["spot"]) == [(self.at, self.way)]
        self.woven_in.append("first")

    def go(self, row: Row, found: Found) -> None:
        for bead, way in self.spots(row, found["spots"]):
            if self.at is None or (row.marks.pop("hitched", False) and bead is self.at):
                self.come_out(bead, way)
            else:
                self.passes(bead, way)

    def hitch(self, row: Row, found: Found) -> None:
        """The thread named lies where the needle is."""
        spot = r"bead (\d+) of row (\d+)(?: of the (\w+))? \((\w)\)"
        one, other = (self.bead(row, *named) for named in _all(spot, found["ends"]))
        assert self.at is not None
        assert min(abs(end.x - self.at.x) + abs(end.y - self.at.y) for end in (one, other)) <= 2
        assert abs(one.x - other.x) <= 2
        assert abs(one.y - other.y) <= 1
        row.marks["hitched"] = True

    def turn(self, row: Row, found: Found) -> None:
        del row, found
        for beads in self.rows.values():
            for bead in beads:
                bead.x, bead.y = -bead.x, -bead.y
        self.way = -self.way
        self.turned = not self.turned
        if self.begun:
            self.begun = (self.begun[0], -self.begun[1])
        if self.resume:
            self.resume = (self.resume[0], -self.resume[1])

    def begin_turned(self, row: Row, found: Found) -> None:
        del row, found
        self.turned = True

    def nothing(self, row: Row, found: Found) -> None:
        del row, found


def _all(spot: str, text: str) -> list[tuple[str, ...]]:
    return [match.groups() for match in re.finditer(spot, text)]
