"""The printed sheets as files: what PDF/UA-1 and PDF/A-2a ask, what they say of themselves, boxes to tick."""

from __future__ import annotations

import io
import re
import zlib
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

import page as validation
import pdfplumber
import pikepdf
import pytest
from pikepdf import Array, Name, Object, Pdf

from sitegen.publish import papers
from sitegen.publish.drawings_apart import alternative_text, take_apart
from sitegen.publish.packet import describe
from sitegen.publish.papers import saved
from sitegen.publish.printing import PrintJob, print_sheets
from sitegen.publish.tags import elements, kids_of, parent_tree
from tests.publish.sample_shop import Built
from tests.publish.test_sheets import LINEN

SPACES = {
    "rdf": "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
    "dc": "http://purl.org/dc/elements/1.1/",
    "xmp": "http://ns.adobe.com/xap/1.0/",
    "pdf": "http://ns.adobe.com/pdf/1.3/",
}
SAME = {
    "/Title": "dc:title/rdf:Alt/rdf:li",
    "/Author": "dc:creator/rdf:Seq/rdf:li",
    "/Subject": "dc:description/rdf:Alt/rdf:li",
    "/Keywords": "pdf:Keywords",
    "/Producer": "pdf:Producer",
    "/CreationDate": "xmp:CreateDate",
    "/ModDate": "xmp:ModifyDate",
}
"""Key of the document information -> the XMP property that must say the same (ISO 19005-1, 6.7.3)."""


@pytest.fixture
def reed(built: Built) -> Iterator[Pdf]:
    with pikepdf.open(sheet(built, "reed-pair-a4")) as pdf:
        yield pdf


def sheet(built: Built, name: str) -> Path:
    return next(path for path in built.pdfs() if path.stem == name)


def kinds(pdf: Pdf, kind: str) -> list[Object]:
    return [element for element in elements(pdf) if element.get("/S") == kind]


def told(pdf: Pdf) -> dict[str, str]:
    """What the XMP packet says, under the keys of the document information."""
    packet = ElementTree.fromstring(pdf.Root.Metadata.read_bytes())
    found = {key: packet.findtext(f".//{place}", None, SPACES) for key, place in SAME.items()}
    return {key: text for key, text in found.items() if text is not None}


@pytest.mark.parametrize("profile", ["ua1", "2a"])
def test_one_file_follows_both_standards(built: Built, profile: str) -> None:
    """ISO 14289-1 and ISO 19005-2 level A by page-validation, calibrated on the veraPDF corpus."""
    for path in built.pdfs():
        report = validation.validate_pdf(path, profile=profile)
        assert report.is_compliant, (path.name, report)


def test_no_fault_of_syntax(built: Built) -> None:
    for path in built.pdfs():
        with pikepdf.open(path) as pdf:
            assert pdf.check_pdf_syntax() == [], path.name


def test_information_and_packet_agree(reed: Pdf) -> None:
    info = {key: str(value) for key, value in reed.docinfo.items()}
    days = {key: re.sub(r"^D:(\d{4})(\d\d)(\d\d)$", r"\1-\2-\3", text) for key, text in info.items()}
    assert told(reed) == days
    assert days == {
        "/Title": "Reed pair (A4)",
        "/Author": "Oona Ferry",
        "/Subject": "A small fan with three strands.",
        "/Keywords": "Earrings, Brick stitch, Fringe, round 11/0",
        "/CreationDate": "2026-03-14",
        "/ModDate": "2026-05-02",
        "/Producer": days["/Producer"],
    }
    packet = ElementTree.fromstring(reed.Root.Metadata.read_bytes())
    assert packet.findtext(".//dc:language/rdf:Bag/rdf:li", None, SPACES) == str(reed.Root.Lang) == "en"


def test_no_date_that_the_source_does_not_give(built: Built) -> None:
    """The charm has no dated edition."""
    with pikepdf.open(sheet(built, "pebble-charm-a4")) as pdf:
        assert b"Date" not in pdf.Root.Metadata.read_bytes()
        assert not [key for key in pdf.docinfo if "Date" in key]


def test_a_packet_says_any_text_rightly() -> None:
    with Pdf.new() as pdf:
        pdf.Root.Lang = "de"
        pdf.docinfo["/Title"] = '<b> & "Łódź" ]]> \N{BLACK STAR}'
        describe(pdf)
        assert told(pdf) == {"/Title": '<b> & "Łódź" ]]> \N{BLACK STAR}'}


