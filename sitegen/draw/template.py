"""ThreadPath -> the piece true to scale in outlines, to lay finished work on.

What lies flat shows every bead. A tube or rope has no beads side by side that paper could show: it is drawn
as the outline of its finished size. A string too large to be drawn as a ring is laid straight, line under
line. Only black and grey lines: nothing is filled but with the white of the paper.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product

from sitegen.draw.bars import BLACK
from sitegen.draw.colour import INK_SAVER, WHITE
from sitegen.draw.pens import BoundsPen, Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.shapes import arrowhead, bead_outline, ellipse, polygon
from sitegen.draw.step import letter_size
from sitegen.model.measures import Measures
from sitegen.model.numbers import plain
from sitegen.model.say import Say
from sitegen.model.thread import Bead, PlacedFinding, ThreadPath, WovenPart
from sitegen.trade.findings import finding_kind

EDGE = "#3c3c3c"
"""The edge of a bead: 11:1 on white."""
EDGE_MM = 0.1
LEAST_LETTER_MM = 1.0
"""Smaller letters (3 pt) could not be read in print; a bead that has no room for one stays empty."""
LETTER_SHARE = 0.34
"""How far a letter reaches from its middle, as a share of its font size."""
APART_MM = 4.0
"""From the beadwork to the line that tells its width or height."""
LABEL_MM = 2.6
"""Font size of sizes and counts."""
MARGIN_MM = 0.5
LINES_APART_MM = 4.5
"""White between the lines a string is laid in."""


def template(path: ThreadPath, title: str, measures: Measures, say: Say, sized: bool = True) -> Drawing:
    """One piece at its true size; `sized`, with lines beside it that tell its width and height."""
    recorder = Recorder()
    for finding in path.findings:
        if finding.ring_mm:
            _ring(recorder, finding)
    box = BoundsPen()
    for index, part in enumerate(path.parts):
        beads = [bead for bead in path.beads if bead.part == index]
        if beads and is_round(part):
            size = measures.parts[index].width_mm, measures.parts[index].height_mm
            _round_part(recorder, box, beads, part, size)
    flat = [bead for bead in path.beads if not is_round(path.parts[bead.part])]
    box.shapes([bead_outline(bead, 0.0) for bead in flat], Paint())
    layers = list(_layers(path, flat))
    for layer, lettered in zip(layers, _in_sight(layers), strict=True):
        _draw(recorder, layer, lettered)
    if sized:
        _sizes(recorder, box, (measures.width_mm, measures.height_mm), say)
    words = [say("drawing.template-flat", count=len(flat))] if flat else []
    words += [say("drawing.template-round", part=part.name) for part in path.parts if is_round(part)]
    width, height = plain(measures.width_mm, 1), plain(measures.height_mm, 1)
    words.append(say("drawing.template-size", width=width, height=height))
    return finish(recorder, say("drawing.template", title=title), " ".join(words), MARGIN_MM, INK_SAVER)


def is_round(part: WovenPart) -> bool:
    """Whether the part is a tube or a rope, which paper cannot show bead by bead."""
    return bool(part.thick_mm or part.zipped_mm)


def is_string(path: ThreadPath) -> bool:
    """Whether the whole piece is one string of beads."""
    return {path.parts[bead.part].lines for bead in path.beads} == {"string"}


def laid_straight(path: ThreadPath, title: str, width_mm: float, say: Say) -> Drawing:
    """A string in straight lines of at most `width_mm`, first bead at the upper left, counts at line ends."""
    strung = sorted(path.beads, key=lambda bead: bead.place)
    count_room = 6 * LABEL_MM * 0.6
    pitch = max(bead.width for bead in strung) + LINES_APART_MM
    recorder = Recorder()
    lines: list[list[Bead]] = [[]]
    along = 0.0
    for bead in strung:
        if along + bead.length > width_mm - count_room:
            lines.append([])
            along = 0.0
        lines[-1].append(replace(bead, x=along + bead.length / 2, y=(len(lines) - 1) * pitch, angle=90.0))
        along += bead.length
    for line in lines:
        _draw(recorder, line, line)
        last = line[-1]
        label = Text(last.x + last.length / 2 + 1.2, last.y, str(last.place), LABEL_MM, BLACK, "start")
        recorder.text(label)
    length = plain(sum(bead.length for bead in strung), 0)
    words = say("drawing.template-string", beads=len(strung), count=len(lines), length=length)
    return finish(recorder, say("drawing.template", title=title), words, MARGIN_MM, INK_SAVER)


def _layers(path: ThreadPath, beads: Sequence[Bead]) -> Iterator[list[Bead]]:
    """What lies behind comes first, so that a bead in front covers its edge."""
    layers: dict[tuple[int, int, int], list[Bead]] = {}
    for bead in beads:
        line = bead.row if path.parts[bead.part].lines in ("strands", "loops") else 0
        layers.setdefault((bead.part, line, bead.front), []).append(bead)
    for key in sorted(layers):
        yield layers[key]


def _in_sight(layers: Sequence[Sequence[Bead]]) -> list[list[Bead]]:
    """Of each layer the beads whose letters no bead in front of them touches."""
    size = max((max(bead.width, bead.length) for layer in layers for bead in layer), default=1.0)
    before: dict[tuple[int, int], list[Bead]] = {}
    seen: list[list[Bead]] = []
    for layer in reversed(layers):
        seen.append(
            [bead for bead in layer if not any(_hides(one, bead) for one in _near(before, bead, size))]
        )
        for bead in layer:
            before.setdefault((round(bead.x / size), round(bead.y / size)), []).append(bead)
    return seen[::-1]


def _near(before: dict[tuple[int, int], list[Bead]], bead: Bead, size: float) -> Iterator[Bead]:
    """The beads in a bead's own square and in the eight around it, squares being as large as a bead."""
    column, row = round(bead.x / size), round(bead.y / size)
    for cell in product((column - 1, column, column + 1), (row - 1, row, row + 1)):
        yield from before.get(cell, ())


