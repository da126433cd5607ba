"""Bead letters -> coloured chips: runs of equal letters, and the colours of each letter's chip."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby

from sitegen.draw.colour import ink_on
from sitegen.model.source import Pattern
from sitegen.publish.blocks import Chip
from sitegen.publish.view import Ink


def inks(pattern: Pattern) -> tuple[Ink, ...]:
    """The chip colours of every letter, and of every letter in each colourway."""
    pairs = [(f"bead-{colour.letter}", colour.hex) for colour in pattern.colours]
    for number, way in enumerate(pattern.colourways, 1):
        for colour in pattern.colours:
            swap = way.swaps.get(colour.letter, colour)
            pairs.append((f"bead-{number}-{colour.letter}", swap.hex))
    return tuple(Ink(selector, fill, ink_on(fill)) for selector, fill in pairs)


def style_sheet(colours: Iterable[Ink]) -> str:
    """The style sheet of a pattern's chips."""
    return "".join(f".{ink.selector} {{ background: {ink.fill}; color: {ink.letter}; }}\n" for ink in colours)


def chip(pattern: Pattern, count: int, letter: str) -> Chip:
    """One run of beads as a chip."""
    colour = pattern.colour(letter)
    return Chip(str(count), letter, colour.name if colour else letter)


def runs(pattern: Pattern, letters: Iterable[str]) -> tuple[Chip, ...]:
    """Letters in order -> a chip for each run of equal ones."""
    return tuple(chip(pattern, len(list(same)), letter) for letter, same in groupby(letters))
