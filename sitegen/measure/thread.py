"""ThreadPath -> mm of thread for each move, from geometry: gaps, holes, bridges and loops.

A move takes the straight way from the mouth the thread last came out of to where it goes in next, and then
the length of the hole. Under a bridge it goes to the bridge's middle and half way round its thread; through
a loop, to the loop and half way round its wire; round a warp, half way round that; a half hitch goes round
the thread it holds on to and through its own loop, and so twice as far as under a bridge. Slack for soft
curves and human hands is added elsewhere.
"""

from __future__ import annotations

import math
from itertools import accumulate

from sitegen.model.thread import Move, MoveKind, Point, ThreadPath, way
from sitegen.trade.findings import finding_kind


def move_lengths(path: ThreadPath, thread_mm: float) -> tuple[float, ...]:
    """Thread each move uses, mm, without slack; `thread_mm` is the thread's diameter."""
    lengths = []
    here: Point | None = None
    last = -1
    for move in path.moves:
        if move.kind is MoveKind.WARP:
            lengths.append(math.pi * thread_mm * (path.warps[move.warp].threads + 1) / 2)
            continue
        if move.kind is MoveKind.TAKE:
            here = path.beads[move.hangs[0]].mouth(move.hangs[1]) if move.hangs else None
            last = move.hangs[0] if move.hangs else -1
            lengths.append(0.0)
            continue
        entry, inside, leave = _way(path, move, thread_mm)
        gap = math.hypot(*way(here, entry, path.around(last), path.zipped(last))) if here else 0.0
        lengths.append(gap + inside)
        last = move.bead if move.bead >= 0 else last
        here = leave
    return tuple(lengths)


def _way(path: ThreadPath, move: Move, thread_mm: float) -> tuple[Point, float, Point]:
    """Where a move goes in, how much thread it takes inside, and where it comes out."""
    if move.kind in (MoveKind.UNDER, MoveKind.HITCH):
        assert move.bridge is not None
        point = path.bridge_middle(move.bridge)
        turns = 1 if move.kind is MoveKind.UNDER else 2
        return point, turns * math.pi * thread_mm, point
    if move.kind is MoveKind.LOOP:
        placed = path.findings[move.finding]
        kind = finding_kind(placed.kind)
        point = move.at or (placed.x, placed.y)
        return point, math.pi / 2 * ((kind.wire_mm if kind else 0.0) + thread_mm), point
    bead = path.beads[move.bead]
    return bead.mouth(move.enter), bead.length, bead.mouth(move.enter.other)


def step_ends(path: ThreadPath, thread_mm: float, slack: float) -> tuple[float, ...]:
    """Thread used up to the end of each step, mm, slack included, tails not."""
    return tuple(accumulate(_of_steps(path, thread_mm, slack, tails=False)))


def tail_lengths(path: ThreadPath, thread_mm: float, slack: float) -> tuple[float, ...]:
    """Thread that each step weaves in, mm, slack included; 0 for a step that does something else."""
    return _of_steps(path, thread_mm, slack, tails=True)


def _of_steps(path: ThreadPath, thread_mm: float, slack: float, *, tails: bool) -> tuple[float, ...]:
    """Thread of each step that weaves in an end, or of each that does not; 0 for the others."""
    moves = move_lengths(path, thread_mm)
    return tuple(
        sum(moves[step.first_move : step.past_move]) * slack if (step.tail is not None) is tails else 0.0
        for step in path.steps
    )
