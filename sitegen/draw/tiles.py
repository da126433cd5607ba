"""A drawing larger than its room -> sheets of the room's size that overlap, and a key map of them.

`tiles(drawing, room, overlap, say) -> Tiles`: `room` is (width, height) a sheet may have and `overlap` what
two neighbours share, all in the drawing's own mm (divide by the scale it is shown at). Each of `Tiles.sheets`
is a Drawing no larger than the room, with `Tiles.keys` beside it. A drawing that fits its room is its only
sheet, without a key. Groups of the kinds in `CARRIED` (numbers along the edges) stand on every sheet they
count for.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from sitegen.draw.colour import INK, WHITE
from sitegen.draw.cut import Box, CuttingPen, box_of
from sitegen.draw.pens import BoundsPen, Drawing, Outline, Paint, Recorder, Text, finish
from sitegen.draw.shapes import arrowhead, polygon
from sitegen.model.say import Say

CARRIED = ("row-number", "column-number")
"""Numbers beside a row and above a column; their data `from` and `to` say which stretch they count for."""
RIM_MM = 3.4
"""The largest bead that stays whole at the edge of a sheet."""
MARK_MM = 1.5
"""Font size of the mark that names the next sheet."""
EDGE_MM = 4.6
"""Room at an edge for a mark of that size."""
VEIL = Paint(fill=WHITE, opacity=0.5)
"""Beads that a sheet before shows already lie under this."""
CELL_MM = 5.0
"""The longer side of a sheet in the key map."""
MARGIN_MM = 0.3

Calls = list[tuple[str, tuple[object, ...]]]


@dataclass(frozen=True, slots=True)
class Tiles:
    """The sheets of a drawing, row by row from the top left."""

    sheets: tuple[Drawing, ...]
    keys: tuple[Drawing, ...]
    """For each sheet the map of all with this one marked; empty where one sheet holds everything."""


@dataclass(frozen=True, slots=True)
class _Place:
    """One sheet to be: its window, and where it lies among the others."""

    column: int
    row: int
    window: Box


def tiles(
    drawing: Drawing, room: tuple[float, float], overlap: float, say: Say, mark: float = MARK_MM
) -> Tiles:
    """The drawing on as few sheets as have room for it. ValueError if a room is too small for any sheet.

    `mark` is the font size of the numbers that name the next sheets.
    """
    if drawing.width_mm <= room[0] and drawing.height_mm <= room[1]:
        return Tiles((drawing,), ())
    body, carried = _sorted_out(drawing)
    whole = _bounds(body)
    rim = min(RIM_MM, _largest_bead(body))
    bands = (drawing.width_mm - (whole.right - whole.left), drawing.height_mm - (whole.bottom - whole.top))
    spare = 2 * (rim + EDGE_MM * mark / MARK_MM + MARGIN_MM)
    columns = _stretches(whole.left, whole.right, room[0] - bands[0] - spare, overlap)
    rows = _stretches(whole.top, whole.bottom, room[1] - bands[1] - spare, overlap)
    seen: list[tuple[_Place, CuttingPen]] = []
    for row, (top, bottom) in enumerate(rows):
        for column, (left, right) in enumerate(columns):
            place = _Place(column, row, Box(left, top, right, bottom))
            pen = CuttingPen(place.window, rim)
            _play(body, pen)
            if any(name != "begin" and name != "end" for name, _ in pen.recorder.calls):
                seen.append((place, pen))
    places = [place for place, _ in seen]
    sheets = tuple(
        _sheet(drawing, pen, number, places, (carried, mark, say)) for number, (_, pen) in enumerate(seen, 1)
    )
    return Tiles(sheets, tuple(_key(number, places, say) for number in range(1, len(places) + 1)))


def _sorted_out(drawing: Drawing) -> tuple[Calls, list[Calls]]:
    """The drawing's calls without the groups that are carried, and those groups."""
    body: Calls = []
    carried: list[Calls] = []
    depth = 0
    for call in drawing.calls:
        name, values = call
        if name == "begin" and not depth and values[0] in CARRIED:
            carried.append([])
            depth = 1
        elif depth:
            depth += {"begin": 1, "end": -1}.get(name, 0)
        else:
            body.append(call)
            continue
        carried[-1].append(call)
    return body, carried


def _play(calls: Calls, pen: BoundsPen | CuttingPen) -> None:
    for name, values in calls:
        getattr(pen, name)(*values)


def _bounds(calls: Calls) -> Box:
    pen = BoundsPen()
    _play(calls, pen)
    return Box(pen.left, pen.top, pen.right, pen.bottom)


def _largest_bead(calls: Calls) -> float:
    """The longer side of the largest closed contour that may stay whole."""
    largest = 0.0
    for name, values in calls:
        if name != "shapes":
            continue
        outlines: tuple[Outline, ...] = values[0]  # type: ignore[assignment]
        for outline in outlines:
            box = box_of(outline)
            side = max(box.right - box.left, box.bottom - box.top)
            if outline.closed and largest < side <= RIM_MM:
                largest = side
    return largest


def _stretches(start: float, end: float, room: float, overlap: float) -> list[tuple[float, float]]:
    """Equal stretches that fit the room, neighbours sharing the overlap."""
    if room <= overlap:
        raise ValueError(f"a sheet of {room:.1f} mm has no room beside an overlap of {overlap:.1f} mm")
    count = 1
    while (end - start + (count - 1) * overlap) / count > room:
        count += 1
    size = (end - start + (count - 1) * overlap) / count
    firsts = [start + number * (size - overlap) for number in range(count)]
    return [(first, first + size) for first in firsts]


