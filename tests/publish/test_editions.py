"""The editions of the printed sheets: all from one piece, each with what is particular to it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest

from sitegen.build.look import Look, shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.draw.colour import INK_SAVER, Dye
from sitegen.draw.legible import MOST_GROWTH, legible, smallest_text
from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, Text, finish
from sitegen.draw.spared import spared
from sitegen.model.shop import EDITIONS
from sitegen.publish.compose import page_view, print_view
from sitegen.publish.editions import editions_of, in_edition
from sitegen.publish.making import word_rows
from sitegen.publish.papers import A4, LETTER, Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.printing import print_job, print_sheets
from sitegen.publish.theme_look import enlarged
from sitegen.read.sources import load_shop
from tests.publish.laid_out import assert_within
from tests.publish.sample_shop import write_shop

LEAST = 18.0 - 0.01
"""Points; the PDF engine writes sizes with a few digits."""


@dataclass(frozen=True)
class Printed:
    """The sample shop's free pattern, and its sheets in every edition but the usual one."""

    piece: Piece
    look: Look
    sheets: Mapping[str, Sheets]
    files: Mapping[str, Path]
    """Edition -> its PDF for A4."""


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    root = tmp_path_factory.mktemp("editions")
    sources = load_shop(write_shop(root))
    look, _ = shop_look(sources)
    assert look is not None
    woven, _ = weave_all(sources, lambda line: None)
    pieces = make_pieces(woven, sources.shop, look.words, lambda line: None)
    piece = next(one for one in pieces if one.pattern.name == "reed-pair")
    sheets, files = {}, {}
    for edition in EDITIONS[1:]:
        made = print_sheets(print_job(print_view(piece, edition), look.words, look.theme))
        sheets[edition] = made
        for paper, data in made.files:
            (root / made.file_name("reed-pair", paper)).write_bytes(data)
        files[edition] = root / made.file_name("reed-pair", "a4")
    return Printed(piece, look, sheets, files)


def test_a_pattern_says_its_editions_or_leaves_them_to_the_shop(printed: Printed) -> None:
    piece = printed.piece
    assert editions_of(piece) == ("colour",)
    shop = replace(piece.shop, editions=("colour", "large"))
    assert editions_of(replace(piece, shop=shop)) == ("colour", "large")
    pattern = replace(piece.pattern, editions=("ink",))
    assert editions_of(replace(piece, shop=shop, pattern=pattern)) == ("ink",)


def test_files_are_called_by_edition_language_and_paper() -> None:
    assert Sheets(1, ()).file_name("fern", "a4") == "fern-a4.pdf"
    assert Sheets(1, (), "", "ink").file_name("fern", "a4") == "fern-ink-a4.pdf"
    assert Sheets(1, (), "de", "large").file_name("fern", "letter") == "fern-de-large-letter.pdf"


@pytest.mark.parametrize("edition", EDITIONS[1:])
def test_every_edition_is_tagged_sized_and_named(printed: Printed, edition: str) -> None:
    """PDF/UA-1 by the checker page-validation; paper sizes as ISO 216 and ANSI/ASME Y14.1 have them."""
    for paper, suffix in ((A4, "A4"), (LETTER, "US Letter")):
        path = printed.files["ink"].parent / f"reed-pair-{edition}-{paper.name}.pdf"
        assert validation.validate_pdf(path, profile="ua1").is_compliant
        with pikepdf.open(path) as pdf:
            assert re.fullmatch(rf"Reed pair, .+ \({suffix}\)", str(pdf.docinfo.Title))
            for one in pdf.pages:
                left, foot, right, head = (float(edge) for edge in one.MediaBox)
                assert right - left == pytest.approx(paper.width, abs=0.002)
                assert head - foot == pytest.approx(paper.height, abs=0.002)


