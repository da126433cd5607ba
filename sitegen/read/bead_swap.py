"""`round 11/0=cylinder 11/0` + a pattern -> the same pattern in other beads."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from sitegen.model.source import Colour, Part, Pattern
from sitegen.trade.beads import bead_kind, bead_kinds_listed
from sitegen.trade.figures import tidy


class SwapRefused(Exception):
    """Words that say no swap of beads; the text says why and what is known."""


def read_swaps(words: Iterable[str], pattern: Pattern) -> dict[str, str]:
    """Bead kind of the pattern -> bead kind to take its place, both as the tables spell them.

    Raises SwapRefused for what is no swap, for a bead that the pattern does not have or that has been swapped
    before, and for one that neither the tables nor the author know.
    """
    own = pattern.bead_kinds
    used = list(dict.fromkeys(_spelled(colour.bead, pattern) for colour in pattern.colours if colour.bead))
    swaps: dict[str, str] = {}
    for text in words:
        old, sign, new = text.partition("=")
        if not sign or not old.strip() or not new.strip():
            raise SwapRefused(
                f'"{text}" is no swap: write "{used[0] if used else "round 11/0"}=cylinder 11/0"'
            )
        name = _spelled(old, pattern)
        if name not in used:
            raise SwapRefused(f'{pattern.name} has no bead "{old.strip()}"; it has {", ".join(used)}')
        if name in swaps:
            raise SwapRefused(f'"{name}" is swapped twice')
        kind = bead_kind(new, own)
        if kind is None:
            raise SwapRefused(f'no bead is called "{new.strip()}"; known are {bead_kinds_listed(own)}')
        swaps[name] = kind.name
    return swaps


def swap_beads(pattern: Pattern, swaps: Mapping[str, str]) -> Pattern:
    """The pattern with other beads, as its author would have written it.

    A swapped colour is no longer the shop's stock. Swatches and the finished size that the author measured
    were made of the former beads; those that hold a swapped bead are left out.
    """
    if not swaps:
        return pattern
    letters = {colour.letter for colour in pattern.colours if _spelled(colour.bead, pattern) in swaps}
    gone = set(swaps) - set(swaps.values())
    return replace(
        pattern,
        colours=tuple(_swapped(colour, pattern, swaps) for colour in pattern.colours),
        parts=tuple(_remeasured(part, letters) for part in pattern.parts),
        gauge=None,
        measured=None,
        bead_kinds={name: kind for name, kind in pattern.bead_kinds.items() if name not in gone},
    )


def _spelled(name: str, pattern: Pattern) -> str:
    """A bead kind as the tables spell it; as written, if they do not know it."""
    kind = bead_kind(name, pattern.bead_kinds)
    return kind.name if kind else tidy(name)


def _swapped(colour: Colour, pattern: Pattern, swaps: Mapping[str, str]) -> Colour:
    new = swaps.get(_spelled(colour.bead, pattern))
    return replace(colour, bead=new, stock=None) if new else colour


def _remeasured(part: Part, letters: set[str]) -> Part:
    rows = part.chart.rows if part.chart else ()
    used = {letter for row in rows for _, letter in row.cells}
    return replace(part, gauge=None) if part.gauge and used & letters else part
