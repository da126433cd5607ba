"""Pattern -> the same pattern seen in a mirror: the second piece of a mirrored pair."""

from __future__ import annotations

from dataclasses import replace

from sitegen.model.source import ChartRow, Part, Pattern, Words

FROM_THE_LEFT = ("looped fringe", "swags", "picot edge", "whipped edge", "strung", "ditch")
"""Stitches whose strands are read from the left, not from the top down."""


def mirrored(pattern: Pattern) -> Pattern | None:
    """Left and right exchanged in every chart and row of strands; None where that changes nothing."""
    parts = tuple(_part(part) for part in pattern.parts)
    same = all(_shape(one) == _shape(other) for one, other in zip(parts, pattern.parts, strict=True))
    return None if same else replace(pattern, parts=parts)


def _shape(part: Part) -> tuple[object, ...]:
    """What a reader sees of a part: its rows from their left edge, and its strands."""
    rows = part.chart.rows if part.chart else ()
    left = min((row.cells[0][0] for row in rows if row.cells), default=0)
    shifted = tuple(tuple((column - left, letter) for column, letter in row.cells) for row in rows)
    return shifted, tuple(strand.letters for strand in part.all_strands)


def _part(part: Part) -> Part:
    if part.rope is not None:  # it winds the same way whichever way it is looked at
        return part
    chart = part.chart
    if chart is not None:
        right = max((row.cells[-1][0] for row in chart.rows if row.cells), default=0)
        chart = replace(chart, rows=tuple(_row(row, right) for row in chart.rows))
    strands = part.all_strands[::-1]
    if part.stitch in FROM_THE_LEFT:
        strands = tuple(_reversed(strand) for strand in strands)
    return replace(
        part,
        chart=chart,
        strands=strands if part.stitch not in ("ditch", "strung") else strands[::-1],
        mirror=False,
        start="left" if part.start == "right" else "right",
    )


def _reversed(words: Words) -> Words:
    """A strand that is read from the left, in a mirror."""
    return replace(words, letters=words.letters[::-1], spots=words.spots[::-1])


def _row(row: ChartRow, right: int) -> ChartRow:
    places = range(len(row.cells))
    return replace(
        row,
        cells=tuple((right - column, letter) for column, letter in reversed(row.cells)),
        empty=tuple(right - column for column in reversed(row.empty)),
        spots=tuple(row.spot(cell) for cell in reversed(places)),
    )
