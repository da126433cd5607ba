"""Nothing a maker reads in a step drawing is covered: in all steps of all demo patterns and examples."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from sitegen.build.woven import work_out
from sitegen.draw import order
from sitegen.draw.order import chosen
from sitegen.draw.overlap import overlaps
from sitegen.draw.pens import Outline, Paint, Recorder, Text, finish
from sitegen.draw.route import Mark
from sitegen.draw.step import StepArtist
from sitegen.model.shop import Shop
from sitegen.publish.planned import planned_rows
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from tests.demo import DEMO_SHOP
from tests.draw.say import SAY

TESTS = Path(__file__).parents[1]
SOURCES = [
    *sorted(file for file in (TESTS.parent / "content" / "patterns").glob("*.md") if "." not in file.stem),
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
def test_no_step_drawing_covers_what_is_read(file, monkeypatch):
    """Every diagram that is printed, its ends woven in; and with them every step drawn alone.

    No number that is wanted is missing.
    """
    wanted: list[int] = []

    def noted(marks: Sequence[Mark]) -> list[Mark]:
        wanted[:] = [mark.number for mark in chosen(marks)]
        return chosen(marks)

    monkeypatch.setattr(order, "chosen", noted)
    pattern = load_pattern(file, DEMO_SHOP).patterns[0]
    path, _ = work_out(pattern, Shop())
    assert path is not None
    artist = StepArtist(path, pattern, SAY)
    printed = [pair for row in planned_rows(path, WORDS) for pair in row.drawn]
    alone = [(step.number, step.number) for step in path.steps[:40]]
    for first, last in sorted({*printed, *alone}):
        drawing = artist.draw(first, last, "x")
        assert overlaps(drawing) == [], (first, last)
        numbers = [int(values[1]["place"]) for name, values in drawing.calls if values[:1] == ("mark",)]
        assert numbers == wanted, (first, last)
