"""ThreadPath -> mm of thread for each move, from geometry: gaps, holes, bridges and loops.

A move takes the straight way from the mouth the thread last came out of to where it goes in next, and then
the length of the hole. Under a bridge it goes to the bridge's middle and half way round its thread; through
a loop, to the loop and half way round its wire. Slack for soft curves and human hands is added elsewhere.
"""

from __future__ import annotations

import math

from sitegen.model.thread import Bridge, Move, MoveKind, Point, ThreadPath
from sitegen.trade.findings import finding_kind


def bridge_point(path: ThreadPath, bridge: Bridge) -> Point:
    """Midway between the two mouths the bridge joins."""
    left, right = (path.beads[index].mouth(bridge.end) for index in (bridge.left, bridge.right))
    return (left[0] + right[0]) / 2, (left[1] + right[1]) / 2


def move_lengths(path: ThreadPath, thread_mm: float) -> tuple[float, ...]:
    """Thread each move uses, mm, without slack; `thread_mm` is the thread's diameter."""
    lengths = []
    here: Point | None = None
    for move in path.moves:
        entry, inside, leave = _way(path, move, thread_mm)
        lengths.append((math.dist(here, entry) if here else 0.0) + inside)
        here = leave
    return tuple(lengths)


def _way(path: ThreadPath, move: Move, thread_mm: float) -> tuple[Point, float, Point]:
    """Where a move goes in, how much thread it takes inside, and where it comes out."""
    if move.kind is MoveKind.UNDER:
        assert move.bridge is not None
        point = bridge_point(path, move.bridge)
        return point, math.pi * thread_mm, point
    if move.kind is MoveKind.LOOP:
        placed = path.findings[move.finding]
        kind = finding_kind(placed.kind)
        point = (placed.x, placed.y)
        return point, math.pi / 2 * ((kind.wire_mm if kind else 0.0) + thread_mm), point
    bead = path.beads[move.bead]
    return bead.mouth(move.enter), bead.length, bead.mouth(move.enter.other)


def step_ends(path: ThreadPath, thread_mm: float, slack: float) -> tuple[float, ...]:
    """Thread used up to the end of each step, mm, slack included, tails not."""
    moves = move_lengths(path, thread_mm)
    ends = []
    used = 0.0
    for step in path.steps:
        used += sum(moves[step.first_move : step.past_move]) * slack
        ends.append(used)
    return tuple(ends)
