"""Bead after bead and move after move -> the growing thread path: the bench all stitches work at."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.model.thread import (
    Bead,
    Bridge,
    End,
    Move,
    MoveKind,
    Phrase,
    PlacedFinding,
    Point,
    Step,
    ThreadPath,
    Warp,
    WovenPart,
)
from sitegen.trade.beads import BeadSize, bead_kind


def upright(*beads: Bead) -> bool:
    """Whether the holes stand upright; the pairs of herringbone lean a little."""
    return all(abs(bead.angle) <= 30.0 for bead in beads)


@dataclass(frozen=True, slots=True)
class View:
    """How the maker holds the work: as it hangs, or turned upside down (half a turn, face still up)."""

    turned: bool = False

    @property
    def up(self) -> End:
        """The end of an upright hole that the maker sees on top."""
        return End.BOTTOM if self.turned else End.TOP

    @property
    def down(self) -> End:
        """The end of an upright hole that the maker sees at the bottom."""
        return self.up.other

    def way(self, enter: End) -> str:
        """`up` or `down`: the way a needle goes that enters an upright bead at that end."""
        return "up" if enter is self.down else "down"

    def from_left(self, beads: list[int]) -> list[int]:
        """A row given from left to right as it hangs, as the maker sees it from left to right."""
        return beads[::-1] if self.turned else beads


class Work:
    """The piece so far. Stitches add beads, moves and steps; nothing is ever taken back."""

    def __init__(self, pattern: Pattern, shop: Shop) -> None:
        self.pattern = pattern
        self.shop = shop
        self.problems: list[Problem] = []
        self.beads: list[Bead] = []
        self.moves: list[Move] = []
        self.steps: list[Step] = []
        self.parts: list[WovenPart] = []
        self.findings: list[PlacedFinding] = []
        self.warps: list[Warp] = []
        self.here: tuple[int, End] | None = None
        """The bead the thread comes out of, and at which end; None before the first bead."""
        self.bridges: set[Bridge] = set()
        self.rows: list[list[list[int]]] = []
        """For each part, its chart rows from the top, each from the left: indexes of beads."""
        self.passes: list[int] = []
        """For each bead, how often the thread has gone through it."""
        self.seats: dict[int, int] = {}
        """For each bead of a chart, its chart row (from the top); beads of strands have none."""
        self._under = False
        self._first_move = 0
        self._picks: list[int] = []

    def kind(self, letter: str) -> BeadSize:
        """The bead kind a letter stands for; the check stage has made sure that there is one."""
        colour = self.pattern.colour(letter)
        kind = bead_kind(colour.bead, self.pattern.bead_kinds) if colour else None
        if kind is None:
            raise KeyError(letter)
        return kind

    def lay(
        self, part: int, row: int, place: int, spot: tuple[str, Location], at: tuple[float, float, float]
    ) -> int:
        """Give a bead (letter, source) its place (x, y, angle) without threading it yet; -> its index."""
        letter, where = spot
        kind = self.kind(letter)
        x, y, angle = at
        self.beads.append(
            Bead(
                letter=letter,
                part=part,
                row=row,
                place=place,
                x=x,
                y=y,
                angle=angle,
                width=kind.width_mm,
                length=kind.length_mm,
                shape=kind.shape,
                kind=kind.name,
                where=where,
            )
        )
        self.passes.append(0)
        return len(self.beads) - 1

    def pick(self, bead: int, enter: End) -> None:
        """Pick up a bead that has been laid."""
        self._picks.append(bead)
        self._pass(MoveKind.PICK, bead, enter)

    def through(self, bead: int, enter: End) -> None:
        """Pass through a bead that is already there."""
        self._pass(MoveKind.THROUGH, bead, enter)

    def under(self, bridge: Bridge) -> None:
        """Pass under a bridge."""
        self.moves.append(Move(MoveKind.UNDER, bridge=bridge))
        self._under = True

    def loop(self, finding: int, at: Point | None = None) -> None:
        """Pass through a finding's loop, or round a ring at this place."""
        self.moves.append(Move(MoveKind.LOOP, finding=finding, at=at))
        self._under = True

    def round(self, warp: int) -> None:
        """Turn round a warp, to the other side of the warps."""
        self.moves.append(Move(MoveKind.WARP, warp=warp))
        self._under = True

    def _pass(self, kind: MoveKind, bead: int, enter: End) -> None:
        if self.here is not None and not self._under:
            last, end = self.here
            if end is enter and self._neighbours(last, bead):
                self.bridges.add(self.bridge(last, bead, end))
        self.moves.append(Move(kind, bead=bead, enter=enter))
        self.passes[bead] += 1
        self.here = (bead, enter.other)
        self._under = False

    def _neighbours(self, one: int, other: int) -> bool:
        a, b = self.beads[one], self.beads[other]
        stacked = a.angle == b.angle == 90.0 and abs(a.x - b.x) < 1e-6
        beside = a.row == b.row and abs(a.place - b.place) == 1 and upright(a, b)
        return a.part == b.part and one != other and (beside or stacked)

    def bridge(self, one: int, other: int, end: End) -> Bridge:
        """The bridge between two neighbours, named from the left as it hangs; from the top where they lie."""
        left, right = sorted(
            (one, other), key=lambda index: (round(self.beads[index].x, 6), self.beads[index].y)
        )
        return Bridge(left, right, end)

    def step(
        self, row: int, motion: str, phrases: tuple[Phrase, ...], *, turned: bool = False, rest: bool = False
    ) -> None:
        """Close a step: all moves since the last one belong to it."""
        self.steps.append(
            Step(
                number=len(self.steps) + 1,
                part=len(self.parts) - 1,
                row=row,
                motion=motion,
                phrases=phrases,
                first_move=self._first_move,
                past_move=len(self.moves),
                picks=tuple(self._picks),
                turned=turned,
                rest=rest,
            )
        )
        self._first_move = len(self.moves)
        self._picks = []

    def begin_part(
        self, part: Part, rows: int, row_pitch: float, bead_pitch: float, *, lines: str = "rows"
    ) -> int:
        """Open a part; -> its index."""
        self.parts.append(WovenPart(part.name, part.stitch, rows, row_pitch, bead_pitch, lines=lines))
        self.rows.append([])
        return len(self.parts) - 1

    def tube(self, around_mm: float, thick_mm: float) -> None:
        """Say that the part just opened is a tube (or a rope, around 0) and how thick it is."""
        self.parts[-1] = replace(self.parts[-1], around_mm=around_mm, thick_mm=thick_mm)

    def path(self) -> ThreadPath:
        """The finished path."""
        return ThreadPath(
            beads=tuple(self.beads),
            moves=tuple(self.moves),
            steps=tuple(self.steps),
            parts=tuple(self.parts),
            findings=tuple(self.findings),
            warps=tuple(self.warps),
        )
