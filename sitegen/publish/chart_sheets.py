"""A part's chart -> the figures it is shown in: one, or in print as many sheets as its letters need.

On screen a chart too large for its place keeps its size, and its box scrolls.
"""

from __future__ import annotations

from markupsafe import Markup

from sitegen.draw.pens import Drawing
from sitegen.draw.tiles import tiles
from sitegen.model.say import Say
from sitegen.publish.blocks import PRINT, ChartSheet, Medium

LARGEST_CHART = 3.2
"""A chart is drawn this many times its true size where there is room."""
SMALLEST_LETTER = {"print": 5.5 * 25.4 / 72, "screen": 9.0 * 25.4 / 96}
"""The smallest font size of a bead's letter, mm: 5.5 pt on paper, 9 px on a page. Own judgement."""
OPENING_MM = 153.0
"""Height in print that lets a chart stand under its chapter's heading and a few lines of text."""
SHEET_ROOM = (150.0, 182.0)
"""Width and height of a sheet in print, mm; its caption and the key map stand below it."""
OVERLAP_MM = 5.0
"""What two sheets share, in mm of the piece: two or three rows or columns of beads of size 11/0."""


def chart_sheets(
    drawing: Drawing, uid: str, medium: Medium, say: Say, opens: bool = False
) -> tuple[ChartSheet, ...]:
    """The chart as large as its room allows, but no letter smaller than can be read.

    One that `opens` the making is lower in print if that keeps it on the page of the opening words.
    """
    scale = min(LARGEST_CHART, medium.chart[0] / drawing.width_mm, medium.chart[1] / drawing.height_mm)
    letter = smallest_letter(drawing)
    least = min(LARGEST_CHART, SMALLEST_LETTER[medium.name] / letter) if letter else 0.0
    scrolls = say("chart.scrolls", chart=drawing.title)
    lower = OPENING_MM / drawing.height_mm
    if opens and medium is PRINT and least <= lower < scale:
        scale = lower
    if medium is not PRINT or scale >= least:
        return (_whole(drawing, uid, max(scale, least), scrolls),)
    room = (SHEET_ROOM[0] / least, SHEET_ROOM[1] / least)
    cut = tiles(drawing, room, OVERLAP_MM, say)
    if not cut.keys:
        return (_whole(drawing, uid, least, scrolls),)
    fits = (min(SHEET_ROOM[0] / sheet.width_mm, SHEET_ROOM[1] / sheet.height_mm) for sheet in cut.sheets)
    scale = min(LARGEST_CHART, *fits)  # sheets are of one size: what room is left makes them easier to read
    return tuple(
        ChartSheet(
            Markup(sheet.svg(f"{uid}-sheet-{number}", scale)),
            scrolls,
            key=Markup(key.svg(f"{uid}-key-{number}")),
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
