"""A piece -> the charts and word charts of its one-page summary, as large as leaves all of it on one page.

How high the words beside the charts will stand is reckoned from their number. A piece that has too much for
one page goes on to the next: no letter of a chart is smaller than elsewhere in print.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from sitegen.draw.pens import Drawing
from sitegen.publish import materials
from sitegen.publish.blocks import SUMMARY, ChartBlock, WordRow
from sitegen.publish.chart_sheets import LARGEST_CHART, SMALLEST_LETTER, smallest_letter
from sitegen.publish.making import chart_block
from sitegen.publish.piece import Piece

PAGE_MM = (186.0, 245.0)
"""What `print-summary.css` leaves of the page."""
HEAD_MM = 36.0
"""The title and its line, and the headings and gaps of the rest."""
LINE_MM, SMALL_LINE_MM = 4.5, 2.95
"""Height of a line in the tables, and in the small print at the foot."""
SMALL_LETTERS = 178
"""Letters on a line of the small print."""
SUPPLY_LETTERS = 48
"""Letters on a line about thread, needle and findings."""
WORDS_MM = 68.0
"""Room for the beads of a word chart's line in one of the two columns."""
WIDE_WORDS_MM = 160.0
"""The same where a single line has the whole width."""
RUN_MM, WAY_MM = 7.2, 18.0
"""What a run of beads and the side a row begins at take of it."""
TABLE_MM = 9.0
"""Its caption and the heads of its columns."""
LEFT_OVER = 2
"""So few last rows of a word chart stay in its column."""
COLUMN_MM = 215.0
"""The highest column of word charts."""
GAP_MM = 7.5
"""Between charts, and the height of a caption under them."""
GOES_ON_MM = 6.0
"""The line that says on which page the words are."""
WORDS = "in-words"
"""Where they then stand."""
FINER = 0.97
"""Charts are made smaller by this until they have room."""


def summary_blocks(piece: Piece) -> tuple[ChartBlock, ...]:
    """Each part's chart with its rows in words; of a mirrored pair both pieces' charts."""
    both = [(piece, "")] + ([(piece.second, "second-")] if piece.second else [])
    charts = [
        (one, index, chart, prefix)
        for one, prefix in both
        for index, chart in enumerate(one.charts)
        if chart is not None
    ]
    made = [chart_block(one, index, chart, SUMMARY, prefix) for one, index, chart, prefix in charts]
    drawn = [chart for _, _, chart, _ in charts]
    first_page = PAGE_MM[1] - HEAD_MM - _materials_mm(piece)
    room = first_page - _words_mm(made) - _small_print_mm(piece)
    scale, apart = _scale(drawn, room), ""
    if _stacked_mm(drawn, scale) > room:
        scale, apart = _scale(drawn, first_page - GOES_ON_MM), WORDS
    cut = _stacked_mm(drawn, scale) > first_page - GOES_ON_MM  # over sheets that stand side by side
    low = (PAGE_MM[0], first_page - GOES_ON_MM - GAP_MM)
    shown = [(chart.width_mm * scale, chart.height_mm * scale) for chart in drawn]
    rooms = [low if cut and room[1] > low[1] else room for room in shown]
    blocks = (
        chart_block(one, index, chart, replace(SUMMARY, chart=room), prefix)
        for (one, index, chart, prefix), room in zip(charts, rooms, strict=True)
    )
    return tuple(replace(block, apart=apart) for block in blocks)


def _scale(charts: Sequence[Drawing], room_mm: float) -> float:
    """The largest scale at which all charts, side by side where they fit, have room; or the least to read."""
    letters = [letter for letter in map(smallest_letter, charts) if letter]
    least = SMALLEST_LETTER[SUMMARY.name] / min(letters) if letters else 1.0
    widest = max((chart.width_mm for chart in charts), default=1.0)
    scale = min(LARGEST_CHART, PAGE_MM[0] / widest)
    while scale * FINER >= least and _stacked_mm(charts, scale) > room_mm:
        scale *= FINER
    return scale


def _stacked_mm(charts: Sequence[Drawing], scale: float) -> float:
    """Height of the charts in lines as wide as the page."""
    return sum(max(chart.height_mm for chart in line) * scale + GAP_MM for line in _lines(charts, scale))


def _lines(charts: Sequence[Drawing], scale: float) -> Iterator[list[Drawing]]:
    line: list[Drawing] = []
    taken = 0.0
    for chart in charts:
        wide = chart.width_mm * scale + GAP_MM
        if line and taken + wide > PAGE_MM[0] + GAP_MM:
            yield line
            line, taken = [], 0.0
        line.append(chart)
        taken += wide
    yield line


def _materials_mm(piece: Piece) -> float:
    """Height of the bead list and, beside it, of needle, thread and findings."""
    told = [len(f"{fact.value} {fact.also}") for fact in materials.supplies(piece)]
    supplies = sum(math.ceil(letters / SUPPLY_LETTERS) for letters in told)
    return LINE_MM * max(len(piece.measures.beads) + 1, supplies)


def _words_mm(blocks: Sequence[ChartBlock]) -> float:
    """Height of the word charts in two columns: half of all, or the longest row."""
    lines = [row for block in blocks for row in block.rows]
    if len(lines) == 1:
        return TABLE_MM + _row_mm(lines[0], WIDE_WORDS_MM)
    rows = [_row_mm(row) for row in lines]
    return max((TABLE_MM * (len(blocks) + 1) + sum(rows)) / 2, TABLE_MM + max(rows, default=0.0))


def _row_mm(row: WordRow, room_mm: float = WORDS_MM) -> float:
    return LINE_MM * math.ceil((len(row.runs) * RUN_MM + WAY_MM * bool(row.way)) / room_mm)


def word_columns(blocks: Sequence[ChartBlock]) -> tuple[tuple[tuple[ChartBlock, ...], ...], ...]:
    """The word charts in pairs of columns alike in height, none higher than a page."""
    pairs = math.ceil(_words_mm(blocks) / COLUMN_MM)
    most = _words_mm(blocks) / pairs
    columns: list[list[ChartBlock]] = [[]]
    taken = 0.0
    for block in blocks:
        rows: list[WordRow] = []
        taken += TABLE_MM
        for place, row in enumerate(block.rows):
            full = taken + _row_mm(row) > most and len(block.rows) - place > LEFT_OVER
            if full and len(columns) < 2 * pairs and (rows or columns[-1]):
                columns[-1] += [replace(block, rows=tuple(rows))] if rows else []
                columns.append([])
                rows, taken = [], TABLE_MM
            rows.append(row)
            taken += _row_mm(row)
        columns[-1].append(replace(block, rows=tuple(rows)))
    whole = [tuple(column) for column in columns]
    return tuple(tuple(whole[first : first + 2]) for first in range(0, len(whole), 2))


def _small_print_mm(piece: Piece) -> float:
    """Height of cautions and licence."""
    cautions = sum(len(f"{fact.label}. {fact.value} ") for fact in materials.cautions(piece))
    licence = len(piece.shop.licence)
    return SMALL_LINE_MM * (2 + math.ceil(cautions / SMALL_LETTERS) + math.ceil(licence / SMALL_LETTERS))
