"""The warps of a ThreadPath and some of its beads -> thin lines between and beside those beads."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.draw.colour import OUTLINE
from sitegen.draw.pens import Outline, Paint, Pen
from sitegen.model.thread import Bead, ThreadPath

WARP_MM = 0.16
"""How thick a warp is drawn, whatever it is: a finer line would not print."""
DOUBLED_MM = 0.34
"""How far apart the two threads of a doubled warp are drawn."""


def draw_warps(
    pen: Pen,
    path: ThreadPath,
    beads: Mapping[int, Bead],
    ends: float,
    turned: bool = False,
    shift: float = 0.0,
) -> None:
    """The warps beside these beads (given in the drawing's coordinates), reaching `ends` mm beyond them."""
    lines: list[Outline] = []
    for part in dict.fromkeys(warp.part for warp in path.warps):
        shown = [bead for index, bead in beads.items() if path.beads[index].part == part]
        if not shown:
            continue
        half = path.parts[part].bead_pitch * 0.75
        left, right = min(bead.x for bead in shown) - half, max(bead.x for bead in shown) + half
        top = min(bead.y - bead.width / 2 for bead in shown) - ends
        bottom = max(bead.y + bead.width / 2 for bead in shown) + ends
        for warp in path.warps:
            middle = (-warp.x if turned else warp.x) + shift
            if warp.part == part and left <= middle <= right:
                offsets = (0.0,) if warp.threads == 1 else (-DOUBLED_MM / 2, DOUBLED_MM / 2)
                lines += [
                    Outline((middle + aside, top), ((middle + aside, bottom),), closed=False)
                    for aside in offsets
                ]
    if lines:
        pen.begin("warps", {})
        pen.shapes(lines, Paint(stroke=OUTLINE, width=WARP_MM))
        pen.end()
