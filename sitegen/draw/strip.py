"""The beads of a row in order of working -> a band of them, wrapped into lines, counted every 5 and 10."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from sitegen.draw.colour import INK, OUTLINE, THREAD, Dye, Palette
from sitegen.draw.pens import CAP_HEIGHT, BoundsPen, Drawing, Outline, Paint, Recorder, Text, finish
from sitegen.draw.shapes import arrowhead, bead_outline, ellipse
from sitegen.draw.step import letter_size
from sitegen.model.thread import Bead

LINE = 20
"""The most beads on one line."""
LONGEST_MM = 44.0
"""The most room a line of beads takes, true to scale."""
GAP_MM = 0.1
"""Between neighbours."""
COUNT_MM = 0.85
"""Font size of the counts."""
AFTER_MM = 1.15
"""Font size of what stands after the last arrow."""
LEAD_MM = 1.7
"""Thread before the first and after the last bead of a line."""
MARGIN_MM = 0.2
"""Free room round a band."""
COUNTED = 5
"""Every so many beads are counted, every second count is bold."""


def strip(
    beads: Sequence[Bead],
    *,
    leftward: bool,
    title: str,
    description: str,
    palette: Palette,
    after: str = "",
) -> Drawing:
    """The band of at least one bead; `leftward` where the row is worked to the left, as it is held.

    The needle picks up from the dot to the arrow; so the band lies as the row does. `after` stands behind its
    last arrow, such as how often these beads are picked up.
    """
    recorder = Recorder()
    lines = _lines([replace(bead, angle=_upright(bead)) for bead in beads])
    size = min(letter_size(bead) for bead in beads)
    pitch = max(_tall(bead) for bead in beads) + 1.6
    first = 1
    for number, line in enumerate(lines):
        placed = _placed(line, number * pitch, -1.0 if leftward else 1.0)
        _draw_line(recorder, placed, first, size)
        _draw_way(recorder, placed, -1.0 if leftward else 1.0, starts=number == 0)
        first += len(line)
        if after and first > len(beads):
            x = placed[-1].x + _wide(placed[-1]) / 2 + LEAD_MM + COUNT_MM
            recorder.text(Text(x, placed[-1].y, after, AFTER_MM, INK, "start", bold=True))
    return _with_line_of_counts(finish(recorder, title, description, MARGIN_MM, palette), lines[0])


def _lines(beads: Sequence[Bead]) -> list[list[Bead]]:
    """Beads in lines of equal counts, multiples of five where there is more than one line."""
    wide = max(_wide(bead) for bead in beads) + GAP_MM
    most = max(COUNTED, min(LINE, int(LONGEST_MM / wide) // COUNTED * COUNTED))
    if len(beads) * wide <= LONGEST_MM and len(beads) < most + COUNTED:
        most = len(beads)
    return [list(beads[start : start + most]) for start in range(0, len(beads), most)]


def _upright(bead: Bead) -> float:
    """Its hole straight up or straight across, whichever is nearer."""
    return 90.0 if 45 < bead.angle % 180 < 135 else 0.0


def _wide(bead: Bead) -> float:
    """How much of a line a bead takes."""
    turn = math.radians(bead.angle)
    return abs(bead.width * math.cos(turn)) + abs(bead.length * math.sin(turn))


def _tall(bead: Bead) -> float:
    turn = math.radians(bead.angle)
    return abs(bead.length * math.cos(turn)) + abs(bead.width * math.sin(turn))


def _placed(line: Sequence[Bead], y: float, sign: float) -> list[Bead]:
    """The beads of a line side by side, the first at the side the row begins."""
    placed, x = [], 0.0
    for bead in line:
        half = (_wide(bead) + GAP_MM) / 2
        placed.append(replace(bead, x=sign * (x + half), y=y))
        x += 2 * half
    return placed


def _draw_line(recorder: Recorder, beads: Sequence[Bead], first: int, size: float) -> None:
    """Beads one path a colour, their letters, and the counts above them."""
    for letter in sorted({bead.letter for bead in beads}):
        recorder.begin("beads-new", {"letter": letter})
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        recorder.shapes(outlines, Paint(fill=Dye(letter), stroke=OUTLINE, width=0.09))
        recorder.end()
    recorder.begin("letters", {})
    recorder.letters(sorted((bead.x, bead.y, bead.letter) for bead in beads), size)
    recorder.end()
    recorder.begin("counts", {})
    top = _counts_at(beads)
    for number, bead in enumerate(beads, first):
        if number % COUNTED == 0:
            bold = number % (2 * COUNTED) == 0
            recorder.text(Text(bead.x, top, str(number), COUNT_MM, INK, bold=bold))
    recorder.end()


def _counts_at(line: Sequence[Bead]) -> float:
    """The height at which the counts above a line stand."""
    return min(bead.y - _tall(bead) / 2 for bead in line) - COUNT_MM * CAP_HEIGHT / 2 - 0.25


def _with_line_of_counts(drawing: Drawing, first: Sequence[Bead]) -> Drawing:
    """Room for counts above its first line also where there are none, so that strips stand in step."""
    count = BoundsPen()
    count.text(Text(0.0, _counts_at([replace(bead, y=0.0) for bead in first]), "0", COUNT_MM, INK))
    top = min(drawing.top, count.top - MARGIN_MM)
    return replace(drawing, top=top, height_mm=drawing.height_mm + drawing.top - top)


def _draw_way(recorder: Recorder, beads: Sequence[Bead], sign: float, *, starts: bool) -> None:
    """A dot and a little thread before the first bead of the row, an arrow after the last of each line."""
    y = beads[0].y
    begin = beads[0].x - sign * _wide(beads[0]) / 2
    end = beads[-1].x + sign * _wide(beads[-1]) / 2
    tip = end + sign * LEAD_MM
    recorder.begin("way", {})
    recorder.begin("thread-line", {})
    lead = [Outline((begin - sign * LEAD_MM, y), ((begin, y),), closed=False)] if starts else []
    out = Outline((end, y), ((tip - sign * 0.6, y),), closed=False)
    recorder.shapes([*lead, out], Paint(stroke=THREAD, width=0.19))
    recorder.end()
    recorder.begin("ends", {})
    if starts:
        recorder.shapes([ellipse((begin - sign * LEAD_MM, y), 0.3, 0.3)], Paint(fill=THREAD))
    recorder.shapes([arrowhead((tip, y), (sign, 0.0), 1.1)], Paint(fill=THREAD))
    recorder.end()
    recorder.end()
