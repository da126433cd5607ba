"""The boxes to tick of a PDF, as the print engine leaves them -> fields that look alike in every viewer.

ISO 19005-2, 6.4.1, forbids to leave the drawing of fields to the viewer: each state of a box has
its picture here, and all boxes share the two.
"""

from __future__ import annotations

from pikepdf import Array, Dictionary, Name, Object, Pdf

_EDGE = 100
"""Of the pictures' own square; a viewer fits it to the box."""
_DRAWN = b"%b RG 11 w 1 J 1 j 20 52 m 42 26 l 82 78 l S"
"""A tick of one stroke with round ends."""


def draw_ticks(pdf: Pdf) -> None:
    """Give every box its two pictures, in place; a PDF without boxes stays as it is."""
    if "/AcroForm" not in pdf.Root:
        return
    form = pdf.Root.AcroForm
    for key in ("/NeedAppearances", "/DR"):
        if key in form:
            del form[key]
    boxes = list(form.Fields)
    colour = " ".join(f"{float(part):.3f}" for part in boxes[0].MK.BC)
    pictures = Dictionary(on=_picture(pdf, _DRAWN % colour.encode()), Off=_picture(pdf, b""))
    for box in boxes:
        del box["/MK"]
        box.AP = Dictionary(N=pictures)


def _picture(pdf: Pdf, drawn: bytes) -> Object:
    square = Array([0, 0, _EDGE, _EDGE])
    return pdf.make_stream(
        drawn, Dictionary(Type=Name.XObject, Subtype=Name.Form, BBox=square, Resources=Dictionary())
    )
