"""A part and the row it hangs from -> how many strands that row takes, and the strands a rule gives."""

from __future__ import annotations

from dataclasses import replace

from sitegen.model.source import Part, Pattern
from sitegen.read.faults import Faults
from sitegen.read.strand_rule import strands_of

EDGINGS = ("picot edge", "whipped edge")
"""Stitches sewn along an edge; their beads hang from bridges unless the author says otherwise."""
LOOPS = ("looped fringe", "swags", "picot edge")
"""Stitches whose strands go down at one place and come up at another."""


def points(part: Part) -> str:
    """What holds each strand: `beads` or `bridges`."""
    if part.hang is not None and part.hang.points:
        return part.hang.points
    return "bridges" if part.stitch in EDGINGS else "beads"


def edge_beads(part: Part, pattern: Pattern) -> int | None:
    """Beads in the row the part hangs from; None where that is not known."""
    hang = part.hang
    above = pattern.part(hang.part) if hang and hang.part else None
    if hang is None or above is None or above.chart is None or not above.chart.rows:
        return None
    return len(above.chart.rows[0 if hang.edge == "top" else -1].cells)


def span_of(part: Part, places: int) -> int:
    """How many places on a loop is joined again: a loop at the next, a swag at the last unless told."""
    if part.span is not None:
        return part.span
    return max(1, places - 1) if part.stitch == "swags" else 1


def strands_wanted(part: Part, beads: int) -> int | None:
    """How many strands a row of so many beads takes; None where they do not come out even.

    From bead holes each loop has two beads of its own; from bridges a loop begins where the last one ended.
    A picot edge on bridges has a picot between each two; a whipped edge as well.
    """
    bridges = points(part) == "bridges"
    places = beads - 1 if bridges else beads
    if part.stitch == "whipped edge" or (bridges and part.stitch == "picot edge"):
        return places - 1 if places > 1 else None
    if part.stitch not in LOOPS:
        return places if places > 0 else None
    span = span_of(part, places)
    count, left = divmod(places - 1, span) if bridges else divmod(places, span + 1)
    return count if count and not left else None


def with_rules(pattern: Pattern, faults: Faults) -> Pattern:
    """The pattern with the strands that its rules give, one for each place of the row they hang from."""
    return replace(pattern, parts=tuple(_with_rule(part, pattern, faults) for part in pattern.parts))


def _with_rule(part: Part, pattern: Pattern, faults: Faults) -> Part:
    beads = edge_beads(part, pattern)
    wanted = strands_wanted(part, beads) if beads else None
    if part.rule is None or wanted is None:
        return part
    return replace(part, strands=strands_of(part.rule, wanted, faults))
