"""One part of a ThreadPath -> its symbol chart: a letter in every bead, rows and strands numbered."""

from __future__ import annotations

from math import dist

from sitegen.draw.chart_marks import Row, column_numbers, heavier_lines, is_cloth, row_numbers
from sitegen.draw.colour import OUTLINE, Dye, palette_of
from sitegen.draw.hung import draw_as_it_hangs, draw_strands, draw_string
from sitegen.draw.overlap import ink_box, sampled
from sitegen.draw.pens import Drawing, Paint, Pen, Recorder, finish
from sitegen.draw.round_chart import draw_rope, draw_rounds
from sitegen.draw.shapes import bead_outline
from sitegen.draw.step import draw_letters, letter_size
from sitegen.model.say import Say
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, ThreadPath

HUNG = {
    "strands": draw_strands,
    "loops": draw_as_it_hangs,
    "edging": draw_as_it_hangs,
    "string": draw_string,
    "rounds": draw_rounds,
    "turns": draw_rope,
}
"""What the lines of a part are -> how its chart is drawn; rows are drawn here."""
EDGE_MM = 0.045
"""Half the width of a bead's outline."""


def chart(path: ThreadPath, pattern: Pattern, part: int, say: Say) -> Drawing:
    """The chart of the part with this index. Letters make it work in black and white."""
    recorder = Recorder()
    beads = {index: bead for index, bead in enumerate(path.beads) if bead.part == part}
    woven = path.parts[part]
    if woven.lines in HUNG:
        HUNG[woven.lines](recorder, path, beads, _draw)
    else:
        _draw(recorder, list(beads.values()))
        _mark_rows(recorder, path, beads)
    stitches = sum(step.part == part and bool(step.picks) for step in path.steps)
    count = stitches if woven.lines == "turns" else woven.rows
    counted = say(f"drawing.chart-{woven.lines}", count=count)
    words = say("drawing.chart-says", stitch=woven.stitch, lines=counted, beads=len(beads))
    return finish(recorder, say("drawing.chart", part=woven.name), words, 0.6, palette_of(pattern))


def _draw(pen: Pen, beads: list[Bead]) -> None:
    """Beads, what lies behind first, with those letters that no bead before them hides."""
    for front in sorted({bead.front for bead in beads}):
        before = [bead for bead in beads if bead.front > front]
        _draw_layer(pen, [bead for bead in beads if bead.front == front], before)


def _draw_layer(pen: Pen, beads: list[Bead], before: list[Bead]) -> None:
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        pen.begin("beads", {"letter": letter})
        pen.shapes(outlines, Paint(fill=Dye(letter), stroke=OUTLINE, width=2 * EDGE_MM))
        pen.end()
    sizes = sorted({letter_size(bead) for bead in beads})
    for size in sizes:  # a large bead's letter is not shrunk for a small one's sake
        alike = [bead for bead in beads if letter_size(bead) == size and not _hidden(bead, before)]
        draw_letters(pen, sorted(alike, key=lambda bead: (round(bead.y, 3), bead.x)))


def _hidden(bead: Bead, before: list[Bead]) -> bool:
    """Whether a bead before it lies over a bead's letter, if only over a corner of it."""
    box = ink_box(bead.x, bead.y, bead.letter, letter_size(bead))
    return any(
        dist((bead.x, bead.y), (other.x, other.y)) < min(other.width, other.length) / 2
        or any(box.touches(point, EDGE_MM) for point in sampled(bead_outline(other)))
        for other in before
        if dist((bead.x, bead.y), (other.x, other.y)) < other.width + other.length
    )


def _mark_rows(pen: Pen, path: ThreadPath, beads: dict[int, Bead]) -> None:
    """Numbers, counts and heavier lines of a part in rows."""
    picked: dict[int, list[Bead]] = {}
    for step in path.steps:
        for pick in step.picks:
            if pick in beads:
                picked.setdefault(beads[pick].row, []).append(beads[pick])
    rows = [
        Row(number, tuple(row), row[0].x <= row[min(1, len(row) - 1)].x)
        for number, row in sorted(picked.items())
    ]
    if is_cloth(rows):
        heavier_lines(pen, rows)
        column_numbers(pen, rows)
    row_numbers(pen, rows)
