"""Pattern -> problems: beads sewn on top have a row with as many gaps beneath them."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Over, Part, Pattern
from sitegen.read.faults import counted, hint


def over(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Unknown parts, rows beyond the chart, and strands with more or fewer beads than there are gaps."""
    del shop
    return [
        problem
        for number, part in enumerate(pattern.parts)
        if part.over is not None and part.stitch == "ditch"
        for problem in _faults(pattern, number, part, part.over)
    ]


def _faults(pattern: Pattern, number: int, part: Part, lies: Over) -> Iterator[Problem]:
    earlier = {other.name: other for other in pattern.parts[:number] if other.stitch not in ("", "none")}
    base = earlier.get(lies.part)
    if base is None:
        values: dict[str, object] = {"name": part.name, "part": lies.part, "hint": hint(lies.part, earlier)}
        yield Problem("over-unknown", place(pattern, lies.at, "part"), values)
        return
    rows = base.all_rows
    if not rows:
        return
    if lies.row - 1 + len(part.strands) > len(rows):
        values = {
            "name": part.name,
            "strands": counted(len(part.strands), "strand"),
            "row": lies.row,
            "part": base.name,
            "rows": counted(len(rows), "row"),
        }
        yield Problem("over-row", place(pattern, lies.at, "row"), values)
        return
    for row, words in enumerate(part.strands, start=lies.row):
        gaps = len(rows[row - 1].cells) - 1
        if words.letters and len(words.letters) != gaps:
            beads = counted(len(words.letters), "bead")
            values = {"beads": beads, "row": row, "part": base.name, "gaps": counted(gaps, "gap")}
            yield Problem("over-gaps", words.where, values)
