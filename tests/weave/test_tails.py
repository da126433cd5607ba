"""Ends of thread: woven in by real passes and half hitches, a new thread where the old one came out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.measure import measure
from sitegen.measure.plan import thread_changes
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import MoveKind, Tail, ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.read.sources import load_pattern
from sitegen.weave import weave, weave_in_tails
from sitegen.weave.needle import replay
from tests.demo import DEMO_SHOP

DEMOS = sorted(
    file for file in (Path(__file__).parents[2] / "content" / "patterns").glob("*.md") if "." not in file.stem
)
SHORT = Shop(working_length_mm=700, tail_mm=120)
"""So short a working length that small pieces need several."""
HEADER = """---
title: Sample
summary: A sample.
makes: one piece
revision: 1
price: free
colours:
  D: {{bead: round 11/0, name: dark, hex: "#1f4d3a"}}
parts:
  - {{name: Piece, stitch: {stitch}}}
---

```chart Piece
{chart}
```
"""
STAGGERED = "\n".join(" " * (row % 2) + "D " * 10 for row in range(10))
CHARTS = {
    "brick": STAGGERED,
    "peyote": "\n".join(" " * (row % 2) + "D " * 8 for row in range(16)),
    "square": "\n".join(["DDDDDDDD"] * 8),
    "loom": "\n".join(["DDDDDDDDD"] * 14),
}


def pattern_of(stitch: str, chart: str) -> Pattern:
    pattern, problems = read_pattern(HEADER.format(stitch=stitch, chart=chart), "sample.md", Shop())
    assert not problems
    assert pattern is not None
    return pattern


def finish(pattern: Pattern, shop: Shop) -> tuple[ThreadPath, ThreadPath]:
    """Bare, and with its tails."""
    bare, problems = weave(pattern, shop)
    assert not problems
    assert bare is not None
    path, problems = weave_in_tails(bare, pattern, thread_changes(bare, pattern, shop))
    assert not problems
    assert path is not None
    return bare, path


@pytest.mark.parametrize("stitch", CHARTS)
def test_each_change_has_both_ends_and_the_last_steps_finish_the_piece(stitch: str) -> None:
    pattern = pattern_of(stitch, CHARTS[stitch])
    bare, path = finish(pattern, SHORT)
    changes = thread_changes(bare, pattern, SHORT)
    tails = [step.tail for step in path.steps if step.tail]
    assert changes
    assert tails == [Tail.OLD, Tail.NEW] * len(changes) + [Tail.OLD, Tail.FIRST]
    assert [step.tail for step in path.steps[-2:]] == [Tail.OLD, Tail.FIRST]


@pytest.mark.parametrize("stitch", CHARTS)
def test_the_work_itself_is_the_same_and_starts_again_where_it_stopped(stitch: str) -> None:
    bare, path = finish(pattern_of(stitch, CHARTS[stitch]), SHORT)
    worked = [step for step in path.steps if step.tail is None]
    moves = [move for step in worked for move in path.moves[step.first_move : step.past_move]]
    assert tuple(moves) == bare.moves
    for step in path.steps:
        if step.tail is Tail.NEW:
            old = path.steps[step.number - 3]
            before, after = path.moves[old.past_move - 1], path.moves[step.past_move - 1]
            assert (before.bead, before.enter) == (after.bead, after.enter)


@pytest.mark.parametrize("stitch", CHARTS)
def test_each_end_has_two_half_hitches_and_goes_on_through_two_beads_after_each(stitch: str) -> None:
    _, path = finish(pattern_of(stitch, CHARTS[stitch]), SHORT)
    for step in path.steps:
        if step.tail is None:
            continue
        kinds = [move.kind for move in path.moves[step.first_move : step.past_move]]
        assert not step.picks
        assert kinds.count(MoveKind.HITCH) >= 2
        assert kinds[-2:] == [MoveKind.THROUGH, MoveKind.THROUGH]
        assert (MoveKind.TAKE in kinds) is (step.tail is not Tail.OLD)


def test_thread_worked_with_stays_as_it_was_and_no_length_is_too_long() -> None:
    pattern = pattern_of("brick", CHARTS["brick"])
    bare, path = finish(pattern, SHORT)
    one, other = measure(bare, pattern, SHORT), measure(path, pattern, SHORT)
    assert other.thread.path_mm == pytest.approx(one.thread.path_mm)
    assert other.thread.total_mm == pytest.approx(
        one.thread.total_mm
    )  # tails are longer than what is woven in
    assert all(cut.cut_mm <= SHORT.working_length_mm for cut in other.thread.lengths)
    assert [cut.first_step for cut in other.thread.lengths[1:]] == [
        step.number for step in path.steps if step.tail is Tail.NEW
    ]


def test_tails_too_short_to_weave_in_are_cut_longer() -> None:
    pattern = pattern_of("brick", STAGGERED)
    stingy = Shop(tail_mm=10)
    bare, path = finish(pattern, stingy)
    assert (
        measure(path, pattern, stingy).thread.total_mm > measure(bare, pattern, stingy).thread.total_mm + 60
    )


@pytest.mark.parametrize("file", DEMOS, ids=lambda file: file.stem)
def test_no_end_of_a_demo_is_left_hanging(file: Path) -> None:
    """Both ends of each are woven in, unless a string makes them fast itself."""
    bare, whole = finish(load_pattern(file, DEMO_SHOP).patterns[0], Shop())
    own = {bare.parts[bare.steps[0].part].lines, bare.parts[bare.steps[-1].part].lines} == {"string"}
    ends = {step.tail for step in whole.steps if step.tail}
    assert ends >= (set() if own else {Tail.OLD, Tail.FIRST})


@pytest.mark.parametrize("file", DEMOS, ids=lambda file: file.stem)
def test_every_change_that_is_planned_is_made(file: Path) -> None:
    """At the edge of a net no end can be held: there the change waits for a stitch that can hold it."""
    pattern = load_pattern(file, DEMO_SHOP).patterns[0]
    bare, whole = finish(pattern, SHORT)
    made = [step for step in whole.steps if step.tail is Tail.NEW]
    assert len(made) == len(thread_changes(bare, pattern, SHORT))


def test_a_string_makes_its_own_ends_fast() -> None:
    text = HEADER.format(stitch="brick", chart=STAGGERED)
    pattern, _ = read_pattern(text, "sample.md", Shop())
    assert pattern is not None
    path, _ = weave(pattern, Shop())
    assert path is not None
    strung = replace(path, parts=tuple(replace(part, lines="string") for part in path.parts))
    finished, _ = weave_in_tails(strung, pattern, ())
    assert finished is not None
    assert not any(step.tail for step in finished.steps)


Broken = Callable[[ThreadPath], ThreadPath]


def without_hitches(path: ThreadPath) -> ThreadPath:
    """Every hitch becomes a pass through the bead just left, so that the count of moves stays."""
    moves = list(path.moves)
    for number, move in enumerate(moves):
        if move.kind is MoveKind.HITCH:
            moves[number] = replace(move, kind=MoveKind.UNDER)
    return replace(path, moves=tuple(moves))


def out_of_another_bead(path: ThreadPath) -> ThreadPath:
    """The new thread's last pass goes the wrong way."""
    step = next(step for step in path.steps if step.tail is Tail.NEW)
    moves = list(path.moves)
    last = moves[step.past_move - 1]
    moves[step.past_move - 1] = replace(last, enter=last.enter.other)
    return replace(path, moves=tuple(moves))


