"""Colourways: the same drawings and sentences in other colours, without weaving or measuring again."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.build import build, woven
from sitegen.build.woven import Woven, make_pieces, work_out
from sitegen.draw.colour import Palette
from sitegen.draw.pens import Drawing
from sitegen.measure import measure
from sitegen.model.source import Colourway, Swap
from sitegen.publish.colourways import in_colourways, same_beads
from sitegen.publish.piece import Piece
from sitegen.publish.slugs import slugs
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import Built, Outline, write_shop

DUSK = "patterns/reed-pair/in-dusk/index.html"
COLOUR = re.compile(r"#[0-9a-f]{6}")


@pytest.fixture(scope="module")
def pieces(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Piece]:
    """Every pattern of the sample shop; the priced one with a colourway too."""
    root = write_shop(tmp_path_factory.mktemp("ways"))
    sources = load_shop(root)
    found: list[Woven] = []
    for pattern in sources.patterns:
        way = Colourway("Tide", {"Q": Swap("kelp", "#2f3b22"), "Z": Swap("foam", "#dfe9e6")})
        ready = pattern if pattern.colourways else replace(pattern, colourways=(way,))
        path, _ = work_out(ready, sources.shop)
        assert path is not None
        found.append((ready, path, measure(path, ready, sources.shop)))
    words = Words(theme_folder("linen", root), "en")
    made = make_pieces(found, sources.shop, words, lambda line: None)
    return {piece.pattern.name: piece for piece in made}


def drawings(piece: Piece) -> list[Drawing]:
    """Every chart and step of a piece; the finished picture differs in its words too."""
    steps = [
        drawing
        for section in piece.table
        for row in section.rows
        for drawing in (*row.drawings, row.strip)
        if drawing is not None
    ]
    return [*(chart for chart in piece.charts if chart is not None), *steps]


def bare(svg: str) -> str:
    """SVG without its colours; letters of one line may be set in two inks, so their elements are joined."""
    return COLOUR.sub("#", svg)


@pytest.mark.parametrize("name", ["reed-pair", "pebble-charm"])
def test_a_colourway_changes_colours_and_nothing_else(pieces: dict[str, Piece], name: str) -> None:
    piece = pieces[name]
    (way,) = piece.ways
    assert len(drawings(way)) == len(drawings(piece)) > 5
    for one, other in zip(drawings(piece), drawings(way), strict=True):
        assert other.calls is one.calls
        assert replace(other, palette=one.palette) == one
        assert other.svg("x") != one.svg("x")
    assert way.picture.calls == piece.picture.calls
    assert way.path is piece.path
    assert replace(way.measures, beads=piece.measures.beads) == piece.measures


def test_a_drawing_is_the_same_in_any_colours_but_for_them(pieces: dict[str, Piece]) -> None:
    """As SVG, in palettes that write every letter in the same ink."""
    for piece in pieces.values():
        letters = [colour.letter for colour in piece.pattern.colours]
        dark = [Palette(dict.fromkeys(letters, f"#{n:02x}1020")) for n in (0, 16, 32)]
        for drawing in (*drawings(piece), piece.picture):
            made = [drawing.dyed(palette).svg("x") for palette in dark]
            assert len(set(made)) == len(dark)
            assert len(set(map(bare, made))) == 1


def test_sentences_notes_and_beads_to_pick_up_stay(pieces: dict[str, Piece]) -> None:
    piece = pieces["reed-pair"]
    for one, other in zip(piece.table, piece.ways[0].table, strict=True):
        for row, same in zip(one.rows, other.rows, strict=True):
            assert replace(same, drawings=row.drawings, strip=row.strip) == row


def test_the_bead_list_is_that_of_the_colourway(pieces: dict[str, Piece]) -> None:
    own, way = pieces["reed-pair"].measures, pieces["reed-pair"].ways[0].measures
    assert [(bead.letter, bead.name, bead.hex) for bead in way.beads] == [
        ("G", "plum", "#4b2b4f"),
        ("W", "milk", "#f6f1e4"),
    ]
    assert [bead.total for bead in way.beads] == [bead.total for bead in own.beads] == [30, 8]


def test_nothing_is_woven_or_measured_for_a_colourway(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = {"weave": 0, "measure": 0}
    for name in calls:
        work = getattr(woven, name)

        def counted(*values: object, name: str = name, work: object = work) -> object:
            calls[name] += 1
            assert callable(work)
            return work(*values)

        monkeypatch.setattr(woven, name, counted)
    root = write_shop(tmp_path)
    (root / "content" / "patterns" / "pebble-charm.md").unlink()
    assert DUSK.replace("patterns", "site/patterns") in build(root, processes=1).files
    assert calls == {"weave": 1, "measure": 1}


def test_letters_that_become_one_bead_are_told(pieces: dict[str, Piece]) -> None:
    piece = pieces["pebble-charm"]
    one = Swap("kelp", "#2f3b22")
    pattern = replace(piece.pattern, colourways=(Colourway("Kelp", {"Q": one, "Z": one}),))
    (way,) = in_colourways(replace(piece, pattern=pattern))
    assert same_beads(way) == ("Q, Z: one and the same bead in these colours, kelp. Together 10.",)
    assert [bead.letter for bead in way.measures.beads] == ["Q", "Z"]
    assert same_beads(piece.ways[0]) == ()


def test_a_colourway_has_a_page_of_its_own(built: Built) -> None:
    page = (built.site / DUSK).read_text(encoding="utf-8")
    outline = Outline(page)
    assert outline.faults == []
    assert len(outline.ids) == len(set(outline.ids))
    assert '<link rel="canonical" href="https://beads.example/shop/patterns/reed-pair/in-dusk/">' in page
    for address in outline.addresses:
        if not address.startswith(("https://", "#")):
            assert (built.site / DUSK).parent.joinpath(address).resolve().is_file(), address
    assert "../index.html" in outline.addresses
    for words in ("Reed pair in Dusk", "plum", "milk", "As designed"):
        assert words in outline.text
    assert "reed green" not in outline.text
    assert "#3c6b45" not in page
    assert '"#4b2b4f"' in page


def test_its_steps_read_as_those_of_the_author(built: Built) -> None:
    def doing(page: str) -> list[str]:
        return re.findall(r"<p>[^<]+</p>", page[page.index('class="steps"') :])

    own, way = built.page("reed-pair"), (built.site / DUSK).read_text(encoding="utf-8")
    assert doing(own) == doing(way)
    assert len(doing(own)) > 5


def test_the_main_page_shows_each_colourway_and_its_beads(built: Built) -> None:
    outline = Outline(built.page("reed-pair"))
    assert "Dusk Colour In all To buy G plum 30" in outline.text.replace("Beads in Dusk ", "")
    assert "in-dusk/index.html" in outline.addresses
    assert "in-dusk/picture.png" in outline.addresses


def test_the_sheets_have_them_with_their_charts(sheet_text: dict[str, str]) -> None:
    text = sheet_text["reed-pair-a4.pdf"]
    page = int(re.findall(r"Drawn in other colours too: Dusk\. See page (\d+)\.", text)[0])
    part = text[text.rindex("Other colours") :]
    assert re.findall(r"(\d+) of \d+", part)[0] == str(page)
    for words in ("Dusk", "plum 30", "Fan: chart", "Fringe: chart"):
        assert words in part


def test_a_priced_pattern_shows_pictures_alone(tmp_path: Path) -> None:
    root = write_shop(tmp_path)
    (root / "content" / "patterns" / "reed-pair.md").unlink()
    (root / "content" / "pages" / "help.md").unlink()  # it links to that pattern
    source = root / "content" / "patterns" / "pebble-charm.md"
    way = 'colourways:\n  - {name: Tide, Q: {name: kelp, hex: "#2f3b22"}}\nparts:\n'
    source.write_text(source.read_text(encoding="utf-8").replace("parts:\n", way), encoding="utf-8")
    assert build(root, processes=1).files
    folder = root / "output" / "site" / "patterns" / "pebble-charm" / "in-tide"
    assert sorted(path.name for path in folder.iterdir()) == ["colours.css", "index.html", "picture.png"]
    page = (folder / "index.html").read_text(encoding="utf-8")
    assert "kelp" in page
    assert not re.search(r">Pick up<|: chart|: steps|class=\"words\"|data-step", page)


@pytest.mark.parametrize(
    ("names", "made"),
    [
        (["Wet slate", "Été, no. 2"], ("wet-slate", "ete-no-2")),
        (["Dusk", "dusk!", "DUSK"], ("dusk", "dusk-2", "dusk-3")),
        (["Dusk 2", "Dusk", "Dusk"], ("dusk-2", "dusk", "dusk-3")),
        (["海", "空"], ("colours", "colours-2")),
        (["../up", "a/b"], ("up", "a-b")),
        (["Maker's dusk"], ("makers-dusk",)),
        ([], ()),
    ],
)
def test_slugs_are_plain_and_no_two_alike(names: list[str], made: tuple[str, ...]) -> None:
    assert slugs(names, "colours") == made
