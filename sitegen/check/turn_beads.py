"""Pattern -> problems: the beads a strand turns round are short enough to turn round."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.trade.beads import bead_kind

LONG = 2.0
"""A bead longer than so many times its width lies across the strand's end like a bar. Own judgement."""


def turn_beads(pattern: Pattern, shop: Shop) -> list[Problem]:
    """The first bead of each strand's turn that is too long."""
    del shop
    long = {
        colour.letter
        for colour in pattern.colours
        if (kind := bead_kind(colour.bead, pattern.bead_kinds)) and kind.length_mm > LONG * kind.width_mm
    }
    problems: list[Problem] = []
    for part in pattern.parts:
        for words in part.strands if part.stitch == "fringe" else ():
            first = max(0, len(words.letters) - part.turn)
            for index in range(first, len(words.letters)):
                if words.letters[index] in long:
                    where = words.spots[index] if words.spots else place(pattern, part.at, "strands")
                    problems.append(Problem("turn-bead-long", where, {"letter": words.letters[index]}))
                    break
    return problems
