"""The key to the step drawings: the signs that occur, and no others."""

from __future__ import annotations

import pytest

from sitegen.draw.legend import signs_in
from sitegen.draw.step import StepArtist
from sitegen.weave import weave_in_tails
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece

BLOCK = "\n".join(["ABABABAB"] * 6)
STAGGERED = "\n".join((" " * (row % 2) + "A " * 6).rstrip() for row in range(8))
SAMPLES = {"loom": BLOCK, "square": BLOCK, "peyote": STAGGERED, "brick": STAGGERED}


def finished(stitch):
    pattern = piece(f"stitch: {stitch}", SAMPLES[stitch])
    path, problems = weave_in_tails(path_of(pattern), pattern, ())
    assert not problems
    assert path is not None
    return pattern, path


@pytest.mark.parametrize(("stitch", "shows"), [("loom", False), ("brick", True)])
def test_a_bridge_is_in_the_key_where_one_is_drawn(stitch, shows):
    _, path = finished(stitch)
    assert ("bridge" in signs_in(path, strips=False)) is shows


@pytest.mark.parametrize("stitch", SAMPLES)
def test_the_stop_bead_is_drawn_in_the_first_step_and_in_the_key_where_there_is_one(stitch):
    pattern, path = finished(stitch)
    artist = StepArtist(path, pattern, SAY)
    drawn = [
        step.number
        for step in path.steps
        if ("begin", ("stop-bead", {})) in artist.draw(step.number, step.number, "x").calls
    ]
    there = stitch in ("peyote", "square")
    assert drawn == ([1] if there else [])
    assert ("stop" in signs_in(path, strips=False)) is there
