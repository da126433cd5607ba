"""A shop -> every kind of drawing of every pattern as a PNG, and an overview a kind, to look through.

For developers, after a change to what is drawn:

    python -m tools.contact_sheet OUT [--shop DIR] [PATTERN ...]

`OUT/KIND/NAME.png` holds the pictures, `OUT/KIND.png` all of a kind side by side.
"""

from __future__ import annotations

import argparse
import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path

from PIL import Image, ImageDraw, ImageFont

from sitegen.build.look import Look, shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.draw.bars import inch_bar, millimetre_bar
from sitegen.draw.bead_key import bead_keys
from sitegen.draw.colour import INK_SAVER, WHITE
from sitegen.draw.legend import SIGNS, sign
from sitegen.draw.pens import Drawing
from sitegen.draw.template import template
from sitegen.draw.tiles import tiles
from sitegen.publish.cards import card_files
from sitegen.publish.favicon import icon_files
from sitegen.publish.lessons import lessons
from sitegen.publish.lettering import outlined
from sitegen.publish.picture import png
from sitegen.publish.piece import Piece
from sitegen.publish.social import pattern_cover, shop_cover
from sitegen.read.sources import Sources, load_shop

ROOT = Path(__file__).resolve().parents[1]
ROOM = (640, 640)
"""Of a picture, pixels."""
SHEET_MM, OVERLAP_MM = (46.0, 56.0), 5.0
"""Charts are cut into sheets of this size here, so that the demo's small charts show how it is done."""
COLUMNS, CELL, CAPTION, GAP = 5, 300, 26, 14
"""Of an overview, pixels."""
GROUND, INK = "#e4dfd5", "#2a2420"

Shown = tuple[str, Drawing | bytes]
"""What tells it from others of its pattern, and a drawing or a finished PNG."""


def _finished(piece: Piece, look: Look) -> Iterator[Shown]:
    del look
    yield "", piece.picture


def _colourways(piece: Piece, look: Look) -> Iterator[Shown]:
    del look
    yield from ((way.folder, way.picture) for way in piece.ways)


def _charts(piece: Piece, look: Look) -> Iterator[Shown]:
    del look
    yield from ((str(index), chart) for index, chart in enumerate(piece.charts, 1) if chart)


def _coloured_charts(piece: Piece, look: Look) -> Iterator[Shown]:
    yield from ((f"{way.folder}-{index}", chart) for way in piece.ways for index, chart in _charts(way, look))


def _ink_saver(piece: Piece, look: Look) -> Iterator[Shown]:
    for index, chart in _charts(piece, look):
        assert isinstance(chart, Drawing)
        yield index, chart.dyed(INK_SAVER)


def _chart_sheets(piece: Piece, look: Look) -> Iterator[Shown]:
    for index, chart in _charts(piece, look):
        assert isinstance(chart, Drawing)
        cut = tiles(chart, SHEET_MM, OVERLAP_MM, look.words.text)
        yield from ((f"{index}-{number}", sheet) for number, sheet in enumerate(cut.sheets, 1))
        yield from ((f"{index}-key-{number}", key) for number, key in enumerate(cut.keys[:1], 1))


def _steps(piece: Piece, look: Look) -> Iterator[Shown]:
    del look
    drawn = [(row.number, one) for part in piece.table for row in part.rows for one in row.drawings]
    yield from ((str(number), drawing) for number, drawing in _ends_and_middle(drawn))


def _strips(piece: Piece, look: Look) -> Iterator[Shown]:
    del look
    drawn = [(row.number, row.strip) for part in piece.table for row in part.rows if row.strip]
    yield from ((str(number), drawing) for number, drawing in _ends_and_middle(drawn))


