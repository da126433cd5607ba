"""Pattern -> problems: a strung part is one string, long enough, and its ends can be held."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted
from sitegen.trade.threads import parse_thread

FEWEST = 6
"""Three beads at each end are passed twice. Common practice, no source."""


def strung(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Several strings, short ones, and knots in wire."""
    thread = parse_thread(pattern.thread or shop.thread)
    problems: list[Problem] = []
    for part in pattern.parts:
        if part.stitch != "strung":
            continue
        if len(part.strands) > 1:
            values = {"name": part.name, "strands": counted(len(part.strands), "strand")}
            problems.append(Problem("strung-one", place(pattern, part.at, "strands"), values))
        problems += [
            Problem("strung-short", words.where, {"beads": counted(len(words.letters), "bead")})
            for words in part.strands
            if 0 < len(words.letters) < FEWEST
        ]
        if part.ends == "knots" and thread is not None and thread.material == "wire":
            problems.append(Problem("ends-wire", place(pattern, part.at, "ends")))
    return problems
