"""A run of steps -> a small diagram: beads so far pale, new beads full, this step's thread with arrows."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, THREAD, WHITE, Dye, palette_of
from sitegen.draw.finding import draw_rings
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.route import LYING, Route, trace
from sitegen.draw.shapes import bead_outline, ellipse
from sitegen.draw.unrolled import unroll
from sitegen.draw.warps import draw_warps
from sitegen.draw.zipped import ZIP, edges_together
from sitegen.model.say import Say
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, Bridge, End, MoveKind, Step, ThreadPath

AROUND = 2.2
"""Beads shown around what the step touches: as many widths to the sides as lengths above and below."""
LIFT_MM = {
    **dict.fromkeys(("strand", "loop", "swag"), 0.7),
    **dict.fromkeys(("brick-first", "brick-next", "brick-increase", "tube-pair", "tube-next"), -0.8),
    **dict.fromkeys(("herringbone-next", "herringbone-turn", "herringbone-before"), -0.8),
    **dict.fromkeys(("square-first", "square-next", "square-two", "square-three"), -1.0),
}
"""How far new beads are drawn off the work they hang on (upward is negative), so that the thread shows."""
LIFT_OUT = frozenset(
    f"{style}-{motion}" for style in ("hoop", "circle") for motion in ("pair", "next", "increase", "skip")
)
"""Motions whose new beads are drawn further out from the middle instead."""
LIFT_OUT_MM = 0.8
DRAWN_ONCE = ("rope-next",)
"""Motions of which only the last of several is drawn: their beads lie over each other."""
WARP_ENDS_MM = 2.4
"""How far warps are drawn beyond the beads of a step."""
USUAL_MM = 2.1
"""The bead the thread's drawn thickness is made for; it is finer on smaller ones, to leave letters free."""
PALE = 0.72
"""How far the beads already there fade towards white."""


class StepArtist:
    """Draws the steps of one path, one diagram after the other."""

    def __init__(self, path: ThreadPath, pattern: Pattern, say: Say) -> None:
        self._path = path
        self._palette = palette_of(pattern)
        self._say = say
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
        if steps[0].motion in DRAWN_ONCE:
            steps = steps[-1:]
        turned = steps[0].turned
        new = [bead for step in steps for bead in step.picks]
        touched = self._touched(steps)
        there = self._near(touched, steps[0].first_move)
        beads = {index: path.beads[index] for index in touched | there}
        stretches = _shown_moves(path, steps)
        if path.around(min(touched)):
            strip = unroll(path, steps, touched, there)
            path, beads = strip.path, strip.beads
            there &= beads.keys()
            stretches = [strip.local(moves) for moves in stretches]
        if steps[0].motion == ZIP:
            beads = edges_together(path, touched, there)
            there &= beads.keys()
        beads = {index: _seen(bead, turned) for index, bead in beads.items()}
        lift = LIFT_MM.get(steps[0].motion, 0.0)
        beads.update({index: replace(beads[index], y=beads[index].y + lift) for index in new})
        if steps[0].motion in LIFT_OUT:
            beads.update({index: _outward(beads[index]) for index in new})
        recorder = Recorder()
        draw_warps(recorder, path, beads, WARP_ENDS_MM, turned)
        cut = self._cut(there, steps[0].first_move)
        for layer in self._layers(there - cut):
            _draw_beads(recorder, [beads[index] for index in layer], _THERE)
        _draw_beads(recorder, [beads[index] for index in sorted(cut)], _CUT)
        hidden = [beads[index] for index in new if beads[index].front < 0]
        shown = [beads[index] for index in new if beads[index].front >= 0]
        _draw_beads(recorder, hidden, _NEW)
        draw_letters(recorder, hidden)
        _draw_beads(recorder, shown, _NEW)
        copies = [beads[index] for index in beads.keys() - touched - there]
        _draw_beads(recorder, copies, _THERE)
        draw_rings(recorder, path, beads.values(), steps[0].motion, turned)
        for moves in stretches:
            _draw_thread(recorder, trace(path, beads, moves, turned), beads)
        draw_letters(recorder, shown)
        letters = " ".join(path.beads[index].letter for index in new)
        says = [self._say("drawing.new", letters=letters) if letters else self._say("drawing.none-new")]
        if turned:
            says.append(self._say("drawing.turned"))
        says.append(self._say("drawing.there", count=len(there)))
        return finish(recorder, title, " ".join(says), 0.4, self._palette)

    def _touched(self, steps: Sequence[Step]) -> set[int]:
        """The beads the steps go through or hang on, and the one the thread comes from."""
        touched: set[int] = set()
        first = steps[0].first_move
        taken = self._path.moves[first].kind is MoveKind.TAKE  # another end of thread comes from elsewhere
        for move in self._path.moves[first if taken else max(0, first - 1) : steps[-1].past_move]:
            if move.hangs is not None:
                touched.add(move.hangs[0])
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
        if self._path.around(min(touched)):  # what is near on a tube is told when it is unrolled
            left, right = -math.inf, math.inf
        top, bottom = min(bead.y for bead in box) - above, max(bead.y for bead in box) + above
        return {
            index
            for index, bead in enumerate(self._path.beads)
            if self._picked[index] < before and left <= bead.x <= right and top <= bead.y <= bottom
        }

    def _cut(self, there: set[int], before: int) -> set[int]:
        """The beads at the rim of what is shown, where the work goes on beyond the drawing."""
        if not there:
            return set()
        all_beads = self._path.beads
        shown = [all_beads[index] for index in there]
        reach = 1.15 * max(max(bead.width, bead.length) for bead in shown)
        left, right = min(bead.x for bead in shown) - reach, max(bead.x for bead in shown) + reach
        top, bottom = min(bead.y for bead in shown) - reach, max(bead.y for bead in shown) + reach
        beyond = [
            bead
            for index, bead in enumerate(all_beads)
            if self._picked[index] < before
            and index not in there
            and left <= bead.x <= right
            and top <= bead.y <= bottom
        ]
        return {
            index
            for index in there
            if any(
                math.dist((all_beads[index].x, all_beads[index].y), (bead.x, bead.y)) < reach
                for bead in beyond
            )
        }

    def _layers(self, there: set[int]) -> list[list[int]]:
        """Beads that may lie over each other in layers: what is not a strand, then strand after strand.

        What lies behind comes first in each.
        """
        layers: dict[tuple[int, int, int], list[int]] = {}
        for index in sorted(there):
            bead = self._path.beads[index]
            hangs = self._path.parts[bead.part].lines == "strands"
            layers.setdefault((bead.part, bead.row if hangs else 0, bead.front), []).append(index)
        return [layers[key] for key in sorted(layers)]


