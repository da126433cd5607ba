"""One laid-out PDF -> the same sheets for each paper, with the tags that readers of tagged PDFs look for.

The layout keeps to the room that A4 and US Letter share, so a paper is a matter of the page boxes, of the
paper's name in the foot and of the title. The layout holds the name of every paper, one over the other, each
in its own shade; here all but one are taken out.
"""

from __future__ import annotations

import io
import re
from collections.abc import Mapping
from dataclasses import dataclass

import pikepdf
from pikepdf import Array, Name, Pdf

from sitegen.model.file_names import print_name
from sitegen.model.shop import COLOUR
from sitegen.publish.lean_content import lean_content
from sitegen.publish.lean_tags import thin_tags
from sitegen.publish.packet import describe
from sitegen.publish.tags import parent_tree, reachable_marks, repair_tags
from sitegen.publish.tick_fields import draw_ticks

_MARKED = re.compile(rb"/\w+\n<</MCID (\d+)>>\nBDC\n")
_END = b"EMC\n"
_ARTIFACT = b"/Artifact <</Type /Pagination>> BDC\n"
_FILL = re.compile(rb"(\S+) (\S+) (\S+) rg\n")
"""Content as the print engine writes it, a word or an instruction a line."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper size and the shade its name is set in."""

    name: str
    width: float
    """Points of 1/72 in."""
    height: float
    shade: tuple[int, int, int]
    """Red, green, blue of the paper's name in the foot; the print style sheet sets the same."""


A4 = Paper("a4", 210 * 72 / 25.4, 297 * 72 / 25.4, (0x6B, 0x62, 0x56))
LETTER = Paper("letter", 612.0, 792.0, (0x6B, 0x62, 0x57))
PAPERS = (A4, LETTER)
"""The layout is made on the first."""


@dataclass(frozen=True, slots=True)
class Sheets:
    """A printed pattern: the same pages for each paper."""

    pages: int
    files: tuple[tuple[str, bytes], ...]
    """(name of the paper, PDF)."""
    language: str = ""
    """In the names of its files; empty for the first of the shop."""
    edition: str = COLOUR
    """One of `EDITIONS`; the first is not in the names of its files."""

    def file_name(self, pattern: str, paper: str) -> str:
        """What the PDF is called: `fern-a4.pdf`, `fern-de-a4.pdf`, `fern-de-ink-a4.pdf`."""
        return f"{print_name(pattern, self.language, self.edition)}-{paper}.pdf"


def sheets(layout: bytes, titles: Mapping[str, str], language: str = "", carried: str = "") -> Sheets:
    """The layout for each paper; `titles` has a title for each, the first one being the layout's own.

    `language` stands in the names of the files, `carried` is that of texts which are not in it.
    """
    files = []
    with Pdf.open(io.BytesIO(layout)) as pdf:
        repair_tags(pdf, carried)
        thin_tags(pdf)
        draw_ticks(pdf)
        marks = reachable_marks(pdf)
        pdf.Root.ViewerPreferences.PrintScaling = Name("/None")
        pdf.Root.ViewerPreferences.PickTrayByPDFSize = True
        middles = [_middle(page) for page in pdf.pages]
        lean = zip(pdf.pages, lean_content(pdf), strict=True)
        contents = [_by_paper(pdf, page, content, marks) for page, content in lean]
        for paper in PAPERS:
            pdf.docinfo["/Title"] = titles[paper.name]
            describe(pdf)
            for page, middle, content in zip(pdf.pages, middles, contents, strict=True):
                page.obj.Contents = pdf.make_stream(content[paper.name])
                _cut_to(page, middle, paper)
            files.append((paper.name, saved(pdf)))
    return Sheets(len(middles), tuple(files), language)


def saved(pdf: Pdf) -> bytes:
    """The finished file: the same bytes for the same contents.

    A line end stands between the data of a stream and `endstream`. After data that end in a carriage return,
    a line feed would be read as one line end with it, and the data as one byte short of its length: there the
    line end is a carriage return too (ISO 32000-1, 7.5.1 and 7.3.8.1; ISO 19005-2, 6.1.7.1).
    """
    out = io.BytesIO()
    generate = pikepdf.ObjectStreamMode.generate
    pdf.save(out, deterministic_id=True, object_stream_mode=generate, fix_metadata_version=False)
    return out.getvalue().replace(b"\r\nendstream", b"\r\rendstream")


def _middle(page: pikepdf.Page) -> tuple[float, float]:
    left, foot, right, head = (float(edge) for edge in page.MediaBox)
    return (left + right) / 2, (foot + head) / 2


def _cut_to(page: pikepdf.Page, middle: tuple[float, float], paper: Paper) -> None:
    """Lay the paper over the middle of the layout's page."""
    left, foot = round(middle[0] - paper.width / 2, 3), round(middle[1] - paper.height / 2, 3)
    box = Array([left, foot, round(left + paper.width, 3), round(foot + paper.height, 3)])
    for name in (Name.MediaBox, Name.TrimBox, Name.BleedBox):
        page.obj[name] = box


def _by_paper(
    pdf: Pdf, page: pikepdf.Page, content: bytes, marks: set[tuple[object, int]]
) -> dict[str, bytes]:
    """The page's content for each paper: of the papers' names only its own.

    Heads and feet, the marked content that no element of the structure tree holds, become artifacts: they
    are not read aloud.
    """
    kept: dict[str, list[bytes]] = {paper.name: [] for paper in PAPERS}
    slots: list[int] = []
    done = 0
    for found in _MARKED.finditer(content):
        if (page.obj.objgen, int(found[1])) in marks:
            continue
        slots.append(int(found[1]))
        end = content.index(_END, found.end()) + len(_END)
        run = content[found.end() : end]
        fills = {tuple(round(float(part) * 255) for part in fill.groups()) for fill in _FILL.finditer(run)}
        for paper in PAPERS:
            kept[paper.name].append(content[done : found.start()])
            if not any(other.shade in fills for other in PAPERS if other is not paper):
                kept[paper.name] += (_ARTIFACT, run)
        done = end
    _forget(pdf, page, slots)
    return {name: b"".join((*parts, content[done:])) for name, parts in kept.items()}


def _forget(pdf: Pdf, page: pikepdf.Page, slots: list[int]) -> None:
    """Empty the places of marked content that is no longer part of the structure."""
    for key, entry in parent_tree(pdf):
        if key == int(page.obj.StructParents):
            for slot in slots:
                entry[slot] = None