def test_no_stream_can_be_taken_for_one_byte_shorter() -> None:
    """The last byte of zlib's data is the low byte of the sum of all bytes, and one (RFC 1950)."""
    data = next(text for n in range(256) if zlib.adler32(text := b"q Q %" + bytes([n])) & 255 == 13)
    with Pdf.new() as pdf:
        pdf.add_blank_page()
        pdf.pages[0].obj.Contents = pdf.make_stream(data)
        file = saved(pdf)
    assert b"\r\nendstream" not in file
    assert b"\r\rendstream" in file
    with pikepdf.open(io.BytesIO(file)) as pdf:
        assert pdf.check_pdf_syntax() == []
        assert pdf.pages[0].obj.Contents.read_bytes() == data


def test_drawings_are_taken_apart_with_what_is_seen() -> None:
    svg = '<svg id="a"><title id="t">A &amp; "B"</title><desc>Two beads.</desc><path d="M0 0"/></svg>'
    drawings: dict[str, bytes] = {}
    html = take_apart(f"<p>{svg} and {svg}</p>", drawings)
    alt = 'alt="A &amp; &quot;B&quot;. Two beads."'
    assert html == f'<p><img src="drawing:/0" {alt}> and <img src="drawing:/1" {alt}></p>'
    assert drawings == {"drawing:/0": svg.encode(), "drawing:/1": svg.encode()}
    assert alternative_text("<svg><title>C</title><desc>C</desc></svg>") == "C"


def test_alternative_texts_say_what_is_seen(reed: Pdf) -> None:
    texts = [str(figure.Alt) for figure in kinds(reed, "/Figure")]
    assert any(re.fullmatch(r"Chart: Fan\. Chart in brick of 2 rows, 5 beads; .+", text) for text in texts)
    finished = r"Reed pair, finished\. The finished pair: 19 beads each in reed green, milk; .+ wide\."
    assert any(re.fullmatch(finished, text) for text in texts)
    steps = [text for text in texts if text.startswith("Step ")]
    assert steps
    assert all(re.fullmatch(r"Step \d+\. (New beads: [A-Z ]+|No new beads)\..*", text) for text in steps)


def test_reading_order_is_making_order(reed: Pdf) -> None:
    """Down the tree pages follow each other, and a step's box comes before its drawing and the next box."""
    pages = [page.obj.objgen for page in reed.pages]
    order = [pages.index(element.Pg.objgen) for element in elements(reed) if "/Pg" in element]
    assert order == sorted(order)
    boxes = drawn = 0
    for element in elements(reed):
        if element.get("/S") == "/Form":
            boxes += 1
            assert str(element.K[0].Obj.TU) == f"Step {boxes} done"
        elif element.get("/S") == "/Figure" and (step := re.match(r"Step (\d+)\.", str(element.Alt))):
            assert int(step[1]) == boxes
            drawn += 1
    assert boxes
    assert drawn


def test_marked_content_and_its_elements_know_each_other(built: Built) -> None:
    """Each number on a page stands in one element, which the parent tree names (ISO 32000-1, 14.7.4.4)."""
    for path in built.pdfs():
        with pikepdf.open(path) as pdf:
            owners = dict(parent_tree(pdf))
            seen = set()
            for element in elements(pdf):
                for kid in kids_of(element):
                    if isinstance(kid, int):
                        assert owners[int(element.Pg.StructParents)][kid].objgen == element.objgen
                        assert (element.Pg.objgen, kid) not in seen
                        seen.add((element.Pg.objgen, kid))
                    elif "/S" in kid:
                        assert kid.P.objgen == element.objgen
            slots = [slot for page in pdf.pages for slot in owners[int(page.obj.StructParents)]]
            assert len(seen) == len([slot for slot in slots if slot is not None])


def test_nothing_is_wrapped_for_nothing(reed: Pdf) -> None:
    """A row of a word chart is a cell of text, not an element for each letter."""
    cells = [kids_of(cell) for cell in kinds(reed, "/TD")]
    assert max(len([kid for kid in cell if isinstance(kid, int)]) for cell in cells) >= 8
    for element in elements(reed):
        if element.get("/S") in ("/P", "/TD", "/TH", "/H2", "/H3", "/LBody"):
            inner = [kid for kid in kids_of(element) if not isinstance(kid, int) and "/S" in kid]
            assert not [kid for kid in inner if str(kid.S) in ("/Span", "/NonStruct") and "/Lang" not in kid]


