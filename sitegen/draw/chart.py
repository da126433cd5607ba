"""One part of a ThreadPath -> its symbol chart: a letter in every bead, rows and strands numbered."""

from __future__ import annotations

from dataclasses import replace

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, ink_on, mix
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.shapes import arrowhead, bead_outline
from sitegen.draw.step import PALE, colour_of, letter_size
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, MoveKind, ThreadPath

LABEL_MM = 1.5
"""Font size of row and strand numbers."""
STRAND_PITCH = 2.15
"""Distance of strands in the chart, in bead widths: wide enough that no two tips touch."""


def chart(path: ThreadPath, pattern: Pattern, part: int) -> Drawing:
    """The chart of the part with this index. Letters make it work in black and white."""
    recorder = Recorder()
    beads = {index: bead for index, bead in enumerate(path.beads) if bead.part == part}
    woven = path.parts[part]
    if woven.stitch == "fringe":
        _strands(recorder, path, pattern, beads)
        counted = f"{woven.rows} strands"
    else:
        _draw(recorder, pattern, list(beads.values()))
        _row_numbers(recorder, path, beads)
        counted = f"{woven.rows} rows" if woven.rows > 1 else "one row"
    words = (
        f"{woven.stitch.capitalize()} chart of {counted}, {len(beads)} beads; every bead carries its letter."
    )
    return finish(recorder, f"Chart: {woven.name}", words, 0.6)


def _draw(pen: Pen, pattern: Pattern, beads: list[Bead]) -> None:
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        pen.begin("beads", {"letter": letter})
        pen.shapes(outlines, Paint(fill=colour_of(pattern, letter), stroke=OUTLINE, width=0.09))
        pen.end()
    rows: dict[tuple[float, str], list[tuple[float, float, str]]] = {}
    for bead in sorted(beads, key=lambda bead: (round(bead.y, 3), bead.x)):
        ink = ink_on(colour_of(pattern, bead.letter))
        rows.setdefault((round(bead.y, 3), ink), []).append((bead.x, bead.y, bead.letter))
    size = min(letter_size(bead) for bead in beads)
    pen.begin("letters", {})
    for (_, ink), marks in rows.items():
        pen.letters(marks, size, ink)
    pen.end()


def _row_numbers(pen: Pen, path: ThreadPath, beads: dict[int, Bead]) -> None:
    """Each row's number at the side where it is begun, with an arrow the way it is worked."""
    picked: dict[int, list[Bead]] = {}
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            picked.setdefault(beads[move.bead].row, []).append(beads[move.bead])
    arrows: list[Outline] = []
    pen.begin("numbers", {})
    for number, row in sorted(picked.items()):
        left, right = (
            min(bead.x - bead.width / 2 for bead in row),
            max(bead.x + bead.width / 2 for bead in row),
        )
        rightward = row[0].x <= row[-1].x
        side = -1.0 if rightward else 1.0
        edge = left if rightward else right
        y = row[0].y
        arrows.append(arrowhead((edge + side * 0.45, y), (-side, 0.0), 0.9))
        anchor = "end" if rightward else "start"
        pen.text(Text(edge + side * 1.7, y, str(number), LABEL_MM, INK, anchor, bold=True))
    pen.shapes(arrows, Paint(fill=INK))
    pen.end()


def _strands(pen: Pen, path: ThreadPath, pattern: Pattern, beads: dict[int, Bead]) -> None:
    """Strands side by side under the beads they hang from, drawn apart so that none hides another."""
    strands: dict[int, list[Bead]] = {}
    for bead in beads.values():
        strands.setdefault(bead.row, []).append(bead)
    order = sorted(strands, key=lambda row: strands[row][0].x)
    pitch = STRAND_PITCH * max(bead.width for bead in beads.values())
    hangers = _hangers(path, beads)
    spread: list[Bead] = []
    for column, row in enumerate(order):
        hanger = hangers[row]
        shift = column * pitch - hanger.x
        spread += [replace(bead, x=bead.x + shift) for bead in strands[row]]
        _hanger(pen, pattern, replace(hanger, x=hanger.x + shift))
        out = -1.0 if hanger.y < strands[row][0].y else 1.0
        y = hanger.y + out * (hanger.length / 2 + 1.1)
        pen.text(Text(column * pitch, y, str(row), LABEL_MM, INK, bold=True))
    _draw(pen, pattern, spread)


def _hangers(path: ThreadPath, beads: dict[int, Bead]) -> dict[int, Bead]:
    """For each strand, the bead it hangs from: the one the thread came out of before its first bead."""
    found: dict[int, Bead] = {}
    last = -1
    for move in path.moves:
        if move.kind is MoveKind.PICK and move.bead in beads:
            found.setdefault(beads[move.bead].row, path.beads[last])
        last = move.bead
    return found


def _hanger(pen: Pen, pattern: Pattern, bead: Bead) -> None:
    fill = mix(colour_of(pattern, bead.letter), "#ffffff", PALE)
    pen.begin("hanger", {})
    pen.shapes([bead_outline(bead)], Paint(fill=fill, stroke=PALE_OUTLINE, width=0.06))
    pen.end()
