"""Charts of what hangs: the edge that holds it and nothing else, and no letter through a bead before it."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest

from sitegen.build.woven import work_out
from sitegen.draw.chart import chart
from sitegen.draw.overlap import Marks
from sitegen.draw.step import StepArtist
from sitegen.model.shop import Shop
from sitegen.read.sources import load_pattern
from tests.draw.say import SAY

DEMOS = Path(__file__).parents[2] / "content" / "patterns"


def worked(name):
    """A demo with its ends woven in."""
    pattern = load_pattern(DEMOS / f"{name}.md", Shop()).patterns[0]
    path, problems = work_out(pattern, Shop())
    assert path is not None
    assert not [problem for problem in problems if problem.code.startswith("path")]
    return pattern, path


def groups(drawing):
    """What each group of the drawing is, in order of drawing."""
    return [values[0] for name, values in drawing.calls if name == "begin"]


@pytest.mark.parametrize(("name", "part", "held"), [("window-box", 2, 6), ("hazel-catkins", 2, 9)])
def test_a_chart_shows_the_edge_alone(name, part, held):
    """The way to the far edge, and ends woven in elsewhere, are not drawn into it.

    Three loops that would cover each other stand apart, each under the three beads of its two bridges.
    """
    pattern, path = worked(name)
    assert groups(chart(path, pattern, part, SAY)).count("hanger") == held


def test_letters_of_a_leg_that_lies_behind_are_drawn_before_the_leg_in_front():
    pattern, path = worked("hazel-catkins")
    step = next(step for step in path.steps if step.motion == "twist")
    for drawing in (
        chart(path, pattern, 1, SAY),
        StepArtist(path, pattern, SAY).draw(step.number, step.number, "x"),
    ):
        kinds = groups(drawing)
        first = kinds.index("letters")
        assert any(kind in ("beads", "beads-new") for kind in kinds[first:])


def test_a_bead_that_another_covers_in_part_has_no_letter_to_be_read_by_halves():
    """Its order is in the word chart; letters that are seen lie apart, box by box."""
    pattern, path = worked("hazel-catkins")
    marks = Marks()
    chart(path, pattern, 1, SAY).play(marks)
    drawn = [box for box in marks.glyphs if box.what.isalpha()]
    beads = [bead for bead in path.beads if bead.part == 1]
    assert len(beads) / 2 < len(drawn) < len(beads)
    assert not [pair for pair in combinations(drawn, 2) if pair[0].meets(pair[1])]
