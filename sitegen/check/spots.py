"""Pattern -> the places of its beads and values: what the checks have in common."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.model.location import Location, Places
from sitegen.model.source import Part, Pattern


def place(pattern: Pattern, at: Places, *keys: str) -> Location:
    """Where the first of these values stands that has a place; else the record, else the file."""
    for key in (*keys, ""):
        if key in at:
            return at[key]
    return Location(pattern.file, 0, 0, 0)


def bead_spots(part: Part) -> Iterator[tuple[str, Location]]:
    """Letter and place of each bead as written in the part's chart and strands, unmirrored, unrepeated."""
    for row in part.chart.rows if part.chart else ():
        for cell, (_, letter) in enumerate(row.cells):
            yield letter, row.spot(cell)
    for words in part.strands:
        for index, letter in enumerate(words.letters):
            yield letter, words.spots[index] if words.spots else words.where


def half_read(part: Part) -> bool:
    """Whether some of the part's beads could not be read, which is a problem noted already."""
    if part.chart is None:
        return ("rows" in part.at) or ("strands" in part.at and not _sound_strands(part))
    return not part.chart.rows or not _sound_strands(part)


def _sound_strands(part: Part) -> bool:
    if not part.strands:
        return "strands" not in part.at
    return all(words.letters for words in part.strands)
