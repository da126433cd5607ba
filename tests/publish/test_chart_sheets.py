"""How charts come on paper and on screen: letters that can be read, on sheets that fit."""

from __future__ import annotations

import re
from types import SimpleNamespace

import pytest

from sitegen.draw.chart import chart
from sitegen.publish.blocks import PRINT, SCREEN
from sitegen.publish.chart_sheets import chart_sheets, smallest_letter
from sitegen.publish.making import word_rows
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece


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
