"""Letters as outlines: where the font puts them, and a drawing that needs no font."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import ImageFont

from sitegen.draw.colour import Palette
from sitegen.draw.pens import CAP_HEIGHT, FONT_FAMILY, BoundsPen, Paint, Recorder, Text, finish, text_width
from sitegen.publish.lettering import face, outlined

THEME = Path(__file__).parents[2] / "themes" / "linen"


def box(recorder: Recorder) -> BoundsPen:
    bounds = BoundsPen()
    finish(recorder, "", "", 0.0).play(bounds)
    return bounds


def test_a_capital_is_as_high_as_its_font_says() -> None:
    recorder = Recorder()
    recorder.shapes(face(THEME, FONT_FAMILY, 700).outlines("H", 10, (3, 20)), Paint(fill="#000000"))
    bounds = box(recorder)
    assert (bounds.top, bounds.bottom) == pytest.approx((20 - 10 * CAP_HEIGHT, 20), abs=0.02)
    assert bounds.left > 3


@pytest.mark.parametrize("words", ["AV", "To", "nnn", "Tidemark fob", "Rain on the eaves"])
def test_words_run_as_far_as_another_engine_sets_them(words: str) -> None:
    """Against HarfBuzz, through Pillow: advances and kerning, ligatures off."""
    font = ImageFont.truetype(
        THEME / "fonts" / "YoungSerif-Regular.ttf", 1000, layout_engine=ImageFont.Layout.RAQM
    )
    expected = font.getlength(words, features=["-liga", "-clig", "-calt"])
    assert face(THEME, "Young Serif").width(words, 1000) == pytest.approx(expected, abs=1)


def test_letters_set_apart_run_further() -> None:
    title = face(THEME, "Young Serif")
    assert title.width("nnn", 10, apart=0.1) == pytest.approx(title.width("nnn", 10) + 3)


def test_drawings_measure_letters_as_the_font_does() -> None:
    bold = face(THEME, FONT_FAMILY, 700)
    assert bold.width("M", 7) == pytest.approx(text_width("M", 7), abs=0.01)


def test_a_theme_without_the_typeface_is_told() -> None:
    with pytest.raises(FileNotFoundError, match="no font file of Nowhere Sans"):
        face(THEME, "Nowhere Sans")


def test_an_outlined_drawing_needs_no_font_and_keeps_its_place() -> None:
    recorder = Recorder()
    recorder.begin("beads", {"letter": "A"})
    recorder.letters([(1.0, 2.0, "A"), (5.0, 2.0, "B")], 1.5)
    recorder.end()
    recorder.text(Text(8.0, 2.0, "10", 1.5, "#2b2622", "end", bold=True))
    drawing = finish(recorder, "Two beads", "A and B.", 1.0, Palette({"A": "#101010", "B": "#f0f0f0"}))
    assert "<text" in drawing.svg("a")
    drawn = outlined(drawing, THEME)
    svg = drawn.svg("a")
    assert "<text" not in svg
    assert "font" not in svg
    assert '<title id="a-t">Two beads</title>' in svg
    assert 'data-letter="A"' in svg
    shapes = [values for name, values in drawn.calls if name == "shapes"]
    assert [values[1].fill for values in shapes] == ["#ffffff", "#000000", "#2b2622"]  # type: ignore[attr-defined]
    middles = []
    for outlines, _ in shapes[:2]:
        xs = [x for outline in outlines for x, _ in outline.points()]  # type: ignore[attr-defined]
        middles.append((min(xs) + max(xs)) / 2)
    assert middles == pytest.approx([1.0, 5.0], abs=0.1)
    ends = [x for outline in shapes[2][0] for x, _ in outline.points()]  # type: ignore[attr-defined]
    assert max(ends) == pytest.approx(8.0, abs=0.15)
