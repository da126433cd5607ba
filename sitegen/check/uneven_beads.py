"""Pattern -> problems: beads that must lie side by side are about as wide as each other."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.check.stitch import shape
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.trade.beads import bead_kind

MOST_UNLIKE = 1.25
"""Wider over narrower bead: beyond that a flat stitch ripples or gapes. A judgement; no source."""


def uneven_beads(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Charts in a flat stitch whose beads differ much in width."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        stitch = shape(part)
        if stitch is None or not stitch.charted:
            continue
        letters = {letter for row in part.all_rows for _, letter in row.cells}
        kinds = [
            bead_kind(colour.bead, pattern.bead_kinds)
            for colour in pattern.colours
            if colour.letter in letters
        ]
        widths = sorted((kind.width_mm, kind.name) for kind in kinds if kind)
        if widths and widths[-1][0] > MOST_UNLIKE * widths[0][0]:
            (least, narrow), (most, wide) = widths[0], widths[-1]
            values = {
                "part": part.name,
                "wide": wide,
                "most": plain(most),
                "narrow": narrow,
                "least": plain(least),
            }
            problems.append(Problem("beads-uneven", place(pattern, part.at, "name"), values))
    return problems
