"""ThreadPath + the pattern's charts -> problems: the virtual needle, which trusts nothing the stitches said.

It follows the moves from the first bead to the last with its own idea of where the thread is, which beads
are on it and which bridges lie, and compares the result with the chart as the author wrote it.
"""

from __future__ import annotations

import math
from bisect import bisect
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Pattern
from sitegen.model.thread import Bead, End, Move, MoveKind, Point, Step, ThreadPath, way
from sitegen.weave.needle_hung import HELD_OPEN, READ_HUNG
from sitegen.weave.needle_open import READ_OPEN
from sitegen.weave.needle_round import READ_ROUND
from sitegen.weave.needle_tails import loose_tails

REACH = 1.35
"""The longest bare thread between two moves, in widths of the wider bead: a half-bead step of a point
start is 0.9, a neighbour 1.0, a turn bead about 1.2. A judgement; no source."""
BUG = "This is a mistake in sitegen, not in your pattern: please report it with the pattern source."
"""The remedy for what no source should be able to cause."""
MIXED = 1.3
"""Beads so many times as wide as their neighbours leave thread bare beside them. A judgement; no source."""
BY_SIZE = ("path-bare-thread", "path-no-bridge", "path-pulls-out")
"""Objections that such beads cause: they do not reach each other, nor lie level."""
MIXED_SIZES = "Beads of very different sizes stand side by side here: choose sizes nearer to each other."
OPEN_RUNS: Mapping[str, int] = {
    **HELD_OPEN,
    "netting": 11,  # a corner of seven-bead nets: three legs of three beads and two beads between them
    "spiral rope": 12,  # the outer beads of a stitch: only the core is gone through again
}
"""Openwork by its stitch: how many beads in a row may hang on one pass between two that are held."""
SIDE_BY_SIDE = ("ladder", "brick")
"""Stitches whose beads stand side by side, as far apart as the widest of them is wide."""
ACROSS = ("square", "loom")
"""Stitches of rectangular charts whose beads lie with their holes across, end to end."""
LEAN = 30.0
"""Degrees a hole may lean and still count as upright: pairs of herringbone lean towards each other."""
MOST_TURN_BEADS = 9
"""A loop of more beads than this on a single pass is not a turn but a loose end: a published strand turns
round 4 beads, a drop and 4 beads [about-maple]."""


def replay(path: ThreadPath, pattern: Pattern) -> list[Problem]:
    """Everything about the path that a needle and thread could not do, or that is not the chart."""
    needle = _Needle(path)
    for number, move in enumerate(path.moves):
        needle.follow(number, move)
    problems = needle.problems
    problems += _never_picked(path, needle)
    problems += _hanging_by_one_pass(path, needle)
    problems += _off_the_warps(path, needle)
    problems += _wrong_steps(path)
    problems += loose_tails(path)
    problems += _unlike_chart(path, pattern)
    return [replace(each, values={**each.values, "bug": _remedy(path, each)}) for each in problems]


def _remedy(path: ThreadPath, problem: Problem) -> str:
    """Only beads of very different sizes side by side can be an author's doing."""
    widths = [bead.width for bead in path.beads]
    mixed = problem.code in BY_SIZE and max(widths) > MIXED * min(widths)
    return MIXED_SIZES if mixed else BUG


