"""Pattern -> problems: every strand is longer than its turn."""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import counted


def strand_length(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Strands on which the thread has no bead to come back through."""
    del shop
    return [
        Problem(
            "strand-short", words.where, {"beads": counted(len(words.letters), "bead"), "turn": part.turn}
        )
        for part in pattern.parts
        for words in part.strands
        if words.letters and len(words.letters) <= part.turn
    ]
