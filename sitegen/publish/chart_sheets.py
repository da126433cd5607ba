"""A part's chart -> the figures it is shown in: one, or in print as many sheets as its letters need.

On screen a chart too large for its place keeps its size, and its box scrolls.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from markupsafe import Markup

from sitegen.draw.legible import legible, smallest_text
from sitegen.draw.pens import Drawing
from sitegen.draw.tiles import MARK_MM, tiles
from sitegen.model.say import Say
from sitegen.publish.blocks import LARGE, LEAST_TEXT, PRINT, SCREEN, SUMMARY, ChartSheet, Medium

LARGEST_CHART = 3.2
"""A chart is drawn this many times its true size where there is room; in large print as its text asks."""
SMALLEST_LETTER = {
    "print": 5.5 * 25.4 / 72,
    "summary": 5.5 * 25.4 / 72,
    "screen": 9.0 * 25.4 / 96,
    **LEAST_TEXT,
}
"""The smallest font size of a bead's letter, mm: 5.5 pt on paper, 9 px on a page. Own judgement. In large
print that of any text of the chart."""
OPENING_MM = 153.0
"""Height in print that lets a chart stand under its chapter's heading and a few lines of text."""
KEY_MM = 20.0
"""What the map of the sheets and its words take of it."""
CHART_GROWTH = 1.25
"""A letter of a chart may grow by so much to be read in large print: it then just fills its bead."""
MOST_LARGE_SHEETS = 24
"""In large print a chart may go over so many sheets. Own judgement: over more one turns more than works."""
FEWEST_BEADS = 12
"""A sheet with fewer beads than these tells less than the same beads in words, which take less room. Own
judgement."""
OVERVIEW_SHEETS = 3
"""A chart over so many sheets or more is first shown whole, without the letters that are too small."""
OVERVIEW_MM = 110.0
"""Height of an overview: it then has room under its heading and a few lines of text."""
LARGEST_LARGE = 1.5
"""Where there is room, the text of a chart in large print is so many times its smallest size."""


TRIES = 6
"""Numbers and marks may stand a little beyond the room of a sheet; so often it is made smaller for them."""
NEXT = "chart.sheet-next"
"""The caption of every other sheet."""


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a chart too large for one sheet of print is cut."""

    room: tuple[float, float]
    """Width and height of a sheet, mm; its caption and the key map stand below it."""
    overlap_mm: float
    """What two sheets share, in mm of the piece."""
    mark_mm: float
    """Font size of the numbers of the sheets that go on beyond an edge, in mm of the piece."""
    key_text_mm: float = 0.0
    """The smallest font size of the key map; 0 leaves it as it is drawn."""
    largest: float = LARGEST_CHART
    """Sheets that have room are shown so many times their true size, unless their letters need more."""
    first: str = "chart.sheet"
    """The caption of the first sheet: it explains the marks of all."""


IN_PRINT = Cutting((150.0, 182.0), overlap_mm=5.0, mark_mm=MARK_MM)
"""Sheets share two or three rows or columns of beads of size 11/0."""
IN_LARGE_PRINT = Cutting((174.0, 160.0), overlap_mm=2.0, mark_mm=MARK_MM, key_text_mm=LEAST_TEXT[LARGE.name])
"""Sheets of so few beads share one row or column, and their marks are no larger than the chart's numbers."""


def chart_sheets(
    drawing: Drawing, uid: str, medium: Medium, say: Say, opens: bool = False
) -> tuple[ChartSheet, ...]:
    """The chart as large as its room allows, but no letter smaller than can be read.

    One that `opens` the making is lower in print if that keeps it on the page of the opening words.
    """
    if medium is LARGE:
        return _large(drawing, uid, say)
    scale = min(LARGEST_CHART, medium.chart[0] / drawing.width_mm, medium.chart[1] / drawing.height_mm)
    letter = smallest_letter(drawing)
    least = min(LARGEST_CHART, SMALLEST_LETTER[medium.name] / letter) if letter else 0.0
    scrolls = say("chart.scrolls", chart=drawing.title)
    lower = OPENING_MM / drawing.height_mm
    if opens and medium is PRINT and least <= lower < scale:
        scale = lower
    if medium is SCREEN or scale >= least:
        return (_whole(drawing, uid, max(scale, least), scrolls),)
    cutting = replace(IN_PRINT, room=(IN_PRINT.room[0], OPENING_MM - KEY_MM)) if opens else IN_PRINT
    if medium.name == SUMMARY.name:
        cutting = replace(IN_PRINT, room=medium.chart, largest=0.0, first=NEXT)  # side by side, so no larger
    return _cut(drawing, uid, least, cutting, say) or (_whole(drawing, uid, least, scrolls),)


