"""The signs of the step diagrams -> one small drawing each, for the key that explains them."""

from __future__ import annotations

from sitegen.draw.colour import INK, OUTLINE, PALE_OUTLINE, THREAD, WHITE, Palette, mix
from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, finish
from sitegen.draw.shapes import arrowhead, bead_outline, ellipse
from sitegen.draw.step import PALE
from sitegen.draw.warps import WARP_MM
from sitegen.model.thread import Bead

SAMPLE = "#c9a46a"
"""Colour of the beads in the key."""
SIGNS = ("new", "there", "thread", "start", "bridge")
"""Every sign, in the order a reader meets them; each has its words in the theme."""
LOOM_SIGNS = (*SIGNS, "warp")
"""The signs of a piece made on a loom."""


def sign(name: str, title: str) -> Drawing:
    """The drawing of one of `LOOM_SIGNS`, 8 mm wide or less; `title` says in words what it means."""
    recorder = Recorder()
    left, right = _bead(1.2), _bead(3.4)
    there = Paint(fill=mix(SAMPLE, WHITE, PALE), stroke=PALE_OUTLINE, width=0.06)
    recorder.begin("sign", {"name": name})
    if name == "new":
        recorder.shapes([bead_outline(left)], Paint(fill=SAMPLE, stroke=OUTLINE, width=0.09))
        recorder.letters([(left.x, left.y, "A")], 1.2)
    elif name == "there":
        recorder.shapes([bead_outline(left)], there)
    elif name == "thread":
        line = Outline((0.2, 1.0), ((1.4, 0.4, 2.4, 1.6, 3.8, 1.0),), closed=False)
        recorder.shapes([line], Paint(stroke=THREAD, width=0.19))
        recorder.shapes([arrowhead((4.6, 0.85), (0.98, -0.17), 1.1)], Paint(fill=THREAD))
    elif name == "warp":
        places = (left.x - 1.0, (left.x + right.x) / 2, right.x + 1.0)
        lines = [Outline((x, 0.2), ((x, 3.0),), closed=False) for x in places]
        recorder.shapes(lines, Paint(stroke=OUTLINE, width=WARP_MM))
        recorder.shapes([bead_outline(left), bead_outline(right)], there)
    elif name == "start":
        recorder.shapes([bead_outline(left)], there)
        recorder.shapes([ellipse((left.x, left.y - 0.75), 0.3, 0.3)], Paint(fill=THREAD))
    else:
        recorder.shapes([bead_outline(left), bead_outline(right)], there)
        top = left.y - 0.75
        arc = Outline((left.x, top), ((left.x, top - 0.4, right.x, top - 0.4, right.x, top),), closed=False)
        recorder.shapes([arc], Paint(stroke=INK, width=0.2))
    recorder.end()
    return finish(recorder, title, title, 0.3, Palette({"A": SAMPLE}))


def _bead(x: float) -> Bead:
    return Bead("A", 0, 1, 1, x, 1.5, 0.0, 2.1, 1.5, "round", "round 11/0")