def _hides(front: Bead, bead: Bead) -> bool:
    """Whether a bead in front, taken as an oval, lies over another one's letter."""
    turn, letter = math.radians(front.angle), LETTER_SHARE * letter_size(bead)
    dx, dy = bead.x - front.x, bead.y - front.y
    across = (dx * math.cos(turn) - dy * math.sin(turn)) / (front.width / 2 + letter)
    along = (dx * math.sin(turn) + dy * math.cos(turn)) / (front.length / 2 + letter)
    return across**2 + along**2 < 1.0


def _draw(pen: Pen, beads: Sequence[Bead], lettered: Sequence[Bead]) -> None:
    """Outlines of beads and, where there is room, the letters of those that show them."""
    pen.begin("beads", {})
    outlines = [bead_outline(bead, 0.0) for bead in beads]
    pen.shapes(outlines, Paint(fill=WHITE, stroke=EDGE, width=EDGE_MM))
    rows: dict[tuple[float, float], list[tuple[float, float, str]]] = {}
    for bead in sorted(lettered, key=lambda bead: (round(bead.y, 3), bead.x)):
        size = round(letter_size(bead), 2)
        if size >= LEAST_LETTER_MM:
            rows.setdefault((round(bead.y, 3), size), []).append((bead.x, bead.y, bead.letter))
    for (_, size), marks in rows.items():
        pen.letters(marks, size)
    pen.end()


def _ring(pen: Pen, finding: PlacedFinding) -> None:
    """The two edges of a ring that is worked around."""
    kind = finding_kind(finding.kind)
    outer = finding.ring_mm / 2
    inner = outer - (kind.wire_mm if kind else 0.0)
    pen.begin("finding", {"name": finding.kind})
    circles = [ellipse((finding.x, finding.y), radius, radius) for radius in (outer, inner)]
    pen.shapes(circles, Paint(stroke=EDGE, width=EDGE_MM))
    pen.end()


def _round_part(
    pen: Pen, box: BoundsPen, beads: Sequence[Bead], part: WovenPart, size: tuple[float, float]
) -> None:
    """The outline of a tube or rope where its beads are laid; a hollow one shows the rim of its near end."""
    laid = BoundsPen()
    laid.shapes([bead_outline(bead, 0.0) for bead in beads], Paint())
    x, y = (laid.left + laid.right) / 2, (laid.top + laid.bottom) / 2
    left, top, right, bottom = x - size[0] / 2, y - size[1] / 2, x + size[0] / 2, y + size[1] / 2
    outline = polygon([(left, top), (right, top), (right, bottom), (left, bottom)])
    box.shapes([outline], Paint())
    pen.begin("round", {"name": part.name})
    pen.shapes([outline], Paint(fill=WHITE, stroke=EDGE, width=EDGE_MM * 2))
    if part.zipped_mm:
        rim = (left + 0.2 * size[1], top, left + 0.2 * size[1], bottom, left, bottom)
        pen.shapes([Outline((left, top), (rim,), closed=False)], Paint(stroke=EDGE, width=EDGE_MM))
    elif part.around_mm:
        rim = (left, top + 0.2 * size[0], right, top + 0.2 * size[0], right, top)
        pen.shapes([Outline((left, top), (rim,), closed=False)], Paint(stroke=EDGE, width=EDGE_MM))
    pen.end()


def _sizes(pen: Pen, box: BoundsPen, size: tuple[float, float], say: Say) -> None:
    """A line as long as the piece is wide under it, one as long as it is high to its right."""
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    left, right, top, bottom = x - size[0] / 2, x + size[0] / 2, y - size[1] / 2, y + size[1] / 2
    below, aside = box.bottom + APART_MM, box.right + APART_MM
    pen.begin("sizes", {})
    lines = [
        Outline((left, below), ((right, below),), closed=False),
        Outline((aside, top), ((aside, bottom),), closed=False),
    ]
    stops = [Outline((end, below - 1.2), ((end, below + 1.2),), closed=False) for end in (left, right)]
    stops += [Outline((aside - 1.2, end), ((aside + 1.2, end),), closed=False) for end in (top, bottom)]
    pen.shapes(lines, Paint(stroke=BLACK, width=EDGE_MM))
    pen.shapes(stops, Paint(stroke=BLACK, width=EDGE_MM))
    tips = [arrowhead((left, below), (-1.0, 0.0), 1.3), arrowhead((right, below), (1.0, 0.0), 1.3)]
    tips += [arrowhead((aside, top), (0.0, -1.0), 1.3), arrowhead((aside, bottom), (0.0, 1.0), 1.3)]
    pen.shapes(tips, Paint(fill=BLACK))
    width, height = (say("unit.mm", value=plain(value, 1)) for value in size)
    pen.text(Text(x, below + 2.8, width, LABEL_MM, BLACK))
    pen.text(Text(aside + 1.8, y, height, LABEL_MM, BLACK, "start"))
    pen.end()
