"""The pens, and the letter widths they rely on."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

import sitegen.draw.pens as pens
from sitegen.draw.pens import BoundsPen, Outline, Paint, Recorder, SvgPen, Text, finish, text_width

FONT = Path(__file__).parents[2] / "themes" / "linen" / "fonts" / "AtkinsonHyperlegibleNext-Bold.ttf"


def test_letter_widths_and_capitals_are_those_of_the_bundled_font():
    font = TTFont(FONT)
    em = font["head"].unitsPerEm
    widths = json.loads((Path(pens.__file__).parent / "advances.json").read_text())
    assert len(widths) > 60
    for letter, width in widths.items():
        assert font["hmtx"][font.getBestCmap()[ord(letter)]][0] / em == pytest.approx(width, abs=1e-4)
    assert font["OS/2"].sCapHeight / em == pytest.approx(pens.CAP_HEIGHT, abs=1e-3)


def test_letters_are_centred_on_their_beads():
    pen = SvgPen()
    pen.letters([(10, 5, "M"), (20, 5, "i")], 2)
    wanted = [10 - text_width("M", 2) / 2, 20 - text_width("i", 2) / 2]
    xs = [float(x) for x in pen.parts[0].split('x="')[1].split('"')[0].split()]
    assert xs == pytest.approx(wanted, abs=0.01)


def test_a_drawing_is_as_large_as_what_is_drawn_plus_its_margin():
    recorder = Recorder()
    recorder.shapes([Outline((1, 2), ((5, 2), (5, 8)))], Paint(fill="#000000", stroke="#000000", width=0.5))
    drawing = finish(recorder, "T", "D", 1)
    assert (drawing.left, drawing.top) == (-0.25, 0.75)
    assert (drawing.width_mm, drawing.height_mm) == (6.5, 8.5)


def test_equal_shapes_read_equal():
    pen = SvgPen()
    pen.shapes(
        [Outline((0, 0), ((1, 0, 2, 1, 2, 2),)), Outline((9, 3), ((10, 3, 11, 4, 11, 5),))],
        Paint(fill="#000000"),
    )
    assert pen.parts[0].count("c1 0 2 1 2 2") == 2


def test_markup_in_texts_is_escaped():
    pen = SvgPen()
    pen.text(Text(0, 0, "<b>&", 1, "#000000"))
    pen.begin("beads", {"letter": '"'})
    assert "<b>" not in "".join(pen.parts)
    assert 'letter="&quot;"' in "".join(pen.parts)


def test_bounds_take_in_strokes_and_labels():
    pen = BoundsPen()
    pen.text(Text(5, 5, "10", 2, "#000000", "end"))
    assert pen.right == 5
    assert pen.left == pytest.approx(5 - text_width("10", 2))