def _shown_moves(path: ThreadPath, steps: Sequence[Step]) -> list[range]:
    """The stretches of moves whose thread is drawn: all, but only one round of what goes over itself again.

    Of several ladder or square stitches the first and the last are drawn, of a finding's passes the first.
    """
    moves = range(steps[0].first_move, steps[-1].past_move)
    if steps[0].motion in ("ladder-next", "brick-extend", "square-next", "square-two", "square-three"):
        shown = (steps[0], steps[-1]) if len(steps) > 2 else steps[-1:]
        return [range(step.first_move, step.past_move) for step in shown]
    if steps[0].motion.startswith("strung"):
        return [moves]
    looped = [(number, path.moves[number]) for number in moves]
    loops = [number for number, move in looped if move.kind is MoveKind.LOOP and move.at is None]
    return [range(moves.start, loops[1]) if len(loops) > 1 else moves]


def _outward(bead: Bead) -> Bead:
    """A bead of a round, drawn further from the middle: its TOP end is the outer one."""
    outer = bead.mouth(End.TOP)
    share = LIFT_OUT_MM / (bead.length / 2)
    return replace(bead, x=bead.x + (outer[0] - bead.x) * share, y=bead.y + (outer[1] - bead.y) * share)


def _seen(bead: Bead, turned: bool) -> Bead:
    """A bead in the drawing's coordinates: half a turn if the work is held upside down."""
    return replace(bead, x=-bead.x, y=-bead.y, angle=(bead.angle + 180.0) % 360.0) if turned else bead


@dataclass(frozen=True, slots=True)
class _Look:
    """How a bead of a step is painted."""

    kind: str
    """Of the group in the drawing."""
    fade: float
    """How far its colour goes towards white."""
    edge: Paint


_NEW = _Look("beads-new", 0.0, Paint(stroke=OUTLINE, width=0.09))
_THERE = _Look("beads-there", PALE, Paint(stroke=PALE_OUTLINE, width=0.06))
_CUT = _Look("beads-cut", 0.86, Paint())
"""Without an edge: a rim that fades out is not taken for the edge of the work."""


def _draw_beads(pen: Pen, beads: list[Bead], look: _Look) -> None:
    """Beads as filled outlines, one path a colour."""
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        pen.begin(look.kind, {"letter": letter})
        pen.shapes(outlines, replace(look.edge, fill=Dye(letter, WHITE, look.fade)))
        pen.end()


def draw_letters(pen: Pen, beads: list[Bead]) -> None:
    """The letter of each bead, one call a height; all of a size."""
    if not beads:
        return
    rows: dict[float, list[tuple[float, float, str]]] = {}
    for bead in beads:
        rows.setdefault(round(bead.y, 3), []).append((bead.x, bead.y, bead.letter))
    size = min(letter_size(bead) for bead in beads)
    pen.begin("letters", {})
    for marks in rows.values():
        pen.letters(marks, size)
    pen.end()


def letter_size(bead: Bead) -> float:
    """The font size that fills a bead without touching its edge, mm."""
    return min(bead.length * 0.86, bead.width * 0.66)


def _draw_thread(pen: Pen, route: Route, beads: dict[int, Bead]) -> None:
    joined = _joined(route.line)
    fine = min(1.0, min(bead.width for bead in beads.values()) / USUAL_MM)
    pen.begin("thread", {})
    pen.shapes(joined, Paint(stroke=WHITE, width=0.34 * fine))
    pen.shapes(joined, Paint(stroke=THREAD, width=0.19 * fine))
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
    if route.hitches:
        pen.begin("hitches", {})
        rings = [ellipse(hitch, 0.42, 0.42) for hitch in route.hitches]
        pen.shapes(rings, Paint(fill=WHITE, stroke=THREAD, width=0.22))
        pen.end()
    if route.from_tail and route.start is not None:
        x, y = route.start
        lies = abs(route.line[0].segments[0][-1] - y) < LYING
        label = Text(x, y - 1.2, "tail", 1.3, INK) if lies else Text(x + 0.7, y, "tail", 1.3, INK, "start")
        pen.text(label)


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
    one, other = beads[bridge.left].mouth(bridge.end), beads[bridge.right].mouth(bridge.right_end)
    left = beads[bridge.left]
    out = [(mouth - middle) * 0.6 / left.length for mouth, middle in zip(one, (left.x, left.y), strict=True)]
    bend = (one[0] + out[0], one[1] + out[1], other[0] + out[0], other[1] + out[1])
    return Outline(one, ((*bend, *other),), closed=False)