class _Needle:
    """Where the thread is, what is on it, and which bridges lie."""

    def __init__(self, path: ThreadPath) -> None:
        self.path = path
        self.problems: list[Problem] = []
        self.passes: Counter[int] = Counter()
        self.bridges: set[frozenset[tuple[int, End]]] = set()
        """Each by the two mouths it joins."""
        self.spot: tuple[int, End] | None = None
        self.point: Point | None = None
        self.caught = False
        """Something holds the thread since it left the last bead: a bridge or a loop."""
        self.width = 0.0
        """Of the last bead passed, its longer side."""
        self.over = False
        """On a loom: whether the needle is above the warps."""
        self.sides: dict[int, set[bool]] = {}
        """For each bead, whether the thread in it lies under the warps, over them, or both."""
        self.joints: set[frozenset[tuple[int, End]]] = set()
        """All thread that runs straight from bead to bead, by the two mouths it joins."""
        self.aside = {
            number for step in path.steps if step.tail for number in range(step.first_move, step.past_move)
        }
        """The moves that weave in an end: they hold no bead on a loom."""

    def object_to(self, code: str, move: Move, number: int) -> None:
        bead = self.path.beads[move.bead if move.bead >= 0 else self.spot[0] if self.spot else 0]
        self.problems.append(Problem(code, bead.where, {"letter": bead.letter, "move": number + 1}))

    def follow(self, number: int, move: Move) -> None:
        if move.kind is MoveKind.UNDER:
            self._under(number, move)
        elif move.kind is MoveKind.LOOP:
            finding = self.path.findings[move.finding]
            place = move.at or (finding.x, finding.y)
            if abs(math.dist(place, (finding.x, finding.y)) - finding.ring_mm / 2) > 1e-6:
                self.object_to("path-bare-thread", move, number)
            self._reach(number, move, place, self.width)
            self.point = place
            self.caught = True
        elif move.kind is MoveKind.WARP:
            self._turn(number, move)
        elif move.kind is MoveKind.HITCH:
            self._hitch(number, move)
        elif move.kind is MoveKind.TAKE:
            self._take(number, move)
        else:
            self._pass(number, move)

    def _take(self, number: int, move: Move) -> None:
        """A new thread, which may go in anywhere, or the tail, which hangs where the first bead went on."""
        first = self.path.moves[0]
        if move.hangs not in (None, (first.bead, first.enter)):
            self.object_to("path-not-there", move, number)
        self.spot, self.caught = move.hangs, False
        bead = self.path.beads[move.hangs[0]] if move.hangs else None
        self.point = bead.mouth(move.hangs[1]) if bead and move.hangs else None
        self.width = max(bead.width, bead.length) if bead else 0.0

    def _hitch(self, number: int, move: Move) -> None:
        bridge = move.bridge
        joint = bridge and frozenset(((bridge.left, bridge.end), (bridge.right, bridge.right_end)))
        if bridge is None or joint not in self.joints:
            self.object_to("path-no-bridge", move, number)
            return
        self._reach(number, move, self.path.bridge_middle(bridge), self.width)
        self.caught = True

    def _under(self, number: int, move: Move) -> None:
        bridge = move.bridge
        joint = bridge and frozenset(((bridge.left, bridge.end), (bridge.right, bridge.right_end)))
        if bridge is None or joint not in self.bridges:
            self.object_to("path-no-bridge", move, number)
            return
        self._reach(number, move, self.path.bridge_middle(bridge), self.width)
        self.caught = True

    def _pass(self, number: int, move: Move) -> None:
        bead = self.path.beads[move.bead]
        if move.kind is MoveKind.PICK and self.passes[move.bead]:
            self.object_to("path-picked-twice", move, number)
        if move.kind is MoveKind.THROUGH and not self.passes[move.bead]:
            self.object_to("path-not-there", move, number)
        if self.spot == (move.bead, move.enter) and not self.caught:
            self.object_to("path-pulls-out", move, number)
        size = max(bead.width, bead.length, self.width, self._spacing(bead))
        self._reach(number, move, bead.mouth(move.enter), size)
        if self.spot is not None and not self.caught:
            self.joints.add(frozenset((self.spot, (move.bead, move.enter))))
        self._lay_bridge(move)
        self.passes[move.bead] += 1
        if number not in self.aside:
            self.sides.setdefault(move.bead, set()).add(self.over)
        self.spot = (move.bead, move.enter.other)
        self.point = bead.mouth(move.enter.other)
        self.width = max(bead.width, bead.length)
        self.caught = False

    def _turn(self, number: int, move: Move) -> None:
        """Round an outer warp, which must lie right beside where the thread comes out."""
        warp = self.path.warps[move.warp]
        if self.point is not None:
            self._reach(number, move, (warp.x, self.point[1]), self.width / 2)
        self.caught = True
        if number not in self.aside:
            self.over = not self.over

    def _spacing(self, bead: Bead) -> float:
        """Small beads among wide ones stand apart by the wide ones' width."""
        part = self.path.parts[bead.part]
        return part.bead_pitch if part.stitch in SIDE_BY_SIDE else 0.0

    def _lay_bridge(self, move: Move) -> None:
        """Thread between mouths of neighbours, level with each other, is a bridge; in round work any is."""
        if self.spot is None or self.caught or self.spot[0] == move.bead:
            return
        one, other = self.path.beads[self.spot[0]], self.path.beads[move.bead]
        joint = frozenset((self.spot, (move.bead, move.enter)))
        if one.part == other.part and self.path.parts[one.part].stitch in READ_ROUND:
            self.bridges.add(joint)
        level = self.spot[1] is move.enter and abs(
            one.mouth(move.enter)[1] - other.mouth(move.enter)[1]
        ) < 0.5 * min(one.length, other.length)
        if level and abs(one.angle) <= LEAN and abs(other.angle) <= LEAN:
            self.bridges.add(joint)
        stacked = abs(one.mouth(self.spot[1])[0] - other.mouth(move.enter)[0]) < 0.5 * one.length
        if self.spot[1] is move.enter and stacked and one.angle == other.angle == 90:
            self.bridges.add(joint)  # round an edge, between lying beads above each other

    def _reach(self, number: int, move: Move, target: Point, width: float) -> None:
        if self.point is None or self.spot is None:
            return
        bead = self.spot[0]
        gap = math.hypot(*way(self.point, target, self.path.around(bead), self.path.zipped(bead)))
        if gap > REACH * width:
            self.object_to("path-bare-thread", move, number)


