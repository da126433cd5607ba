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


def whole(path: ThreadPath) -> tuple[float, float]:
    """Width and height of one piece; a tube or rope is as wide as it is thick, however it is laid."""
    boxes = []
    for index, part in enumerate(path.parts):
        box = bounds(bead for bead in path.beads if bead.part == index)
        if box and part.thick_mm:
            middle = (box[0] + box[2]) / 2
            box = (middle - part.thick_mm / 2, box[1], middle + part.thick_mm / 2, box[3])
        if box and part.zipped_mm:
            box = (box[0], box[1], box[2], box[1] + _zipped_height(path, index))
        boxes += [box] if box else []
    if not boxes:
        return 0.0, 0.0
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return max(rights) - min(lefts), max(bottoms) - min(tops)


def part_sizes(path: ThreadPath) -> tuple[PartSize, ...]:
    """Each part's beads, rows and size, in order of working."""
    sizes = []
    for index, part in enumerate(path.parts):
        beads = [bead for bead in path.beads if bead.part == index]
        width, height = extent(beads)
        width = part.thick_mm or width
        height = _zipped_height(path, index) if part.zipped_mm else height
        sizes.append(PartSize(part.name, part.stitch, len(beads), part.rows, width, height, part.strung_mm))
    return tuple(sizes)


def _zipped_height(path: ThreadPath, part: int) -> float:
    """Of a strip zipped into a tube: circumference / pi along the beads' middles, and half a bead a side."""
    width = max(bead.width for bead in path.beads if bead.part == part)
    return path.parts[part].zipped_mm / math.pi + width


def drop(path: ThreadPath) -> float | None:
    """From the top of the highest finding to the lowest bead; None where nothing hangs from a finding."""
    box = bounds(path.beads)
    hung = ((placed, finding_kind(placed.kind)) for placed in path.findings if placed.edge == "top")
    tops = [placed.y - kind.drop_mm for placed, kind in hung if kind and kind.drop_mm]
    return box[3] - min(tops) if box and tops else None
