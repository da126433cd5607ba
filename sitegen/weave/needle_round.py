"""Beads of round work as they lie + the part -> their letters read off and the letters written.

The virtual needle's own reading of rounds, tubes and ropes; it knows nothing of how they were laid.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

from sitegen.model.source import Part
from sitegen.model.thread import Bead

Read = tuple[list[str], list[str]]
"""Letters as they lie, and as written."""


def _rounds(beads: Sequence[Bead], part: Part) -> Read:
    """Circles around the middle, inside first, each read clockwise from the bead numbered first."""
    circles: dict[float, list[Bead]] = {}
    for bead in beads:
        circles.setdefault(round(math.hypot(bead.x, bead.y), 4), []).append(bead)
    read = []
    for radius in sorted(circles):
        ring = sorted(circles[radius], key=lambda bead: math.atan2(bead.x, -bead.y))
        first = next((place for place, bead in enumerate(ring) if bead.place == 1), 0)
        read.append("".join(bead.letter for bead in [*ring[first:], *ring[:first]]))
    return read, ["".join(letter for _, letter in row.cells) for row in part.all_rows]


def _tube(beads: Sequence[Bead], part: Part) -> Read:
    """Rows from the top, with the place of each bead on the unrolled tube in columns of the chart."""
    rows: dict[float, list[Bead]] = {}
    for bead in beads:
        rows.setdefault(round(bead.y, 4), []).append(bead)
    across = sorted({round(bead.x, 4) for bead in beads})
    column = (across[-1] - across[0]) / (len(across) - 1) if len(across) > 1 else 1.0
    left = across[0]
    read = []
    for height in sorted(rows):
        row = sorted(rows[height], key=lambda bead: bead.x)
        read.append(" ".join(f"{round((bead.x - left) / column)}{bead.letter}" for bead in row))
    cells = [row.cells for row in part.all_rows]
    if part.stitch == "tubular herringbone":  # columns side by side, however far apart they are written
        cells = [tuple((place, letter) for place, (_, letter) in enumerate(row)) for row in cells]
    first = min(row[0][0] for row in cells)
    return read, [" ".join(f"{column - first}{letter}" for column, letter in row) for row in cells]


def _rope(beads: Sequence[Bead], part: Part) -> Read:
    """The core from its foot up, then the outer beads of each stitch from the top, lower stitches first."""
    assert part.rope is not None
    core = sorted((bead for bead in beads if bead.x == 0.0), key=lambda bead: -bead.y)
    outside = sorted((bead for bead in beads if bead.x != 0.0), key=lambda bead: (bead.row, bead.place))
    inner, outer = "".join(part.rope.core.letters), "".join(part.rope.outer.letters)
    count = len(inner) + part.rope.stitches - 1
    written = [(inner * count)[:count], outer * part.rope.stitches]
    return ["".join(bead.letter for bead in group) for group in (core, outside)], written


READ_ROUND: Mapping[str, Callable[[Sequence[Bead], Part], Read]] = {
    "circular brick": _rounds,
    "circular peyote": _rounds,
    "tubular peyote": _tube,
    "tubular brick": _tube,
    "tubular herringbone": _tube,
    "spiral rope": _rope,
}
"""Round work by its stitch, and how it is read."""
