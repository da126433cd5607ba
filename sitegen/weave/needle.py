"""ThreadPath + the pattern's charts -> problems: the virtual needle, which trusts nothing the stitches said.

It follows the moves from the first bead to the last with its own idea of where the thread is, which beads
are on it and which bridges lie, and compares the result with the chart as the author wrote it.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from sitegen.model.problem import Problem
from sitegen.model.source import Part, Pattern
from sitegen.model.thread import Bead, Bridge, End, Move, MoveKind, Point, Step, ThreadPath

REACH = 1.35
"""The longest bare thread between two moves, in widths of the wider bead: a half-bead step of a point
start is 0.9, a neighbour 1.0, a turn bead about 1.2. A judgement; no source."""
BUG = "This is a mistake in sitegen, not in your pattern: please report it with the pattern source."
"""The remedy for what no source should be able to cause."""
OPEN_RUNS: Mapping[str, int] = {}
"""Openwork by its stitch: how many beads in a row may hang on one pass between two that are held."""
MOST_TURN_BEADS = 5
"""A loop of more beads than this on a single pass is not a turn but a loose end."""


def replay(path: ThreadPath, pattern: Pattern) -> list[Problem]:
    """Everything about the path that a needle and thread could not do, or that is not the chart."""
    needle = _Needle(path)
    for number, move in enumerate(path.moves):
        needle.follow(number, move)
    problems = needle.problems
    problems += _never_picked(path, needle)
    problems += _hanging_by_one_pass(path, needle)
    problems += _wrong_steps(path)
    problems += _unlike_chart(path, pattern)
    return [replace(problem, values={**problem.values, "bug": BUG}) for problem in problems]


class _Needle:
    """Where the thread is, what is on it, and which bridges lie."""

    def __init__(self, path: ThreadPath) -> None:
        self.path = path
        self.problems: list[Problem] = []
        self.passes: Counter[int] = Counter()
        self.bridges: set[tuple[frozenset[int], End]] = set()
        self.spot: tuple[int, End] | None = None
        self.point: Point | None = None
        self.caught = False
        """Something holds the thread since it left the last bead: a bridge or a loop."""
        self.width = 0.0
        """Of the last bead passed."""

    def object_to(self, code: str, move: Move, number: int) -> None:
        bead = self.path.beads[move.bead if move.bead >= 0 else self.spot[0] if self.spot else 0]
        self.problems.append(Problem(code, bead.where, {"letter": bead.letter, "move": number + 1}))

    def follow(self, number: int, move: Move) -> None:
        if move.kind is MoveKind.UNDER:
            self._under(number, move)
        elif move.kind is MoveKind.LOOP:
            finding = self.path.findings[move.finding]
            self._reach(number, move, (finding.x, finding.y), self.width)
            self.caught = True
        else:
            self._pass(number, move)

    def _under(self, number: int, move: Move) -> None:
        bridge = move.bridge
        if bridge is None or (frozenset((bridge.left, bridge.right)), bridge.end) not in self.bridges:
            self.object_to("path-no-bridge", move, number)
            return
        self._reach(number, move, bridge_point(self.path, bridge), self.width)
        self.caught = True

    def _pass(self, number: int, move: Move) -> None:
        bead = self.path.beads[move.bead]
        if move.kind is MoveKind.PICK and self.passes[move.bead]:
            self.object_to("path-picked-twice", move, number)
        if move.kind is MoveKind.THROUGH and not self.passes[move.bead]:
            self.object_to("path-not-there", move, number)
        if self.spot == (move.bead, move.enter) and not self.caught:
            self.object_to("path-pulls-out", move, number)
        self._reach(number, move, bead.mouth(move.enter), max(bead.width, self.width))
        self._lay_bridge(move)
        self.passes[move.bead] += 1
        self.spot = (move.bead, move.enter.other)
        self.point = bead.mouth(move.enter.other)
        self.width = bead.width
        self.caught = False

    def _lay_bridge(self, move: Move) -> None:
        """Thread from one mouth to a neighbour's mouth at the same height is a bridge."""
        if self.spot is None or self.caught or self.spot[1] is not move.enter or self.spot[0] == move.bead:
            return
        one, other = self.path.beads[self.spot[0]], self.path.beads[move.bead]
        level = abs(one.mouth(move.enter)[1] - other.mouth(move.enter)[1]) < 0.5 * min(
            one.length, other.length
        )
        if level and one.angle == other.angle == 0:
            self.bridges.add((frozenset((self.spot[0], move.bead)), move.enter))

    def _reach(self, number: int, move: Move, target: Point, width: float) -> None:
        if self.point is not None and math.dist(self.point, target) > REACH * width:
            self.object_to("path-bare-thread", move, number)


def bridge_point(path: ThreadPath, bridge: Bridge) -> Point:
    """The middle of a bridge."""
    left, right = path.beads[bridge.left].mouth(bridge.end), path.beads[bridge.right].mouth(bridge.end)
    return ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)


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
        read, written = _strands(beads, part) if part.strands else _rows(beads, part)
        if read != written:
            yield Problem("path-unlike-chart", part.at[""], {"part": part.name})


def _rows(beads: Sequence[Bead], part: Part) -> tuple[list[str], list[str]]:
    """Letters with their half-pitch places, row by row from the top: as they lie, and as written."""
    heights = sorted({round(bead.y, 4) for bead in beads})
    lying = [
        sorted((bead for bead in beads if round(bead.y, 4) == height), key=lambda bead: bead.x)
        for height in heights
    ]
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
