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
from sitegen.publish.blocks import LARGE, LEAST_TEXT, PRINT, SCREEN, ChartSheet, Medium

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
CHART_GROWTH = 1.25
"""A letter of a chart may grow by so much to be read in large print: it then just fills its bead."""
MOST_LARGE_SHEETS = 8
"""More sheets than these cannot be laid together on a table. Own judgement."""
LARGEST_LARGE = 1.5
"""Where there is room, the text of a chart in large print is so many times its smallest size."""


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


IN_PRINT = Cutting((150.0, 182.0), overlap_mm=5.0, mark_mm=MARK_MM)
"""Sheets share two or three rows or columns of beads of size 11/0."""
IN_LARGE_PRINT = Cutting((164.0, 160.0), overlap_mm=2.0, mark_mm=MARK_MM, key_text_mm=LEAST_TEXT[LARGE.name])
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
    return _cut(drawing, uid, least, IN_PRINT, say) or (_whole(drawing, uid, least, scrolls),)


def _large(drawing: Drawing, uid: str, say: Say) -> tuple[ChartSheet, ...]:
    """The chart in large print: as large as its smallest text asks, over a few sheets if it must be.

    Its letters may grow a little in their beads. A chart that would still go over many sheets stands whole on
    one, without the letters that are too small: its rows in words name every bead.
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
    if 0 < len(sheets) <= MOST_LARGE_SHEETS:
        return sheets
    whole = _whole(legible(drawing, wanted / fits), uid, fits, "")
    return (replace(whole, key=Markup(), caption=say("chart.overview")),)


def _cut(drawing: Drawing, uid: str, least: float, cutting: Cutting, say: Say) -> tuple[ChartSheet, ...]:
    """The chart over several sheets at a scale of at least `least`; none where one sheet holds it."""
    wide, high = cutting.room
    cut = tiles(drawing, (wide / least, high / least), cutting.overlap_mm, say, cutting.mark_mm)
    if not cut.keys:
        return ()
    fits = (min(wide / sheet.width_mm, high / sheet.height_mm) for sheet in cut.sheets)
    # sheets are of one size: what room is left makes them easier to read
    scale = min(max(LARGEST_CHART, least), *fits)
    return tuple(
        ChartSheet(
            Markup(sheet.svg(f"{uid}-sheet-{number}", scale)),
            say("chart.scrolls", chart=drawing.title),
            key=Markup(key.svg(f"{uid}-key-{number}", max(1.0, cutting.key_text_mm / smallest_text(key)))),
            caption=say("chart.sheet", number=number, count=len(cut.sheets)),
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
