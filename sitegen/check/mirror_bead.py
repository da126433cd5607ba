"""Pattern -> problems: a chart or a fringe that is symmetric but for one bead."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sitegen.check.stitch import StitchShape, shape
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern

FEWEST_PAIRS = 6
"""With fewer pairs of beads a chart is symmetric by chance. Own judgement."""
Place = tuple[int, int]
"""Row from the top and place across, both as counted in the chart."""


@dataclass(frozen=True, slots=True)
class _Spot:
    """One bead of the chart."""

    letter: str
    name: str
    """`row 7, bead 4`."""
    where: Location


def mirror_bead(pattern: Pattern, shop: Shop) -> list[Problem]:
    """At most one bead a part: the one whose mirror bead, left and right or top and bottom, is another."""
    del shop
    problems: list[Problem] = []
    for part in pattern.parts:
        grid = _grid(part)
        sideways = _odd_pairs(grid, _flip(grid, 1))
        upright = _odd_pairs(grid, _flip(grid, 0))
        if sideways:
            # Where top and bottom say which of the two is odd, believe them; else the one on the right.
            pair = sideways if len(set(sideways) & set(upright)) != 1 else _common_last(sideways, upright)
            problems.append(_problem(grid, pair))
        elif upright:
            problems.append(_problem(grid, upright))
    return problems


def _grid(part: Part) -> dict[Place, _Spot]:
    kind = shape(part)
    if kind is StitchShape.STRANDS:
        return {} if part.mirror else _strands(part)
    if kind not in (StitchShape.STAGGERED, StitchShape.RECTANGULAR) or part.chart is None:
        return {}
    grid = {}
    for number, row in enumerate(part.chart.rows):
        columns = sorted([*(column for column, _ in row.cells), *row.empty])
        places = {column: index for index, column in enumerate(columns)}
        for cell, (column, letter) in enumerate(row.cells):
            across = places[column] if kind is StitchShape.RECTANGULAR else column
            name = f"row {number + 1} from the top, bead {cell + 1}"
            grid[number, across] = _Spot(letter, name, row.spot(cell))
    return grid


def _strands(part: Part) -> dict[Place, _Spot]:
    return {
        (index, number): _Spot(
            letter,
            f"strand {number + 1}, bead {index + 1}",
            words.spots[index] if words.spots else words.where,
        )
        for number, words in enumerate(part.strands)
        for index, letter in enumerate(words.letters)
    }


def _flip(grid: Mapping[Place, _Spot], axis: int) -> dict[Place, Place]:
    """Each place -> its mirror place; empty where a bead has none."""
    if not grid:
        return {}
    ends = min(place[axis] for place in grid) + max(place[axis] for place in grid)
    mirror = {place: (place[0], ends - place[1]) if axis else (ends - place[0], place[1]) for place in grid}
    return mirror if all(other in grid for other in mirror.values()) else {}


def _odd_pairs(grid: Mapping[Place, _Spot], mirror: Mapping[Place, Place]) -> tuple[Place, ...]:
    """The one pair whose letters differ, the right or lower bead last; () where there are more or none."""
    pairs = [(place, other) for place, other in mirror.items() if place < other]
    odd = [pair for pair in pairs if grid[pair[0]].letter != grid[pair[1]].letter]
    return odd[0] if len(odd) == 1 and len(pairs) >= FEWEST_PAIRS else ()


def _common_last(one: Sequence[Place], other: Sequence[Place]) -> tuple[Place, ...]:
    return tuple(sorted(one, key=lambda place: place in other))


def _problem(grid: Mapping[Place, _Spot], pair: Sequence[Place]) -> Problem:
    mirror, odd = (grid[place] for place in pair)
    values = {"place": odd.name, "letter": odd.letter, "mirror": mirror.letter, "mirror_place": mirror.name}
    return Problem("mirror-bead", odd.where, values)
