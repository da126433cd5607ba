"""Stacks of beads laid side by side -> a ladder two (or more) beads high, with one needle.

Mechanics: as in a ladder of single beads, with a stack in place of each bead: each new stack is followed by
a pass through its neighbour and one through itself. Passes: 2 at the ends, 3 inside; a run back adds 1.
A ladder two beads high as a base: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sitegen.model.thread import End, Phrase
from sitegen.weave.work import View, Work


def stack_ladder(work: Work, stacks: Sequence[Sequence[int]], view: View, *, reinforce: bool) -> None:
    """Stitch an even number of stacks, each given from the foot up as the maker sees it, in this order.

    The thread ends coming up out of an end stack.
    """
    enter = view.up
    _pick(work, stacks[0], enter, view)
    _pick(work, stacks[1], enter.other, view)
    _go(work, stacks[0], enter, view)
    _go(work, stacks[1], enter.other, view)
    _close(work, "stack-first", {}, view, rest=len(stacks) == 2 and not reinforce)
    for place in range(2, len(stacks)):
        assert work.here is not None
        enter = work.here[1]
        _pick(work, stacks[place], enter, view)
        _go(work, stacks[place - 1], enter.other, view)
        _go(work, stacks[place], enter, view)
        values: dict[str, object] = {"before": view.way(enter.other), "self": view.way(enter)}
        _close(work, "stack-next", values, view, rest=place == len(stacks) - 1 and not reinforce)
    if reinforce:
        _back(work, stacks, view)


def _back(work: Work, stacks: Sequence[Sequence[int]], view: View) -> None:
    """Once more through all stacks, the last one too, which is entered again from the bridge beside it."""
    enter = view.up
    work.under(work.bridge(stacks[-1][-1], stacks[-2][-1], enter))
    for stack in reversed(stacks):
        _go(work, stack, enter, view)
        enter = enter.other
    _close(work, "stack-back", {"count": len(stacks) - 1}, view, rest=True)


def _order(stack: Sequence[int], enter: End, view: View) -> Iterable[int]:
    """A stack's beads in the order a needle meets them that goes in at this end."""
    return stack if enter is view.down else reversed(stack)


def _pick(work: Work, stack: Sequence[int], enter: End, view: View) -> None:
    for bead in _order(stack, enter, view):
        work.pick(bead, enter)


def _go(work: Work, stack: Sequence[int], enter: End, view: View) -> None:
    for bead in _order(stack, enter, view):
        work.through(bead, enter)


def _close(work: Work, motion: str, values: dict[str, object], view: View, *, rest: bool) -> None:
    work.step(1, motion, (Phrase(motion, values),), turned=view.turned, rest=rest)
