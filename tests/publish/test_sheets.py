"""The printed sheets: papers, fonts, tags, and what they say."""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest

from sitegen.publish.papers import A4, LETTER, PAPERS
from sitegen.publish.printing import PrintFault, PrintJob, print_sheets
from sitegen.publish.tags import elements
from sitegen.publish.theme import BUNDLED
from tests.publish.laid_out import assert_within
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
NAMES = ("pebble-charm-a4.pdf", "pebble-charm-letter.pdf", "reed-pair-a4.pdf", "reed-pair-letter.pdf")


@pytest.fixture(params=NAMES)
def sheet(request: pytest.FixtureRequest, built: Built) -> Path:
    return next(path for path in built.pdfs() if path.name == request.param)


def test_where_the_sheets_lie(built: Built) -> None:
    places = [path.relative_to(built.output).as_posix() for path in built.pdfs()]
    assert places == [
        "for-sale/pebble-charm-a4.pdf",
        "for-sale/pebble-charm-letter.pdf",
        "site/patterns/reed-pair/reed-pair-a4.pdf",
        "site/patterns/reed-pair/reed-pair-letter.pdf",
    ]


def test_tagged_as_the_standard_asks(sheet: Path) -> None:
    """ISO 14289-1 (PDF/UA-1) by the checker page-validation, calibrated on the veraPDF corpus."""
    report = validation.validate_pdf(sheet, profile="ua1")
    assert report.is_compliant, report


def test_paper_sizes(sheet: Path) -> None:
    """A4 is 210 x 297 mm (ISO 216), US Letter 8.5 x 11 in (ANSI/ASME Y14.1); a point is 1/72 in."""
    wanted = (
        (Decimal(612), Decimal(792)) if "letter" in sheet.name else (Decimal("595.276"), Decimal("841.890"))
    )
    with pikepdf.open(sheet) as pdf:
        for one in pdf.pages:
            left, foot, right, head = (Decimal(str(edge)) for edge in one.MediaBox)
            assert (right - left, head - foot) == wanted


def test_all_print_lies_in_the_room_of_both_papers(built: Built) -> None:
    """12 mm in from every edge of either paper: common printers leave up to 7 mm blank."""
    for path in built.pdfs():
        assert_within(path, 12 * 72 / 25.4)


def test_fonts_are_ours_and_embedded(sheet: Path) -> None:
    with pikepdf.open(sheet) as pdf:
        fonts = [
            one
            for one in pdf.objects
            if isinstance(one, pikepdf.Dictionary) and one.get("/Type") == "/FontDescriptor"
        ]
        assert fonts
        for font in fonts:
            assert "/FontFile2" in font or "/FontFile3" in font
            name = str(font.FontName).partition("+")[2]
            assert name.startswith(("Young-Serif", "Atkinson-Hyperlegible-Next")), name


def test_each_paper_names_itself_and_no_other(sheet_text: dict[str, str]) -> None:
    for name, text in sheet_text.items():
        pages = int(re.findall(r"1 of (\d+)", text)[0])
        assert re.findall(r"(\d+) of \d+", text)[-1] == str(pages)
        assert len(re.findall(r"^A4 ", text, re.M)) == (pages if "-a4" in name else 0)
        assert len(re.findall(r"^US Letter ", text, re.M)) == (pages if "-letter" in name else 0)


def test_both_papers_say_the_same(sheet_text: dict[str, str]) -> None:
    for name in ("pebble-charm", "reed-pair"):
        a4 = re.sub(r"^A4 ", "", sheet_text[f"{name}-a4.pdf"], flags=re.M)
        letter = re.sub(r"^US Letter ", "", sheet_text[f"{name}-letter.pdf"], flags=re.M)
        assert a4 == letter


def test_title_language_bookmarks_and_scaling(built: Built) -> None:
    path = next(path for path in built.pdfs() if path.name == "reed-pair-letter.pdf")
    with pikepdf.open(path) as pdf:
        assert str(pdf.docinfo.Title) == "Reed pair (US Letter)"
        assert b">Reed pair (US Letter)<" in pdf.Root.Metadata.read_bytes()
        assert str(pdf.Root.Lang) == "en"
        assert pdf.Root.ViewerPreferences.PrintScaling == pikepdf.Name("/None")
        with pdf.open_outline() as outline:
            assert [item.title for item in outline.root] == ["Reed pair"]
            chapters = [item.title for item in outline.root[0].children]
    assert chapters == [
        "What is where",
        "Materials and tools",
        "Before the first bead",
        "The making",
        "Word chart",
        "Other colours",
        "Full-size template",
        "The words used here",
        "Work safely",
        "About this pattern",
    ]


def test_part_stands_in_the_head(built: Built) -> None:
    path = next(path for path in built.pdfs() if path.name == "reed-pair-a4.pdf")
    with pdfplumber.open(path) as pdf:
        heads = [one.crop((0, 0, one.width, 31 * 72 / 25.4)).extract_text() for one in pdf.pages]
    assert heads[0] == ""
    assert "Reed pair Fan" in heads
    assert "Reed pair Fringe" in heads


def test_heading_cells_have_a_scope_and_figures_a_text(sheet: Path) -> None:
    with pikepdf.open(sheet) as pdf:
        kinds: dict[str, list[pikepdf.Object]] = {}
        for element in elements(pdf):
            kinds.setdefault(str(element.get("/S", "")), []).append(element)
        assert all(
            "/Scope"
            in str(
                cell.A.keys() if isinstance(cell.A, pikepdf.Dictionary) else [one.keys() for one in cell.A]
            )
            for cell in kinds["/TH"]
        )
        assert all(str(figure.Alt) for figure in kinds["/Figure"])
        assert "/IDTree" in pdf.Root.StructTreeRoot


def test_shades_of_the_papers_are_those_of_the_style_sheet() -> None:
    style = (LINEN / "styles" / "print.css").read_text(encoding="utf-8")
    for paper in PAPERS:
        shade = "#{:02x}{:02x}{:02x}".format(*paper.shade)
        assert f".papers .{paper.name} {{ color: {shade}; }}" in style
        assert style.count(shade) == 1
    assert A4.shade != LETTER.shade


def test_print_style_has_neither_grid_nor_flex() -> None:
    style = (LINEN / "styles" / "print.css").read_text(encoding="utf-8")
    assert not re.search(r"display:\s*(inline-)?(grid|flex)", style)


def job(body: str) -> PrintJob:
    html = f'<!doctype html><html lang="en"><head><title>T</title></head><body><h1>T</h1>{body}</body></html>'
    return PrintJob("test", html, (("a4", "T"), ("letter", "T")), LINEN)


@pytest.mark.parametrize(
    "body",
    [
        '<svg viewBox="0 0 1 1"><title>x</title><rect width="calc(2px + 3px)" height="1"/></svg>',
        '<svg width="calc(2px + 3px)" height="9" viewBox="0 0 1 1"><title>x</title></svg>',
        '<p style="colr: red">x</p>',
        '<p><a href="#nowhere">x</a></p>',
    ],
)
def test_any_complaint_of_the_print_engine_is_a_fault(body: str) -> None:
    with pytest.raises(PrintFault, match=r"^test: the print engine (complained|failed): "):
        print_sheets(job(body))


@pytest.mark.parametrize(
    "address",
    ["file:///etc/passwd", "https://example.org/a.png", "theme:/../../pyproject.toml", "theme:/nothing.png"],
)
def test_nothing_outside_the_theme_is_read(address: str) -> None:
    with pytest.raises(PrintFault, match="reads only the theme's files"):
        print_sheets(job(f'<p>x</p><img alt="x" src="{address}">'))
