"""Work of beads whose holes lie across -> beads laid in their places, ways through them, and ways in words.

Square stitch and loom work, and peyote's edges (its ways stand in teeth.py): TOP is a bead's left mouth,
BOTTOM its right one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.model.source import ChartRow, Part
from sitegen.model.thread import End, Phrase
from sitegen.trade.threads import parse_thread
from sitegen.weave.grid import Laid, working_order
from sitegen.weave.work import View, Work

ACROSS = 90.0
"""The angle of a hole that lies across."""
STITCHES_ACROSS = ("square", "loom", "peyote")
Pass = tuple[int, End]
"""A bead and the end the needle goes in at."""


def lies_across(work: Work, bead: int) -> bool:
    """Whether a bead belongs to rows of lying beads, end to end or, in peyote, with gaps between."""
    return work.parts[work.beads[bead].part].stitch in STITCHES_ACROSS


def to(view: View, enter: End) -> str:
    """`left` or `right`, as the maker sees it: the way through a lying bead that is entered at that end."""
    return "right" if (enter is End.TOP) is not view.turned else "left"


def thread_mm(work: Work) -> float:
    """The thread's diameter; the check stage has made sure that it is known."""
    thread = parse_thread(work.pattern.thread or work.shop.thread)
    if thread is None:
        raise LookupError(work.pattern.thread)
    return thread.diameter_mm


def places(row: ChartRow) -> list[int]:
    """For each bead of a rectangular row, how many places, empty ones too, stand to its left."""
    columns = sorted([column for column, _ in row.cells] + list(row.empty))
    rank = {column: number for number, column in enumerate(columns)}
    return [rank[column] for column, _ in row.cells]


def lay_across(work: Work, part: Part, between: float) -> Laid:
    """Lay a rectangular chart: holes across, a row as high as its widest bead.

    The pitch along a row is the longest bead and the thread `between` two (mm), unless the author's gauge
    says otherwise.
    """
    rows = part.all_rows
    gauge = part.gauge or work.pattern.gauge
    kinds = [[work.kind(letter) for _, letter in row.cells] for row in rows]
    longest = max(kind.length_mm for row in kinds for kind in row)
    pitch = gauge.width_mm / gauge.beads if gauge else longest + between
    heights = [gauge.height_mm / gauge.rows if gauge else max(kind.width_mm for kind in row) for row in kinds]
    order = working_order(part.begin, len(rows))
    number = {row: index + 1 for index, row in enumerate(order)}
    index = work.begin_part(part, len(rows), sum(heights) / len(heights), pitch)
    first = min(min(places(row)) for row in rows)
    columns: dict[int, int] = {}
    top = 0.0
    for chart_row, row in enumerate(rows):
        middle = top + heights[chart_row] / 2
        beads = []
        for cell, (place, (_, letter)) in enumerate(zip(places(row), row.cells, strict=True)):
            at = ((place - first) * pitch, middle, ACROSS)
            bead = work.lay(index, number[chart_row], cell + 1, (letter, row.spot(cell)), at)
            columns[bead] = place
            work.seats[bead] = chart_row
            beads.append(bead)
        work.rows[index].append(beads)
        top += heights[chart_row]
    return Laid(index, columns, order)


def onward(work: Work, spot: tuple[int, End]) -> Iterator[Pass]:
    """Where a thread that comes out of a lying bead may go in: straight on, or the bead above or below."""
    bead, end = spot
    here = work.beads[bead]
    rows = work.rows[here.part]
    seat = work.seats[bead]
    beside = here.place - 2 if end is End.TOP else here.place
    if 0 <= beside < len(rows[seat]) and work.passes[rows[seat][beside]]:
        yield rows[seat][beside], end.other
    for level in (seat - 1, seat + 1):
        other = _same_column(work, bead, level)
        if other is not None and work.passes[other]:
            yield other, end


def _same_column(work: Work, bead: int, level: int) -> int | None:
    """The bead straight above or below in another row; rows have no gaps."""
    here = work.beads[bead]
    rows = work.rows[here.part]
    if not 0 <= level < len(rows):
        return None
    row = rows[level]
    place = round((here.x - work.beads[row[0]].x) / work.parts[here.part].bead_pitch)
    return row[place] if 0 <= place < len(row) else None


def across_phrases(work: Work, way: Sequence[Pass], view: View) -> tuple[Phrase, ...]:
    """A way in words: a run along a row, or straight through one row after the other, is one sentence."""
    phrases: list[Phrase] = []
    run: list[Pass] = []
    for this in way:
        if run and not _follows(work, run, this):
            phrases.append(_run_phrase(work, run, view))
            run = []
        run.append(this)
    return (*phrases, _run_phrase(work, run, view))


def _follows(work: Work, run: list[Pass], this: Pass) -> bool:
    """Whether a pass goes on in the direction the run has taken."""
    if len(run) > 1 and _along(work, run) is not (work.seats[run[-1][0]] == work.seats[this[0]]):
        return False
    last = work.beads[run[-1][0]]
    bead = work.beads[this[0]]
    return bead.row == last.row or (
        abs(bead.row - last.row) == 1 and _counted(work, run[-1][0]) == _counted(work, this[0])
    )


def _along(work: Work, run: list[Pass]) -> bool:
    return work.seats[run[0][0]] == work.seats[run[-1][0]]


def _counted(work: Work, bead: int, view: View | None = None) -> tuple[str, int]:
    """How a bead of a row is named: its place from the nearer side, of the beads that are there."""
    here = work.beads[bead]
    row = [other for other in work.rows[here.part][work.seats[bead]] if work.passes[other]]
    place = (view or View()).from_left(row).index(bead) + 1
    from_right = len(row) + 1 - place
    return ("left", place) if place <= from_right else ("right", from_right)


def _run_phrase(work: Work, run: list[Pass], view: View) -> Phrase:
    first, last = work.beads[run[0][0]], work.beads[run[-1][0]]
    side, place = _counted(work, run[0][0], view)
    down = (last.y > first.y) is not view.turned
    key = "across-one" if len(run) == 1 else "across-along" if _along(work, run) else "across-column"
    values: dict[str, object] = {
        "way": to(view, run[0][1]),
        "course": "down" if down else "up",
        "side": side,
        "place": place,
        "first": first.row,
        "last": last.row,
        "count": len(run),
    }
    return Phrase(f"{key}-edge" if place == 1 else key, values)