@pytest.mark.parametrize("edition", EDITIONS[1:])
def test_all_print_lies_in_the_room_of_both_papers(printed: Printed, edition: str) -> None:
    inside = 12 * 72 / 25.4 - 0.01
    for paper in ("a4", "letter"):
        path = printed.files["ink"].parent / f"reed-pair-{edition}-{paper}.pdf"
        assert_within(path, inside)


def test_no_letter_of_large_print_is_below_18_points(printed: Printed) -> None:
    with pdfplumber.open(printed.files["large"]) as pdf:
        sizes = [char["size"] for one in pdf.pages for char in one.chars]
    assert len(sizes) > 2000
    assert min(sizes) >= LEAST


def test_large_print_says_what_the_usual_sheets_say(printed: Printed) -> None:
    """Every sentence of the steps; strips alone are given as letters."""
    usual, large = print_view(printed.piece), print_view(printed.piece, "large")
    kinds = [block.kind for block in usual.blocks]
    assert [block.kind for block in large.blocks] == kinds
    for one, other in zip(usual.blocks, large.blocks, strict=True):
        if one.kind == "steps":
            told = [(row.number, row.sentences, row.notes, row.pick_up) for row in one.rows]
            assert [(row.number, row.sentences, row.notes, row.pick_up) for row in other.rows] == told
            assert all(row.strip is None for row in other.rows)


def test_steps_in_large_print_keep_their_letters_and_numbers_or_say_that_they_do_not(
    printed: Printed,
) -> None:
    usual, large = (
        [
            row
            for block in print_view(printed.piece, edition).blocks
            if block.kind == "steps"
            for row in block.rows
        ]
        for edition in ("colour", "large")
    )
    for one, other in zip(usual, large, strict=True):
        texts = [sum(figure.svg.count("<text") for figure in row.figures) for row in (one, other)]
        assert (texts[0] > texts[1]) is bool(other.unlettered)
        assert not one.unlettered
    assert any(row.figures and not row.unlettered for row in large)


def colours_of(printed: Printed, edition: str) -> set[str]:
    job = print_job(print_view(printed.piece, edition), printed.look.words, printed.look.theme)
    return set(re.findall(r"#[0-9a-f]{6}", job.html))


def test_the_ink_saver_has_none_of_the_colours_of_the_beads(printed: Printed) -> None:
    pattern = printed.piece.pattern
    named = {colour.hex for colour in pattern.colours}
    named |= {swap.hex for way in pattern.colourways for swap in way.swaps.values()}
    assert named <= colours_of(printed, "colour")
    assert not named & colours_of(printed, "ink")
    assert printed.piece.pattern.colours == in_edition(printed.piece, "colour").pattern.colours


def test_the_key_of_the_ink_saver_speaks_of_outlines(printed: Printed) -> None:
    usual, spared_key = (
        next(block for block in print_view(printed.piece, edition).blocks if block.kind == "legend")
        for edition in ("colour", "ink")
    )
    say = printed.look.words.text
    assert [words for _, words in usual.signs][:2] == [say("legend.new"), say("legend.there")]
    assert [words for _, words in spared_key.signs][:2] == [
        say("legend.new-unfilled"),
        say("legend.there-unfilled"),
    ]
    assert "#c9a46a" in usual.signs[0][0]
    assert not any("#c9a46a" in svg for svg, _ in spared_key.signs)


def test_the_ink_saver_fills_little(printed: Printed) -> None:
    """Ink on the page of the cover: dark dots of a rendering, beside those of the usual edition."""

    def share(path: Path) -> float:
        with pdfplumber.open(path) as pdf:
            grey = pdf.pages[0].to_image(resolution=50).original.convert("L")
        return sum(255 - value for value in grey.get_flattened_data()) / (255 * grey.width * grey.height)

    made = print_sheets(print_job(print_view(printed.piece), printed.look.words, printed.look.theme))
    usual = printed.files["ink"].with_name("reed-pair-a4.pdf")
    usual.write_bytes(dict(made.files)["a4"])
    assert share(printed.files["ink"]) < 0.85 * share(usual)


