"""Pictures as PNGs: true colours, repeatable bytes, sizes as asked; cards, the shop's sign, charts alone."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from PIL import Image

from sitegen.draw.colour import Dye, Palette, channels
from sitegen.draw.pens import Drawing, Paint, Recorder, finish
from sitegen.draw.shapes import ellipse
from sitegen.publish.picture import picture_look, png, trimmed
from sitegen.publish.theme_look import screen_style
from tests.publish.sample_shop import Built

THEME = Path(__file__).parents[2] / "themes" / "linen"
FILLS = {"A": "#8d3427", "B": "#3c6b45", "C": "#f6f1e4", "D": "#42505c"}


def opened(data: bytes) -> Image.Image:
    return Image.open(io.BytesIO(data))


def four_beads() -> Drawing:
    recorder = Recorder()
    for place, letter in enumerate(FILLS):
        recorder.shapes([ellipse((place * 2.0, 0.0), 0.9, 0.9)], Paint(fill=Dye(letter)))
    return finish(recorder, "Four beads", "Four.", 1.0, Palette(FILLS))


def test_beads_keep_their_colours() -> None:
    """Within 2 levels of 255: what the docstring of `COLOURS` promises."""
    drawing = four_beads()
    data, (width, height) = png(drawing, "#fffdf8", (600, 600))
    image = opened(data).convert("RGB")
    assert (width, height) == image.size == (600, round(600 * drawing.height_mm / drawing.width_mm))
    for place, fill in enumerate(FILLS.values()):
        x = round((place * 2.0 - drawing.left) / drawing.width_mm * width)
        seen = image.getpixel((x, height // 2))
        assert isinstance(seen, tuple)
        assert all(abs(one - other) <= 2 for one, other in zip(seen, channels(fill), strict=True))
    assert image.getpixel((0, 0)) == channels("#fffdf8")


def test_the_same_drawing_gives_the_same_bytes() -> None:
    assert png(four_beads(), "#ffffff") == png(four_beads(), "#ffffff")


def test_without_a_ground_the_picture_is_clear() -> None:
    image = opened(png(four_beads(), None, (64, 64))[0])
    assert image.mode == "RGBA"
    assert image.getpixel((0, 0)) == (0, 0, 0, 0)


def test_trimmed_takes_the_margins_away() -> None:
    drawing = four_beads()
    assert trimmed(drawing).width_mm == pytest.approx(drawing.width_mm - 2.0)
    assert trimmed(drawing).top == pytest.approx(-0.9)


def test_pictures_look_as_pages_do() -> None:
    """The colours and typefaces of pictures are those that the pages' style sheet declares."""
    style, look = screen_style(THEME).decode(), picture_look(THEME)
    for name in ("title", "text", "paper", "plate", "ink", "soft", "rule", "accent"):
        value = re.search(rf"--{name}: \"?([^;\",]+)", style)
        assert value is not None
        assert getattr(look, name) == value[1]


def test_cards_come_in_two_sizes(built: Built) -> None:
    folder = built.site / "patterns" / "reed-pair"
    small, large = (opened((folder / name).read_bytes()).size for name in ("card.png", "card-2.png"))
    assert small[0] <= 316
    assert small[1] <= 284
    assert 284 in small or 316 in small
    assert large == pytest.approx((small[0] * 2, small[1] * 2), abs=1)
    front = (built.site / "index.html").read_text(encoding="utf-8")
    assert "patterns/reed-pair/card.png 1x, patterns/reed-pair/card-2.png 2x" in front
    assert f'width="{small[0]}" height="{small[1]}"' in front


def test_the_sign_of_the_shop_is_linked_from_every_page(built: Built) -> None:
    for size in (32, 180):
        assert opened((built.site / "look" / f"icon-{size}.png").read_bytes()).size == (size, size)
    ET.parse(built.site / "look" / "icon.svg")
    for page in built.site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        links = re.findall(r'<link rel="(?:icon|apple-touch-icon)" href="([^"]+)"', text)
        assert len(links) == 3
        # The page for lost visitors is shown at any address: its links begin at the root.
        home = built.site if page.name == "404.html" else page.parent
        assert all((home / link.removeprefix("/shop/")).is_file() for link in links)


def test_charts_lie_beside_the_page_of_a_free_pattern_alone(built: Built) -> None:
    folder = built.site / "patterns" / "reed-pair"
    page = built.page("reed-pair")
    for part in ("fan", "fringe"):
        for form in ("chart", "letters"):
            name = f"{form}-{part}.svg"
            assert f'href="{name}"' in page
            text = (folder / name).read_text(encoding="utf-8")
            root = ET.fromstring(text)
            width, height = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
            assert width <= 186
            assert height <= 255
            assert "<text" not in text
            assert "font" not in text
            assert ("#3c6b45" in re.findall(r'fill="(#\w+)"', text)) is (form == "chart")
    assert not list((built.site / "patterns" / "pebble-charm").rglob("*.svg"))
