"""Nothing a maker reads in a step drawing is covered: in all steps of all demo patterns and examples."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.build.woven import work_out
from sitegen.draw.overlap import overlaps
from sitegen.draw.pens import Outline, Paint, Recorder, Text, finish
from sitegen.draw.step import StepArtist
from sitegen.model.shop import Shop
from sitegen.publish.planned import planned_rows
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from tests.draw.say import SAY

TESTS = Path(__file__).parents[1]
SOURCES = [
    *sorted((TESTS.parent / "content" / "patterns").glob("*.md")),
    *sorted((TESTS / "examples").glob("*.md")),
]
WORDS = Words(TESTS.parent / "themes" / "linen", "en")


def drawing_of(draw):
    recorder = Recorder()
    draw(recorder)
    return finish(recorder, "t", "d", 0.1)


def line(recorder, kind, points, width=0.2):
    recorder.begin(kind, {})
    recorder.shapes(
        [Outline(points[0], tuple(points[1:]), closed=False)], Paint(stroke="#b0122b", width=width)
    )
    recorder.end()


def test_a_line_through_a_letter_is_found_also_where_it_is_curved():
    def straight(pen):
        line(pen, "thread-line", [(-5.0, 0.0), (5.0, 0.0)])
        pen.letters([(0.0, 0.0, "A")], 1.0)

    def curved(pen):
        line(pen, "thread-line", [(-5.0, 4.0), (-2.0, -5.0, 2.0, -5.0, 5.0, 4.0)])
        pen.letters([(0.0, -2.7, "A")], 1.0)

    assert overlaps(drawing_of(straight)) == ["thread-line through A"]
    assert overlaps(drawing_of(curved)) == ["thread-line through A"]


def test_a_line_beside_a_letter_is_not():
    def beside(pen):
        line(pen, "thread-line", [(-5.0, 0.5), (5.0, 0.5)])
        line(pen, "warps", [(0.0, -5.0), (0.0, 5.0)])
        pen.letters([(0.0, 0.0, "A")], 1.0)

    assert overlaps(drawing_of(beside)) == []


def test_a_number_on_a_letter_is_found_and_one_beside_it_is_not():
    def over(pen):
        pen.letters([(0.0, 0.0, "A")], 1.0)
        pen.text(Text(0.3, 0.0, "12", 1.0, "#000000"))

    def beside(pen):
        pen.letters([(0.0, 0.0, "A")], 1.0)
        pen.text(Text(0.0, 0.9, "12", 1.0, "#000000"))

    assert overlaps(drawing_of(over)) == ["A over 12"]
    assert overlaps(drawing_of(beside)) == []


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_no_step_drawing_covers_what_is_read(file):
    """Every diagram that is printed, its ends woven in; and with them every step drawn alone."""
    pattern = load_pattern(file, Shop()).patterns[0]
    path, _ = work_out(pattern, Shop())
    assert path is not None
    artist = StepArtist(path, pattern, SAY)
    printed = [pair for row in planned_rows(path, WORDS) for pair in row.drawn]
    alone = [(step.number, step.number) for step in path.steps[:40]]
    for first, last in sorted({*printed, *alone}):
        assert overlaps(artist.draw(first, last, "x")) == [], (first, last)
