"""Bead letters in the order they are picked up -> a word chart such as `6D 2L 1A`."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import groupby


def compress(letters: Iterable[str]) -> str:
    """Runs of equal letters, each with its count; a digit used as a letter stands in brackets: `3(1)`."""
    words = []
    for letter, run in groupby(letters):
        count = sum(1 for _ in run)
        words.append(f"{count}({letter})" if letter.isdigit() else f"{count}{letter}")
    return " ".join(words)
