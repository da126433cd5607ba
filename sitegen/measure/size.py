"""ThreadPath -> width, height and drop in mm, as the piece hangs."""

from __future__ import annotations

import math
from collections.abc import Iterable

from sitegen.model.measures import PartSize
from sitegen.model.thread import Bead, ThreadPath
from sitegen.trade.findings import finding_kind

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, mm."""


def bead_box(bead: Bead) -> Box:
    """The smallest upright box around a bead, turned as it is."""
    turn = math.radians(bead.angle)
    sine, cosine = abs(math.sin(turn)), abs(math.cos(turn))
    across = (bead.width * cosine + bead.length * sine) / 2
    along = (bead.width * sine + bead.length * cosine) / 2
    return bead.x - across, bead.y - along, bead.x + across, bead.y + along


def bounds(beads: Iterable[Bead]) -> Box | None:
    """The smallest upright box around these beads; None without beads."""
    boxes = [bead_box(bead) for bead in beads]
    if not boxes:
        return None
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def extent(beads: Iterable[Bead]) -> tuple[float, float]:
    """Width and height of that box."""
    box = bounds(beads)
    return (box[2] - box[0], box[3] - box[1]) if box else (0.0, 0.0)


def part_sizes(path: ThreadPath) -> tuple[PartSize, ...]:
    """Each part's beads, rows and size, in order of working."""
    sizes = []
    for index, part in enumerate(path.parts):
        beads = [bead for bead in path.beads if bead.part == index]
        width, height = extent(beads)
        sizes.append(PartSize(part.name, part.stitch, len(beads), part.rows, width, height))
    return tuple(sizes)


def drop(path: ThreadPath) -> float | None:
    """From the top of the highest finding to the lowest bead; None where nothing hangs from a finding."""
    box = bounds(path.beads)
    hung = ((placed, finding_kind(placed.kind)) for placed in path.findings if placed.edge == "top")
    tops = [placed.y - kind.drop_mm for placed, kind in hung if kind and kind.drop_mm]
    return box[3] - min(tops) if box and tops else None
