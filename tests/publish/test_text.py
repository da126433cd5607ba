"""Markdown, quantities, chips and pictures: the small pieces that pages are made of."""

from __future__ import annotations

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from sitegen.draw.pens import Outline, Paint, Recorder, finish
from sitegen.publish.chips import runs, style_sheet
from sitegen.publish.markdown import Author, heading_levels
from sitegen.publish.picture import png
from sitegen.publish.quantities import Quantities
from sitegen.publish.theme import BUNDLED
from sitegen.publish.view import Ink
from sitegen.publish.words import Words

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())


@pytest.fixture(scope="module")
def tell() -> Quantities:
    return Quantities(Words(LINEN, "en"))


@given(st.lists(st.integers(1, 6)))
def test_no_level_is_skipped_whatever_an_author_writes(levels: list[int]) -> None:
    set_levels = heading_levels(levels)
    before = 2
    for level in set_levels:
        assert 3 <= level <= min(before + 1, 6)
        before = level


@pytest.mark.parametrize(
    ("written", "set_as"),
    [
        ([2, 2, 3, 2], [3, 3, 4, 3]),
        ([1, 4, 4, 2], [3, 4, 4, 4]),
        ([3, 2], [3, 3]),
        ([1, 2, 3, 4, 5], [3, 4, 5, 6, 6]),
    ],
)
def test_heading_levels(written: list[int], set_as: list[int]) -> None:
    assert heading_levels(written) == set_as


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("<script>x</script>", "&lt;script&gt;x&lt;/script&gt;"),
        ("[x](javascript:alert(1))", "[x](javascript:alert(1))"),
        ("[x](../secret.md)", "[x](../secret.md)"),
        ("![x](photo.jpg)", "![x](photo.jpg)"),
        ("![x](https://example.org)", '!<a href="https://example.org" rel="noopener">x</a>'),
        ("[a *b* `c`](https://example.org)", '<a href="https://example.org" rel="noopener">a b c</a>'),
        ("|a|\n|:-:|\n|b|", '<th scope="col">a</th>'),
    ],
)
def test_markdown(text: str, html: str) -> None:
    made = Author().html(text)
    assert html in made
    assert "style=" not in made


def test_quantities(tell: Quantities) -> None:
    assert tell.size(31.04, 78) == "31 × 78 mm"
    assert tell.size_inches(31, 78) == "1 1/4 × 3 1/16 in"
    assert tell.metres(1420) == "1.42 m"
    assert tell.feet(1420) == "4 ft 8 in"
    assert tell.feet(304.8) == "1 ft 0 in"
    assert tell.feet(40) == "2 in"
    assert (tell.grams(3.44), tell.grams(0.044)) == ("3.4 g", "0.04 g")
    assert (tell.ounces(3.4), tell.ounces(1.4), tell.ounces(0.06)) == ("0.12 oz", "0.049 oz", "0.0021 oz")
    assert (tell.ounces(2.82), tell.ounces(28.349523125), tell.ounces(0)) == ("0.099 oz", "1 oz", "0 oz")
    assert (tell.minutes(3), tell.minutes(60), tell.minutes(138)) == ("5 min", "1 h", "2 h 20 min")
    assert tell.price(None, "EUR") == "Free"
    assert tell.kilobytes(83_001) == "84 kB"


def test_chips(pattern_of_two: object) -> None:
    found = runs(pattern_of_two, "AABa")  # type: ignore[arg-type]
    assert [(one.count, one.letter, one.name) for one in found] == [
        ("2", "A", "ash"),
        ("1", "B", "bark"),
        ("1", "a", "a"),
    ]
    assert (
        style_sheet([Ink("bead-A", "#ffffff", "#000000")])
        == ".bead-A { background: #ffffff; color: #000000; }\n"
    )


@pytest.fixture
def pattern_of_two() -> object:
    class Two:
        @staticmethod
        def colour(letter: str) -> object:
            names = {"A": "ash", "B": "bark"}
            return type("Colour", (), {"name": names[letter]}) if letter in names else None

    return Two()


def test_a_picture_is_painted_where_the_drawing_says() -> None:
    recorder = Recorder()
    square = Outline((0.0, 0.0), ((4.0, 0.0), (4.0, 4.0), (0.0, 4.0)))
    recorder.shapes([square], Paint(fill="#cc0000"))
    recorder.shapes([Outline((6.0, 0.0), ((6.0, 4.0),), closed=False)], Paint(stroke="#0000cc", width=1.0))
    data, size = png(finish(recorder, "A square and a line", "", 0.5), None, (300, 300))
    image = Image.open(io.BytesIO(data))
    assert image.size == size
    assert max(size) == 300
    millimetre = 300 / 7.5

    def at(x: float, y: float) -> tuple[int, ...]:
        pixel = image.getpixel((round((x + 0.5) * millimetre), round((y + 0.5 + 0.5) * millimetre)))
        assert isinstance(pixel, tuple)
        return pixel

    assert at(2, 2) == (204, 0, 0, 255)
    assert at(6, 2) == (0, 0, 204, 255)
    assert at(5, 2)[3] == 0
