"""Code, place and values -> the growing list of problems of one source."""

from __future__ import annotations

import difflib
from collections.abc import Iterable

from sitegen.model.location import Location
from sitegen.model.problem import Problem


class Faults:
    """Collects the problems of one source while it is read."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []

    def add(self, code: str, where: Location, **values: object) -> None:
        """Note one more problem; `values` fill the braces of the code's sentences."""
        self.problems.append(Problem(code, where, values))


def hint(name: str, known: Iterable[str], listed: str = "") -> str:
    """A sentence that offers the nearest of the known names, or all of them (as `listed`, if given)."""
    names = list(known)
    by_lower = {candidate.lower(): candidate for candidate in reversed(names)}
    near = difflib.get_close_matches(name[:60].lower(), list(by_lower), n=1, cutoff=0.6)
    if near:
        return f"Did you mean `{by_lower[near[0]]}`?"
    if not names:
        return "There is none to choose from yet."
    return f"Choose from: {listed or ', '.join(names)}."


def counted(count: int, noun: str) -> str:
    """`1 bead`, `2 beads`."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
