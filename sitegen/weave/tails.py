"""ThreadPath + where new threads begin -> the same path with every end woven in, as steps of its own."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby, pairwise

from sitegen.model.source import Pattern
from sitegen.model.thread import Move, MoveKind, Phrase, Step, Tail, ThreadPath, stop_bead
from sitegen.trade.beads import BeadSize, bead_kind
from sitegen.weave.ground import PASSES, Ground, Spot, heading
from sitegen.weave.weave_in import Leg, find_way_in, reversed_way

STRING = "string"
"""What a part's `lines` are where its own steps make both ends fast."""
SIDES = {"up": "top", "down": "bottom", "to the left": "left", "to the right": "right"}
"""Where a thread hangs out of a bead, by the way it goes through it."""


def with_tails(path: ThreadPath, pattern: Pattern, changes: Sequence[int]) -> ThreadPath:
    """The path with its ends woven in.

    At each change the old thread, then the new one, which comes out of the same end of the same bead; after
    the last step the thread in work and the tail it was begun with. `changes` are the numbers of the steps
    after which a new thread begins, in order. Where the work cannot hold an end yet, as at the edge of a net,
    the change waits for the next step after which it can. An end that nothing can hold (a piece of one bead)
    is left as it is; parts on a string make their own ends fast.
    """
    return _Finishing(path, pattern).finish(set(changes))


class _Finishing:
    """Copies the steps one by one and adds those of the tails."""

    def __init__(self, path: ThreadPath, pattern: Pattern) -> None:
        self.path = path
        self.ground = Ground(path)
        self.steps: list[Step] = []
        kinds = {bead.kind: bead_kind(bead.kind, pattern.bead_kinds) for bead in path.beads}
        self.kinds: dict[str, BeadSize] = {name: kind for name, kind in kinds.items() if kind}
        self.rows = Counter((bead.part, bead.row) for bead in path.beads)
        """How many beads each row has."""
        self.from_left = _from_left(path)

    def finish(self, changes: set[int]) -> ThreadPath:
        """All steps in order, with the tails between and after them."""
        path = self.path
        due = False
        for step, following in zip(path.steps, [*path.steps[1:], None], strict=True):
            for move in path.moves[step.first_move : step.past_move]:
                self.ground.add(move)
            self._close(step, step.past_move - step.first_move)
            due = due or step.number in changes
            if due and following is not None and path.parts[step.part].lines != STRING:
                due = not self._change(step, following)
        if path.steps:
            self._end()
        return replace(path, moves=tuple(self.ground.moves), steps=tuple(self.steps))

    def _close(self, step: Step, moves: int) -> None:
        past = len(self.ground.moves)
        self.steps.append(replace(step, number=len(self.steps) + 1, first_move=past - moves, past_move=past))

    def _change(self, step: Step, following: Step) -> bool:
        """Weave in the old thread and begin a new one; tells whether the work can hold both ends."""
        out = self._out()
        onward = find_way_in(self.ground, out, self.kinds)
        start = (out[0], out[1].other)
        back = find_way_in(self.ground, start, self.kinds)
        if onward is None or back is None:
            return False
        self._tail(Tail.OLD, replace(step, rest=True), onward, out)
        back = find_way_in(self.ground, start, self.kinds) or back
        self._tail(Tail.NEW, replace(following, rest=False), reversed_way(back, start), out)
        return True

    def _end(self) -> None:
        """Weave in what is left at the end, and the tail from the beginning."""
        last, first = self.path.steps[-1], self.path.moves[0]
        if self.path.parts[last.part].lines != STRING:
            self._weave(Tail.OLD, last, self._out())
        if self.path.parts[self.path.steps[0].part].lines != STRING:
            self._weave(Tail.FIRST, last, (first.bead, first.enter))
        if self.path.warps:
            done = self.steps[-1]
            self.steps[-1] = replace(done, phrases=(*done.phrases, Phrase("loom-finish")))

    def _weave(self, tail: Tail, step: Step, out: Spot) -> None:
        legs = find_way_in(self.ground, out, self.kinds)
        if legs is not None:
            self._tail(tail, step, legs, out)

    def _out(self) -> Spot:
        """Where the thread in work comes out."""
        last = next(move for move in reversed(self.ground.moves) if move.kind in PASSES)
        return last.bead, last.enter.other

    def _tail(self, tail: Tail, beside: Step, legs: tuple[Leg, ...], out: Spot) -> None:
        """A step that weaves in one end, told as the maker holds the work in the step beside it."""
        moves: list[Move] = []
        if tail is not Tail.OLD:
            moves.append(Move(MoveKind.TAKE, hangs=out if tail is Tail.FIRST else None))
        for leg in legs:
            moves += leg.holds
            moves.append(Move(MoveKind.THROUGH, bead=leg.into[0], enter=leg.into[1]))
        for move in moves:
            self.ground.add(move)
        phrases = _Telling(self, beside, legs, out).phrases(tail, legs, out)
        step = Step(
            0, beside.part, 0, f"tail-{tail.value}", phrases, 0, 0, (), beside.turned, beside.rest, tail
        )
        self._close(step, len(moves))


