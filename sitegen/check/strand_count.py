"""Pattern -> problems: as many strands as places to hang them from."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted
from sitegen.read.hanging import edge_beads, points, span_of, strands_wanted


def strand_count(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Strands, mirrored ones included, against the beads or bridges of the row they hang from."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        beads = edge_beads(part, pattern)
        if beads is None or part.hang is None or (not part.strands and part.rule is None):
            continue
        wanted = strands_wanted(part, beads)
        held = "bead" if points(part) == "beads" else "bridge"
        places = counted(beads if held == "bead" else beads - 1, held)
        values = {"edge": part.hang.edge, "part": part.hang.part, "places": places}
        strands = counted(len(part.all_strands), "strand")
        where = place(pattern, part.at, "strands")
        if wanted is None:
            span = span_of(part, beads if held == "bead" else beads - 1)
            where = place(pattern, part.at, "span", "strands")
            problems.append(Problem("strand-span", where, {**values, "stitch": part.stitch, "span": span}))
        elif part.strands and len(part.all_strands) != wanted and not (part.rule and part.mirror):
            values |= {"strands": strands, "wanted": counted(wanted, "strand"), "stitch": part.stitch}
            problems.append(Problem("strand-count", where, values))
    return problems
