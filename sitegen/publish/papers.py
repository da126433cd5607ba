"""One laid-out PDF -> the same sheets for each paper, with the tags that readers of tagged PDFs look for.

The layout keeps to the room that A4 and US Letter share, so a paper is a matter of the page boxes, of the
paper's name in the foot and of the title. The layout holds the name of every paper, one over the other, each
in its own shade; here all but one are taken out.
"""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from xml.sax.saxutils import escape

import pikepdf
from pikepdf import Array, Dictionary, Name, Object, Operator, Pdf

from sitegen.publish.tags import reachable_marks, repair_tags

Instruction = pikepdf.ContentStreamInstruction | pikepdf.ContentStreamInlineImage


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

    def file_name(self, pattern: str, paper: str) -> str:
        """What the PDF is called: `fern-a4.pdf`, `fern-de-a4.pdf`."""
        return "-".join(filter(None, (pattern, self.language, paper))) + ".pdf"


def sheets(layout: bytes, titles: Mapping[str, str], language: str = "", carried: str = "") -> Sheets:
    """The layout for each paper; `titles` has a title for each, the first one being the layout's own.

    `language` stands in the names of the files, `carried` is that of texts which are not in it.
    """
    files = []
    with Pdf.open(io.BytesIO(layout)) as pdf:
        marks = reachable_marks(pdf)
        repair_tags(pdf, carried)
        pdf.Root.ViewerPreferences.PrintScaling = Name("/None")
        pdf.Root.ViewerPreferences.PickTrayByPDFSize = True
        middles = [_middle(page) for page in pdf.pages]
        contents = [_by_paper(pdf, page, marks) for page in pdf.pages]
        title = titles[PAPERS[0].name]
        for paper in PAPERS:
            _retitle(pdf, title, title := titles[paper.name])
            for page, middle, content in zip(pdf.pages, middles, contents, strict=True):
                page.obj.Contents = pdf.make_stream(content[paper.name])
                _cut_to(page, middle, paper)
            out = io.BytesIO()
            pdf.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
            files.append((paper.name, out.getvalue()))
    return Sheets(len(middles), tuple(files), language)


def _retitle(pdf: Pdf, old: str, new: str) -> None:
    """Set the title, in the XMP packet as plain text: pikepdf's own editor would add a date."""
    pdf.docinfo["/Title"] = new
    packet = pdf.Root.Metadata.read_bytes()
    pdf.Root.Metadata.write(packet.replace(f">{escape(old)}<".encode(), f">{escape(new)}<".encode()))


def _middle(page: pikepdf.Page) -> tuple[float, float]:
    left, foot, right, head = (float(edge) for edge in page.MediaBox)
    return (left + right) / 2, (foot + head) / 2


def _cut_to(page: pikepdf.Page, middle: tuple[float, float], paper: Paper) -> None:
    """Lay the paper over the middle of the layout's page."""
    left, foot = round(middle[0] - paper.width / 2, 3), round(middle[1] - paper.height / 2, 3)
    box = Array([left, foot, round(left + paper.width, 3), round(foot + paper.height, 3)])
    for name in (Name.MediaBox, Name.TrimBox, Name.BleedBox):
        page.obj[name] = box


def _by_paper(pdf: Pdf, page: pikepdf.Page, marks: set[tuple[object, int]]) -> dict[str, bytes]:
    """The page's content for each paper: of the papers' names only its own.

    Heads and feet, the marked content that no element of the structure tree holds, become artifacts: they
    are not read aloud.
    """
    kept: dict[str, list[Instruction]] = {paper.name: [] for paper in PAPERS}
    run: list[Instruction] = []
    depth = 0
    slots: list[int] = []
    for instruction in pikepdf.parse_content_stream(page):
        operator = str(instruction.operator)
        mark = _mark(instruction) if operator == "BDC" and not depth else None
        if mark is not None and (page.obj.objgen, mark) not in marks:
            slots.append(mark)
            artifact = [Name.Artifact, Dictionary(Type=Name.Pagination)]
            run, depth = [pikepdf.ContentStreamInstruction(artifact, Operator("BDC"))], 1
            continue
        if not depth:
            for content in kept.values():
                content.append(instruction)
            continue
        run.append(instruction)
        depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(operator, 0)
        if not depth:
            fills = {_fill(one) for one in run}
            for paper in PAPERS:
                if not any(other.shade in fills for other in PAPERS if other is not paper):
                    kept[paper.name].extend(run)
    _forget(pdf, page, slots)
    return {name: pikepdf.unparse_content_stream(content) for name, content in kept.items()}


def _mark(instruction: Instruction) -> int | None:
    """The number of the marked content that begins here, if it has one."""
    values = instruction.operands[1]
    return int(values.MCID) if isinstance(values, Object) and "/MCID" in values else None


def _fill(instruction: Instruction) -> tuple[int, ...]:
    """The fill colour this instruction sets, in 255ths; empty for any other instruction."""
    if str(instruction.operator) != "rg":
        return ()
    return tuple(round(float(part) * 255) for part in instruction.operands)


def _forget(pdf: Pdf, page: pikepdf.Page, slots: list[int]) -> None:
    """Empty the places of marked content that is no longer part of the structure."""
    for key, entry in _parent_tree(pdf):
        if key == int(page.obj.StructParents):
            for slot in slots:
                entry[slot] = None


def _parent_tree(pdf: Pdf) -> Iterator[tuple[int, Object]]:
    numbers = pdf.Root.StructTreeRoot.ParentTree.Nums
    for at in range(0, len(numbers), 2):
        yield int(numbers[at]), numbers[at + 1]
