"""A run of steps -> a small diagram: beads so far pale, new beads full, this step's thread with arrows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, THREAD, WHITE, ink_on, mix
from sitegen.draw.finding import draw_ring
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.route import Route, trace
from sitegen.draw.shapes import bead_outline, ellipse
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, Bridge, MoveKind, Step, ThreadPath

AROUND = 2.2
"""Beads shown around what the step touches: as many widths to the sides as lengths above and below."""
LIFT_MM = {"brick-first": -0.8, "brick-next": -0.8, "brick-increase": -0.8, "strand": 0.7}
"""How far new beads are drawn off the work they hang on (upward is negative), so that the thread shows."""
PALE = 0.72
"""How far the beads already there fade towards white."""


class StepArtist:
    """Draws the steps of one path, one diagram after the other."""

    def __init__(self, path: ThreadPath, pattern: Pattern) -> None:
        self._path = path
        self._pattern = pattern
        self._picked = [0] * len(path.beads)
        """For each bead, the move that picks it up."""
        for number, move in enumerate(path.moves):
            if move.kind is MoveKind.PICK:
                self._picked[move.bead] = number

    def draw(self, first: int, last: int, title: str) -> Drawing:
        """The diagram of steps number `first` to `last`, drawn as the maker holds the work.

        `title` is the drawing's name in words; its description lists what is new.
        """
        path = self._path
        steps = path.steps[first - 1 : last]
        turned = steps[0].turned
        moves = _shown_moves(path, steps)
        new = [bead for step in steps for bead in step.picks]
        touched = self._touched(steps)
        there = self._near(touched, steps[0].first_move)
        beads = {index: _seen(path.beads[index], turned) for index in touched | there}
        lift = LIFT_MM.get(steps[0].motion, 0.0)
        beads.update({index: replace(beads[index], y=beads[index].y + lift) for index in new})
        recorder = Recorder()
        _draw_beads(recorder, self._pattern, [beads[index] for index in sorted(there)], pale=True)
        _draw_beads(recorder, self._pattern, [beads[index] for index in new], pale=False)
        if steps[0].motion == "finding":
            for finding in path.findings:
                draw_ring(recorder, finding, turned)
        _draw_thread(recorder, trace(path, beads, moves, turned), beads)
        _draw_letters(recorder, self._pattern, [beads[index] for index in new])
        letters = " ".join(path.beads[index].letter for index in new)
        says = f"New beads: {letters}." if letters else "No new beads."
        if turned:
            says += " The work is turned upside down."
        return finish(recorder, title, f"{says} {len(there)} of the beads already there are shown.", 0.4)

    def _touched(self, steps: Sequence[Step]) -> set[int]:
        """The beads the steps go through or hang on, and the one the thread comes from."""
        touched: set[int] = set()
        for move in self._path.moves[max(0, steps[0].first_move - 1) : steps[-1].past_move]:
            if move.bead >= 0:
                touched.add(move.bead)
            if move.bridge is not None:
                touched |= {move.bridge.left, move.bridge.right}
        return touched

    def _near(self, touched: set[int], before: int) -> set[int]:
        """The beads already there before a move, near enough to what is touched to show where it is."""
        box = [self._path.beads[index] for index in touched]
        aside, above = AROUND * max(bead.width for bead in box), AROUND * max(bead.length for bead in box)
        left, right = min(bead.x for bead in box) - aside, max(bead.x for bead in box) + aside
        top, bottom = min(bead.y for bead in box) - above, max(bead.y for bead in box) + above
        return {
            index
            for index, bead in enumerate(self._path.beads)
            if self._picked[index] < before and left <= bead.x <= right and top <= bead.y <= bottom
        }


def _shown_moves(path: ThreadPath, steps: Sequence[Step]) -> range:
    """The moves whose thread is drawn: all of them, but only one round of what goes over itself again.

    Of several ladder stitches the last is drawn, of a finding's passes the first.
    """
    moves = range(steps[0].first_move, steps[-1].past_move)
    if steps[0].motion in ("ladder-next", "brick-extend"):
        return range(steps[-1].first_move, steps[-1].past_move)
    loops = [number for number in moves if path.moves[number].kind is MoveKind.LOOP]
    return range(moves.start, loops[1]) if len(loops) > 1 else moves


def _seen(bead: Bead, turned: bool) -> Bead:
    """A bead in the drawing's coordinates: half a turn if the work is held upside down."""
    return replace(bead, x=-bead.x, y=-bead.y, angle=(bead.angle + 180.0) % 360.0) if turned else bead


