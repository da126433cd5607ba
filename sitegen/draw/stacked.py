"""Beads from back to front -> few layers, in each of which no bead hides another."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sitegen.model.thread import Bead

NEIGHBOUR = 0.95
"""Beads of one row or strand hide each other where they are closer than this share of touching."""
STRANGER = 0.97
"""The same for beads of different strands."""

Run = tuple[int, int, int]
"""What a bead is strung in: part, row or strand, and whether it lies in front there."""


def stacked(beads: Sequence[tuple[Run, Bead]]) -> list[list[Bead]]:
    """The beads in layers, each bead in the first layer above all that it hides; in time by their number."""
    if not beads:
        return []
    cell = max(max(bead.width, bead.length) for _, bead in beads)
    near: dict[tuple[int, int], list[tuple[Run, Bead, int]]] = {}
    layers: list[list[Bead]] = []
    for run, bead in beads:
        column, line = math.floor(bead.x / cell), math.floor(bead.y / cell)
        depth = 0
        for square in ((column + dx, line + dy) for dx in (-1, 0, 1) for dy in (-1, 0, 1)):
            for other_run, other, under in near.get(square, ()):
                if under >= depth and _hides(bead, other, run == other_run):
                    depth = under + 1
        near.setdefault((column, line), []).append((run, bead, depth))
        if depth == len(layers):
            layers.append([])
        layers[depth].append(bead)
    return layers


def _hides(one: Bead, other: Bead, together: bool) -> bool:
    dx, dy = other.x - one.x, other.y - one.y
    apart = math.hypot(dx, dy)
    touching = _reach(one, dx, dy) + _reach(other, dx, dy)
    return apart * apart < (NEIGHBOUR if together else STRANGER) * touching


def _reach(bead: Bead, dx: float, dy: float) -> float:
    """How far an oval bead reaches in a direction, times that direction's length."""
    turn = math.radians(bead.angle)
    across, along = dx * math.cos(turn) - dy * math.sin(turn), dx * math.sin(turn) + dy * math.cos(turn)
    return math.hypot(across * bead.width, along * bead.length) / 2
