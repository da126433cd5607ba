"""A core and outer beads -> spiral rope, laid as a column with the outer beads fanned beside it.

Mechanics: string the core beads and the outer beads, go up through the core beads again. Every later stitch
picks up one core bead and the outer beads and goes up through the topmost core beads, the new one among
them; the outer beads are pushed to the same side each time and wind round the core. Passes: outer beads 1,
as is usual in this openwork; core beads as many as a stitch goes through, and one more; fewer at the ends.
Common practice, no source; how long it comes out is checked against [mix-me-up S2].
"""

from __future__ import annotations

from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase
from sitegen.trade.rounds import rope_arc
from sitegen.weave.work import Work

SECTION = 6
"""Stitches that share a row number, so that a thread may change after them: about one turn of the spiral.
A judgement; no source."""


def spiral_rope_part(work: Work, part: Part) -> None:
    """Work the whole rope upward, from its lower end."""
    assert part.rope is not None  # the check stage holds it
    count, outer = len(part.rope.core.letters), len(part.rope.outer.letters)
    rows = part.all_rows
    sections = -(-len(rows) // SECTION)
    kinds = [work.kind(letter) for letter in part.rope.core.letters]
    gauge = part.gauge or work.pattern.gauge
    pitch = gauge.height_mm / gauge.rows if gauge else sum(kind.length_mm for kind in kinds) / count
    sizes = [(kind.width_mm, kind.length_mm) for kind in map(work.kind, part.rope.outer.letters)]
    arc = rope_arc(max(kind.width_mm for kind in kinds), pitch * count, sizes)
    index = work.begin_part(part, sections, pitch * SECTION, pitch, lines="turns")
    work.tube(0.0, 2 * arc.out_mm + max(sizes)[0])
    core: list[int] = []
    place = 1
    for stitch, row in enumerate(rows):
        section = stitch // SECTION + 1
        place = 1 if stitch % SECTION == 0 else place + len(rows[stitch - 1].cells)
        spots = [((letter, row.spot(cell)), place + cell) for cell, (_, letter) in enumerate(row.cells)]
        new = len(spots) - outer
        for spot, seat in spots[:new]:
            y = -(len(core) + 0.5) * pitch
            core.append(work.lay(index, section, seat, spot, (0.0, y, 0.0)))
            work.pick(core[-1], End.BOTTOM)
        middle = -(len(core) - count / 2) * pitch
        for (spot, seat), (x, y, angle) in zip(spots[new:], arc.places, strict=True):
            bead = work.lay(index, section, seat, spot, (-x, middle + y, angle))
            work.pick(bead, End.TOP)
        for bead in core[-count:]:
            work.through(bead, End.BOTTOM)
        motion = "rope-next" if stitch else "rope-first"
        rest = stitch % SECTION == SECTION - 1 or stitch == len(rows) - 1
        phrase = Phrase(motion, {"count": count, "core": count, "outer": outer})
        work.step(section, motion, (phrase,), rest=rest)
