"""ThreadPath -> the finished piece in colour, at true proportions; a pair hangs side by side."""

from __future__ import annotations

from dataclasses import replace

from sitegen.draw.colour import INK, WHITE, Dye, palette_of
from sitegen.draw.finding import draw_finding
from sitegen.draw.pens import Drawing, Paint, Pen, Recorder, finish
from sitegen.draw.rolled import as_seen
from sitegen.draw.shapes import bead_outline, highlight, shade
from sitegen.draw.warps import draw_warps
from sitegen.model.numbers import plain
from sitegen.model.say import Say
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import Bead, Point, ThreadPath

MATTE = ("matte", "frosted", "semi-matte")
"""Finishes that throw no highlight."""


def finished(path: ThreadPath, pattern: Pattern, say: Say) -> Drawing:
    """The whole piece (or the pair) as it hangs."""
    recorder = Recorder()
    count, path = len(path.beads), as_seen(path)
    left = min(bead.x - bead.width / 2 for bead in path.beads)
    right = max(bead.x + bead.width / 2 for bead in path.beads)
    gap = max(8.0, (right - left) * 0.35)
    for piece in range(pattern.makes.pieces):
        shift = (piece * (right - left + gap), 0.0)
        mirrored = pattern.makes is Makes.MIRRORED_PAIR and piece == 1
        recorder.begin("piece", {"number": str(piece + 1)})
        for finding in path.findings:
            placed = replace(finding, x=left + right - finding.x) if mirrored else finding
            draw_finding(recorder, placed, shift, piece == 1)
        beads = dict(enumerate(path.beads))
        moved = {index: _moved(bead, shift, None) for index, bead in beads.items()} if path.warps else beads
        draw_warps(recorder, path, moved, 0.0, shift=shift[0])
        for layer in _layers(path):
            _draw_layer(
                recorder,
                pattern,
                [_moved(bead, shift, (left + right) if mirrored else None) for bead in layer],
            )
        recorder.end()
    names = ", ".join(dict.fromkeys(colour.name for colour in pattern.colours))
    key = "drawing.finished-piece" if pattern.makes.pieces == 1 else "drawing.finished-pair"
    words = say(key, beads=count, colours=names, width=plain(right - left, 0))
    return finish(recorder, say("drawing.finished", title=pattern.title), words, 1.5, palette_of(pattern))


def _layers(path: ThreadPath) -> list[list[Bead]]:
    """What lies behind comes first: charts, then strand after strand."""
    layers: dict[tuple[int, int, int], list[Bead]] = {}
    for bead in path.beads:
        strand = bead.row if path.parts[bead.part].lines in ("strands", "loops", "turns") else 0
        layers.setdefault((bead.part, strand, bead.front), []).append(bead)
    return [layers[key] for key in sorted(layers)]


def _moved(bead: Bead, shift: Point, mirror: float | None) -> Bead:
    if mirror is None:
        return replace(bead, x=bead.x + shift[0], y=bead.y + shift[1])
    return replace(bead, x=mirror - bead.x + shift[0], y=bead.y + shift[1], angle=-bead.angle)


def _draw_layer(pen: Pen, pattern: Pattern, beads: list[Bead]) -> None:
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead, 0.0) for bead in beads if bead.letter == letter]
        edge = Dye(letter, INK, 0.45)
        pen.begin("beads", {"letter": letter})
        pen.shapes(outlines, Paint(fill=Dye(letter), stroke=edge, width=0.07))
        pen.end()
    pen.shapes([shade(bead) for bead in beads], Paint(fill="#000000", opacity=0.16))
    shiny = [bead for bead in beads if not _is_matte(pattern, bead.letter)]
    pen.shapes([highlight(bead) for bead in shiny], Paint(fill=WHITE, opacity=0.5))


def _is_matte(pattern: Pattern, letter: str) -> bool:
    colour = pattern.colour(letter)
    return colour is not None and colour.finish in MATTE
