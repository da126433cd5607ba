"""A PDF -> what qpdf, poppler, MuPDF and PDFium say of it, which know nothing of this project."""

from __future__ import annotations

import ctypes
import re
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium

from sitegen.publish.tags import elements, kids_of

DOTS = "9"
"""Dots per inch of a rendering that nobody looks at: all of a page is read and drawn all the same."""
FLAWLESS = "No syntax or stream encoding errors found"
Point = tuple[float, float]
Stroke = tuple[Point, Point]
"""A straight line, points from the page's lower left."""
Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True)
class Font:
    """A font as pdffonts lists it."""

    name: str
    embedded: bool
    subset: bool
    known: bool
    """Whether its letters can be told from its glyphs."""


@dataclass(frozen=True)
class ToldRow:
    """A row of a word chart as its tags give it, without blanks."""

    caption: str
    number: str
    beads: str
    count: str


def _said(*words: str | Path) -> tuple[int, str]:
    done = subprocess.run(words, capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False)
    return done.returncode, done.stdout + done.stderr


def faults_for_qpdf(path: Path) -> str:
    """What `qpdf --check` complains of."""
    code, said = _said("qpdf", "--check", path)
    return "" if code == 0 and FLAWLESS in said and "WARNING" not in said else said


def drawn_by_poppler(path: Path, folder: Path) -> tuple[int, str]:
    """How many pages poppler draws into an empty folder, and all that it says meanwhile."""
    _, said = _said("pdftoppm", "-r", DOTS, "-gray", path, folder / "page")
    return len(list(folder.iterdir())), said


def drawn_by_mutool(path: Path, folder: Path) -> tuple[int, str]:
    """The same of MuPDF; -N since Debian's knows no colour profiles and says so of every file."""
    _, said = _said("mutool", "draw", "-q", "-N", "-r", DOTS, "-c", "gray", "-o", folder / "%d.pgm", path)
    return len(list(folder.iterdir())), said


def fonts_of(path: Path) -> list[Font]:
    """Every font of a file, by pdffonts of poppler."""
    _, said = _said("pdffonts", path)
    fonts = []
    for line in said.splitlines()[2:]:
        words = line.split()
        embedded, subset, known = (word == "yes" for word in words[-5:-2])
        fonts.append(Font(words[0].partition("+")[2] or words[0], embedded, subset, known))
    return fonts


def page_sizes(path: Path) -> set[tuple[float, float]]:
    """Width and height of all pages, points; a page that is turned or scaled has none that a ruler knows."""
    with pikepdf.open(path) as pdf:
        boxes = [[float(edge) for edge in page.mediabox] for page in pdf.pages]
        assert not [page for page in pdf.pages if {"/Rotate", "/UserUnit"} & set(page.obj.keys())]
        assert all(page.cropbox == page.mediabox for page in pdf.pages)
    return {(round(right - left, 3), round(head - foot, 3)) for left, foot, right, head in boxes}


def strokes(page: pypdfium2.PdfPage) -> Iterator[Stroke]:
    """Every straight line of a page, those within drawings too."""
    count = pdfium.FPDFPage_CountObjects(page)
    for place in range(count):
        yield from _strokes_in(pdfium.FPDFPage_GetObject(page, place), (1.0, 0.0, 0.0, 1.0, 0.0, 0.0))


def _strokes_in(thing: object, outer: Matrix) -> Iterator[Stroke]:
    kind = pdfium.FPDFPageObj_GetType(thing)
    if kind not in (pdfium.FPDF_PAGEOBJ_PATH, pdfium.FPDF_PAGEOBJ_FORM):
        return
    own = pdfium.FS_MATRIX()
    pdfium.FPDFPageObj_GetMatrix(thing, own)
    matrix = _after((own.a, own.b, own.c, own.d, own.e, own.f), outer)
    if kind == pdfium.FPDF_PAGEOBJ_FORM:
        for place in range(pdfium.FPDFFormObj_CountObjects(thing)):
            yield from _strokes_in(pdfium.FPDFFormObj_GetObject(thing, place), matrix)
        return
    x, y, before = ctypes.c_float(), ctypes.c_float(), None
    for place in range(pdfium.FPDFPath_CountSegments(thing)):
        segment = pdfium.FPDFPath_GetPathSegment(thing, place)
        pdfium.FPDFPathSegment_GetPoint(segment, x, y)
        here = _moved((x.value, y.value), matrix)
        if before and pdfium.FPDFPathSegment_GetType(segment) == pdfium.FPDF_SEGMENT_LINETO:
            yield before, here
        before = here