def _sheet(
    drawing: Drawing, pen: CuttingPen, number: int, places: list[_Place], more: tuple[list[Calls], float, Say]
) -> Drawing:
    """One sheet: what is seen, what sheets before show too under a veil, numbers and edge marks."""
    carried, mark, say = more
    place, recorder = places[number - 1], pen.recorder
    seen = _bounds(recorder.calls)
    before = [other.window for other in places[: number - 1]]
    again = [outline for outline, box in pen.whole if any(window.touches(box) for window in before)]
    if again:
        recorder.begin("shown-before", {})
        recorder.shapes(again, VEIL)
        recorder.end()
    for group in carried:
        _carry(recorder, group, seen, [box for _, box in pen.whole])
    edge = _bounds(recorder.calls)
    for other_number, other in enumerate(places, 1):
        step = (other.column - place.column, other.row - place.row)
        if abs(step[0]) + abs(step[1]) == 1:
            _edge_mark(recorder, (edge, place.window), step, other_number, mark)
    values = {"number": number, "count": len(places), "column": place.column + 1, "row": place.row + 1}
    title = say("drawing.sheet", title=drawing.title, number=number, count=len(places))
    words = say("drawing.sheet-says", about=drawing.description, **values)
    return finish(recorder, title, words, MARGIN_MM, drawing.palette)


def _carry(recorder: Recorder, group: Calls, seen: Box, beads: list[Box]) -> None:
    """A row's or a column's number, moved to the sheet's own edge where the row or column is seen on it."""
    kind, data = group[0][1]
    assert isinstance(data, Mapping)
    start, end, at = (float(data[key]) for key in ("from", "to", "at"))
    own = _bounds(group)
    across = kind == "row-number"
    low, high = (seen.left, seen.right) if across else (seen.top, seen.bottom)
    near, far = (own.left, own.right) if across else (own.top, own.bottom)
    level = any(abs(bead.middle[across] - at) < bead.size[across] / 4 for bead in beads)
    if not level or end <= low or start >= high:
        return
    move = max(0.0, low - far) if far <= start else min(0.0, high - near)
    dx, dy = (move, 0.0) if across else (0.0, move)
    for name, values in group:
        if name == "text":
            (label,) = values
            assert isinstance(label, Text)
            recorder.text(replace(label, x=label.x + dx, y=label.y + dy))
        elif name == "shapes":
            outlines, paint = values
            assert isinstance(outlines, tuple)
            assert isinstance(paint, Paint)
            recorder.shapes([_moved(outline, dx, dy) for outline in outlines], paint)
        else:
            recorder.calls.append((name, values))


def _moved(outline: Outline, dx: float, dy: float) -> Outline:
    segments = (
        tuple(value + (dx, dy)[index % 2] for index, value in enumerate(segment))
        for segment in outline.segments
    )
    return replace(outline, start=(outline.start[0] + dx, outline.start[1] + dy), segments=tuple(segments))


def _edge_mark(
    recorder: Recorder, boxes: tuple[Box, Box], step: tuple[int, int], number: int, size: float
) -> None:
    """In the middle of an edge the framed number of the sheet that goes on there, with an arrow to it.

    `boxes` are what is drawn and the sheet's window.
    """
    edge, window = boxes
    middle = ((window.left + window.right) / 2, (window.top + window.bottom) / 2)
    far = (edge.left, edge.top) if min(step) < 0 else (edge.right, edge.bottom)
    share = size / MARK_MM
    x = far[0] + step[0] * 1.6 * share if step[0] else middle[0]
    y = far[1] + step[1] * 1.6 * share if step[1] else middle[1]
    half = 1.2 * share
    recorder.begin("next-sheet", {"sheet": str(number)})
    frame = polygon([(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)])
    recorder.shapes([frame], Paint(fill=WHITE, stroke=INK, width=0.14 * share))
    recorder.text(Text(x, y, str(number), size, INK, bold=True))
    tip = (x + step[0] * 2.7 * share, y + step[1] * 2.7 * share)
    recorder.shapes([arrowhead(tip, (float(step[0]), float(step[1])), 1.2 * share)], Paint(fill=INK))
    recorder.end()


def _key(number: int, places: list[_Place], say: Say) -> Drawing:
    """All sheets as they lie, numbered; this one is filled."""
    window = places[0].window
    wide, high = window.right - window.left, window.bottom - window.top
    share = CELL_MM / max(wide, high)
    recorder = Recorder()
    for one, place in enumerate(places, 1):
        left, top = place.column * wide * share, place.row * high * share
        right, bottom = left + wide * share, top + high * share
        ground, ink = (INK, WHITE) if one == number else (WHITE, INK)
        frame = polygon([(left, top), (right, top), (right, bottom), (left, bottom)])
        recorder.shapes([frame], Paint(fill=ground, stroke=INK, width=0.16))
        size = min(2.4, 0.5 * min(wide, high) * share)
        recorder.text(Text((left + right) / 2, (top + bottom) / 2, str(one), size, ink, bold=True))
    words = say("drawing.key-map-says", number=number, count=len(places))
    return finish(recorder, say("drawing.key-map"), words, MARGIN_MM)
