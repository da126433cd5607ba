"""Holes: passes counted bead by bead, the first too many named, and the mildest remedy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.measure.holes import hole_fit, passes_allowed
from sitegen.measure.tools import Tools
from sitegen.model.thread import Bead, End, Move, MoveKind, Step, ThreadPath, WovenPart
from sitegen.trade.needles import needle
from sitegen.trade.rules import rules
from sitegen.trade.threads import Thread


def to_and_fro(passes: int, kind: str = "round 11/0") -> ThreadPath:
    """One bead passed so many times, a step a pass."""
    one = Bead("A", 0, 1, 1, 0, 0, 0, 2.1, 1.5, "round", kind)
    moves = [
        Move(MoveKind.THROUGH if number else MoveKind.PICK, 0, End(number % 2)) for number in range(passes)
    ]
    steps = [Step(number, 0, 1, "anything", (), number - 1, number, ()) for number in range(1, passes + 1)]
    return ThreadPath((one,), tuple(moves), tuple(steps), (WovenPart("P", "brick", 1, 1, 1),))


def tools(diameter: float, name: str = "beading 12") -> Tools:
    """Nylon of that diameter."""
    found = needle(name)
    assert found is not None
    return Tools(found, Thread("nylon", diameter))


def test_as_many_passes_as_fit_are_no_trouble() -> None:
    fit = hole_fit(to_and_fro(3), tools(0.30))
    assert (fit.most, fit.tight, fit.remedy) == (3, (), None)


def test_the_first_pass_too_many_is_named() -> None:
    (tight,) = hole_fit(to_and_fro(5), tools(0.30)).tight
    assert (tight.bead, tight.passes, tight.allowed, tight.step) == (0, 5, 3, 4)


@pytest.mark.parametrize(
    ("passes", "needle_name", "key"),
    [
        (4, "beading 12", "holes-finer-needle"),
        (6, "beading 12", "holes-finer-thread"),
        (30, "beading 12", "holes-finer-both"),
        (60, "beading 12", "holes-larger"),
        (5, "beading 16", "holes-finer-thread"),
    ],
)
def test_the_mildest_remedy_comes_first(passes: int, needle_name: str, key: str) -> None:
    remedy = hole_fit(to_and_fro(passes), tools(0.30, needle_name)).remedy
    assert remedy is not None
    assert remedy.key == key


@given(st.floats(0.5, 2.0), st.floats(0.05, 0.5), st.floats(0.2, 0.6))
def test_the_last_pass_allowed_fits_and_the_next_does_not(
    hole: float, thread: float, needle_mm: float
) -> None:
    passes = passes_allowed(hole, thread, needle_mm)
    room = rules().packing_share * hole**2 - needle_mm**2
    if passes:
        assert (passes - 1) * thread**2 <= room + 1e-7
    assert passes * thread**2 > room - 1e-7


def test_a_needle_as_thick_as_the_hole_passes_never() -> None:
    assert passes_allowed(0.7, 0.2, 0.61) == 0
