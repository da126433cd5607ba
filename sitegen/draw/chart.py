"""One part of a ThreadPath -> its symbol chart: a letter in every bead, rows and strands numbered."""

from __future__ import annotations

from sitegen.draw.chart_marks import Row, column_numbers, heavier_lines, is_cloth, row_numbers
from sitegen.draw.colour import OUTLINE, Dye, palette_of
from sitegen.draw.hung import draw_as_it_hangs, draw_strands, draw_string
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
    """Beads with their letters; what lies behind first, so that no letter shows through a bead before it."""
    for front in sorted({bead.front for bead in beads}):
        _draw_layer(pen, [bead for bead in beads if bead.front == front])


def _draw_layer(pen: Pen, beads: list[Bead]) -> None:
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        pen.begin("beads", {"letter": letter})
        pen.shapes(outlines, Paint(fill=Dye(letter), stroke=OUTLINE, width=0.09))
        pen.end()
    sizes = sorted({letter_size(bead) for bead in beads})
    for size in sizes:  # a large bead's letter is not shrunk for a small one's sake
        alike = [bead for bead in beads if letter_size(bead) == size]
        draw_letters(pen, sorted(alike, key=lambda bead: (round(bead.y, 3), bead.x)))


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
