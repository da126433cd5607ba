"""The full-size template on paper: bars and beadwork have their true lengths, in points, on both papers.

A point of a PDF is 1/72 in (ISO 32000-1, 8.3.2.3), an inch 25.4 mm: 100 mm are 283.465 points, 4 in are 288.
"""

from __future__ import annotations

import io
import re
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest

from sitegen.build.woven import make_pieces, weave_all
from sitegen.publish.papers import PAPERS, Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.printing import PrintJob, print_sheets
from sitegen.publish.template import BESIDE, OVERLAP_MM, SHEET, UNDER, template_view
from sitegen.publish.theme import BUNDLED, templates
from sitegen.publish.words import Words
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import Built

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
WORDS = Words(LINEN, "en")
POINT = 72 / 25.4
"""Points in a millimetre."""
BAR, INCHES = 283.465, 288.0
SLACK = 0.02
"""How many points a length may be out."""

HEADER = """\
---
title: Plain cloth
summary: A cloth for a test.
makes: {makes}
revision: 1
price: free
colours:
  A: {{bead: cube 3 mm, name: slate, hex: "#42505c"}}
  B: {{bead: cube 3 mm, name: chalk, hex: "#e9e6da"}}
parts:
"""
CLOTH = """\
  - {{name: Cloth, stitch: loom}}
---

```chart Cloth
{chart}
```
"""
CHAIN = """\
  - name: Chain
    stitch: strung
    clasp: toggle clasp
    ends: knots
    strands: [{strand}]
---
"""
LEANING = """\
  - {name: Fan, stitch: brick}
---

```chart Fan
 A A A
A B A A
 B A A
```
"""


def piece(folder: Path, text: str) -> Piece:
    """The piece that a shop of this one pattern makes."""
    patterns = folder / "content" / "patterns"
    patterns.mkdir(parents=True)
    (folder / "content" / "shop.yaml").write_text("title: Bench\n", encoding="utf-8")
    (patterns / "plain.md").write_text(text, encoding="utf-8")
    sources = load_shop(folder)
    woven, problems = weave_all(sources, lambda line: None)
    assert woven, [*sources.problems, *problems]
    return make_pieces(woven, sources.shop, WORDS, lambda line: None)[0]


def cloth(folder: Path, across: int, down: int) -> Piece:
    row = ("AB" * across)[:across]
    return piece(folder, HEADER.format(makes="one piece") + CLOTH.format(chart="\n".join([row] * down)))


def printed(made: Piece) -> Sheets:
    """A cover and the template."""
    macro = templates(LINEN).get_template("template.html").module.template  # type: ignore[attr-defined]
    papers = "".join(f'<span class="{paper.name}">{paper.name}</span>' for paper in PAPERS)
    html = (
        '<!doctype html><html lang="en"><head><title>T</title></head><body data-title="T" data-of=" of ">'
        f'<div class="papers">{papers}</div><h1>T</h1>{macro(template_view(made), WORDS.text)}</body></html>'
    )
    return print_sheets(PrintJob("test", html, tuple((paper.name, "T") for paper in PAPERS), LINEN))


def bars(page: pdfplumber.page.Page, length: float) -> tuple[int, int]:
    """How many lines of this length stand, and how many lie, on a page."""
    upright = [one for one in page.lines if one["width"] < 0.01 and abs(one["height"] - length) < SLACK]
    lying = [one for one in page.lines if one["height"] < 0.01 and abs(one["width"] - length) < SLACK]
    return len(upright), len(lying)


def template_pages(pdf: pdfplumber.PDF) -> list[pdfplumber.page.Page]:
    """The page that begins the template and all after it, up to the glossary."""
    lines = [(one.extract_text() or "").splitlines() for one in pdf.pages]
    first, end = (
        next(number for number, own in enumerate(lines) if WORDS.text(key) in own)
        for key in ("template.heading", "book.glossary")
    )
    return pdf.pages[first:end]


@pytest.mark.parametrize("paper", [paper.name for paper in PAPERS])
@pytest.mark.parametrize("name", ["reed-pair", "pebble-charm"])
def test_bars_and_ticks_in_points(built: Built, name: str, paper: str) -> None:
    path = next(path for path in built.pdfs() if path.name == f"{name}-{paper}.pdf")
    with pdfplumber.open(path) as pdf:
        (one,) = template_pages(pdf)
        assert bars(one, BAR) == (1, 1)
        assert bars(one, INCHES) == (0, 1)
        (lying,) = (line for line in one.lines if line["height"] < 0.01 and abs(line["width"] - BAR) < SLACK)
        ticks = sorted(
            line["x0"]
            for line in one.lines
            if line["width"] < 0.01 and abs(line["top"] - lying["top"]) < SLACK and line["height"] > 1
        )
    assert ticks == pytest.approx([lying["x0"] + mm * POINT for mm in range(101)], abs=SLACK)


@pytest.mark.parametrize("paper", [paper.name for paper in PAPERS])
def test_beadwork_in_points(built: Built, paper: str) -> None:
    """The outlines of the charm's beads against its measures: 4 beads across."""
    path = next(path for path in built.pdfs() if path.name == f"pebble-charm-{paper}.pdf")
    sources = load_shop(built.root)
    woven, _ = weave_all(sources, lambda line: None)
    measures = next(measures for pattern, _, measures in woven if pattern.name == "pebble-charm")
    with pdfplumber.open(path) as pdf:
        (one,) = template_pages(pdf)
        beads = [curve for curve in one.curves if curve["fill"] and curve["stroke"]]
    assert len(beads) == measures.bead_each
    width = max(bead["x1"] for bead in beads) - min(bead["x0"] for bead in beads)
    height = max(bead["bottom"] for bead in beads) - min(bead["top"] for bead in beads)
    assert width == pytest.approx(measures.width_mm * POINT, abs=0.1)
    assert height == pytest.approx(measures.height_mm * POINT, abs=0.1)


