"""A run of steps -> a small diagram: beads so far pale, new beads full, this step's thread with arrows.

Groups by kind: `beads-there`, `beads-cut`, `beads-new` (one a bead, in order), `thread` with `thread-ground`,
`thread-line` (one path in order of passing), `arrows`, `ends`; `bridges`, `hitches`, `letters`, `order`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, THREAD, WHITE, Dye, palette_of
from sitegen.draw.finding import draw_rings
from sitegen.draw.nearby import nearby
from sitegen.draw.order import draw_order
from sitegen.draw.overlap import Box, Marks, ink_box, label_box
from sitegen.draw.pens import Drawing, Outline, Paint, Pen, Recorder, Text, finish
from sitegen.draw.route import Route, trace
from sitegen.draw.shapes import bead_outline, ellipse
from sitegen.draw.unrolled import unroll
from sitegen.draw.warps import draw_warps
from sitegen.draw.zipped import ZIP, edges_together
from sitegen.model.say import Say
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, Bridge, End, MoveKind, Point, Step, ThreadPath, stop_bead

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
EACH = 40
"""So many new beads get a group each; of more, those of a colour share one."""
TAIL_SIZE_MM = 1.0
"""Font size of the word at a loose end."""
TAIL_PLACES = (
    (0.55, 0.0, "start"),
    (0.0, -0.95, "middle"),
    (0.0, 0.95, "middle"),
    (-0.55, 0.0, "end"),
)
"""Where it stands beside that end, best first."""
HITCH_MM, STOP_MM = 0.42, 0.62
"""Radii of the rings that stand for a half hitch and for a stop bead."""
SMALLER = (1.0, 0.92, 0.85, 0.78, 0.7, 0.62)
"""Letters are set in the largest of these shares of their size that leaves them free of the thread."""


class StepArtist:
    """Draws the steps of one path, one diagram after the other."""

    def __init__(self, path: ThreadPath, pattern: Pattern, say: Say) -> None:
        self._path = path
        self._palette = palette_of(pattern)
        self._say = say
        self._nearby = nearby(path)

    def draw(self, first: int, last: int, title: str) -> Drawing:
        """The diagram of steps number `first` to `last`, drawn as the maker holds the work.

        `title` is the drawing's name in words; its description lists what is new.
        """
        steps = self._path.steps[first - 1 : last]
        if steps[0].motion in DRAWN_ONCE:
            steps = steps[-1:]
        scene = self._scene(steps)
        recorder = Recorder()
        self._draw_there(recorder, scene)
        new = [scene.beads[index] for index in scene.new]
        hidden = [bead for bead in new if bead.front < 0]
        shown = [bead for bead in new if bead.front >= 0]
        fine = min(1.0, min(bead.width for bead in scene.beads.values()) / USUAL_MM)
        routes = _routes(scene)
        _draw_new(recorder, hidden, 1)
        thread = Recorder()
        _draw_thread(thread, routes, scene.beads, fine)
        draw_letters(recorder, *_lettered(thread, [bead for bead in hidden if not _covered(bead, shown)]))
        _draw_new(recorder, shown, 1 + len(hidden))
        _draw_beads(recorder, [scene.beads[index] for index in scene.copies], _THERE)
        draw_rings(recorder, scene.path, scene.beads.values(), steps[0].motion, scene.turned)
        _draw_thread(recorder, routes, scene.beads, fine)
        if routes[0].from_tail and routes[0].start is not None:
            if stop_bead(steps[0]):
                _draw_stop_bead(recorder, routes[0].line[0], fine)
            _draw_tail(recorder, routes[0].start, self._say("drawing.tail"))
        draw_letters(recorder, *_lettered(recorder, shown))
        draw_order(recorder, [mark for route in routes for mark in route.marks], fine)
        return finish(recorder, title, self._says(scene), 0.4, self._palette)

    def _scene(self, steps: Sequence[Step]) -> _Scene:
        """Which beads the steps show, and where: unrolled, turned, new ones lifted off the work."""
        path, turned = self._path, steps[0].turned
        new = tuple(bead for step in steps for bead in step.picks)
        touched = self._nearby.touched(steps)
        there = self._nearby.there(touched, steps[0])
        beads = {index: path.beads[index] for index in touched | there}
        stretches = _shown_moves(path, steps)
        before = tuple(_entered(path, range(steps[0].first_move, moves.start)) for moves in stretches)
        if path.around(min(touched)):
            strip = unroll(path, steps, touched, there)
            path, beads = strip.path, strip.beads
            stretches = [strip.local(moves) for moves in stretches]
        if steps[0].motion == ZIP:
            beads = edges_together(path, touched, there)
        there &= beads.keys()
        beads = {index: _seen(bead, turned) for index, bead in beads.items()}
        lift = LIFT_MM.get(steps[0].motion, 0.0)
        beads.update({index: replace(beads[index], y=beads[index].y + lift) for index in new})
        if steps[0].motion in LIFT_OUT:
            beads.update({index: _outward(beads[index]) for index in new})
        return _Scene(path, beads, new, frozenset(touched), frozenset(there), steps[0], stretches, before)

    def _draw_there(self, pen: Pen, scene: _Scene) -> None:
        """The work so far: pale, and paler still where it goes on beyond the drawing."""
        draw_warps(pen, scene.path, scene.beads, WARP_ENDS_MM, scene.turned)
        rim = self._nearby.rim(scene.there, scene.step.first_move) - scene.touched
        for layer in self._nearby.layers(scene.there - rim):
            _draw_beads(pen, [scene.beads[index] for index in layer], _THERE)
        _draw_beads(pen, [scene.beads[index] for index in sorted(rim)], _CUT)

    def _says(self, scene: _Scene) -> str:
        """The drawing in words."""
        letters = " ".join(self._path.beads[index].letter for index in scene.new)
        says = [self._say("drawing.new", letters=letters) if letters else self._say("drawing.none-new")]
        if scene.turned:
            says.append(self._say("drawing.turned"))
        if scene.there:
            says.append(self._say("drawing.there", count=len(scene.there)))
        return " ".join(says)


@dataclass(frozen=True, slots=True)
class _Scene:
    """What a diagram shows, in its own coordinates."""

    path: ThreadPath
    """Its moves are those of `stretches`; on a tube, unrolled."""
    beads: dict[int, Bead]
    new: tuple[int, ...]
    """Beads picked up, in order."""
    touched: frozenset[int]
    there: frozenset[int]
    """Beads already there."""
    step: Step
    """The first of the steps."""
    stretches: list[range]
    """Moves whose thread is drawn."""
    before: tuple[int, ...]
    """For each stretch, how many places the needle went in at before it."""

    @property
    def turned(self) -> bool:
        """The work is held upside down."""
        return self.step.turned

    @property
    def copies(self) -> list[int]:
        """Beads of a tube that show a second time at the strip's other end."""
        return sorted(self.beads.keys() - self.touched - self.there)


