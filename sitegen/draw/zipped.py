"""The beads a zip goes through -> the two edges of the strip beside each other, as the maker zips them."""

from __future__ import annotations

from dataclasses import replace

from sitegen.model.thread import Bead, ThreadPath

ZIP = "peyote-zip"
"""The motion that joins a strip's last row to its first."""
SHOWN = 4
"""Rows shown on each side of the join."""


def edges_together(path: ThreadPath, touched: set[int], there: set[int]) -> dict[int, Bead]:
    """The beads near the join by index: those of the strip's upper half one circumference lower."""
    part = path.parts[path.beads[min(touched)].part]
    around = part.zipped_mm
    reach = SHOWN * part.row_pitch
    join = max(path.beads[index].y for index in touched)
    beads = {}
    for index in touched | there:
        bead = path.beads[index]
        y = bead.y + around if bead.y < around / 2 else bead.y
        if index in touched or abs(y - join) < reach:
            beads[index] = replace(bead, y=y)
    return beads
