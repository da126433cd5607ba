"""Every PDF of the demo before readers of PDFs that know nothing of this project.

All patterns in all editions, what else the demo prints in its languages, its bundles, and personal copies.
`every_print.py` makes them, `pdf_readers.py` holds the readers. How pages are laid out is
`test_layout.py`, what their word charts say `test_printed_words.py`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from pathlib import Path

import page as validation
import pikepdf
import pypdfium2
import pytest

from sitegen.build.copies import Printed
from sitegen.model.shop import EDITIONS
from sitegen.publish.papers import PAPERS
from sitegen.publish.tags import elements
from tests.publish.every_print import (
    BUNDLES,
    COPIES,
    FIRST,
    PATTERNS,
    SHOP,
    WORKS,
    demo_prints,
    grouped,
    works_of,
)
from tests.publish.pdf_readers import (
    Stroke,
    drawn_by_mutool,
    drawn_by_poppler,
    faults_for_qpdf,
    fonts_of,
    page_sizes,
    strokes,
)
from tests.shared import Once, built_demo

SIZES = {"a4": (595.276, 841.89), "letter": (612.0, 792.0)}
"""Points: 210 x 297 mm (ISO 216), 8.5 x 11 in (ANSI/ASME Y14.1); points as in ISO 32000-1, 8.3.2.3."""
OURS = ("Young-Serif", "Atkinson-Hyperlegible-Next")
BAR, HALF_BAR = 283.465, 141.732
"""100 mm and 50 mm."""
INCHES, HALF_INCHES = 288.0, 144.0
"""4 in and 2 in."""
SLACK = 0.01
"""Points that a length on paper may be out."""


@pytest.fixture(scope="module", params=grouped(WORKS))
def prints(request: pytest.FixtureRequest, once: Once) -> tuple[Printed, ...]:
    """All PDFs of a pattern or bundle, or all personal copies."""
    return works_of(str(request.param), once)


@pytest.fixture(scope="module", params=grouped(PATTERNS))
def pattern(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_every_edition_is_there_on_both_papers(pattern: str, once: Once) -> None:
    made = Counter((one.language, one.edition, one.paper) for one in works_of(pattern, once))
    wanted = {(FIRST, edition, paper.name) for edition in EDITIONS for paper in PAPERS}
    assert wanted <= set(made)
    assert set(made.values()) == {1}
    assert {language for language, *_ in made} == set(SHOP.languages)


def test_nothing_that_the_demo_prints_is_left_out(once: Once) -> None:
    output = once("demo", built_demo).parent
    known = {one.path for one in demo_prints(once) if one.pattern in (*PATTERNS, *BUNDLES)}
    assert known == set(output.rglob("*.pdf"))
    assert {one.edition for one in works_of(COPIES, once)} == set(EDITIONS)


@pytest.mark.parametrize("profile", ["ua1", "2a"])
def test_one_file_follows_both_standards(prints: tuple[Printed, ...], profile: str) -> None:
    """ISO 14289-1 and ISO 19005-2 level A by page-validation, calibrated on the veraPDF corpus."""
    assert [one.path.name for one in prints if not follows(one.path, profile)] == []


def follows(path: Path, profile: str) -> bool:
    return bool(validation.validate_pdf(path, profile=profile).is_compliant)


def test_figures_have_a_text_and_heading_cells_a_scope(prints: tuple[Printed, ...]) -> None:
    assert {one.path.name: found for one in prints if (found := untold(one.path))} == {}


def untold(path: Path) -> list[str]:
    """Elements that lack what a reader who does not see needs; at least a heading cell is looked for."""
    lacking, cells = [], 0
    with pikepdf.open(path) as pdf:
        for element in elements(pdf):
            if element.get("/S") == "/Figure" and not str(element.get("/Alt", "")).strip():
                lacking.append("Figure")
            if element.get("/S") == "/TH":
                cells += 1
                said = element.get("/A", [])
                said = list(said) if isinstance(said, pikepdf.Array) else [said]
                if not any(isinstance(one, pikepdf.Dictionary) and "/Scope" in one for one in said):
                    lacking.append("TH")
    return lacking if cells else ["no table"]


def test_qpdf_finds_no_fault(prints: tuple[Printed, ...]) -> None:
    assert {one.path.name: said for one in prints if (said := faults_for_qpdf(one.path))} == {}


def test_two_renderers_draw_every_page_without_a_word(prints: tuple[Printed, ...], tmp_path: Path) -> None:
    """MuPDF draws both papers; poppler, far slower, one: their content differs in the paper's name."""
    for one in prints:
        with pikepdf.open(one.path) as pdf:
            pages = len(pdf.pages)
        for name, draw in (("mutool", drawn_by_mutool), ("poppler", drawn_by_poppler)):
            if name == "mutool" or one.paper == "a4":
                folder = tmp_path / f"{name}-{one.path.stem}"
                folder.mkdir()
                assert draw(one.path, folder) == (pages, ""), one.path.name


def test_fonts_are_embedded_and_ours(prints: tuple[Printed, ...]) -> None:
    assert {one.path.name: found for one in prints if (found := foreign_fonts(one.path))} == {}


def foreign_fonts(path: Path) -> list[str]:
    fonts = fonts_of(path)
    assert fonts
    return [
        font.name
        for font in fonts
        if not (font.embedded and font.subset and font.known and font.name.startswith(OURS))
    ]


def test_pages_have_the_exact_size_of_their_paper(prints: tuple[Printed, ...]) -> None:
    for one in prints:
        ((width, height),) = page_sizes(one.path)
        assert (width, height) == pytest.approx(SIZES[one.paper], abs=SLACK), one.path.name


