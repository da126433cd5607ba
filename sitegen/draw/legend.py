"""The signs of the step diagrams -> one small drawing each, for the key that explains them."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, THREAD, WHITE, Palette, mix
from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, Text, finish
from sitegen.draw.shapes import arrowhead, bead_outline, ellipse
from sitegen.draw.step import HITCH_MM, PALE, STOP_MM
from sitegen.draw.warps import WARP_MM
from sitegen.model.thread import Bead, Bridge, MoveKind, ThreadPath, stop_bead, way

SAMPLE = "#c9a46a"
"""Colour of the beads in the key."""
LINE = Paint(stroke=THREAD, width=0.19)
THERE = Paint(fill=mix(SAMPLE, WHITE, PALE), stroke=PALE_OUTLINE, width=0.06)
NEW = Paint(fill=SAMPLE, stroke=OUTLINE, width=0.09)


def _bead(x: float) -> Bead:
    return Bead("A", 0, 1, 1, x, 1.5, 0.0, 2.1, 1.5, "round", "round 11/0")


LEFT, RIGHT = _bead(1.2), _bead(3.4)


def _new(pen: Recorder) -> None:
    pen.shapes([bead_outline(LEFT)], NEW)
    pen.letters([(LEFT.x, LEFT.y, "A")], 1.2)


def _there(pen: Recorder) -> None:
    pen.shapes([bead_outline(LEFT)], THERE)


def _thread(pen: Recorder) -> None:
    pen.shapes([Outline((0.2, 1.0), ((1.4, 0.4, 2.4, 1.6, 3.8, 1.0),), closed=False)], LINE)
    pen.shapes([arrowhead((4.6, 0.85), (0.98, -0.17), 1.1)], Paint(fill=THREAD))


def _hidden(pen: Recorder) -> None:
    """Broken in a bead, whole beside it."""
    lying = Bead("A", 0, 1, 1, 2.4, 1.2, 90.0, 2.1, 1.5, "round", "round 11/0")
    pen.shapes([bead_outline(lying)], THERE)
    pen.shapes(
        [_line(0.2, 1.5, 1.2), _line(1.77, 2.2, 1.2), _line(2.6, 3.03, 1.2), _line(3.3, 4.6, 1.2)], LINE
    )


def _weft(pen: Recorder) -> None:
    """Broken under two warps, whole over them."""
    pen.shapes([_line(0.2 + part, 0.6 + part, 1.7) for part in (0.0, 0.75, 1.5, 2.25, 3.0, 3.75)], LINE)
    warps = [Outline((x, 0.2), ((x, 2.6),), closed=False) for x in (1.4, 3.2)]
    pen.shapes(warps, Paint(stroke=OUTLINE, width=WARP_MM))
    pen.shapes([_line(0.2, 4.4, 0.9)], LINE)


def _order(pen: Recorder) -> None:
    pen.shapes([_line(0.2, 4.6, 1.9)], LINE)
    for number in (1, 2, 3):
        pen.text(Text(number * 1.5 - 0.6, 1.2, str(number), 0.95, THREAD, bold=True))


def _start(pen: Recorder) -> None:
    pen.shapes([bead_outline(LEFT)], THERE)
    pen.shapes([ellipse((LEFT.x, LEFT.y - 0.75), 0.3, 0.3)], Paint(fill=THREAD))


def _bridge(pen: Recorder) -> None:
    pen.shapes([bead_outline(LEFT), bead_outline(RIGHT)], THERE)
    top, (one, other) = LEFT.y - 0.75, (LEFT.x, RIGHT.x)
    arc = Outline((one, top), ((one, top - 0.4, other, top - 0.4, other, top),), closed=False)
    pen.shapes([arc], Paint(stroke=INK, width=0.2))


def _hitch(pen: Recorder) -> None:
    pen.shapes([_line(0.2, 4.0, 1.0)], LINE)
    pen.shapes([ellipse((2.1, 1.0), HITCH_MM, HITCH_MM)], Paint(fill=WHITE, stroke=THREAD, width=0.22))


def _stop(pen: Recorder) -> None:
    """Hollow, with the thread through it."""
    pen.shapes([_line(0.2, 4.6, 1.0)], LINE)
    pen.shapes([ellipse((2.4, 1.0), STOP_MM, STOP_MM)], Paint(fill=WHITE, stroke=INK, width=0.16))
    pen.shapes([_line(1.5, 3.3, 1.0)], LINE)


def _strip(pen: Recorder) -> None:
    beads = [bead_outline(_bead(2.6)), bead_outline(_bead(4.8))]
    pen.shapes([_line(0.6, 1.5, 1.5), _line(5.9, 6.6, 1.5)], LINE)
    pen.shapes([ellipse((0.6, 1.5), 0.3, 0.3), arrowhead((7.2, 1.5), (1.0, 0.0), 1.1)], Paint(fill=THREAD))
    pen.shapes(beads, NEW)
    pen.letters([(2.6, 1.5, "A"), (4.8, 1.5, "A")], 1.2)


def _warp(pen: Recorder) -> None:
    places = (LEFT.x - 1.0, (LEFT.x + RIGHT.x) / 2, RIGHT.x + 1.0)
    lines = [Outline((x, 0.2), ((x, 3.0),), closed=False) for x in places]
    pen.shapes(lines, Paint(stroke=OUTLINE, width=WARP_MM))
    pen.shapes([bead_outline(LEFT), bead_outline(RIGHT)], THERE)


def _line(left: float, right: float, y: float) -> Outline:
    return Outline((left, y), ((right, y),), closed=False)


_DRAWN: Mapping[str, Callable[[Recorder], None]] = {
    "new": _new,
    "there": _there,
    "thread": _thread,
    "hidden": _hidden,
    "weft": _weft,
    "order": _order,
    "start": _start,
    "stop": _stop,
    "bridge": _bridge,
    "hitch": _hitch,
    "strip": _strip,
    "warp": _warp,
}
SIGNS = tuple(_DRAWN)
"""Every sign, in the order a reader meets them; each has its words in the theme."""


FILLED_SIGNS = ("new", "there")
"""Those that show the colour of a bead, and have other words where beads are not filled."""


def signs_in(path: ThreadPath, *, strips: bool) -> list[str]:
    """The signs that occur in a path's drawings; `strips` tells whether any row is shown as a strip."""
    occurs = {
        "hidden": not path.warps,
        "weft": bool(path.warps),
        "warp": bool(path.warps),
        "bridge": any(move.bridge is not None and _shows(path, move.bridge) for move in path.moves),
        "hitch": any(move.kind is MoveKind.HITCH for move in path.moves),
        "strip": strips,
        "stop": stop_bead(path.steps[0]),
    }
    return [name for name in SIGNS if occurs.get(name, True)]


def _shows(path: ThreadPath, bridge: Bridge) -> bool:
    """Whether a bridge is long enough to be seen beside a half hitch on it."""
    here = path.beads[bridge.left].mouth(bridge.end)
    dx, dy = way(here, path.beads[bridge.right].mouth(bridge.right_end), path.around(bridge.left))
    return math.hypot(dx, dy) > 2 * HITCH_MM


def sign(name: str, title: str, filled: bool = True) -> Drawing:
    """The drawing of one of `SIGNS`, 8 mm wide or less; `title` says in words what it means.

    Where beads are not `filled`, they are outlines, as in sheets that save ink.
    """
    recorder = Recorder()
    recorder.begin("sign", {"name": name})
    _DRAWN[name](recorder)
    recorder.end()
    if not filled:
        recorder.calls = [_emptied(call) for call in recorder.calls]
    return finish(recorder, title, title, 0.3, Palette({"A": SAMPLE} if filled else {}))


def _emptied(call: tuple[str, tuple[object, ...]]) -> tuple[str, tuple[object, ...]]:
    name, values = call
    if name == "shapes" and values[1] in (NEW, THERE):
        return name, (values[0], replace(NEW if values[1] == NEW else THERE, fill=WHITE))
    return call
