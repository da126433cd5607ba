"""An address -> its QR code as a drawing: dark modules in one path, in the quiet zone the standard asks for.

Which modules are dark is worked out by the library segno.
"""

from __future__ import annotations

from itertools import groupby

import segno

from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, finish
from sitegen.model.say import Say

MODULE_MM = 0.8
"""A module's side: own judgement."""
QUIET_MODULES = 4
"""Left free on each side, ISO/IEC 18004:2015, 5.3.8 (clause from memory)."""
DARK = "#000000"


def scan_code(address: str, say: Say) -> Drawing:
    """The code of an address; the codes of longer ones have more modules and are larger.

    It can be read with the share of damage that level M allows, or more where it has room to spare.
    """
    recorder = Recorder()
    recorder.begin("scan-code", {})
    recorder.shapes(_runs(dark_modules(address)), Paint(fill=DARK))
    recorder.end()
    words = say("drawing.scan-code"), say("drawing.scan-code-is", address=address)
    return finish(recorder, *words, QUIET_MODULES * MODULE_MM)


def dark_modules(address: str) -> tuple[tuple[bool, ...], ...]:
    """Row by row from the top: whether a module is dark."""
    matrix = segno.make(address, error="m", micro=False).matrix
    return tuple(tuple(bool(module) for module in row) for row in matrix)


def _runs(rows: tuple[tuple[bool, ...], ...]) -> list[Outline]:
    """Neighbours of a row as one rectangle."""
    outlines = []
    for number, row in enumerate(rows):
        top, foot, at = number * MODULE_MM, (number + 1) * MODULE_MM, 0
        for dark, run in groupby(row):
            left, at = at * MODULE_MM, at + len(list(run))
            if dark:
                right = at * MODULE_MM
                outlines.append(Outline((left, top), ((right, top), (right, foot), (left, foot))))
    return outlines