def _after(inner: Matrix, outer: Matrix) -> Matrix:
    """The inner matrix, then the outer one (ISO 32000-1, 8.3.4)."""
    a, b, c, d, e, f = inner
    (left, foot), (one, two, three, four) = _moved((e, f), outer), outer[:4]
    return a * one + b * three, a * two + b * four, c * one + d * three, c * two + d * four, left, foot


def _moved(point: Point, matrix: Matrix) -> Point:
    a, b, c, d, e, f = matrix
    return point[0] * a + point[1] * c + e, point[0] * b + point[1] * d + f


def rows_told(path: Path, heads: tuple[str, str]) -> list[ToldRow]:
    """The rows of all tables whose second and third column are headed so, through tags and fonts alone."""
    pdf = pypdfium2.PdfDocument(path)
    texts: dict[int, dict[int, str]] = {}
    rows, meant, caption = [], False, ""
    with pikepdf.open(path) as tagged:
        numbers = {page.obj.objgen: number for number, page in enumerate(tagged.pages)}
        for element in elements(tagged):
            meant = meant and element.get("/S") != "/Table"
            if element.get("/S") not in ("/TR", "/Caption"):
                continue
            number = next(
                (numbers[one.Pg.objgen] for one in (element, *kids_of(element)) if _has_page(one)), -1
            )
            if number >= 0 and number not in texts:
                texts[number] = _marked_texts(pdf[number])
            if element.S == "/Caption":
                caption = _text(element, texts[number])
                continue
            cells = [_text(cell, texts.get(number, {})) for cell in kids_of(element)]
            if all(cell.get("/S") == "/TH" for cell in kids_of(element)):
                meant = tuple(cell.casefold() for cell in cells[1:]) == tuple(map(_bare, heads))
            elif meant:
                rows.append(ToldRow(caption, *cells))
    return rows


def _bare(text: str) -> str:
    return re.sub(r"\s", "", text).casefold()


def _text(element: pikepdf.Object, texts: dict[int, str]) -> str:
    """What an element holds, without blanks; all of it stands on one page."""
    found = []
    for kid in kids_of(element):
        if isinstance(kid, int):
            found.append(texts.get(kid, ""))
        elif "/S" in kid:
            found.append(_text(kid, texts))
    return re.sub(r"\s", "", "".join(found))


def _marked_texts(page: pypdfium2.PdfPage) -> dict[int, str]:
    """Number of marked content -> its text."""
    texts: dict[int, str] = {}
    letters = page.get_textpage()
    for place in range(pdfium.FPDFPage_CountObjects(page)):
        thing = pdfium.FPDFPage_GetObject(page, place)
        if pdfium.FPDFPageObj_GetType(thing) == pdfium.FPDF_PAGEOBJ_TEXT:
            mark = pdfium.FPDFPageObj_GetMarkedContentID(thing)
            texts[mark] = texts.get(mark, "") + _letters(thing, letters)
    return texts


def _letters(thing: object, letters: pypdfium2.PdfTextPage) -> str:
    size = pdfium.FPDFTextObj_GetText(thing, letters, None, 0)
    buffer = (ctypes.c_ushort * (size // 2 + 1))()
    pdfium.FPDFTextObj_GetText(thing, letters, buffer, size)
    return bytes(buffer).decode("utf-16-le").rstrip("\0")


def _has_page(kid: pikepdf.Object | int) -> bool:
    return not isinstance(kid, int) and "/Pg" in kid