def test_the_summary_is_one_page_with_chart_words_and_materials(printed: Printed) -> None:
    piece = printed.piece
    assert printed.sheets["summary"].pages == 1
    with pdfplumber.open(printed.files["summary"]) as pdf:
        text = " ".join(pdf.pages[0].extract_text().split())
        figures = pdf.pages[0].curves
    assert figures
    for colour in piece.pattern.colours:
        assert colour.name in text
    for bead in piece.measures.beads:
        assert str(bead.total) in text
    view = print_view(piece, "summary")
    told = [
        (block.part, row)
        for columns in view.columns
        for column in columns
        for block in column
        for row in block.rows
    ]
    wanted = [
        (part.name, row)
        for index, part in enumerate(piece.path.parts)
        if piece.charts[index]
        for row in word_rows(piece, index, f"row-{index + 1}")
    ]
    assert told == wanted


def test_the_page_offers_every_edition_for_both_papers(printed: Printed) -> None:
    piece = printed.piece
    sheets = [Sheets(3, (("a4", b"x" * 2000), ("letter", b"x"))), *printed.sheets.values()]
    view = page_view(piece, sheets, {"": (10, 10), **{way.folder: (10, 10) for way in piece.ways}})
    assert [group.label for group in view.downloads] == ["In colour", "Ink saver", "Large print", "Summary"]
    names = [file.href for group in view.downloads for file in group.files]
    assert names[:3] == ["reed-pair-a4.pdf", "reed-pair-letter.pdf", "reed-pair-ink-a4.pdf"]
    assert len(set(names)) == 8
    labels = [file.label for group in view.downloads for file in group.files]
    assert labels[:3] == ["PDF for A4", "PDF for US Letter", "Ink saver for A4"]
    assert len(set(labels)) == 8
    assert view.downloads[0].files[0].size == "3 pages, 2 kB"


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("p { font-size: 8pt; }", "p { font-size: 18pt; }"),
        ("p { font-size: 9.6pt; }", "p { font-size: 18pt; }"),
        ("h1 { font-size: 29pt; }", "h1 { font-size: 37.4pt; }"),
        ("html { font: 400 9.6pt/1.48 x; }", "html { font: 400 18pt/1.48 x; }"),
        ("p { border: .5pt solid; font-size: 6.8pt }", "p { border: .5pt solid; font-size: 18pt }"),
    ],
)
def test_sizes_of_large_print(rule: str, wanted: str) -> None:
    assert enlarged(rule) == wanted


def small_drawing() -> Drawing:
    recorder = Recorder()
    square = Outline((0.0, 0.0), ((4.0, 0.0), (4.0, 4.0), (0.0, 4.0)))
    recorder.shapes([square], Paint(fill=Dye("A")))
    recorder.shapes([square], Paint(fill="#2b2622", opacity=0.2))
    recorder.letters([(2.0, 2.0, "A")], 1.0)
    recorder.text(Text(2.0, 3.0, "7", 0.6, "#2b2622"))
    return finish(recorder, "t", "d", 0.1)


def test_letters_grow_to_the_least_size_or_are_left_out() -> None:
    drawing = small_drawing()
    assert smallest_text(drawing) == 0.6
    assert legible(drawing, 0.6) == drawing
    assert smallest_text(legible(drawing, 0.6 * MOST_GROWTH)) == pytest.approx(0.87)
    grown = legible(drawing, 1.2)
    assert [name for name, _ in grown.calls] == ["shapes", "shapes", "letters"]
    assert smallest_text(grown) == 1.2


def test_a_spared_drawing_has_no_fills_but_white() -> None:
    made = spared(small_drawing())
    assert made.palette is INK_SAVER
    assert [name for name, _ in made.calls] == ["shapes", "letters", "text"]
    assert set(re.findall(r'<path fill="(#\w+)"', made.svg("x"))) == {"#ffffff"}
