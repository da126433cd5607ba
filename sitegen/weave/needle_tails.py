"""ThreadPath -> what is wrong with the ways in which its ends of thread are woven in.

The needle's own rules: an end holds by two half hitches, or because it crosses itself and one hitch; it is
never cut right at a hitch; a new thread comes out exactly where the old one did; no bead is added on the way.
"""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.model.problem import Problem
from sitegen.model.thread import End, Move, MoveKind, Step, Tail, ThreadPath

LEAST_PASSES = 4
"""Beads an end must go through to stay there. A judgement; no source."""
ALLOWED = (MoveKind.THROUGH, MoveKind.UNDER, MoveKind.WARP, MoveKind.HITCH)


def loose_tails(path: ThreadPath) -> Iterator[Problem]:
    """Every step that weaves in an end badly, or at the wrong time."""
    out: tuple[int, End] | None = None
    waiting: tuple[int, End] | None = None
    for step in path.steps:
        moves = list(path.moves[step.first_move : step.past_move])
        if step.tail is None:
            if waiting is not None:
                yield _problem(path, step)
            waiting = None
        else:
            taken = [move for move in moves if move.kind is MoveKind.TAKE]
            if not _held(moves) or not _taken_up(path, step.tail, moves, taken):
                yield _problem(path, step)
            if step.tail is Tail.OLD:
                waiting = out
            elif step.tail is Tail.NEW:
                last = moves[-1]
                if waiting is None or (last.bead, last.enter.other) != waiting:
                    yield _problem(path, step)
                waiting = None
            else:
                waiting = None
        for move in moves:
            if move.bead >= 0:
                out = (move.bead, move.enter.other)


def _held(moves: list[Move]) -> bool:
    """Whether these moves keep an end where it is."""
    work = [move for move in moves if move.kind is not MoveKind.TAKE]
    if not work or any(move.kind not in ALLOWED for move in work):
        return False
    beads = [move.bead for move in work if move.kind is MoveKind.THROUGH]
    hitches = sum(move.kind is MoveKind.HITCH for move in work)
    crosses = len(set(beads)) < len(beads)
    at_a_hitch = MoveKind.HITCH in (work[0].kind, work[-1].kind) and not _turns_back(work)
    return len(beads) >= LEAST_PASSES and hitches + crosses >= 2 and not at_a_hitch


def _turns_back(work: list[Move]) -> bool:
    """Whether a first hitch is there so that the thread can go back through the bead it came out of."""
    return work[0].kind is MoveKind.HITCH and work[-1].kind is MoveKind.THROUGH


def _taken_up(path: ThreadPath, tail: Tail, moves: list[Move], taken: list[Move]) -> bool:
    """Whether the right end of thread was taken up, and first of all."""
    if tail is Tail.OLD:
        return not taken
    first = path.moves[0]
    hangs = (first.bead, first.enter) if tail is Tail.FIRST else None
    return len(taken) == 1 and taken[0] is moves[0] and taken[0].hangs == hangs


def _problem(path: ThreadPath, step: Step) -> Problem:
    return Problem("path-tail-loose", path.beads[0].where, {"step": step.number})
