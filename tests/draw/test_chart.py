"""The symbol chart gives back the chart it was drawn from, and can be read in black and white."""

from __future__ import annotations

import itertools
from collections import Counter

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.chart_marks import BOLD, FINE
from sitegen.draw.colour import INK, OUTLINE, contrast
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece


def letters(drawing):
    """(x, y, letter) of every bead letter, and the ink it is set in."""
    return [
        (*mark, drawing.palette.ink(mark[2]))
        for name, values in drawing.calls
        if name == "letters"
        for mark in values[0]
    ]


def texts(drawing, kind):
    """The labels in groups of a kind."""
    found, group = [], ""
    for name, values in drawing.calls:
        group = values[0] if name == "begin" else group
        if name == "text" and group == kind:
            found.append(values[0])
    return found


def grid(drawing):
    """The drawn letters as text: rows by height, one column half a pitch."""
    marks = letters(drawing)
    rows = [
        list(row)
        for _, row in itertools.groupby(
            sorted(marks, key=lambda m: (round(m[1], 3), m[0])), lambda m: round(m[1], 3)
        )
    ]
    half = min(b[0] - a[0] for row in rows for a, b in itertools.pairwise(row)) / 2
    left = min(mark[0] for mark in marks)
    lines = []
    for row in rows:
        line = ""
        for x, _, letter, _ in row:
            line = line.ljust(round((x - left) / half)) + letter
        lines.append(line)
    return "\n".join(lines)


def source(pattern, part):
    rows = pattern.parts[part].all_rows
    first = min(column for row in rows for column, _ in row.cells)
    lines = []
    for row in rows:
        line = ""
        for column, letter in row.cells:
            line = line.ljust(column - first) + letter
        lines.append(line)
    return "\n".join(lines)


def test_letters_stand_as_in_the_source(kelp, diamond):
    for pattern, path in (kelp, diamond):
        assert grid(chart(path, pattern, 0, SAY)) == source(pattern, 0)


def test_strand_letters_read_down_like_the_word_charts(kelp):
    pattern, path = kelp
    marks = letters(chart(path, pattern, 1, SAY))
    assert len(marks) == sum(len(strand.letters) for strand in pattern.parts[1].all_strands)
    fringe = [bead for bead in path.beads if bead.part == 1]
    assert sorted(mark[2] for mark in marks) == sorted(bead.letter for bead in fringe)


def test_no_two_strands_overlap(kelp):
    pattern, path = kelp
    marks = letters(chart(path, pattern, 1, SAY))
    for one, other in itertools.combinations(marks, 2):
        assert abs(one[0] - other[0]) > 0.7 or abs(one[1] - other[1]) > 0.7


def test_letters_and_outlines_can_be_seen(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for _, _, letter, ink in letters(chart(path, pattern, 0, SAY)):
            assert contrast(ink, pattern.colour(letter).hex) >= 4.5
    assert contrast(OUTLINE, "#ffffff") >= 3


def test_every_row_is_numbered_at_the_side_where_it_begins(diamond):
    pattern, path = diamond
    drawing = chart(path, pattern, 0, SAY)
    labels = {text.text: text for text in texts(drawing, "row-number")}
    assert set(labels) == {str(number) for number in range(1, 18)}
    for step in path.steps:
        if step.motion == "brick-first" and len(step.picks) == 2:
            first, second = (path.beads[bead] for bead in step.picks)
            assert labels[str(step.row)].anchor == ("end" if first.x < second.x else "start")


def test_a_large_chart_stays_small_as_a_file():
    """One path a colour, one text a row and letter: 140 bytes a bead, and some for each row."""
    pattern = piece("stitch: square", "\n".join("ABC" * 10 for _ in range(40)))
    svg = chart(path_of(pattern), pattern, 0, SAY).svg("c")
    assert len(svg) < 140 * 30 * 40 + 500 * 40
    assert svg.count("<path") < 3 + 40 + 10
    assert svg.count("<text") <= 3 * 40 + 2 * 40 + 6


def test_heavier_lines_follow_every_fifth_row_and_column():
    """Twelve rows of eleven: straight lines after rows and columns 5 and 10, the tenth's wider."""
    pattern = piece("stitch: square", "\n".join("A" * 11 for _ in range(12)))
    wide = [line for line in heavier(chart(path_of(pattern), pattern, 0, SAY)) if line[0] == BOLD]
    fine = [line for line in heavier(chart(path_of(pattern), pattern, 0, SAY)) if line[0] == FINE]
    for lines in (wide, fine):
        assert sorted(len({x for x, _ in points}) for _, points in lines) == [1, 2]
        assert all(len(points) == 2 for _, points in lines)


def test_heavier_lines_follow_the_stagger_of_peyote():
    """Between rows the line goes up and down by half a bead at every column; columns are straight."""
    rows = [" " * (number % 2) + "A " * 6 for number in range(7)]
    pattern = piece("stitch: peyote", "\n".join(row.rstrip() for row in rows))
    lines = [points for width, points in heavier(chart(path_of(pattern), pattern, 0, SAY)) if width == FINE]
    (stepped,) = [points for points in lines if len(points) > 2]
    heights = sorted({round(y, 3) for _, y in stepped})
    assert len(stepped) == 2 * 12
    assert heights[1] - heights[0] == pytest.approx(2.1 / 2)


def heavier(drawing):
    """(width, points) of the heavier lines' ink."""
    at = next(i for i, call in enumerate(drawing.calls) if call[1][:1] == ("heavier-lines",))
    end = next(i for i in range(at, len(drawing.calls)) if drawing.calls[i][0] == "end")
    return [
        (paint.width, list(outline.points()))
        for _, (outlines, paint) in drawing.calls[at + 1 : end]
        if paint.stroke == INK
        for outline in outlines
    ]


def test_each_row_tells_its_beads_at_its_end_in_a_quieter_way(diamond):
    pattern, path = diamond
    drawing = chart(path, pattern, 0, SAY)
    numbers, counts = texts(drawing, "row-number"), texts(drawing, "row-count")
    assert len(counts) == len(numbers) == 17
    rows = Counter(bead.row for bead in path.beads)
    for number, count in zip(numbers, counts, strict=True):
        assert count.text == f"({rows[int(number.text)]})"
        assert count.anchor != number.anchor
        assert count.size < number.size
        assert not count.bold
        assert number.bold
        assert contrast(count.ink, "#ffffff") >= 4.5


def test_counts_stand_in_one_column_a_side_and_none_further_out():
    """In peyote rows 1 and 2 are both begun at the left: there is room for the second's count further in."""
    rows = [" " * (number % 2) + "A " * (6 - number % 2) for number in range(9)]
    pattern = piece("stitch: peyote", "\n".join(row.rstrip() for row in rows))
    drawing = chart(path_of(pattern), pattern, 0, SAY)
    middle = drawing.left + drawing.width_mm / 2
    right = [count.x for count in texts(drawing, "row-count") if count.x > middle]
    column = Counter(round(x, 1) for x in right).most_common(1)[0][0]
    assert len(right) >= 3
    assert max(right) == pytest.approx(column, abs=0.1)
