"""How charts come on paper and on screen: letters that can be read, on sheets that fit."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.colour import Dye
from sitegen.draw.pens import Paint, Recorder, finish
from sitegen.draw.shapes import ellipse
from sitegen.model.location import NOWHERE
from sitegen.model.shop import Shop
from sitegen.model.source import ChartHere, Prose
from sitegen.publish.blocks import LARGE, PRINT, SCREEN, ChartBlock, Chip, WordRow
from sitegen.publish.chart_sheets import MOST_LARGE_SHEETS, OPENING_MM, chart_sheets, smallest_letter
from sitegen.publish.making import blocks, word_rows
from sitegen.publish.piece import Piece
from sitegen.publish.summary import word_columns
from sitegen.publish.table import TableSection
from sitegen.publish.words import Words
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece

WORDS = Words(Path(__file__).parents[2] / "themes" / "linen", "en")


def square(wide, high):
    pattern = piece("stitch: square", "\n".join("AB" * (wide // 2) for _ in range(high)))
    return chart(path_of(pattern), pattern, 0, SAY)


def size(svg):
    """Width and height in mm, and the scale it is shown at."""
    width, height = (float(one) for one in re.search(r'width="([\d.]+)mm" height="([\d.]+)mm"', svg).groups())
    shown = float(re.search(r'viewBox="\S+ \S+ (\S+) ', svg).group(1))
    return width, height, width / shown


@pytest.mark.parametrize(("wide", "high", "sheets"), [(10, 10, 1), (30, 30, 1), (60, 30, 2), (60, 60, 4)])
def test_print_sheets_fit_and_their_letters_are_large_enough(wide, high, sheets):
    """5.5 pt at least; a point is 1/72 in."""
    drawing = square(wide, high)
    shown = chart_sheets(drawing, "c", PRINT, SAY)
    assert len(shown) == sheets
    for sheet in shown:
        width, height, scale = size(sheet.svg)
        assert width <= 170
        assert height <= 205
        assert smallest_letter(drawing) * scale * 72 / 25.4 >= 5.49
        assert bool(sheet.key) is (sheets > 1)
        assert bool(sheet.caption) is (sheets > 1)


def test_on_screen_a_large_chart_is_one_and_keeps_its_size():
    """9 px at least; a px is 1/96 in."""
    drawing = square(90, 60)
    (sheet,) = chart_sheets(drawing, "c", SCREEN, SAY)
    width, _, scale = size(sheet.svg)
    assert smallest_letter(drawing) * scale * 96 / 25.4 >= 8.99
    assert width > SCREEN.chart[0]
    assert drawing.title in sheet.label


def test_a_rope_of_equal_stitches_is_two_lines_of_words():
    """The first stitch brings the core; all others are alike."""
    pattern = piece("stitch: spiral rope\nrope: {core: 4A, outer: 1B 1C 1B, stitches: 20}")
    rows = word_rows(SimpleNamespace(path=path_of(pattern), pattern=pattern), 0)
    said = [(row.number, [run.count + run.letter for run in row.runs], row.beads) for row in rows]
    assert said == [("1", ["4A", "1B", "1C", "1B"], "7"), ("2–20", ["1A", "1B", "1C", "1B"], "4")]


def test_a_chart_that_opens_the_making_is_lower_in_print_if_its_letters_allow_it():
    """It then stays on the page of the opening words; on screen nothing changes."""
    short, tall = square(10, 30), square(10, 50)
    (opening,) = chart_sheets(short, "c", PRINT, SAY, opens=True)
    (later,) = chart_sheets(short, "c", PRINT, SAY)
    assert size(opening.svg)[1] == pytest.approx(OPENING_MM, abs=0.1)
    assert opening.height_mm == pytest.approx(OPENING_MM)
    assert size(later.svg)[1] > OPENING_MM
    assert chart_sheets(short, "c", SCREEN, SAY, opens=True) == chart_sheets(short, "c", SCREEN, SAY)
    assert chart_sheets(tall, "c", PRINT, SAY, opens=True)[0].height_mm > OPENING_MM


@pytest.mark.parametrize(("high", "order"), [(8, ["chart", "legend"]), (50, ["legend", "chart"])])
def test_the_key_stands_before_a_chart_that_leaves_no_room_below_the_opening_words(high, order):
    """In print, so that no page stays blank but for a line."""
    pattern = piece("stitch: square", "\n".join(["AB" * 5] * high))
    whole = replace(pattern, body=(Prose("A band.", NOWHERE), ChartHere("Piece", NOWHERE)))
    path = path_of(pattern)
    drawing = chart(path, pattern, 0, SAY)
    steps = TableSection("Piece", ())
    made = Piece(whole, Shop(), path, None, WORDS, None, (drawing,), (steps,))
    assert [block.kind for block in blocks(made, PRINT) if block.kind in order] == order
    assert [block.kind for block in blocks(made, SCREEN) if block.kind in order] == ["chart", "legend"]


@pytest.mark.parametrize(
    ("wide", "high", "sheets"), [(6, 6, 1), (20, 6, 1), (30, 20, 10), (40, 30, 17), (60, 60, 1)]
)
def test_a_chart_in_large_print_goes_over_sheets_that_can_be_read(wide, high, sheets):
    """18 pt at least; the overview that stands before many sheets, or alone, has no letters."""
    shown = chart_sheets(square(wide, high), "c", LARGE, SAY)
    for sheet in shown:
        width, height, scale = size(sheet.svg)
        assert width <= LARGE.chart[0] + 0.1
        assert height <= LARGE.chart[1] + 0.1
        told = re.findall(r'font-size="([\d.]+)"', sheet.svg)
        assert all(float(one) * scale * 72 / 25.4 >= 17.99 for one in told)
    assert len(shown) == sheets
    assert len(shown) <= MOST_LARGE_SHEETS + 1
    overview = shown[0]
    if wide == 60:
        assert overview.caption == SAY("chart.overview")
    elif len(shown) > 3:
        assert overview.caption == SAY("chart.overview-first", count=len(shown) - 1)
    assert bool(overview.caption) is (len(shown) > 1 or wide == 60)


def test_a_ring_that_leaves_its_sheets_nearly_empty_is_shown_as_an_overview_alone():
    recorder = Recorder()
    for turn in range(40):
        x, y = 45 * math.cos(turn * math.tau / 40), 45 * math.sin(turn * math.tau / 40)
        recorder.shapes([ellipse((x, y), 1.5, 1.5)], Paint(fill=Dye("A")))
        recorder.letters([(x, y, "A")], 1.3)
    (sheet,) = chart_sheets(finish(recorder, "Ring", "A ring.", 0.3), "c", LARGE, SAY)
    assert "<text" not in sheet.svg
    assert sheet.caption == SAY("chart.overview")


def test_the_last_rows_of_a_word_chart_do_not_stand_alone_in_the_other_column():
    rows = tuple(WordRow(str(number), (Chip("3", "A", "a"),), "3", "", "", "") for number in range(1, 9))
    first = ChartBlock("One", "", "", "", (), "row", rows)
    pairs = word_columns((first, replace(first, part="Two", rows=rows[:6])))
    assert [[(block.part, len(block.rows)) for block in column] for column in pairs[0]] == [
        [("One", 8)],
        [("Two", 6)],
    ]
