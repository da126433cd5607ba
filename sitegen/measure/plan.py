"""ThreadPath with the thread used after each step -> the lengths to cut and where each begins.

First the plan: after which steps a new thread begins. Then, of a path whose ends are woven in there, the
lengths: what is worked with, and at each end a tail long enough to be woven in.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.measure.thread import step_ends
from sitegen.measure.tools import tools
from sitegen.model.measures import CutLength, ThreadUse
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import Tail, ThreadPath

CUT_STEP_MM = 10
"""Lengths to cut are rounded up to whole centimetres."""
LEAST_SHARE = 1 / 3
"""No length is shorter than this share of what can be worked with one, if that takes no more lengths: an end
too short to hold well is not begun with. A judgement; no source."""
HOLD_MM = 60.0
"""What a needle needs beyond the part that is woven in. A judgement; no source."""


def thread_changes(path: ThreadPath, pattern: Pattern, shop: Shop) -> tuple[int, ...]:
    """Numbers of the steps after which a new thread begins, for a path whose ends are not woven in yet."""
    return changes(path, step_ends(path, tools(pattern, shop).thread.diameter_mm, shop.slack), shop)


def changes(path: ThreadPath, ends: Sequence[float], shop: Shop) -> tuple[int, ...]:
    """The same, from the thread used after each step, mm.

    As few changes as the working length allows; each at the end of a row, a strand or the like, and inside
    one only where it is longer than a working length; no length much too short; and among equal plans the
    threads are used up one after the other, as far as each goes.
    """
    room = shop.working_length_mm - 2 * shop.tail_mm
    stops = _stops(path, ends, room)
    used = [0.0, *ends]
    following = _best_onward(stops, [used[stop.after] for stop in stops], room)
    found = []
    place = following[0]
    while place < len(stops) - 1:
        found.append(path.steps[stops[place].after - 1].number)
        place = following[place]
    return tuple(found)


def _best_onward(stops: Sequence[_Stop], used: Sequence[float], room: float) -> list[int]:
    """For each stop, the next one of the best plan from there on; `used` is the thread used up to each.

    Plans compare by lengths, then changes inside a row, then by how much too short the short lengths are;
    of equals the one that goes furthest first. A later stop never needs more lengths than an earlier one.
    """
    end = len(stops) - 1
    counts, insides, shorts = [0] * (end + 1), [0] * (end + 1), [0.0] * (end + 1)
    following = [end] * (end + 1)
    for place in range(end - 1, -1, -1):
        furthest = max(place + 1, bisect_right(used, used[place] + room, lo=place) - 1)
        best = (math.inf, math.inf)
        for onward in range(furthest, place, -1):
            if counts[onward] > counts[furthest]:
                break
            inside = insides[onward] + stops[onward].inside
            if inside > best[0]:
                continue
            lacking = max(0.0, room * LEAST_SHARE - (used[onward] - used[place]))
            short = round(shorts[onward] + lacking, 6)
            if (inside, short) < best:
                best, following[place] = (inside, short), onward
        counts[place], insides[place], shorts[place] = counts[furthest] + 1, int(best[0]), best[1]
    return following


@dataclass(frozen=True, slots=True)
class _Stop:
    """A place where a length may end."""

    after: int
    """How many steps lie before it."""
    inside: bool = False


def _stops(path: ThreadPath, ends: Sequence[float], room: float) -> list[_Stop]:
    """The beginning, every end of a row or the like, the ends of steps inside those too long, and the end."""
    used = [0.0, *ends]
    count = len(path.steps)
    rests = [0, *(at for at in range(1, count) if path.steps[at - 1].rest), *([count] if count else [])]
    stops = [_Stop(0)]
    for one, other in pairwise(rests):
        if used[other] - used[one] > room:
            stops += [_Stop(at, inside=True) for at in range(one + 1, other) if _may_stop(path, at)]
        stops.append(_Stop(other))
    return stops


def _may_stop(path: ThreadPath, after: int) -> bool:
    """A string is never begun anew: its beads hang on one thread."""
    return path.parts[path.steps[after - 1].part].lines != "string"


def plan(path: ThreadPath, ends: Sequence[float], shop: Shop, woven: Sequence[float] = ()) -> ThreadUse:
    """The lengths to cut. `ends`: thread used after each step, `woven`: thread that each step weaves in, mm.

    They begin where the path begins new threads; where no end is woven in, as planned by `changes`.
    """
    steps = path.steps
    tails = [step.tail for step in steps]
    if any(tails):
        firsts = [0, *(at for at, tail in enumerate(tails) if tail is Tail.NEW)]
    else:
        firsts = [0, *changes(path, ends, shop)]
    lengths = []
    total = 0.0
    used = [0.0, *ends]
    first_tail = sum(length for length, tail in zip(woven, tails, strict=False) if tail is Tail.FIRST)
    for first, past in pairwise([*firsts, len(steps)] if steps else []):
        begun, ended = (
            sum(woven[at] for at in range(first, past) if tails[at] is tail) if woven else 0.0
            for tail in (Tail.NEW, Tail.OLD)
        )
        begun = begun if first else first_tail
        whole = used[past] - used[first]
        whole += sum(max(shop.tail_mm, tail + HOLD_MM if tail else 0.0) for tail in (begun, ended))
        total += whole
        cut = math.ceil(round(whole / CUT_STEP_MM, 9)) * CUT_STEP_MM
        lengths.append(CutLength(cut, steps[first].number, steps[past - 1].number))
    return ThreadUse(used[-1], total, tuple(lengths))