def _never_picked(path: ThreadPath, needle: _Needle) -> Iterator[Problem]:
    for index, bead in enumerate(path.beads):
        if not needle.passes[index]:
            yield Problem("path-left-out", bead.where, {"letter": bead.letter})


def _hanging_by_one_pass(path: ThreadPath, needle: _Needle) -> Iterator[Problem]:
    """A bead on a single pass is held only as part of a turn: out of a bead's end and back into it."""
    run: list[int] = []
    last: tuple[int, End] | None = None
    caught = False
    for move in (*path.moves, None):
        if move is not None and move.bead < 0:
            caught = True
            continue
        if move is not None and needle.passes[move.bead] == 1:
            run.append(move.bead)
            continue
        turn = move is not None and last == (move.bead, move.enter) and len(run) <= MOST_TURN_BEADS
        openwork = last is not None and move is not None and len(run) <= _open_run(path, run)
        if run and not openwork and (caught or not turn):
            for index in run:
                bead = path.beads[index]
                yield Problem("path-single-pass", bead.where, {"letter": bead.letter})
        run, caught = [], False
        if move is not None:
            last = (move.bead, move.enter.other)


def _open_run(path: ThreadPath, run: Sequence[int]) -> int:
    """How long a run of single passes the stitches of these beads allow."""
    return min((OPEN_RUNS.get(path.parts[path.beads[bead].part].stitch, 0) for bead in run), default=0)


def _off_the_warps(path: ThreadPath, needle: _Needle) -> Iterator[Problem]:
    """A loom bead lies between two warps, with thread under them and over them, or it falls off the loom."""
    for part in dict.fromkeys(warp.part for warp in path.warps):
        warps = sorted(warp.x for warp in path.warps if warp.part == part)
        gaps: set[tuple[int, float]] = set()
        for index, bead in enumerate(path.beads):
            if bead.part != part:
                continue
            gap = bisect(warps, bead.x)
            held = 0 < gap < len(warps) and warps[gap] - warps[gap - 1] > 0.5 * bead.length
            if not held or (gap, bead.y) in gaps or needle.sides.get(index) != {False, True}:
                yield Problem("path-off-warps", bead.where, {"letter": bead.letter})
            gaps.add((gap, bead.y))


def _wrong_steps(path: ThreadPath) -> Iterator[Problem]:
    """Steps must take up all moves without gap or overlap, and name the beads they add."""
    past = 0
    for number, step in enumerate(path.steps, start=1):
        if step.number != number or step.first_move != past or step.picks != _picks(path, step):
            yield Problem("path-step-astray", path.beads[0].where, {"step": number})
        past = step.past_move
    if past != len(path.moves):
        yield Problem("path-step-astray", path.beads[0].where, {"step": len(path.steps)})


def _picks(path: ThreadPath, step: Step) -> tuple[int, ...]:
    moves = path.moves[step.first_move : step.past_move]
    return tuple(move.bead for move in moves if move.kind is MoveKind.PICK)