def test_bars_are_true_to_scale(pattern: str, once: Once) -> None:
    """Every edition with a full-size template, on both papers: a bar upright, one lying, one in inches."""
    for one in works_of(pattern, once):
        upright, lying, inches = bars_of(one.path)
        wanted = one.edition != "summary"
        assert (upright > 0, lying > 0, inches > 0) == (wanted,) * 3, one.path.name


def bars_of(path: Path) -> tuple[int, int, int]:
    """How many bars of 100 mm stand and lie, and how many of 4 in lie, each with a tick at its middle."""
    found = Counter[str]()
    for one in pypdfium2.PdfDocument(path):
        lines = list(strokes(one))
        for line in lines:
            for name, length, half, axis in (
                ("upright", BAR, HALF_BAR, 1),
                ("lying", BAR, HALF_BAR, 0),
                ("inches", INCHES, HALF_INCHES, 0),
            ):
                if is_bar(line, length, axis) and has_tick(line, lines, half, axis):
                    found[name] += 1
    return found["upright"], found["lying"], found["inches"]


def is_bar(line: Stroke, length: float, axis: int) -> bool:
    along, aside = (abs(line[0][way] - line[1][way]) for way in (axis, 1 - axis))
    return abs(along - length) <= SLACK and aside <= SLACK


def has_tick(bar: Stroke, lines: Iterable[Stroke], at: float, axis: int) -> bool:
    """Whether a line across begins on the bar, so far from where it begins."""
    start = bar[0]
    return any(
        abs(abs(line[0][axis] - start[axis]) - at) <= SLACK
        and abs(line[0][axis] - line[1][axis]) <= SLACK
        and abs(line[0][1 - axis] - start[1 - axis]) <= SLACK
        and abs(line[1][1 - axis] - start[1 - axis]) > 1
        for line in lines
    )


@pytest.fixture(scope="module")
def sheet(once: Once) -> Path:
    """The usual sheets of a small pattern, for damaging copies of them."""
    return works_of("meadow-daisy", once)[0].path


def damaged(sheet: Path, path: Path, damage: Callable[[pikepdf.Pdf], None]) -> Path:
    with pikepdf.open(sheet) as pdf:
        damage(pdf)
        pdf.save(path)
    return path


def without_text_and_scope(pdf: pikepdf.Pdf) -> None:
    found = list(elements(pdf))
    next(one for one in found if one.get("/S") == "/Figure").Alt = ""
    del next(one for one in found if one.get("/S") == "/TH").A


def test_planted_lack_of_a_text_and_a_scope_is_seen(sheet: Path, tmp_path: Path) -> None:
    assert sorted(untold(damaged(sheet, tmp_path / "x.pdf", without_text_and_scope))) == ["Figure", "TH"]


def test_planted_faults_against_the_standards_are_seen(sheet: Path, tmp_path: Path) -> None:
    path = damaged(sheet, tmp_path / "x.pdf", without_text_and_scope)
    assert not follows(path, "ua1")

    def undated(pdf: pikepdf.Pdf) -> None:
        del pdf.Root.OutputIntents
        pdf.docinfo["/Title"] = "Another"

    assert not follows(damaged(sheet, tmp_path / "y.pdf", undated), "2a")


def test_planted_damage_of_a_file_is_seen(sheet: Path, tmp_path: Path) -> None:
    path = tmp_path / "x.pdf"
    path.write_bytes(sheet.read_bytes()[:-2000])
    assert faults_for_qpdf(path)


@pytest.mark.parametrize("draw", [drawn_by_mutool, drawn_by_poppler])
def test_planted_nonsense_on_a_page_is_seen(
    draw: Callable[[Path, Path], tuple[int, str]], sheet: Path, tmp_path: Path
) -> None:
    def spoil(pdf: pikepdf.Pdf) -> None:
        pdf.pages[-1].obj.Contents = pdf.make_stream(b"q 1 0 0 rg /Nowhere Do (open Tj")

    folder = tmp_path / "drawn"
    folder.mkdir()
    assert draw(damaged(sheet, tmp_path / "x.pdf", spoil), folder)[1]


def test_planted_fonts_are_seen(sheet: Path, tmp_path: Path) -> None:
    def spoil(pdf: pikepdf.Pdf) -> None:
        fonts = pdf.pages[0].obj.Resources.Font
        plain = pikepdf.Dictionary(
            Type=pikepdf.Name.Font, Subtype=pikepdf.Name.Type1, BaseFont=pikepdf.Name.Courier
        )
        fonts["/Plain"] = pdf.make_indirect(plain)

    assert foreign_fonts(damaged(sheet, tmp_path / "x.pdf", spoil)) == ["Courier"]


@pytest.mark.parametrize("change", [{"MediaBox": [0, 0, 595.3, 841.89]}, {"Rotate": 90}, {"UserUnit": 2}])
def test_planted_sizes_are_seen(change: dict[str, object], sheet: Path, tmp_path: Path) -> None:
    def spoil(pdf: pikepdf.Pdf) -> None:
        for key, value in change.items():
            pdf.pages[2].obj[f"/{key}"] = value

    path = damaged(sheet, tmp_path / "x.pdf", spoil)
    with pytest.raises(AssertionError):
        assert page_sizes(path) == {SIZES["a4"]}


def test_planted_shrinking_is_seen(sheet: Path, tmp_path: Path) -> None:
    """By a thousandth, as careless printing does by a hundredth."""

    def spoil(pdf: pikepdf.Pdf) -> None:
        for page in pdf.pages:
            page.contents_add(b"0.999 0 0 0.999 0 0 cm", prepend=True)

    assert bars_of(sheet) == (1, 1, 1)
    assert bars_of(damaged(sheet, tmp_path / "x.pdf", spoil)) == (0, 0, 0)
