"""Step diagrams: the new beads, the thread that adds them, and which way up the work is held."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.draw.pens import BoundsPen
from sitegen.draw.step import StepArtist
from tests.draw.say import SAY


def letters(drawing):
    return "".join(mark[2] for name, values in drawing.calls if name == "letters" for mark in values[0])


def groups(drawing):
    return [values[0] for name, values in drawing.calls if name == "begin"]


def all_drawings(pattern, path):
    yield finished(path, pattern, SAY)
    for part in range(len(path.parts)):
        yield chart(path, pattern, part, SAY)
    for step in path.steps:
        yield StepArtist(path, pattern, SAY).draw(step.number, step.number, f"Step {step.number}")


def test_new_beads_carry_their_letters(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for step in path.steps:
            drawing = StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step")
            assert sorted(letters(drawing)) == sorted(path.beads[bead].letter for bead in step.picks)
            assert "thread" in groups(drawing)


def test_the_bridge_shows_where_the_needle_goes_under_one(kelp):
    pattern, path = kelp
    for step in path.steps:
        drawn = "bridges" in groups(StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step"))
        assert drawn == (step.motion.startswith("brick") or step.motion == "ladder-back")


def test_turned_work_is_drawn_upside_down(diamond):
    """Row 10 hangs below the middle row; held turned, its beads are drawn above."""
    pattern, path = diamond
    step = next(step for step in path.steps if step.turned and step.motion == "brick-first")
    drawing = StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step")
    there, new = {}, {}
    kind = ""
    for name, values in drawing.calls:
        if name == "begin":
            kind = values[0]
        if name == "shapes" and kind.startswith("beads"):
            (new if kind == "beads-new" else there).update({o.start: o.start[1] for o in values[0]})
    assert max(new.values()) < min(there.values())


def test_nothing_is_drawn_outside_the_box(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for drawing in all_drawings(pattern, path):
            bounds = BoundsPen()
            drawing.play(bounds)
            assert bounds.left >= drawing.left
            assert bounds.top >= drawing.top
            assert bounds.right <= drawing.left + drawing.width_mm
            assert bounds.bottom <= drawing.top + drawing.height_mm


def test_every_svg_says_what_it_shows_and_uses_plain_values(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for number, drawing in enumerate(all_drawings(pattern, path)):
            text = drawing.svg(f"d{number}")
            root = ElementTree.fromstring(text)
            title, description = root[0], root[1]
            assert title.tag.endswith("title")
            assert title.text
            assert description.tag.endswith("desc")
            assert description.text
            assert root.get("aria-labelledby") == f"d{number}-t d{number}-d"
            assert not re.search(r"style=|class=|var\(|currentColor|nan|inf|calc", text)
            for paint in re.findall(r'(?<!-)(?:fill|stroke)="([^"]*)"', text):
                assert re.fullmatch(r"none|#[0-9a-f]{6}", paint)


def test_scale_changes_the_size_but_not_the_drawing(kelp):
    pattern, path = kelp
    drawing = finished(path, pattern, SAY)
    small, large = drawing.svg("a", 1), drawing.svg("a", 2)
    assert re.sub(r' (width|height)="[^"]*mm"', "", small) == re.sub(r' (width|height)="[^"]*mm"', "", large)
    assert f'width="{float(re.search(r"width=.([0-9.]+)mm", small).group(1)) * 2:.10g}' in large


@pytest.mark.parametrize("pieces", [1, 2])
def test_a_pair_is_drawn_twice(kelp, diamond, pieces):
    pattern, path = (diamond, kelp)[pieces - 1]
    assert groups(finished(path, pattern, SAY)).count("piece") == pieces