def _routes(scene: _Scene) -> list[Route]:
    """The thread of each stretch."""
    new = [scene.beads[index] for index in scene.new if scene.beads[index].front >= 0]
    letters = _boxes(new, SMALLER[3])
    return [
        trace(scene.path, scene.beads, moves, turned=scene.turned, before=before, letters=letters)
        for moves, before in zip(scene.stretches, scene.before, strict=True)
    ]


def _boxes(beads: Sequence[Bead], share: float) -> list[Box]:
    """Where the letters of beads lie, set in a share of the size that fills the beads."""
    size = share * min((letter_size(bead) for bead in beads), default=1.0)
    return [ink_box(bead.x, bead.y, bead.letter, size) for bead in beads]


def _entered(path: ThreadPath, moves: range) -> int:
    """How many places the needle goes in at: all that these moves do but to turn and to take up thread."""
    turns = (MoveKind.WARP, MoveKind.TAKE)
    return sum(path.moves[number].kind not in turns for number in moves)


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


_POINT = Paint(fill=THREAD, stroke=WHITE, width=0.06)
"""Arrowheads and dots."""
_NEW = _Look("beads-new", 0.0, Paint(stroke=OUTLINE, width=0.09))
_THERE = _Look("beads-there", PALE, Paint(stroke=PALE_OUTLINE, width=0.06))
_CUT = _Look("beads-cut", 0.86, Paint())
"""Without an edge: a rim that fades out is not taken for the edge of the work."""


def _draw_beads(pen: Pen, beads: Sequence[Bead], look: _Look) -> None:
    """Beads as filled outlines, one path a colour."""
    for letter in sorted({bead.letter for bead in beads}):
        outlines = [bead_outline(bead) for bead in beads if bead.letter == letter]
        pen.begin(look.kind, {"letter": letter})
        pen.shapes(outlines, replace(look.edge, fill=Dye(letter, WHITE, look.fade)))
        pen.end()


def _draw_new(pen: Pen, beads: Sequence[Bead], first: int) -> None:
    """New beads, a group each in order of picking up, from number `first`."""
    if len(beads) > EACH:
        _draw_beads(pen, beads, _NEW)
        return
    for place, bead in enumerate(beads, first):
        pen.begin(_NEW.kind, {"letter": bead.letter, "place": str(place)})
        pen.shapes([bead_outline(bead)], replace(_NEW.edge, fill=Dye(bead.letter)))
        pen.end()


