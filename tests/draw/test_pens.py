"""The pens, and the letter widths they rely on."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from lxml import etree

import sitegen.draw.pens as pens
from sitegen.draw.colour import Palette, mix
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
    pen.letters([(10, 5, "M"), (20, 5, "i"), (30, 5, "M")], 2)
    found = {}
    for part in pen.parts:
        text = etree.fromstring(part)
        assert text.text == text.get("data-ink") * len(text.get("x").split())
        found[text.get("data-ink")] = [float(x) for x in text.get("x").split()]
    wide, narrow = text_width("M", 2) / 2, text_width("i", 2) / 2
    assert found == {
        "M": pytest.approx([10 - wide, 30 - wide], abs=0.01),
        "i": pytest.approx([20 - narrow], abs=0.01),
    }


def test_letters_name_the_letter_whose_ink_they_are_in():
    pen = SvgPen(Palette({"D": "#101010", "P": "#f0f0f0"}))
    pen.letters([(1, 5, "D"), (3, 5, "P"), (5, 5, "D")], 2)
    marks = [etree.fromstring(part) for part in pen.parts]
    assert [(one.text, one.get("fill")) for one in marks] == [("DD", "#ffffff"), ("P", "#000000")]


def test_a_mixed_colour_rounds_a_half_up():
    assert mix("#000000", "#0a0b0c", 0.5) == "#050606"
    assert mix("#0a0b0c", "#000000", 0.5) == "#050606"


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


def test_beads_in_a_row_read_equal_and_stay_in_place():
    """Wherever they stand: what is rounded off does not add up along the row."""
    starts = [(0.337 * place, row) for row in (0.0, 1.114) for place in range(200)]
    pen = SvgPen()
    pen.begin("beads", {"letter": "G"})
    pen.shapes([Outline((x, y), ((x + 1, y), (x + 1, y + 1))) for x, y in starts], Paint(fill="#000000"))
    moves = re.findall(r"([Mm])(-?[\d.]+) ?(-?[\d.]+)h1v1z", pen.parts[1])
    assert "".join(letter for letter, _, _ in moves) == 2 * ("M" + "m" * 199)
    x = y = 0.0
    for (letter, right, down), start in zip(moves, starts, strict=True):
        x, y = (x + float(right), y + float(down)) if letter == "m" else (float(right), float(down))
        assert (x, y) == pytest.approx(start, abs=0.006)
    assert len(set(moves)) == 4


def test_what_a_script_takes_apart_has_absolute_starts():
    pen = SvgPen()
    pen.begin("beads-new", {"letter": "G"})
    pen.shapes([Outline((x, 0), ((x + 1, 0), (x, 1))) for x in range(3)], Paint(fill="#000000"))
    assert pen.parts[1].count("M") == 3


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