def test_viewers_are_asked_to_scale_nothing_and_to_pick_the_paper(built: Built) -> None:
    """ISO 32000-1, 12.2, table 150."""
    for path in built.pdfs():
        with pikepdf.open(path) as pdf:
            wishes = pdf.Root.ViewerPreferences
            assert wishes.PrintScaling == pikepdf.Name("/None")
            assert wishes.PickTrayByPDFSize
            assert wishes.DisplayDocTitle


def test_the_template_says_how_to_print_it(built: Built) -> None:
    path = next(path for path in built.pdfs() if path.name == "reed-pair-a4.pdf")
    with pdfplumber.open(path) as pdf:
        (one,) = template_pages(pdf)
        beside_the_bar = one.crop((35 * POINT, 0, 132 * POINT, one.height))
        text = " ".join(beside_the_bar.extract_text().split())
    for key in ("pair", "print", "hold", "both", "single"):
        assert WORDS.text(f"template.{key}") in text


@pytest.mark.parametrize(
    ("across", "down", "placing"),
    [(11, 10, "beside"), (11, 66, "beside"), (11, 68, "sheets"), (46, 18, "under"), (42, 58, "sheets")],
)
def test_each_place_holds_what_fits_it(tmp_path: Path, across: int, down: int, placing: str) -> None:
    made = cloth(tmp_path, across, down)
    view = template_view(made)
    assert view.placing == placing
    sheets = printed(made)
    assert sheets.pages == 2 + len(view.sheets)
    inside = 12 * POINT
    for _, data in sheets.files:
        with pdfplumber.open(io.BytesIO(data)) as pdf:
            for one in pdf.pages[1:]:
                assert bars(one, BAR) == (1, 1)
                marks = [*one.chars, *one.curves, *one.lines, *one.rects]
                assert min(mark["x0"] for mark in marks) >= one.bbox[0] + inside
                assert max(mark["x1"] for mark in marks) <= one.bbox[2] - inside
                assert max(mark["bottom"] for mark in marks) <= one.bbox[3] - inside


def test_a_piece_larger_than_the_paper_goes_over_sheets_that_share_a_strip(tmp_path: Path) -> None:
    made = cloth(tmp_path, 60, 20)
    view = template_view(made)
    assert len(view.sheets) == 2
    assert all(sheet.key for sheet in view.sheets)
    assert [sheet.heading for sheet in view.sheets] == [f"Sheet {n} of 2, at true size" for n in (1, 2)]
    (_, data), _ = printed(made).files
    widths = []
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        for one in pdf.pages[2:]:
            beads = [curve for curve in one.curves if curve["fill"] and curve["stroke"]]
            widths.append(max(bead["x1"] for bead in beads) - min(bead["x0"] for bead in beads))
    shared = sum(widths) - made.measures.width_mm * POINT
    bead = 3.4 * POINT  # beads at the rim stay whole on both sheets
    assert OVERLAP_MM * POINT <= shared <= OVERLAP_MM * POINT + 2 * bead


def test_both_of_a_mirrored_pair_stand_side_by_side(tmp_path: Path) -> None:
    view = template_view(piece(tmp_path, HEADER.format(makes="mirrored pair") + LEANING))
    assert len(view.figures) == 2
    assert WORDS.text("template.mirrored") in view.about


def test_a_long_string_is_laid_straight_and_a_short_one_is_a_ring(tmp_path: Path) -> None:
    header = HEADER.format(makes="one piece")
    long = template_view(piece(tmp_path / "long", header + CHAIN.format(strand='"30(6A 3B)"')))
    short = template_view(piece(tmp_path / "short", header + CHAIN.format(strand='"6(6A 3B)"')))
    for view, key in ((long, "template.lines"), (short, "template.ring")):
        assert WORDS.text(key, beads="#", length="#").split("#")[2] in view.about[0]
        assert not view.sheets


def test_the_template_is_sound_in_structure(tmp_path: Path) -> None:
    """ISO 14289-1 (PDF/UA-1) by the checker page-validation, for a piece that goes over sheets."""
    for paper, data in printed(cloth(tmp_path, 60, 20)).files:
        file = tmp_path / f"{paper}.pdf"
        file.write_bytes(data)
        report = validation.validate_pdf(file, profile="ua1")
        assert report.is_compliant, report


def test_the_rooms_are_those_of_the_style_sheet() -> None:
    """A page is 210 x 297 mm less its margins; what is left of it is shared out by the rooms."""
    style = (LINEN / "styles" / "print.css").read_text(encoding="utf-8")
    top, right, bottom, left = map(
        float, re.findall(r"margin: ([\d.]+)mm ([\d.]+)mm ([\d.]+)mm ([\d.]+)mm;", style)[0]
    )
    width, height = 210 - left - right, 297 - top - bottom
    beside, sheet = (
        float(re.search(rf"\.{rule} \.true-size {{ margin-left: ([\d.]+)mm", style)[1])  # type: ignore[index]
        for rule in (r"template\.beside", "template-sheet")
    )
    figure = 2 * float(re.search(r"\.true-size figure {.*?margin: 0 ([\d.]+)mm", style)[1])  # type: ignore[index]
    assert BESIDE[0] == width - beside - figure
    assert UNDER[0] == width - figure
    assert SHEET[0] == width - sheet - figure
    assert max(BESIDE[1], UNDER[1], SHEET[1]) < height