def draw_letters(pen: Pen, beads: Sequence[Bead], share: float = 1.0) -> None:
    """The letter of each bead, one call a height; all of a size, `share` of the one that fills the beads."""
    if not beads:
        return
    pen.begin("letters", {})
    for marks in _letter_rows(beads):
        pen.letters(marks, share * min(letter_size(bead) for bead in beads))
    pen.end()


def _letter_rows(beads: Sequence[Bead]) -> list[list[tuple[float, float, str]]]:
    rows: dict[float, list[tuple[float, float, str]]] = {}
    for bead in beads:
        rows.setdefault(round(bead.y, 3), []).append((bead.x, bead.y, bead.letter))
    return list(rows.values())


def letter_size(bead: Bead) -> float:
    """The font size that fills a bead without touching its edge, mm."""
    return min(bead.length * 0.86, bead.width * 0.66)


def _lettered(recorder: Recorder, beads: Sequence[Bead]) -> tuple[list[Bead], float]:
    """The beads whose letters can be read, and the share of their size to set them in.

    As large as all are free of the thread drawn so far; where there is no such size, some get no letter.
    """
    drawn = _marks(recorder)
    free: list[Bead] = []
    share = 1.0
    for share in SMALLER:
        boxes = _boxes(beads, share)
        free = [bead for bead, box in zip(beads, boxes, strict=True) if drawn.free(box)]
        if len(free) == len(beads):
            break
    return free, share


def _covered(bead: Bead, others: Sequence[Bead]) -> bool:
    """Whether a bead in front hides where the letter of one behind would stand."""
    reach = min(bead.width, bead.length) * 0.75
    return any(math.dist((bead.x, bead.y), (other.x, other.y)) < reach for other in others)


def _draw_thread(pen: Pen, routes: Sequence[Route], beads: dict[int, Bead], fine: float) -> None:
    """The thread on a white ground, the line itself one path in order of passing."""
    ground = _joined([piece for route in routes for piece in route.line])
    strokes = _joined([piece for route in routes for piece in route.strokes])
    pen.begin("thread", {})
    pen.begin("thread-ground", {})
    pen.shapes(ground, Paint(stroke=WHITE, width=0.34 * fine))
    pen.end()
    pen.begin("thread-line", {})
    pen.shapes(strokes, Paint(stroke=THREAD, width=0.19 * fine))
    pen.end()
    pen.begin("arrows", {})
    pen.shapes([arrow for route in routes for arrow in route.arrows], _POINT)
    pen.end()
    pen.begin("ends", {})
    if routes[0].start is not None:
        pen.shapes([ellipse(routes[0].start, 0.3, 0.3)], replace(_POINT, width=0.1))
    pen.shapes([route.tip for route in routes if route.tip is not None], _POINT)
    pen.end()
    pen.end()
    _draw_held(pen, routes, beads)


def _draw_held(pen: Pen, routes: Sequence[Route], beads: dict[int, Bead]) -> None:
    """The bridges the needle goes under, and the half hitches."""
    arcs = [_arc(beads, bridge) for route in routes for bridge in dict.fromkeys(route.bridges)]
    if arcs:
        pen.begin("bridges", {})
        pen.shapes(arcs, Paint(stroke=WHITE, width=0.4))
        pen.shapes(arcs, Paint(stroke=INK, width=0.2))
        pen.end()
    rings = [ellipse(hitch, HITCH_MM, HITCH_MM) for route in routes for hitch in route.hitches]
    if rings:
        pen.begin("hitches", {})
        pen.shapes(rings, Paint(fill=WHITE, stroke=THREAD, width=0.22))
        pen.end()


def _draw_stop_bead(recorder: Recorder, tail: Outline, fine: float) -> None:
    """A hollow ring in the middle of the tail, with the thread through it."""
    recorder.begin("stop-bead", {})
    (x, y), (u, v) = tail.start, tail.segments[-1][-2:]
    recorder.shapes(
        [ellipse(((x + u) / 2, (y + v) / 2), STOP_MM, STOP_MM)], Paint(fill=WHITE, stroke=INK, width=0.16)
    )
    recorder.shapes([tail], Paint(stroke=THREAD, width=0.19 * fine))
    recorder.end()


def _draw_tail(recorder: Recorder, start: Point, word: str) -> None:
    """The word at the loose end that a thread begins with, on the first free side of it."""
    drawn, (x, y) = _marks(recorder), start
    labels = [
        Text(x + aside, y + down, word, TAIL_SIZE_MM, INK, anchor) for aside, down, anchor in TAIL_PLACES
    ]
    free = (label for label in labels if drawn.free(label_box(label)))
    recorder.text(next(free, labels[0]))


def _marks(recorder: Recorder) -> Marks:
    """What is drawn so far."""
    drawn = Marks()
    for name, values in recorder.calls:
        getattr(drawn, name)(*values)
    return drawn


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