def _draw_beads(pen: Pen, pattern: Pattern, beads: list[Bead], *, pale: bool) -> None:
    """Beads as filled outlines, one path a colour."""
    edge = Paint(stroke=PALE_OUTLINE if pale else OUTLINE, width=0.06 if pale else 0.09)
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        fill = colour_of(pattern, letter)
        if pale:
            fill = mix(fill, WHITE, PALE)
        pen.begin("beads-there" if pale else "beads-new", {"letter": letter})
        pen.shapes(outlines, replace(edge, fill=fill))
        pen.end()


def colour_of(pattern: Pattern, letter: str) -> str:
    """The colour a letter stands for."""
    colour = pattern.colour(letter)
    return colour.hex if colour else WHITE


def _draw_letters(pen: Pen, pattern: Pattern, beads: list[Bead]) -> None:
    rows: dict[tuple[float, str], list[tuple[float, float, str]]] = {}
    for bead in beads:
        ink = ink_on(colour_of(pattern, bead.letter))
        rows.setdefault((round(bead.y, 3), ink), []).append((bead.x, bead.y, bead.letter))
    size = min((letter_size(bead) for bead in beads), default=1.0)
    pen.begin("letters", {})
    for (_, ink), marks in rows.items():
        pen.letters(marks, size, ink)
    pen.end()


def letter_size(bead: Bead) -> float:
    """The font size that fills a bead without touching its edge, mm."""
    return min(bead.length * 0.86, bead.width * 0.66)


def _draw_thread(pen: Pen, route: Route, beads: dict[int, Bead]) -> None:
    joined = _joined(route.line)
    pen.begin("thread", {})
    pen.shapes(joined, Paint(stroke=WHITE, width=0.36))
    pen.shapes(joined, Paint(stroke=THREAD, width=0.2))
    pen.shapes(route.arrows, Paint(fill=THREAD, stroke=WHITE, width=0.06))
    if route.start is not None:
        pen.shapes([ellipse(route.start, 0.3, 0.3)], Paint(fill=THREAD, stroke=WHITE, width=0.1))
    pen.end()
    if route.bridges:
        pen.begin("bridges", {})
        arcs = [_arc(beads, bridge) for bridge in dict.fromkeys(route.bridges)]
        pen.shapes(arcs, Paint(stroke=WHITE, width=0.4))
        pen.shapes(arcs, Paint(stroke=INK, width=0.2))
        pen.end()
    if route.from_tail and route.start is not None:
        pen.text(Text(route.start[0] + 0.7, route.start[1], "tail", 1.3, INK, "start"))


def _joined(line: list[Outline]) -> list[Outline]:
    """Curves that meet end to end as one contour, so that no joint shows."""
    joined: list[Outline] = []
    for piece in line:
        if joined and joined[-1].segments[-1][-2:] == piece.start:
            joined[-1] = Outline(joined[-1].start, joined[-1].segments + piece.segments, closed=False)
        else:
            joined.append(piece)
    return joined


def _arc(beads: dict[int, Bead], bridge: Bridge) -> Outline:
    """A bridge as drawn: from hole to hole, a little proud of the beads."""
    one, other = beads[bridge.left].mouth(bridge.end), beads[bridge.right].mouth(bridge.end)
    out = -0.3 if one[1] < beads[bridge.left].y else 0.3
    return Outline(one, ((one[0], one[1] + out, other[0], other[1] + out, other[0], other[1]),), closed=False)