def nothing_taken_up(path: ThreadPath) -> ThreadPath:
    """The tail from the beginning hangs out of the wrong end."""
    moves = list(path.moves)
    take = max(number for number, move in enumerate(moves) if move.kind is MoveKind.TAKE)
    bead, end = moves[take].hangs or (0, path.moves[0].enter)
    moves[take] = replace(moves[take], hangs=(bead, end.other))
    return replace(path, moves=tuple(moves))


@pytest.mark.parametrize("spoil", [without_hitches, out_of_another_bead, nothing_taken_up])
def test_the_needle_objects_to_ends_that_do_not_hold(spoil: Broken) -> None:
    pattern = pattern_of("brick", STAGGERED)
    _, path = finish(pattern, SHORT)
    assert "path-tail-loose" in Counter(problem.code for problem in replay(spoil(path), pattern))


@settings(max_examples=25, deadline=None)
@given(
    st.sampled_from(sorted(CHARTS)),
    st.integers(3, 12),
    st.integers(3, 14),
    st.integers(500, 1600),
)
def test_ends_of_any_piece_can_be_woven_in(stitch: str, across: int, rows: int, span: int) -> None:
    """`finish` holds that the needle has no objection."""
    staggered = stitch in ("brick", "peyote")
    lines = [" " * (row % 2) + "D " * across if staggered else "D" * across for row in range(rows)]
    pattern = pattern_of(stitch, "\n".join(lines))
    _, path = finish(pattern, Shop(working_length_mm=span, tail_mm=120))
    tails = Counter(step.tail for step in path.steps if step.tail)
    assert tails[Tail.OLD] == tails[Tail.NEW] + 1
    assert tails[Tail.FIRST] == 1


@pytest.mark.parametrize(
    ("stitch", "key"), [("peyote", "tail-stop-bead"), ("square", "tail-stop-bead"), ("loom", "tail-knot")]
)
def test_what_held_the_first_tail_comes_off_before_it_is_woven_in(stitch: str, key: str) -> None:
    _, path = finish(pattern_of(stitch, CHARTS[stitch]), SHORT)
    told = [(step.tail, place) for step in path.steps for place in step.phrases if place.key == key]
    assert [tail for tail, _ in told] == [Tail.FIRST]
    keys = [phrase.key for phrase in path.steps[-1].phrases]
    assert keys.index(key) < keys.index("tail-go")


def test_a_tail_that_nothing_held_is_just_taken_up() -> None:
    _, path = finish(pattern_of("brick", STAGGERED), SHORT)
    keys = {phrase.key for step in path.steps for phrase in step.phrases}
    assert not keys & {"tail-stop-bead", "tail-knot"}


def test_warps_are_cut_only_when_both_ends_of_the_thread_are_woven_in() -> None:
    _, path = finish(pattern_of("loom", CHARTS["loom"]), SHORT)
    told = [(step.number, phrase.key) for step in path.steps for phrase in step.phrases]
    assert [number for number, key in told if key == "loom-finish"] == [len(path.steps)]
    assert told[-1][1] == "loom-finish"


def test_a_part_that_is_not_in_work_is_named_once() -> None:
    """The ends of a fringe's thread lie in the fan: said once, not at each bead."""
    fern = next(file for file in DEMOS if file.stem == "evening-fern")
    _, path = finish(load_pattern(fern, DEMO_SHOP).patterns[0], Shop())
    for step in path.steps[-2:]:
        keys = [phrase.key for phrase in step.phrases]
        assert keys.count("tail-part") == 1
        assert keys[0] == "tail-part"
        beads = [spot for phrase in step.phrases for spot in phrase.values.get("beads", ())]
        assert {spot.values["bead"].key for spot in beads} == {"spot-rows"}