def _ends_and_middle(drawn: Sequence[tuple[int, Drawing]]) -> list[tuple[int, Drawing]]:
    places = sorted({0, len(drawn) // 2, len(drawn) - 1}) if drawn else []
    return [drawn[place] for place in places]


def _template(piece: Piece, look: Look) -> Iterator[Shown]:
    yield "", template(piece.path, piece.pattern.title, piece.measures, look.words.text)


def _bead_key(piece: Piece, look: Look) -> Iterator[Shown]:
    yield from bead_keys(piece.pattern, look.words.text).items()


def _cards(piece: Piece, look: Look) -> Iterator[Shown]:
    yield "", card_files(piece, look.theme)[0]["card-2.png"]


def _covers(piece: Piece, look: Look) -> Iterator[Shown]:
    yield "", pattern_cover(piece, look.theme)


OF_A_PATTERN: tuple[tuple[str, Callable[[Piece, Look], Iterator[Shown]]], ...] = (
    ("finished", _finished),
    ("colourway", _colourways),
    ("chart", _charts),
    ("chart-in-colourway", _coloured_charts),
    ("chart-ink-saver", _ink_saver),
    ("chart-sheets", _chart_sheets),
    ("step", _steps),
    ("strip", _strips),
    ("template", _template),
    ("bead-key", _bead_key),
    ("card", _cards),
    ("cover", _covers),
)
"""Every kind of drawing that patterns have."""


def _lessons(pieces: Sequence[Piece], sources: Sources, look: Look) -> Iterator[Shown]:
    del pieces
    for lesson in lessons(look.theme, sources.shop.language):
        yield f"{lesson.plan.name}-finished", lesson.picture
        for number, frame in enumerate(lesson.frames, 1):
            yield f"{lesson.plan.name}-{number}-{frame.choice.name}", frame.drawing


def _signs(pieces: Sequence[Piece], sources: Sources, look: Look) -> Iterator[Shown]:
    del pieces, sources
    yield from ((name, sign(name, look.words.text(f"legend.{name}"))) for name in SIGNS)


def _bars(pieces: Sequence[Piece], sources: Sources, look: Look) -> Iterator[Shown]:
    del pieces, sources
    say = look.words.text
    yield "upright", millimetre_bar(say, upright=True)
    yield "lying", millimetre_bar(say, upright=False)
    yield "inches", inch_bar(say)


def _shop_pictures(pieces: Sequence[Piece], sources: Sources, look: Look) -> Iterator[Shown]:
    for name, data in icon_files(pieces, sources.shop, look.words, look.theme):
        if name.endswith(".png"):
            yield Path(name).stem, data
    if pieces:
        yield "cover", shop_cover(pieces, sources.shop, look.theme)


OF_THE_SHOP: tuple[tuple[str, Callable[[Sequence[Piece], Sources, Look], Iterator[Shown]]], ...] = (
    ("lesson", _lessons),
    ("sign", _signs),
    ("bar", _bars),
    ("shop", _shop_pictures),
)
"""Every kind of drawing that a shop has once."""


def contact_sheet(shop: Path, out: Path, names: Sequence[str]) -> None:
    """Draw everything of the patterns called `names`, of all where there are none, into `out`."""
    sources = load_shop(shop)
    look, problems = shop_look(sources)
    if look is None:
        raise SystemExit(f"the shop has no look: {problems}")
    chosen, _ = weave_all(sources, lambda line: None)
    chosen = [one for one in chosen if not names or one[0].name in names]
    pieces = make_pieces(chosen, sources.shop, look.words, print)
    for kind, make in OF_A_PATTERN:
        shown = (
            (f"{piece.pattern.name}{'-' if part else ''}{part}", what)
            for piece in pieces
            for part, what in make(piece, look)
        )
        _write(out, kind, shown, look)
    for kind, gather in OF_THE_SHOP:
        _write(out, kind, gather(pieces, sources, look), look)


def _write(out: Path, kind: str, shown: Iterable[Shown], look: Look) -> None:
    """The pictures of one kind, and their overview."""
    folder = out / kind
    folder.mkdir(parents=True, exist_ok=True)
    pictures = []
    for name, what in shown:
        data = what if isinstance(what, bytes) else png(outlined(what, look.theme), WHITE, ROOM)[0]
        (folder / f"{name}.png").write_bytes(data)
        pictures.append((name, data))
    if pictures:
        _overview(pictures, look).save(out / f"{kind}.png", optimize=True)
    print(f"{kind}: {len(pictures)}")


def _overview(pictures: Sequence[tuple[str, bytes]], look: Look) -> Image.Image:
    """All pictures of a kind side by side, each with its name; a row is as high as its highest."""
    small = [(name, _thumbnail(data)) for name, data in pictures]
    rows = [small[first : first + COLUMNS] for first in range(0, len(small), COLUMNS)]
    heights = [max(picture.height for _, picture in row) for row in rows]
    size = COLUMNS * (CELL + GAP) + GAP, sum(heights) + len(rows) * (CAPTION + GAP) + GAP
    sheet = Image.new("RGB", size, GROUND)
    pen = ImageDraw.Draw(sheet)
    font = ImageFont.truetype(look.theme / "fonts" / "AtkinsonHyperlegibleNext-Regular.ttf", 15)
    y = GAP
    for row, high in zip(rows, heights, strict=True):
        for place, (name, picture) in enumerate(row):
            x = GAP + place * (CELL + GAP)
            at = x + (CELL - picture.width) // 2, y + (high - picture.height) // 2
            sheet.paste(picture, at, picture)
            pen.text((x + CELL / 2, y + high + 4), name, fill=INK, font=font, anchor="ma")
        y += high + CAPTION + GAP
    return sheet


def _thumbnail(data: bytes) -> Image.Image:
    with Image.open(io.BytesIO(data)) as read:
        picture = read.convert("RGBA")
    picture.thumbnail((CELL, CELL), Image.Resampling.LANCZOS)
    return picture


def main() -> None:
    """Read the command line and draw."""
    parser = argparse.ArgumentParser(
        description="Draw every kind of drawing of a shop into a folder of PNGs."
    )
    parser.add_argument("out", metavar="OUT", type=Path)
    parser.add_argument("patterns", metavar="PATTERN", nargs="*")
    parser.add_argument("--shop", metavar="DIR", type=Path, default=ROOT)
    words = parser.parse_args()
    contact_sheet(words.shop, words.out, words.patterns)


if __name__ == "__main__":
    main()
