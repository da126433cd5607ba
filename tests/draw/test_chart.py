"""The symbol chart gives back the chart it was drawn from, and can be read in black and white."""

from __future__ import annotations

import itertools

from sitegen.draw.chart import chart
from sitegen.draw.colour import OUTLINE, contrast
from tests.draw.say import SAY


def letters(drawing):
    """(x, y, letter) of every bead letter, and the ink it is set in."""
    return [
        (*mark, drawing.palette.ink(mark[2]))
        for name, values in drawing.calls
        if name == "letters"
        for mark in values[0]
    ]


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
    labels = {values[0].text: values[0] for name, values in drawing.calls if name == "text"}
    assert set(labels) == {str(number) for number in range(1, 18)}
    for step in path.steps:
        if step.motion == "brick-first" and len(step.picks) == 2:
            first, second = (path.beads[bead] for bead in step.picks)
            assert labels[str(step.row)].anchor == ("end" if first.x < second.x else "start")
