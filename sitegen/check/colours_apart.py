"""Pattern -> problems: no two colours that a buyer may take for each other.

Colours are compared by CIEDE2000 (Sharma, Wu and Dalal 2005) as most people see them and as people without
red, green or blue cones do (Machado, Oliveira and Fernandes 2009, full strength). How little is too little is
our own judgement; it stands in the trade tables.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from itertools import combinations

from coloraide import Color

from sitegen.check.spots import place
from sitegen.model.location import Location
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Colour, Pattern
from sitegen.read.header import GREY
from sitegen.trade.figures import tidy
from sitegen.trade.rules import rules

VISIONS: Mapping[str, str] = {
    "normal": "as most people see them",
    "protan": "to people who see no red (protan)",
    "deutan": "to people who see no green (deutan)",
    "tritan": "to people who see no blue (tritan)",
}
"""Kinds of colour vision, and how a message says them."""


def colours_apart(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Pairs of the same bead kind too near each other, in the pattern's colours and in each colourway.

    One piece of advice a pair, for the vision that tells them apart least; normal vision comes first.
    """
    del shop
    problems = [
        Problem("colours-alike", place(pattern, other.at, "hex"), values)
        for one, other in _pairs(pattern)
        if (values := _alike((one.name, one.hex), (other.name, other.hex)))
    ]
    for way in pattern.colourways:
        for one, other in _pairs(pattern):
            swaps = [way.swaps.get(colour.letter) for colour in (one, other)]
            changed = [swap or colour for swap, colour in zip(swaps, (one, other), strict=True)]
            one_bead = len({(each.name, each.hex) for each in changed}) == 1  # meant, and said on the page
            if any(swaps) and not one_bead and GREY not in [each.hex for each in changed]:
                values = _alike(*((each.name, each.hex) for each in changed))
                where = next(_hex_place(pattern, swap.at) for swap in reversed(swaps) if swap)
                problems += [Problem("colours-alike", where, values)] if values else []
    return problems


def _pairs(pattern: Pattern) -> Iterator[tuple[Colour, Colour]]:
    """Every two colours of the same bead kind; what could not be read is left out."""
    for one, other in combinations(pattern.colours, 2):
        if tidy(one.bead) == tidy(other.bead) and one.bead and GREY not in (one.hex, other.hex):
            yield one, other


def _hex_place(pattern: Pattern, at: Mapping[str, Location]) -> Location:
    return place(pattern, at, "hex")


def _alike(one: tuple[str, str], other: tuple[str, str]) -> dict[str, object] | None:
    """What a message about two (name, hex) says, or None where they stand far enough apart."""
    found = {vision: difference(one[1], other[1], vision) for vision in VISIONS}
    least = rules().colours_apart
    near = [vision for vision, figure in found.items() if figure < least[vision]]
    if not near:
        return None
    vision = "normal" if "normal" in near else min(near, key=lambda name: found[name])
    return {
        "one": one[0],
        "other": other[0],
        "figure": plain(found[vision], 1),
        "least": plain(least[vision], 1),
        "vision": VISIONS[vision],
    }


def difference(one: str, other: str, vision: str = "normal") -> float:
    """CIEDE2000 between two colours `#rrggbb` as seen with a kind of colour vision."""
    return float(_seen(one, vision).delta_e(_seen(other, vision), method="2000", space="lab-d65"))


@cache
def _seen(hex_colour: str, vision: str) -> Color:
    colour = Color(hex_colour)
    if vision == "normal":
        return colour
    return colour.filter(vision, method="machado", out_space="srgb").clip()