def _large(drawing: Drawing, uid: str, say: Say) -> tuple[ChartSheet, ...]:
    """The chart in large print: as large as its smallest text asks, over a few sheets if it must be.

    Its letters may grow a little in their beads. One that goes over more than a few sheets is shown whole
    before them, without the letters that are too small; one that would go over very many, or that leaves its
    sheets nearly empty as a ring does, is shown so alone: its rows in words name every bead.
    """
    wanted = LEAST_TEXT[LARGE.name]
    least = wanted / (smallest_text(drawing) or wanted)
    fits = min(LARGE.chart[0] / drawing.width_mm, LARGE.chart[1] / drawing.height_mm)
    if fits * CHART_GROWTH >= least:
        scale = min(fits, LARGEST_LARGE * least)
        return (_whole(legible(drawing, wanted / scale), uid, scale, ""),)
    least /= CHART_GROWTH
    cutting = replace(IN_LARGE_PRINT, mark_mm=wanted / least)
    sheets = _cut(legible(drawing, wanted / least), uid, least, cutting, say)
    if 0 < len(sheets) < OVERVIEW_SHEETS:
        return sheets
    fits = min(fits, OVERVIEW_MM / drawing.height_mm)
    whole = replace(_whole(legible(drawing, wanted / fits), uid, fits, ""), key=Markup())
    if 0 < len(sheets) <= MOST_LARGE_SHEETS and _beads(drawing) >= FEWEST_BEADS * len(sheets):
        return (replace(whole, caption=say("chart.overview-first", count=len(sheets))), *sheets)
    return (replace(whole, caption=say("chart.overview")),)


def _beads(drawing: Drawing) -> int:
    """How many beads have a letter in a chart."""
    marks = [values[0] for name, values in drawing.calls if name == "letters"]
    return sum(len(one) for one in marks if isinstance(one, tuple))


def _cut(drawing: Drawing, uid: str, least: float, cutting: Cutting, say: Say) -> tuple[ChartSheet, ...]:
    """The chart over several sheets at a scale of at least `least`; none where one sheet holds it."""
    wide, high = cutting.room
    across, down = wide / least, high / least
    for _ in range(TRIES):
        cut = tiles(drawing, (across, down), cutting.overlap_mm, say, cutting.mark_mm)
        if not cut.keys:
            return ()
        spill = [max(1.0, max(sheet.width_mm for sheet in cut.sheets) * least / wide)]
        spill.append(max(1.0, max(sheet.height_mm for sheet in cut.sheets) * least / high))
        if spill == [1.0, 1.0]:
            break
        across, down = across / spill[0], down / spill[1]
    fits = (min(wide / sheet.width_mm, high / sheet.height_mm) for sheet in cut.sheets)
    # sheets are of one size: what room is left makes them easier to read
    scale = min(max(cutting.largest, least), *fits)
    return tuple(
        ChartSheet(
            Markup(sheet.svg(f"{uid}-sheet-{number}", scale)),
            say("chart.scrolls", chart=drawing.title),
            key=Markup(key.svg(f"{uid}-key-{number}", max(1.0, cutting.key_text_mm / smallest_text(key)))),
            caption=say(cutting.first if number == 1 else NEXT, number=number, count=len(cut.sheets)),
            height_mm=sheet.height_mm * scale,
        )
        for number, (sheet, key) in enumerate(zip(cut.sheets, cut.keys, strict=True), 1)
    )


def _whole(drawing: Drawing, uid: str, scale: float, scrolls: str) -> ChartSheet:
    """A chart on one sheet."""
    return ChartSheet(Markup(drawing.svg(uid, scale)), scrolls, height_mm=drawing.height_mm * scale)


def smallest_letter(drawing: Drawing) -> float:
    """The smallest font size of the letters of its beads, mm; 0 for a drawing without."""
    sizes = [values[1] for name, values in drawing.calls if name == "letters"]
    return min((size for size in sizes if isinstance(size, float)), default=0.0)
