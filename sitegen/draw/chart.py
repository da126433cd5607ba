"""One part of a ThreadPath -> its symbol chart: a letter in every bead, rows and strands numbered."""

from __future__ import annotations

import math

from sitegen.draw.colour import INK, OUTLINE, Dye, palette_of
from sitegen.draw.hung import LABEL_MM, draw_as_it_hangs, draw_strands, draw_string
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.round_chart import draw_rope, draw_rounds
from sitegen.draw.shapes import arrowhead, bead_outline
from sitegen.draw.step import draw_letters
from sitegen.model.say import Say
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, MoveKind, ThreadPath

HUNG = {
    "strands": draw_strands,
    "loops": draw_as_it_hangs,
    "edging": draw_as_it_hangs,
    "string": draw_string,
    "rounds": draw_rounds,
    "turns": draw_rope,
}
"""What the lines of a part are -> how its chart is drawn; rows are drawn here."""
CLOSE_MM = 3.6
"""How far a row's number moves out where another stands too close above it."""


def chart(path: ThreadPath, pattern: Pattern, part: int, say: Say) -> Drawing:
    """The chart of the part with this index. Letters make it work in black and white."""
    recorder = Recorder()
    beads = {index: bead for index, bead in enumerate(path.beads) if bead.part == part}
    woven = path.parts[part]
    if woven.lines in HUNG:
        HUNG[woven.lines](recorder, path, beads, _draw)
    else:
        _draw(recorder, list(beads.values()))
        _row_numbers(recorder, path, beads)
    counted = say(f"drawing.chart-{woven.lines}", count=woven.rows)
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
    draw_letters(pen, sorted(beads, key=lambda bead: (round(bead.y, 3), bead.x)))


def _level(bead: Bead, first: Bead) -> bool:
    """Whether a bead of another row stands as high as a row's number does."""
    turn = math.radians(bead.angle)
    half = (bead.length * abs(math.cos(turn)) + bead.width * abs(math.sin(turn))) / 2
    return abs(bead.y - first.y) < half + LABEL_MM / 5


def _row_numbers(pen: Pen, path: ThreadPath, beads: dict[int, Bead]) -> None:
    """Each row's number at the side where it is begun, with an arrow the way it is worked."""
    picked: dict[int, list[Bead]] = {}
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            picked.setdefault(beads[move.bead].row, []).append(beads[move.bead])
    arrows: list[Outline] = []
    taken: list[tuple[float, float]] = []
    pen.begin("numbers", {})
    for number, row in sorted(picked.items()):
        beside = [
            bead for near in (number - 1, number + 1) for bead in picked.get(near, ()) if _level(bead, row[0])
        ]
        left, right = (
            min(bead.x - bead.width / 2 for bead in (*row, *beside)),
            max(bead.x + bead.width / 2 for bead in (*row, *beside)),
        )
        rightward = row[0].x <= row[min(1, len(row) - 1)].x
        side = -1.0 if rightward else 1.0
        edge = left if rightward else right
        y = row[0].y
        close = any(one == side and abs(y - other) < LABEL_MM for one, other in taken)
        if close:  # rows of one string stand half a bead apart and begin at one side
            edge += side * CLOSE_MM
        else:
            taken.append((side, y))
        arrows.append(arrowhead((edge + side * 0.45, y), (-side, 0.0), 0.9))
        anchor = "end" if rightward else "start"
        pen.text(Text(edge + side * 1.7, y, str(number), LABEL_MM, INK, anchor, bold=True))
    pen.shapes(arrows, Paint(fill=INK))
    pen.end()