class _Telling:
    """A way in words, for a maker who holds the work as in the step beside it."""

    def __init__(self, finishing: _Finishing, beside: Step, legs: tuple[Leg, ...], out: Spot) -> None:
        self.path = finishing.path
        self.rows = finishing.rows
        self.from_left = finishing.from_left
        parts = {self.path.beads[bead].part for bead in (out[0], *_beads(legs))}
        self.named = next(iter(parts)) if len(parts) == 1 and parts != {beside.part} else None
        """The part of all beads of the way, said once, where it is not the one in work."""
        self.part = beside.part if self.named is None else self.named
        self.turned = beside.turned

    def phrases(self, tail: Tail, legs: tuple[Leg, ...], out: Spot) -> tuple[Phrase, ...]:
        """Where the end comes from, each stretch of beads, each hitch, and where it stops."""
        begun = {"spot": self._spot((out[0], out[1].other)), "bead": self._bead(out[0])}
        told = []
        if self.named is not None:
            told.append(Phrase("tail-part", {"part": self.path.parts[self.named].name}))
        told.append(Phrase(f"tail-{tail.value}", {**begun, "side": SIDES[self._way((out[0], out[1].other))]}))
        if tail is Tail.FIRST:
            told += _let_go(self.path.steps[0])
        along = self.path.beads[legs[0].into[0]].part in self.from_left
        told.append(Phrase("tail-count-rows" if along else "tail-count"))
        for _, stretch in groupby(_numbered(legs), key=lambda numbered: numbered[0]):
            run = [leg for _, leg in stretch]
            told += [self._hold(move) for move in run[0].holds]
            told.append(Phrase("tail-go", {"beads": tuple(self._spot(leg.into) for leg in run)}))
        return (*told, Phrase(f"tail-{tail.value}-done", {"spot": self._spot(legs[-1].into)}))

    def _hold(self, move: Move) -> Phrase:
        if move.bridge is None:
            return Phrase("tail-warp")
        ends = {"one": self._bead(move.bridge.left), "other": self._bead(move.bridge.right)}
        if move.bridge.left == move.bridge.right:
            return Phrase("tail-hitch-own", ends)
        return Phrase("tail-hitch" if move.kind is MoveKind.HITCH else "tail-under", ends)

    def _spot(self, into: Spot) -> Phrase:
        """A bead with the way a needle goes that enters there."""
        return Phrase("spot-way", {"bead": self._bead(into[0]), "way": self._way(into)})

    def _bead(self, index: int) -> Phrase:
        """A bead by its number in its row, from the left as the maker sees it, or from a strand's top."""
        bead = self.path.beads[index]
        lines = self.path.parts[bead.part].lines
        place = bead.place
        if self.turned and bead.part in self.from_left:
            place = self.rows[bead.part, bead.row] + 1 - place
        key = f"spot-{lines}"
        if bead.part != self.part:
            key += "-of"
        name = self.path.parts[bead.part].name
        return Phrase(key, {"letter": bead.letter, "place": place, "row": bead.row, "part": name})

    def _way(self, into: Spot) -> str:
        """`up`, `down`, `left` or `right`, as the maker sees it."""
        dx, dy = heading(self.path, into)
        if self.turned:
            dx, dy = -dx, -dy
        if abs(dx) > abs(dy):
            return "to the right" if dx > 0 else "to the left"
        return "down" if dy > 0 else "up"


def _beads(legs: tuple[Leg, ...]) -> Iterator[int]:
    """The beads that a way goes through and those that hold the thread it goes round."""
    for leg in legs:
        yield leg.into[0]
        for move in leg.holds:
            if move.bridge is not None:
                yield from (move.bridge.left, move.bridge.right)


def _let_go(first: Step) -> list[Phrase]:
    """What held the tail until now comes off."""
    if stop_bead(first):
        return [Phrase("tail-stop-bead")]
    return [Phrase("tail-knot")] if first.motion == "loom-row" else []


def _from_left(path: ThreadPath) -> set[int]:
    """The parts whose beads are numbered from the left as they hang; others follow their word charts."""
    parts = {index for index, part in enumerate(path.parts) if part.lines == "rows"}
    numbered = sorted((bead.part, bead.row, bead.place, bead.x) for bead in path.beads if bead.part in parts)
    for one, other in pairwise(numbered):
        if one[:2] == other[:2] and other[3] <= one[3]:
            parts.discard(one[0])
    return parts


def _numbered(legs: Sequence[Leg]) -> list[tuple[int, Leg]]:
    """Each leg with the number of its stretch: a new one begins where something is held."""
    number = 0
    numbered = []
    for leg in legs:
        number += bool(leg.holds)
        numbered.append((number, leg))
    return numbered
