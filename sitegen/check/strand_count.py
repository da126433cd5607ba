"""Pattern -> problems: as many strands as beads to hang them from."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted


def strand_count(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Strands, mirrored ones included, against the beads of the row they hang from."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        above = pattern.part(part.hang.part) if part.hang and part.hang.part else None
        if (
            part.hang is None
            or above is None
            or above.chart is None
            or not above.chart.rows
            or not part.strands
        ):
            continue
        edge = part.hang.edge
        beads = len(above.chart.rows[0 if edge == "top" else -1].cells)
        strands = len(part.all_strands)
        if strands != beads:
            values = {"strands": counted(strands, "strand"), "edge": edge, "part": above.name}
            where = place(pattern, part.at, "strands")
            problems.append(Problem("strand-count", where, {**values, "beads": counted(beads, "bead")}))
    return problems
