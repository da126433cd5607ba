"""A PDF -> how its pages are laid out: how full each is, where headings begin, what stands below them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, product
from pathlib import Path

import pdfplumber
import pikepdf
import pypdfium2

from sitegen.publish.tags import elements, kids_of

MM = 72 / 25.4
USUAL, SUMMARY = (34.0, 33.0), (21.0, 31.0)
"""Margins at head and foot of an A4 page in print.css and print-summary.css, mm."""
CELL = 8
"""Side of the squares that letters are sorted into, points."""
PAPER = 245
"""Lighter than this is no ink, of 255."""
Box = tuple[float, float, float, float]
"""Left, foot, right, head; points from the page's lower left."""


@dataclass(frozen=True)
class Heading:
    """A bookmark, which every heading has."""

    title: str
    level: int
    """1 for a chapter."""
    down: float
    """From the head of the room for text to the heading, mm."""


@dataclass(frozen=True)
class Laid:
    """One page."""

    number: int
    room: float
    """Height of the room for text, mm."""
    ink: float
    """From the head of the room down to the last ink, mm."""
    headings: tuple[Heading, ...]
    letters: tuple[tuple[str, Box], ...]
    """Every letter that is seen, with the box of its ink, in the order of the file."""
    edges: Box
    """Of all that is seen on the page, running head and foot too, and letters beyond the page."""

    @property
    def filled(self) -> float:
        """The share of the room down to its last ink."""
        return self.ink / self.room

    def below(self, heading: Heading) -> float:
        """How far ink goes on below a heading's own line, mm."""
        return self.ink - heading.down


def laid_out(path: Path, margins: tuple[float, float] = USUAL) -> list[Laid]:
    """Every page of an A4 file; margins at head and foot are no room for text."""
    pdf = pypdfium2.PdfDocument(path)
    headings: dict[int, list[Heading]] = defaultdict(list)
    for item in pdf.get_toc():
        dest = item.get_dest()
        page = dest.get_index()
        top = pdf[page].get_height() - margins[0] * MM
        headings[page].append(Heading(item.get_title(), item.level, (top - dest.get_view()[1][1]) / MM))
    return [_laid(page, number, tuple(headings[number]), margins) for number, page in enumerate(pdf)]


def _laid(
    page: pypdfium2.PdfPage, number: int, headings: tuple[Heading, ...], margins: tuple[float, float]
) -> Laid:
    head, foot = margins
    room = page.get_height() / MM - head - foot
    shown = page.render(scale=1, grayscale=True).to_pil()  # a dot to the point
    ink = shown.point(lambda value: 255 if value < PAPER else 0)
    dark = ink.crop((0, round(head * MM), shown.width, round((head + room) * MM))).getbbox()
    letters = tuple(_letters(page))
    left, top, right, bottom = ink.getbbox() or (0, 0, 0, 0)
    seen = [(left, shown.height - bottom, right, shown.height - top), *(box for _, box in letters)]
    lefts, feet, rights, heads = zip(*seen, strict=True)
    edges = (min(lefts), min(feet), max(rights), max(heads))
    return Laid(number + 1, room, dark[3] / MM if dark else 0.0, headings, letters, edges)


def _letters(page: pypdfium2.PdfPage) -> Iterator[tuple[str, Box]]:
    text = page.get_textpage()
    for place in range(text.count_chars()):
        letter = text.get_text_range(place, 1)
        if letter.strip():
            yield letter, text.get_charbox(place)


def overlapping(letters: tuple[tuple[str, Box], ...], share: float) -> list[tuple[str, str]]:
    """Letters that lie over each other by more than a share of the smaller one; neighbours in a word may."""
    cells: dict[tuple[int, int], list[int]] = defaultdict(list)
    for place, (_, box) in enumerate(letters):
        left, foot, right, head = (int(edge) // CELL for edge in box)
        for cell in product(range(left, right + 1), range(foot, head + 1)):
            cells[cell].append(place)
    pairs = {pair for inside in cells.values() for pair in combinations(inside, 2)}
    return [
        (letters[one][0], letters[other][0])
        for one, other in sorted(pairs)
        if other - one > 1 and _over(letters[one][1], letters[other][1]) > share
    ]


def _over(one: Box, other: Box) -> float:
    """What two boxes share, as a share of the smaller one."""
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    least = min((box[2] - box[0]) * (box[3] - box[1]) for box in (one, other))
    return width * height / least if width > 0 and height > 0 and least > 0 else 0.0


def steps_in(path: Path) -> tuple[list[str], list[str]]:
    """Texts of the drawings of each row that has some, and of those rows that go on on another page.

    The engine makes another row of what goes on, and leaves its heading cell empty.
    """
    steps, parted = [], []
    with pikepdf.open(path) as pdf:
        for element in elements(pdf):
            if element.get("/S") == "/TR":
                head, *cells = kids_of(element)
                told, _ = _content(element)
                if head.S == "/TH" and not _content(head)[1] and any(cell.S == "/TD" for cell in cells):
                    parted.append(steps[-1] if steps else told)
                elif told:
                    steps.append(told)
    return steps, parted


def _content(element: pikepdf.Object) -> tuple[str, set[object]]:
    """Texts of the figures below an element, and the pages of everything below it."""
    told, pages = (str(element.get("/Alt", "")) if element.get("/S") == "/Figure" else ""), set()
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            more, on = _content(kid)
            told, pages = told + more, pages | on
        elif isinstance(kid, pikepdf.Dictionary) and "/Pg" in kid:
            pages.add(kid.Pg.objgen)
        elif "/Pg" in element:
            pages.add(element.Pg.objgen)
    return told, pages


def assert_within(path: Path, points: float) -> None:
    """Nothing on any page stands nearer to an edge of the paper than so many points."""
    with pdfplumber.open(path) as pdf:
        for one in pdf.pages:
            left, top, right, foot = one.bbox
            marks = [*one.chars, *one.curves, *one.lines, *one.rects]
            assert min(mark["x0"] for mark in marks) >= left + points
            assert max(mark["x1"] for mark in marks) <= right - points
            assert min(mark["top"] for mark in marks) >= top + points
            assert max(mark["bottom"] for mark in marks) <= foot - points
