"""Pattern -> problems: strands, loops and edgings have the form their stitch asks for."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern, Words
from sitegen.read.faults import counted
from sitegen.read.hanging import points

BRIDGED = ("ladder", "brick")
"""Stitches whose edges have a thread bridge between each two beads."""
FEWEST_IN_PICOT, MOST_IN_PICOT = 3, 5
"""Three beads or more make a point (https://sites.google.com/site/sagescupboard/glossary); more than
five make a loop. Own judgement."""


def hung_forms(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Branches, legs, picots, and bridges that are not there."""
    del shop
    return [problem for part in pattern.parts for problem in _faults(pattern, part)]


def _faults(pattern: Pattern, part: Part) -> Iterator[Problem]:
    yield from _bridges(pattern, part)
    for words in part.strands:
        yield from _branches(part, words)
        if part.stitch == "twisted fringe":
            yield from _legs(part, words)
        if part.stitch == "picot edge" and words.letters:
            count = len(words.letters)
            if not FEWEST_IN_PICOT <= count <= MOST_IN_PICOT:
                yield Problem("picot-beads", words.where, {"beads": counted(count, "bead")})
    if part.stitch == "picot edge" and points(part) == "bridges":
        yield from _stems(part)


def _bridges(pattern: Pattern, part: Part) -> Iterator[Problem]:
    if part.hang is None or part.hang.part is None:
        return
    above = pattern.part(part.hang.part)
    if part.stitch == "whipped edge" and points(part) == "beads":
        yield Problem("whip-points", place(pattern, part.hang.at, "points"))
    elif above is not None and points(part) == "bridges" and above.stitch not in BRIDGED:
        values = {"part": above.name, "stitch": above.stitch}
        yield Problem("hang-bridges", place(pattern, part.hang.at, "points", "part"), values)


def _branches(part: Part, words: Words) -> Iterator[Problem]:
    if not words.branches:
        return
    if part.stitch != "branched fringe":
        first = words.branches[0][0]
        yield Problem("branch-needless", words.spots[first], {"stitch": part.stitch})
        return
    aside = {bead for first, past in words.branches for bead in range(first, past)}
    trunk = [bead for bead in range(len(words.letters)) if bead not in aside]
    for first, _ in words.branches:
        above = sum(bead < first for bead in trunk)
        if above >= len(trunk) - part.turn > 0:
            yield Problem("branch-foot", words.spots[first], {"turn": part.turn})


def _legs(part: Part, words: Words) -> Iterator[Problem]:
    legs = len(words.letters) - part.turn
    if legs > 0 and legs % 2:
        values = {"turn": counted(part.turn, "bead"), "beads": counted(legs, "bead")}
        yield Problem("twist-uneven", words.where, values)


def _stems(part: Part) -> Iterator[Problem]:
    for one, other in pairwise(part.all_strands):
        if one.letters and other.letters and one.letters[-1] != other.letters[0]:
            values = {"letter": other.letters[0], "other": one.letters[-1]}
            yield Problem("picot-stem", other.spots[0], values)
            return
