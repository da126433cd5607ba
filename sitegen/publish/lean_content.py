"""The content of a layout's pages -> the same marks in fewer words.

The print engine puts each text of a drawing that is not set from its start into a picture of its own, draws
a line of no length in each corner of a round box, and clips every fill of a box to that box. It writes every
outline in places on the page: from their own start, those of thousands of chips read alike, and packed they
are next to nothing.
"""

from __future__ import annotations

import re

from pikepdf import Object, Page, Pdf

_PICTURE = re.compile(rb"/(?<! gs\n/)(x\d+) Do\n")
"""A picture drawn as it is; before one drawn through a veil the engine sets that."""
_PLAIN_TEXT = re.compile(rb"q\n/a1\.0 gs\n(?:(?! Do\n| gs\n).)*BT\n(?:(?! Do\n| gs\n).)*Q", re.DOTALL)
_STAYS = re.compile(rb"(?<=[\n ])(\S+ \S+) ([mc])\n\1 l\n(?=[^\n]* [cl]\n)")
"""A line to where the pen already is, with more of the path to come."""
_ROUND = re.compile(rb"(?<=\n)(-?\d+\.\d{4,}) (-?\d+\.\d{4,}) m\n((?:[-\d. ]+ [mlc]\n){4,})(W\nn|f\*?)\n")
"""The outline of a round box or of its border, and how it is painted. Drawings count in hundredths."""
_NUMBERS = re.compile(rb"(\S+) (\S+)(?= )")
"""A point of an outline."""
_CLIPPED = re.compile(rb"(?<=\n)([^\n]+ re\n)W\nn\n\1f\n")
"""A fill, clipped to itself."""


def lean_content(pdf: Pdf) -> list[bytes]:
    """The content of each page, in fewer bytes; the pictures that are no longer drawn leave the file."""
    texts: dict[bytes, bytes] = {}
    for page in pdf.pages:
        if "/XObject" not in page.obj.Resources:
            continue
        pictures = page.obj.Resources.XObject
        for name in [str(name) for name in pictures.keys() if str(name).startswith("/x")]:  # noqa: SIM118
            text = _plain_text(pictures[name])
            if text:
                texts[name[1:].encode()] = text
                del pictures[name]
    return [_lean(page, texts) for page in pdf.pages]


def _plain_text(picture: Object) -> bytes:
    """What a picture draws, if that is opaque text alone."""
    if picture.get("/Subtype") != "/Form" or "/SMask" in picture:
        return b""
    drawn = picture.read_bytes()
    return drawn + b"\n" if _PLAIN_TEXT.fullmatch(drawn) else b""


def _lean(page: Page, texts: dict[bytes, bytes]) -> bytes:
    content = page.obj.Contents.read_bytes()
    content = _PICTURE.sub(lambda found: texts.get(found[1], found[0]), content)
    content = _STAYS.sub(rb"\1 \2\n", content)
    content = _ROUND.sub(_from_its_start, content)
    return _CLIPPED.sub(rb"\1f\n", content)


def _from_its_start(outline: re.Match[bytes]) -> bytes:
    """The outline in hundredths of a pixel from where it begins; the axes are put back after it."""
    x, y = float(outline[1]), float(outline[2])
    rest = _NUMBERS.sub(lambda at: b"%.2f %.2f" % (float(at[1]) - x, float(at[2]) - y), outline[3])
    there, back = (b"1 0 0 1 %.3f %.3f cm\n" % (sign * x, sign * y) for sign in (1, -1))
    return b"%b0 0 m\n%b%b\n%b" % (there, rest, outline[4], back)
