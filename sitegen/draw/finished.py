"""ThreadPath -> the finished piece in colour, at true proportions, as it hangs; a pair hangs side by side."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from operator import itemgetter

from sitegen.draw.colour import palette_of
from sitegen.draw.finding import draw_finding, wires_of
from sitegen.draw.hang import as_it_hangs
from sitegen.draw.light import draw_beads, finishes_of
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, finish
from sitegen.draw.rolled import as_seen
from sitegen.draw.shapes import moved
from sitegen.draw.stacked import Run, stacked
from sitegen.draw.warps import draw_warps
from sitegen.model.numbers import plain
from sitegen.model.say import Say
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import Bead, End, MoveKind, Point, ThreadPath

SHADOW = (1.5, 1.2, 0.95, 0.7)
"""The shadow on the ground: lines through the beads, so many beads wide, one upon the other."""
SHADE, VEIL = "#4a3a28", 0.07
"""Its colour, and how much each of its layers hides of the ground."""
SOFT_MM = 1.8
"""Of larger beads the shadow is no wider and falls no further than of beads of this size."""
DOT_MM = 0.02
"""The line through a bead that stands alone: one without length would not be drawn."""
FALL = (0.34, 0.5)
"""How far the shadow falls to the right and down, in bead widths."""
HUNG = ("strands", "loops", "turns")
"""Lines of which one may hide the next."""
THREAD = "#c4bcb0"
THREAD_MM = 0.13
"""The thread where it is seen between beads. A judgement; no source."""
LEANS = 2.0
"""Beads lean by steps of so many degrees, too fine for an eye: more of them read equal, for lighter pages."""
SHOWN_MM = 0.35
"""A shorter piece of thread between two beads is not seen."""


def finished(path: ThreadPath, pattern: Pattern, say: Say) -> Drawing:
    """The whole piece (or the pair) as it hangs; in words, its width is that of the beadwork lying flat."""
    recorder = Recorder()
    count, straight = len(path.beads), as_seen(path)
    left = min(bead.x - bead.width / 2 for bead in straight.beads)
    right = max(bead.x + bead.width / 2 for bead in straight.beads)
    gap = max(8.0, (right - left) * 0.35)
    pieces = []
    for number in range(pattern.makes.pieces):
        piece = _bared(as_it_hangs(straight, number), path)
        mirrored = pattern.makes is Makes.MIRRORED_PAIR and number == 1
        pieces.append(_placed(piece, number * (right - left + gap), left + right if mirrored else None))
    _draw_shadows(recorder, pieces)
    for number, piece in enumerate(pieces):
        recorder.begin("piece", {"number": str(number + 1)})
        _draw_piece(recorder, piece, pattern, turned=number == 1)
        recorder.end()
    names = ", ".join(dict.fromkeys(colour.name for colour in pattern.colours))
    key = "drawing.finished-piece" if pattern.makes.pieces == 1 else "drawing.finished-pair"
    words = say(key, beads=count, colours=names, width=plain(right - left, 0))
    return finish(recorder, say("drawing.finished", title=pattern.title), words, 1.5, palette_of(pattern))


def _bared(seen: ThreadPath, path: ThreadPath) -> ThreadPath:
    """Without the thread where beads were left out or put in another order: it would run astray."""
    return seen if len(seen.beads) == len(path.beads) and not _is_rope(path) else replace(seen, moves=())


def _is_rope(path: ThreadPath) -> bool:
    return any(part.lines == "turns" for part in path.parts)


def _placed(path: ThreadPath, shift: float, mirror: float | None) -> ThreadPath:
    """The path moved aside, and seen in a mirror if it is given the sum of its edges."""

    def x(value: float) -> float:
        return (value if mirror is None else mirror - value) + shift

    sign = LEANS if mirror is None else -LEANS
    return replace(
        path,
        beads=tuple(
            replace(bead, x=x(bead.x), angle=round(bead.angle / LEANS) * sign) for bead in path.beads
        ),
        findings=tuple(replace(one, x=x(one.x)) for one in path.findings),
        warps=tuple(replace(warp, x=x(warp.x)) for warp in path.warps),
    )


def _draw_piece(pen: Pen, path: ThreadPath, pattern: Pattern, turned: bool) -> None:
    threads = list(_threads(path))
    if threads:
        pen.begin("thread", {})
        pen.shapes(threads, Paint(stroke=THREAD, width=THREAD_MM))
        pen.end()
    for finding in path.findings:
        draw_finding(pen, finding, (0.0, 0.0), turned)
    draw_warps(pen, path, dict(enumerate(path.beads)) if path.warps else {}, 0.0)
    finishes = finishes_of(pattern)
    for layer in _layers(path):
        draw_beads(pen, layer, finishes)


def _layers(path: ThreadPath) -> list[list[Bead]]:
    """What lies behind comes first: charts, then strand after strand."""
    runs = [(_run(path, bead), bead) for bead in path.beads]
    return stacked(sorted(runs, key=itemgetter(0)))


def _run(path: ThreadPath, bead: Bead) -> Run:
    hung = path.parts[bead.part].lines in HUNG
    return bead.part, bead.row if hung else 0, bead.front


def _draw_shadows(pen: Pen, pieces: Sequence[ThreadPath]) -> None:
    """The soft shadow under each piece: nothing but lines, so that it costs little and prints everywhere."""
    beads = [bead for piece in pieces for bead in piece.beads]
    wide = sorted(min(bead.width, bead.length) for bead in beads)[len(beads) // 2]
    soft = min(wide, SOFT_MM)
    fall = (FALL[0] * soft, FALL[1] * soft)
    lines = [
        moved(line, fall)
        for piece in pieces
        for beads_in_line in (piece.beads, *_edges(piece))
        for line in _through(piece, beads_in_line)
    ]
    wires = [
        moved(wire, fall)
        for number, piece in enumerate(pieces)
        for finding in piece.findings
        for wire in wires_of(finding, (0.0, 0.0), number == 1)
    ]
    pen.begin("shadow", {})
    for share in SHADOW:
        pen.shapes(wires, Paint(stroke=SHADE, width=0.8 + (share - 1) * soft, veil=VEIL))
        pen.shapes(lines, Paint(stroke=SHADE, width=wide + (share - 1) * soft, veil=VEIL))
    pen.end()


def _edges(path: ThreadPath) -> Iterable[list[Bead]]:
    """The outermost beads of each row: a line through them gives the shadow an even edge."""
    rows: dict[tuple[int, int], list[Bead]] = {}
    for bead in path.beads:
        if path.parts[bead.part].lines not in HUNG:
            rows.setdefault((bead.part, bead.row), []).append(bead)
    ordered = sorted(rows.values(), key=lambda row: (row[0].part, row[0].y))
    for side in (min, max):
        yield [side(row, key=lambda bead: bead.x) for row in ordered]


def _through(path: ThreadPath, beads: Iterable[Bead]) -> list[Outline]:
    """A line through each run of beads that follow each other closely; there are no gaps through a tube."""
    runs: list[list[Point]] = []
    last: Bead | None = None
    for bead in beads:
        part = path.parts[bead.part]
        solid = part.thick_mm or part.zipped_mm
        long = (2.4 if solid else 1.4) * max(bead.width, bead.length)
        if last is None or math.dist((bead.x, bead.y), (last.x, last.y)) > long:
            runs.append([(bead.x, bead.y)])
        stretched = bead.length > 1.5 * bead.width
        runs[-1] += [bead.mouth(End.TOP), bead.mouth(End.BOTTOM)] if stretched else [(bead.x, bead.y)]
        last = bead
    return [Outline(run[0], (*run[1:], (run[-1][0] + DOT_MM, run[-1][1])), closed=False) for run in runs]


def _threads(path: ThreadPath) -> Iterable[Outline]:
    """Each piece of thread that is seen between two beads, once."""
    drawn: set[tuple[int, ...]] = set()
    here: Point | None = None
    for move in path.moves:
        if move.bridge is not None and move.kind is MoveKind.UNDER:
            spot = path.bridge_middle(move.bridge)
        elif move.bead >= 0 and move.kind in (MoveKind.PICK, MoveKind.THROUGH):
            spot = path.beads[move.bead].mouth(move.enter)
        else:
            here = None
            continue
        if here is not None:
            line = tuple(round(value * 10) for value in (*here, *spot))
            if math.dist(here, spot) > SHOWN_MM and line not in drawn:
                drawn.add(line)
                drawn.add((*line[2:], *line[:2]))
                yield Outline(here, (spot,), closed=False)
        here = spot if move.bridge is not None else path.beads[move.bead].mouth(move.enter.other)