def _unlike_chart(path: ThreadPath, pattern: Pattern) -> Iterator[Problem]:
    """What hangs in its places must read like the chart and the strands, letter by letter."""
    for index, woven in enumerate(path.parts):
        part = pattern.part(woven.name)
        beads = [bead for bead in path.beads if bead.part == index]
        if part is None:
            yield Problem("path-unlike-chart", path.beads[0].where, {"part": woven.name})
            continue
        if part.stitch in READ_OPEN:
            read, written = READ_OPEN[part.stitch](beads, part)
        elif part.stitch in READ_ROUND:
            read, written = READ_ROUND[part.stitch](beads, part)
        elif part.stitch in READ_HUNG:
            read, written = READ_HUNG[part.stitch](beads, part)
        elif part.stitch in ACROSS:
            read, written = _columns(beads, part)
        elif part.stitch == "peyote":
            read, written = _lying(beads, part)
        else:
            read, written = _strands(beads, part) if part.strands else _rows(beads, part)
        if read != written:
            yield Problem("path-unlike-chart", part.at[""], {"part": part.name})


def _rows(beads: Sequence[Bead], part: Part) -> tuple[list[str], list[str]]:
    """Letters with their half-pitch places, row by row from the top: as they lie, and as written."""
    levels: dict[float, list[Bead]] = {}
    for bead in beads:
        levels.setdefault(round(bead.y, 4), []).append(bead)
    lying = [sorted(row, key=_from_left) for _, row in sorted(levels.items())]
    steps = [other.x - one.x for row in lying for one, other in pairwise(row)]
    half = min(steps, default=2.0) / 2
    if len(lying) > 1 and not steps:
        half = max(abs(lying[0][0].x - lying[1][0].x), 1e-9)
    left = min(bead.x for bead in beads)
    read = [" ".join(f"{round((bead.x - left) / half)}{bead.letter}" for bead in row) for row in lying]
    first = min(column for row in part.all_rows for column, _ in row.cells)
    written = [" ".join(f"{column - first}{letter}" for column, letter in row.cells) for row in part.all_rows]
    if part.stitch == "ladder":  # beads side by side, however far apart their letters are written
        written = [
            " ".join(f"{2 * cell}{letter}" for cell, (_, letter) in enumerate(row.cells))
            for row in part.all_rows
        ]
    return read, written


def _columns(beads: Sequence[Bead], part: Part) -> tuple[list[str], list[str]]:
    """Rectangular rows, a character for each place and a point for an empty one, cut to the beads' width."""
    across = sorted({round(bead.x, 4) for bead in beads})
    pitch = min((other - one for one, other in pairwise(across)), default=1.0)
    lying: dict[float, dict[int, str]] = {}
    for bead in beads:
        lying.setdefault(round(bead.y, 4), {})[round((bead.x - across[0]) / pitch)] = bead.letter
    width = round((across[-1] - across[0]) / pitch) + 1
    read = ["".join(lying[y].get(place, ".") for place in range(width)) for y in sorted(lying)]
    signs = [
        "".join(dict(row.cells).get(column, ".") for column in sorted({*dict(row.cells), *row.empty}))
        for row in part.all_rows
    ]
    used = [place for sign in signs for place, letter in enumerate(sign) if letter != "."]
    first, last = min(used), max(used)
    return read, [sign[first : last + 1] for sign in signs]


def _lying(beads: Sequence[Bead], part: Part) -> tuple[list[str], list[str]]:
    """Letters with their columns, row by row from the top, where a text column is the length of a bead."""
    across = sorted({round(bead.x, 4) for bead in beads})
    pitch = min((other - one for one, other in pairwise(across)), default=1.0)
    rows: dict[float, list[Bead]] = {}
    for bead in beads:
        rows.setdefault(round(bead.y, 4), []).append(bead)
    read = [
        " ".join(
            f"{round((bead.x - across[0]) / pitch)}{bead.letter}" for bead in sorted(row, key=_from_left)
        )
        for _, row in sorted(rows.items())
    ]
    first = min(row.cells[0][0] for row in part.all_rows)
    return read, [
        " ".join(f"{column - first}{letter}" for column, letter in row.cells) for row in part.all_rows
    ]


def _from_left(bead: Bead) -> float:
    return bead.x


def _strands(beads: Sequence[Bead], part: Part) -> tuple[list[str], list[str]]:
    """Strand words from left to right: as they hang, and as written."""
    strands: dict[int, list[Bead]] = {}
    for bead in beads:
        strands.setdefault(bead.row, []).append(bead)
    hanging = sorted(strands.values(), key=lambda strand: strand[0].x)
    read = [
        "".join(bead.letter for bead in sorted(strand, key=lambda bead: bead.place)) for strand in hanging
    ]
    return read, ["".join(strand.letters) for strand in part.all_strands]
