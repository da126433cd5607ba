"""Pattern -> problems: every strand is longer than its turn."""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern, Words
from sitegen.read.faults import counted

TURNED = ("fringe", "branched fringe", "twisted fringe")
"""Stitches whose strands turn at their foot."""


def strand_length(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Strands on which the thread has no bead to come back through."""
    del shop
    return [
        Problem("strand-short", words.where, {"beads": counted(_trunk(words), "bead"), "turn": part.turn})
        for part in pattern.parts
        if part.stitch in TURNED
        for words in part.strands
        if words.letters and _trunk(words) <= part.turn
    ]


def _trunk(words: Words) -> int:
    """Beads of a strand without its side branches."""
    return len(words.letters) - sum(past - first for first, past in words.branches)
