"""Charts, drawn and in words."""

from __future__ import annotations

from itertools import pairwise

import pytest

from sitegen.model.location import Location
from sitegen.model.source import Chart
from sitegen.read.chart import ChartBlock, chart_of_rows, read_chart
from sitegen.read.faults import Faults
from sitegen.read.words import parse_words
from tests.read.samples import changed, codes, read, sound

FENCE = Location("f", 1, 10, 3)


def chart(*lines: str) -> tuple[Chart, list[tuple[str, int, int]]]:
    faults = Faults()
    block = ChartBlock("Fan", tuple(enumerate(lines, start=2)), FENCE)
    return read_chart(block, faults), codes(faults.problems)


def test_the_picture_as_it_looks() -> None:
    drawn, problems = chart("  A B", " C . D")
    assert problems == []
    assert [row.cells for row in drawn.rows] == [((2, "A"), (4, "B")), ((1, "C"), (5, "D"))]
    assert [row.empty for row in drawn.rows] == [(), (3,)]
    assert drawn.rows[1].spot(1) == Location("f", 3, 6, 1)
    assert drawn.rows[0].where == Location("f", 2, 3, 3)


def test_blank_lines_around_do_not_count() -> None:
    drawn, problems = chart("", " A", "B B", "  ", "")
    assert problems == []
    assert len(drawn.rows) == 2


@pytest.mark.parametrize(
    ("lines", "problem"),
    [
        (("", " "), ("chart-empty", 1, 10)),
        (("A A", "", " A"), ("chart-row-empty", 3, 1)),
        (("A A", ". ."), ("chart-row-empty", 3, 1)),
        (("A\tA",), ("chart-tab", 2, 2)),
        (("A A", " é"), ("chart-character", 3, 2)),
        (("A A", " ٣"), ("chart-character", 3, 2)),
    ],
)
def test_refuses(lines: tuple[str, ...], problem: tuple[str, int, int]) -> None:
    assert chart(*lines)[1] == [problem]


def starts(stitch: str, *rows: str) -> list[int]:
    """First column of each row given in words."""
    words = [parse_words(row) for row in rows]
    built = chart_of_rows("Fan", stitch, [word for word in words if word], FENCE)
    return [row.cells[0][0] for row in built.rows]


@pytest.mark.parametrize(
    ("rows", "columns"),
    [
        (("2D", "3D", "4D"), [2, 1, 0]),
        (("4D", "3D", "4D"), [0, 1, 0]),
        (("4D", "4D", "4D", "4D"), [1, 2, 1, 0]),
        (("3D", "5D"), [1, 0]),
        (("4D", "4D", "3D"), [0, 1, 2]),
    ],
)
def test_rows_in_words_are_centred_and_in_step(rows: tuple[str, ...], columns: list[int]) -> None:
    found = starts("brick", *rows)
    assert all((above - below) % 2 for above, below in pairwise(found))
    assert found == columns


def test_rows_in_words_of_a_rectangular_stitch() -> None:
    assert starts("loom", "5D", "5D") == [0, 0]
    words = parse_words("2D L")
    assert words is not None
    assert chart_of_rows("Fan", "loom", [words], FENCE).rows[0].cells == ((0, "D"), (1, "D"), (2, "L"))


def test_rows_in_words_stand_for_a_chart() -> None:
    drawn = sound(changed())
    worded = sound(
        changed(
            ("    begin: bottom\n", "    begin: bottom\n    rows:\n      - 2G\n      - G W G\n"),
            ("```chart Wedge\n G G\nG W G\n```\n", ""),
        )
    )
    assert worded.parts[0].chart == drawn.parts[0].chart
    assert worded.parts[0].chart is not None
    assert worded.parts[0].chart.rows[1].spot(1) == Location("reed.md", 19, 11, 1)


def test_a_repeated_chart_is_stacked() -> None:
    part = sound(changed(("begin: bottom", "begin: bottom\n    repeat: 3"))).parts[0]
    assert ["".join(letter for _, letter in row.cells) for row in part.all_rows] == ["GG", "GWG"] * 3


def test_charts_find_their_parts() -> None:
    assert codes(read(changed(("```chart Wedge", "```chart wedge")))[1]) == [("chart-part-unknown", 29, 10)]
    again = "```chart Wedge\nG\n```\n\n::: steps Wedge"
    assert codes(read(changed(("::: steps Wedge", again)))[1]) == [("chart-twice", 34, 10)]
    rows = ("    begin: bottom\n", "    begin: bottom\n    rows: [2G]\n")
    assert codes(read(changed(rows))[1]) == [("chart-and-rows", 30, 10)]
