"""Covers: their size, what is on them, and what a page tells those who pass its address on."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from sitegen.build.look import shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.draw.colour import channels
from sitegen.draw.pens import BoundsPen, Drawing, Paint, Recorder, finish
from sitegen.draw.shapes import ellipse
from sitegen.publish.compose import canonical, page_address
from sitegen.publish.lettering import face
from sitegen.publish.picture import picture_look
from sitegen.publish.piece import Piece
from sitegen.publish.sharing import page_sharing, pattern_sharing
from sitegen.publish.social import EDGE, HEIGHT, LEFT, ROOM, SIZES, WIDTH, CoverWords, band, cover, fitted
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import Built

THEME = Path(__file__).parents[2] / "themes" / "linen"
WORDS = CoverWords("Ferry & Daughters", "Reed pair", "Beginner. Makes a pair.")


def pieces_of(root: Path) -> list[Piece]:
    sources = load_shop(root)
    look, _ = shop_look(sources)
    assert look is not None
    woven, _ = weave_all(sources, lambda line: None)
    return make_pieces(woven, sources.shop, look.words, lambda line: None)


@pytest.fixture(scope="module")
def piece(built: Built) -> Piece:
    return next(one for one in pieces_of(built.root) if one.pattern.name == "reed-pair")


def oval(width: float, height: float) -> Drawing:
    recorder = Recorder()
    recorder.shapes([ellipse((0.0, 0.0), width / 2, height / 2)], Paint(fill="#123456"))
    return finish(recorder, "Oval", "An oval.", 0.0)


def where(drawing: Drawing, fill: str) -> BoundsPen:
    """The box of everything in one colour."""
    bounds = BoundsPen()
    for name, values in drawing.calls:
        if name == "shapes" and values[1].fill == fill:  # type: ignore[attr-defined]
            bounds.shapes(*values)  # type: ignore[arg-type]
    return bounds


@pytest.mark.parametrize(
    "place", ["cover.png", "patterns/reed-pair/cover.png", "patterns/pebble-charm/cover.png"]
)
def test_covers_have_the_size_and_weight_that_sites_take(built: Built, place: str) -> None:
    data = (built.site / place).read_bytes()
    image = Image.open(io.BytesIO(data))
    assert image.size == (1200, 630)
    assert len(data) < 300_000
    assert image.convert("RGB").getpixel((WIDTH - 5, 5)) == channels(picture_look(THEME).paper)


@pytest.mark.parametrize("size", [(10, 10), (40, 60), (60, 40), (90, 10)])
def test_piece_and_words_stay_inside_and_apart(piece: Piece, size: tuple[float, float]) -> None:
    drawn = cover([oval(*size)], band(piece), WORDS, THEME)
    shown = where(drawn, "#123456")
    title = where(drawn, picture_look(THEME).ink)
    words = where(drawn, picture_look(THEME).soft)
    for box in (shown, title, words):
        assert box.left >= LEFT - 5
        assert box.right <= WIDTH - EDGE + 1
        assert box.top >= 30
        assert box.bottom <= HEIGHT - 30
    assert shown.left > title.right or shown.bottom < title.top
    assert (shown.right - shown.left) / (shown.bottom - shown.top) == pytest.approx(
        size[0] / size[1], rel=0.01
    )


def test_a_slim_piece_runs_off_top_and_foot(piece: Piece) -> None:
    shown = where(cover([oval(5, 150)], band(piece), WORDS, THEME), "#123456")
    assert shown.top < 0
    assert shown.bottom > HEIGHT
    assert shown.right <= WIDTH - EDGE


def test_the_band_is_in_the_colours_of_the_pattern(piece: Piece) -> None:
    letters = {values[1]["letter"] for name, values in band(piece).calls if name == "begin"}  # type: ignore[index]
    assert letters == {"G", "W"}


@pytest.mark.parametrize("title", ["Fob", "Rain on the eaves earrings", "A" * 60, "many words " * 12])
def test_titles_fit_their_room(title: str) -> None:
    font = face(THEME, "Young Serif")
    size, lines = fitted(font, title, ROOM / 2, 3)
    assert max(font.width(line, size) for line in lines) <= ROOM / 2 + 0.01
    assert " ".join(lines).split() == title.split()
    assert size <= SIZES[0]


def test_a_page_tells_what_it_is(built: Built) -> None:
    fields = dict(re.findall(r'<meta property="og:([^"]+)" content="([^"]*)">', built.page("reed-pair")))
    home = "https://beads.example/shop/patterns/reed-pair/"
    assert fields["title"] == "Reed pair"
    assert fields["type"] == "article"
    assert fields["url"] == home
    assert fields["image"] == home + "cover.png"
    assert (fields["image:width"], fields["image:height"]) == ("1200", "630")
    assert fields["image:alt"].startswith("Reed pair, finished. The finished pair: 19 beads each")
    front = (built.site / "index.html").read_text(encoding="utf-8")
    assert '<meta property="og:image" content="https://beads.example/shop/cover.png">' in front
    pages = front + built.page("reed-pair")
    for address in re.findall(r'og:image" content="https://beads.example/shop/([^"]+)"', pages):
        assert (built.site / address).is_file()


def test_a_colourway_is_passed_on_with_the_cover_of_the_pattern(built: Built) -> None:
    page = (built.site / "patterns" / "reed-pair" / "in-dusk" / "index.html").read_text(encoding="utf-8")
    home = "https://beads.example/shop/patterns/reed-pair/"
    assert f'<meta property="og:url" content="{home}in-dusk/">' in page
    assert f'<meta property="og:image" content="{home}cover.png">' in page


def test_without_an_address_pages_say_nothing_of_it(piece: Piece) -> None:
    shop = replace(piece.shop, address="")
    address = canonical(shop, page_address(piece.pattern.name))
    assert pattern_sharing(piece, address, address) is None
    assert page_sharing(shop, shop.title, "website", canonical(shop, ""), piece.words) is None
