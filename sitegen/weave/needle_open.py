"""Woven beads + a part's chart -> what lies and what is written, for herringbone and openwork.

Part of the virtual needle: it reads places alone and knows nothing of how the stitches lay their beads.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from sitegen.model.source import Part
from sitegen.model.thread import Bead

Reading = tuple[list[str], list[str]]
"""As it lies, and as it is written: the same if the weave is right."""


def _levels(beads: Sequence[Bead]) -> list[list[Bead]]:
    """Beads of equal height, from the top, each from the left."""
    levels: dict[float, list[Bead]] = {}
    for bead in sorted(beads, key=lambda bead: bead.x):
        levels.setdefault(round(bead.y, 4), []).append(bead)
    return [levels[height] for height in sorted(levels)]


def _written(part: Part) -> list[str]:
    return ["".join(letter for _, letter in row.cells) for row in part.all_rows]


def _pairs(beads: Sequence[Bead], part: Part) -> Reading:
    """Rows of herringbone: the letters in order, evenly apart."""
    read = []
    for row in _levels(beads):
        gaps = {round(other.x - one.x, 3) for one, other in pairwise(row)}
        read.append("".join(bead.letter for bead in row) if len(gaps) <= 1 else "uneven")
    return read, _written(part)


def _squares(beads: Sequence[Bead], part: Part) -> Reading:
    """Lines of right-angle weave: holes across and upright by turns, at the places the letters have."""
    places = {x: place for place, x in enumerate(sorted({round(bead.x, 4) for bead in beads}))}
    first = min(column for row in part.all_rows for column, _ in row.cells)
    read = [
        " ".join(f"{places[round(bead.x, 4)]}{bead.letter}{round(bead.angle)}" for bead in level)
        for level in _levels(beads)
    ]
    written = [
        " ".join(f"{column - first}{letter}{0 if line % 2 else 90}" for column, letter in row.cells)
        for line, row in enumerate(part.all_rows)
    ]
    return read, written


def _nets(beads: Sequence[Bead], part: Part) -> Reading:
    """Lines of a net: where legs meet by their height, and between two such heights leg by leg."""
    leg = (part.net - 1) // 2
    rows = (len(part.all_rows) - 1) // (leg + 1)
    top, bottom = min(bead.y for bead in beads), max(bead.y for bead in beads)
    step = (bottom - top) / rows
    joints: list[list[Bead]] = [[] for _ in range(rows + 1)]
    legs: list[list[Bead]] = [[] for _ in range(rows)]
    for bead in sorted(beads, key=lambda bead: bead.x):
        level = (bead.y - top) / step
        if abs(level - round(level)) < 1e-6:
            joints[round(level)].append(bead)
        else:
            legs[int(level)].append(bead)
    read = []
    for number, joint in enumerate(joints):
        read.append("".join(bead.letter for bead in joint))
        if number < rows:
            band = legs[number]
            sorted_legs = [
                sorted(band[at : at + leg], key=lambda bead: bead.y) for at in range(0, len(band), leg)
            ]
            read += ["".join(beads[place].letter for beads in sorted_legs) for place in range(leg)]
    return read, _written(part)


READ_OPEN: Mapping[str, Callable[[Sequence[Bead], Part], Reading]] = {
    "herringbone": _pairs,
    "right-angle weave": _squares,
    "netting": _nets,
}
"""How the beads of each of these stitches are read."""