def test_cells_name_their_headings_and_all_names_are_found(reed: Pdf) -> None:
    named = {bytes(element.ID) for element in elements(reed) if "/ID" in element}
    (leaf,) = reed.Root.StructTreeRoot.IDTree.Kids
    names = [bytes(leaf.Names[at]) for at in range(0, len(leaf.Names), 2)]
    assert names == sorted(names)
    assert set(names) == named
    assert [bytes(edge) for edge in leaf.Limits] == [names[0], names[-1]]
    headed = 0
    for cell in kinds(reed, "/TD"):
        for attributes in cell.A if isinstance(cell.A, Array) else [cell.A]:
            headed += len(attributes.get("/Headers", []))
            assert {bytes(name) for name in attributes.get("/Headers", [])} <= named
    assert headed


def test_boxes_are_fields_with_their_own_pictures(reed: Pdf) -> None:
    form = reed.Root.AcroForm
    assert "/NeedAppearances" not in form
    boxes = list(form.Fields)
    assert len(boxes) == len(kinds(reed, "/Form"))
    names = [str(box.T) for box in boxes]
    assert len(set(names)) == len(names)
    assert all(re.fullmatch(r"steps-\d+-\d+", name) for name in names)
    for box in boxes:
        assert [str(one) for one in (box.FT, box.AS, box.V)] == ["/Btn", "/Off", "/Off"]
        assert set(box.AP.N.keys()) == {"/on", "/Off"}
        assert box.AP.N.on.objgen == boxes[0].AP.N.on.objgen
        left, foot, right, head = (float(edge) for edge in box.Rect)
        assert [abs(right - left), abs(head - foot)] == pytest.approx([3.6 * 72 / 25.4] * 2, abs=0.01)


def test_a_ticked_box_still_follows_the_standards(reed: Pdf, tmp_path: Path) -> None:
    for box in reed.Root.AcroForm.Fields:
        box.AS = box.V = Name.on
    file = tmp_path / "ticked.pdf"
    file.write_bytes(saved(reed))
    assert all(validation.validate_pdf(file, profile=one).is_compliant for one in ("ua1", "2a"))


EDGES = ("x0", "top", "x1", "bottom")
CHIP = '<span class="run">1<b class="chip" style="background: #883344">A</b></span>'
MIDDLE = '<text x="15" y="5" font-size="3" text-anchor="middle">middle</text>'
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="9mm" viewBox="0 0 30 9">'
CHIPS = f'<p>{" ".join([CHIP] * 9)}</p>{SVG}<title>T</title>{MIDDLE}<path d="M1 1h9v2"/></svg>'


def marks(file: bytes) -> list[tuple[str, tuple[float, ...], tuple[float, ...]]]:
    """Letters and shapes of the first page: letter or nothing, colour, and place in points."""
    with pdfplumber.open(io.BytesIO(file)) as pdf:
        page = pdf.pages[0]
        found = [*page.chars, *page.curves]
        places = [tuple(float(one[edge]) for edge in EDGES) for one in found]
        colours = [tuple(map(float, one["non_stroking_color"])) for one in found]
        letters = [str(one.get("text", "")) for one in found]
        return list(zip(letters, colours, places, strict=True))


def as_they_are(pdf: Pdf) -> list[bytes]:
    return [page.obj.Contents.read_bytes() for page in pdf.pages]


def test_leaner_content_draws_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    """Chips, whose outlines are written from their start, and a text set from its middle."""
    html = f'<!doctype html><html lang="en"><head><title>T</title></head><body>{CHIPS}</body></html>'
    job = PrintJob("test", html, (("a4", "T"), ("letter", "T")), LINEN)
    lean = print_sheets(job).files[0][1]
    monkeypatch.setattr(papers, "lean_content", as_they_are)
    whole = print_sheets(job).files[0][1]
    for here, there in zip(marks(lean), marks(whole), strict=True):
        assert here[:2] == there[:2]
        assert here[2] == pytest.approx(there[2], abs=0.02)
    assert len(lean) < len(whole)
    with pikepdf.open(io.BytesIO(lean)) as pdf:
        assert not [one for one in pdf.objects if isinstance(one, pikepdf.Stream) and "/Group" in one]
