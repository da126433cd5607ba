"""Rows of a step table -> the words that several strips in a row share, printed once before them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from sitegen.publish.table import TableRow

BLOCK = 20
"""So many strips may follow one printing of their words: about a page of them."""
REST = 10
"""So many or fewer that are left over stand in the block before."""
ENOUGH = 3
"""So many rows of a block must have the same words for these to stand before it."""


@dataclass(frozen=True, slots=True)
class SharedWords:
    """Words that stand before the first of the rows they are for."""

    rows: tuple[int, ...]
    """Numbers of the rows, in order."""
    sentences: tuple[str, ...]
    see: str


def shared_words(rows: Sequence[TableRow]) -> dict[int, tuple[SharedWords, ...]]:
    """Number of a table row -> what stands before it."""
    found: dict[int, tuple[SharedWords, ...]] = {}
    for block in _blocks(rows):
        said: dict[tuple[tuple[str, ...], str], list[int]] = {}
        for row in block:
            said.setdefault((row.sentences, row.see), []).append(row.number)
        words = tuple(SharedWords(tuple(own), *key) for key, own in said.items() if len(own) >= ENOUGH)
        if words:
            found[block[0].number] = words
    return found


def _blocks(rows: Sequence[TableRow]) -> Iterator[list[TableRow]]:
    """Strips that follow each other."""
    for strips, run in groupby(rows, key=lambda row: bool(row.see)):
        left = list(run) if strips else []
        while left:
            most = len(left) if len(left) <= BLOCK + REST else BLOCK
            yield left[:most]
            left = left[most:]
