"""Personal copies: the line on each page and in the metadata, and all else as it was."""

from __future__ import annotations

import io
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest

from sitegen.publish.papers import LETTER
from sitegen.publish.printing import PrintJob, print_sheets
from sitegen.publish.stamping import FOOT, SIZE, set_line, stamped
from sitegen.publish.tags import elements
from sitegen.publish.theme import BUNDLED

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
WORDS = "Personal copy for Zo\u00eb <May> & 4711. Please do not pass it on."


@pytest.fixture(scope="module")
def sheet() -> bytes:
    """Two pages on US Letter, with keywords of their own."""
    html = (
        '<!doctype html><html lang="en"><head><title>T</title><meta name="author" content="A">'
        '<meta name="keywords" content="fringe, drops"></head>'
        '<body><h1>One</h1><p>Some words.</p><h2 style="break-before: page">Two</h2><p>More.</p>'
        "</body></html>"
    )
    made = print_sheets(PrintJob("test", html, (("a4", "T"), ("letter", "T")), LINEN))
    return dict(made.files)["letter"]


@pytest.fixture(scope="module")
def copy(sheet: bytes) -> bytes:
    return stamped(sheet, set_line(WORDS, LINEN))


def text(pdf: bytes) -> list[str]:
    with pdfplumber.open(io.BytesIO(pdf)) as pages:
        return [one.extract_text() for one in pages.pages]


@pytest.mark.parametrize("profile", ["ua1", "2a"])
def test_a_copy_follows_the_standards(copy: bytes, profile: str, tmp_path: Path) -> None:
    """ISO 14289-1 and ISO 19005-2 by the checker page-validation."""
    (tmp_path / "copy.pdf").write_bytes(copy)
    report = validation.validate_pdf(tmp_path / "copy.pdf", profile=profile)
    assert report.is_compliant, report


def test_the_line_is_drawn_at_the_foot_of_every_page(sheet: bytes, copy: bytes) -> None:
    line = set_line(WORDS, LINEN)
    with pdfplumber.open(io.BytesIO(sheet)) as before, pdfplumber.open(io.BytesIO(copy)) as after:
        assert len(before.pages) == len(after.pages) == 2
        for old, new in zip(before.pages, after.pages, strict=True):
            added = new.curves[len(old.curves) :]
            assert len(added) > 20  # one for each contour of each letter
            left, right = min(one["x0"] for one in added), max(one["x1"] for one in added)
            middle = (new.bbox[0] + new.bbox[2]) / 2
            assert abs((left + right) / 2 - middle) < 1
            assert right - left == pytest.approx(line.width, abs=1)
            foot = new.bbox[3] - max(one["bottom"] for one in added)
            head = new.bbox[3] - min(one["top"] for one in added)
            assert 12 * 72 / 25.4 < foot < FOOT < head < FOOT + SIZE


def test_it_belongs_to_the_page_and_not_to_the_text(sheet: bytes, copy: bytes) -> None:
    assert text(copy) == text(sheet)
    with pikepdf.open(io.BytesIO(sheet)) as before, pikepdf.open(io.BytesIO(copy)) as after:
        tags = [[str(one.get("/S", "")) for one in elements(pdf)] for pdf in (before, after)]
        assert tags[0] == tags[1]
        for one in after.pages:
            content = [str(step.operator) for step in pikepdf.parse_content_stream(one)]
            assert content[0] == "q"
            assert content.count("q") == content.count("Q")
            assert content[-6:] == ["BDC", "q", "cm", "Do", "Q", "EMC"]


def test_no_font_is_added(sheet: bytes, copy: bytes) -> None:
    fonts = []
    for pdf in (sheet, copy):
        with pikepdf.open(io.BytesIO(pdf)) as opened:
            kinds = (one for one in opened.objects if isinstance(one, pikepdf.Dictionary))
            fonts.append(sum(one.get("/Type") == "/FontDescriptor" for one in kinds))
    assert fonts[0] == fonts[1]


def test_the_keywords_say_it_in_both_places(copy: bytes) -> None:
    with pikepdf.open(io.BytesIO(copy)) as pdf:
        told = str(pdf.docinfo.Keywords)
        with pdf.open_metadata() as packet:
            assert packet["pdf:Keywords"] == told
    assert told == f"fringe, drops, {WORDS}"


def test_the_same_line_gives_the_same_bytes_and_another_line_others(sheet: bytes, copy: bytes) -> None:
    assert stamped(sheet, set_line(WORDS, LINEN)) == copy
    assert stamped(sheet, set_line(f"{WORDS}.", LINEN)) != copy


def test_a_long_line_is_made_to_fit(sheet: bytes) -> None:
    long = stamped(sheet, set_line("W" * 80 + WORDS, LINEN))
    with pdfplumber.open(io.BytesIO(long)) as pdf:
        left, _, right, _ = pdf.pages[0].bbox
        curves = [one for one in pdf.pages[0].curves if one["top"] > pdf.pages[0].bbox[3] - FOOT - SIZE]
        assert right - left == LETTER.width
        assert min(one["x0"] for one in curves) > left + 80
        assert max(one["x1"] for one in curves) < right - 80
