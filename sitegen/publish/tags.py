"""The structure tree of a PDF -> the same tree with what the print engine leaves out.

Heading cells get their scope, elements can be found by their name, figures say where on the page they are,
links are printed, and texts in another language than the sheets' say so. ISO 32000-1, 14.7 to 14.9, and
ISO 14289-1 ask for these.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Iterator

from pikepdf import Array, Dictionary, Name, Object, Pdf

POINTS_PER_PIXEL = 0.75
PRINT_FLAG = 4
"""Bit 3 of an annotation's flags."""
CARRIER, CARRIED = "main", "/Part"
"""What sheets have no other use for, as HTML and in the structure tree: the engine does not pass on the
attribute `lang`, so the words of an element that has one are put into this."""
INLINE = frozenset(("a", "b", "br", "code", "em", "s", "span", "strong"))


def carry_languages(sheet: ET.Element) -> None:
    """Put the words of each element with an attribute `lang` into a carrier, in place."""
    for element in [one for one in sheet.iter() if one is not sheet and one.get("lang")]:
        _carry(element)


def _carry(element: ET.Element) -> None:
    """The words of an element; where it holds others than words, those of each of them."""
    inner = list(element)
    if not all(child.tag in INLINE for child in inner):
        for child in inner:
            _carry(child)
    elif "".join(element.itertext()).strip():
        carrier = ET.Element(CARRIER, {"style": "display: inline"})
        carrier.text, element.text = element.text, None
        carrier.extend(inner)
        element[:] = [carrier]


def elements(pdf: Pdf) -> Iterator[Object]:
    """Every element of the structure tree, parents before children."""
    waiting = [pdf.Root.StructTreeRoot]
    while waiting:
        element = waiting.pop()
        yield element
        waiting.extend(reversed(_elements_in(element)))


def kids_of(element: Object) -> list[Object | int]:
    """What an element holds: elements, references to fields and links, and numbers of marked content."""
    if "/K" not in element:
        return []
    kids = element.K
    return list(kids) if isinstance(kids, Array) else [kids]


def _elements_in(element: Object) -> list[Object]:
    return [kid for kid in kids_of(element) if isinstance(kid, Dictionary) and "/S" in kid]


def parent_tree(pdf: Pdf) -> Iterator[tuple[int, Object]]:
    """Its entries: the key of a page with the owners of its marked content, that of a note with its own."""
    numbers = pdf.Root.StructTreeRoot.ParentTree.Nums
    for at in range(0, len(numbers), 2):
        yield int(numbers[at]), numbers[at + 1]


def reachable_marks(pdf: Pdf) -> set[tuple[object, int]]:
    """(page, number) of all marked content that an element holds; a page is named by its object number."""
    found: set[tuple[object, int]] = set()
    for element in elements(pdf):
        for kid in kids_of(element):
            if isinstance(kid, Dictionary):
                if "/MCID" in kid:
                    page = kid.Pg if "/Pg" in kid else element.Pg
                    found.add((page.objgen, int(kid.MCID)))
            else:
                found.add((element.Pg.objgen, int(kid)))
    return found


def repair_tags(pdf: Pdf, carried: str = "") -> None:
    """Add scopes, the tree of names, items of lists, figures' places and links' print flags, in place.

    `carried` is the language of what was put into carriers.
    """
    named: list[tuple[bytes, Object]] = []
    for element in elements(pdf):
        kind = str(element.get("/S", ""))
        if "/ID" in element:
            named.append((bytes(element.ID), element))
        if kind == "/TR":
            _scope(element)
        elif kind == "/Figure":
            _place(element)
        elif kind == "/L":
            _terms(element)
        elif kind == CARRIED:
            element.S, element.Lang = Name.Span, carried
    if named:
        named.sort(key=lambda pair: pair[0])
        names: list[Object] = []
        for _, element in named:
            names += [element.ID, element]
        limits = [named[0][1].ID, named[-1][1].ID]
        kids = [pdf.make_indirect(Dictionary(Limits=Array(limits), Names=Array(names)))]
        pdf.Root.StructTreeRoot.IDTree = Dictionary(Kids=Array(kids))
    for page in pdf.pages:
        for note in page.obj.get("/Annots", []):
            note.F = int(note.get("/F", 0)) | PRINT_FLAG


def _scope(row: Object) -> None:
    """A row of heading cells alone heads columns; a heading cell among others heads its row."""
    cells = [kid for kid in kids_of(row) if isinstance(kid, Dictionary)]
    heads = [cell for cell in cells if cell.S == Name.TH]
    scope = Name.Column if len(heads) == len(cells) else Name.Row
    for cell in heads:
        own = Dictionary(O=Name.Table, Scope=scope)
        if "/A" not in cell:
            cell.A = own
        else:
            cell.A = Array([*(cell.A if isinstance(cell.A, Array) else [cell.A]), own])


def _terms(list_: Object) -> None:
    """A group of a list of terms is one item of it: the term its label, the meaning its body.

    The engine has an item for each of the two, within the group; of a group that goes on from the page before
    only the meaning is left.
    """
    for group in _elements_in(list_):
        if str(group.S) != "/Div":
            continue
        bodies = [body for item in _elements_in(group) for body in _elements_in(item)]
        for body in bodies:
            body.P = group
        if len(bodies) > 1:
            bodies[0].S = Name.Lbl
        group.S, group.K = Name.LI, Array(bodies)


def _place(figure: Object) -> None:
    """The engine counts a figure's box in pixels from the top; the standard counts points from the foot."""
    attributes = figure.get("/A")
    for one in attributes if isinstance(attributes, Array) else [attributes]:
        if isinstance(one, Dictionary) and "/BBox" in one:
            left, top, right, foot = (float(edge) * POINTS_PER_PIXEL for edge in one.BBox)
            height = float(figure.Pg.MediaBox[3]) if "/Pg" in figure else 0.0
            if height:
                one.BBox = Array([round(v, 3) for v in (left, height - foot, right, height - top)])
