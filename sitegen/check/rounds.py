"""Pattern -> problems: rounds, tubes and ropes can be worked, and rounds lie flat."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from sitegen.check.spots import half_read, place
from sitegen.check.stitch import StitchShape, shape
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import ChartRow, Part, Pattern
from sitegen.read.faults import counted
from sitegen.trade.beads import bead_kind
from sitegen.trade.rounds import (
    BARE,
    BUCKLE,
    GAPE,
    PEYOTE_GAPE,
    Round,
    Size,
    brick_rounds,
    peyote_bare,
    peyote_rounds,
    rope_arc,
)

TUBES = ("tubular peyote", "tubular brick", "tubular herringbone")
"""Stitches worked in rounds that lie one above the other."""
HOLDS_FINDING = ("circular brick", "tubular brick")
"""Round work whose last round can hold a finding."""
LEAST = 3
"""Beads in a round."""
MOST_OUTER = 12
"""Outer beads in one rope stitch; more would hang too loose on their single pass."""
MOST_GAP = 0.75
"""Thread between two outer beads of a rope, in bead widths; more lies bare. A judgement; no source."""
LEAST_LONG = 2
"""Rounds a tube has at least."""


def rounds(pattern: Pattern, shop: Shop) -> list[Problem]:
    """What parts in rounds, tubes and ropes lack, cannot use or cannot be stitched as."""
    del shop
    return [problem for part in pattern.parts for problem in _part(pattern, part)]


def _part(pattern: Pattern, part: Part) -> Iterator[Problem]:
    form = shape(part)
    if form is None:
        return
    yield from _keys(pattern, part, form)
    yield from _edge(pattern, part)
    if half_read(part) or part.chart is None:
        return
    if form is StitchShape.ROUNDS and "rounds" in part.at:
        problems = [*_growth(part)]
        yield from problems or _flat(pattern, part)
    elif part.stitch in TUBES:
        yield from _tube(pattern, part)
    elif form is StitchShape.ROPE and part.rope is not None:
        yield from _outer(pattern, part)


def _keys(pattern: Pattern, part: Part, form: StitchShape) -> Iterator[Problem]:
    """Keys that are missing, and those that mean nothing here."""
    own = {"rounds": form is StitchShape.ROUNDS, "rope": form is StitchShape.ROPE}
    values = {"name": part.name, "stitch": part.stitch}
    for key, needed in own.items():
        if needed and key not in part.at:
            yield Problem(f"{key}-needed", place(pattern, part.at, "name"), values)
    own["around"] = part.stitch == "circular brick"
    own["repeat"] = form not in (StitchShape.ROUNDS, StitchShape.ROPE)
    for key, used in own.items():
        if key in part.at and not used:
            yield Problem("round-key-needless", place(pattern, part.at, key), {**values, "key": key})
    in_rounds = form in (StitchShape.ROUNDS, StitchShape.ROPE) or part.stitch in TUBES
    if in_rounds and part.stitch not in HOLDS_FINDING and part.hang is not None and part.hang.finding:
        yield Problem("round-no-hold", place(pattern, part.at, "hang"), values)


def _edge(pattern: Pattern, part: Part) -> Iterator[Problem]:
    """Parts that hang from the edge of a tube."""
    source = pattern.part(part.hang.part) if part.hang and part.hang.part else None
    if part.hang is not None and source is not None and source.stitch in TUBES:
        yield Problem("round-no-edge", place(pattern, part.hang.at, "part"), {"name": source.name})


def _growth(part: Part) -> Iterator[Problem]:
    """Rounds too small to be rounds, and rounds that grow or shrink too fast."""
    rows = part.chart.rows if part.chart else ()
    for row in rows:
        if len(row.cells) < LEAST:
            yield Problem("round-few", row.where, {"least": LEAST})
    brick = part.stitch == "circular brick"
    for number, (before, row) in enumerate(pairwise(rows), start=2):
        below, beads = len(before.cells), len(row.cells)
        least = -(-below // 2) if brick else below
        if not least <= beads <= 2 * below:
            values = {"row": number, "beads": beads, "below": below, "least": least, "most": 2 * below}
            yield Problem("round-growth", row.where, values)


def _sizes(pattern: Pattern, row: ChartRow) -> list[Size]:
    """Of the beads that are known."""
    colours = (pattern.colour(letter) for _, letter in row.cells)
    kinds = (bead_kind(colour.bead, pattern.bead_kinds) for colour in colours if colour)
    return [(kind.width_mm, kind.length_mm) for kind in kinds if kind]


def _flat(pattern: Pattern, part: Part) -> Iterator[Problem]:
    """Rounds with too many or too few beads for their circle."""
    rows = part.chart.rows if part.chart else ()
    sizes = [_sizes(pattern, row) for row in rows]
    if any(len(beads) != len(row.cells) for beads, row in zip(sizes, rows, strict=True)):
        return
    gauge = part.gauge or pattern.gauge
    pitch = gauge.height_mm / gauge.rows if gauge else 0.0
    brick = part.stitch == "circular brick"
    ring = part.around.ring_mm if part.around else 0.0
    laid = brick_rounds(sizes, ring, pitch) if brick else peyote_rounds(sizes, pitch)
    thread = [circle.reach_mm for circle in laid] if brick else peyote_bare(laid)
    if brick and not ring:
        thread[0] = 0.0
    for number, (row, circle, bare) in enumerate(zip(rows, laid, thread, strict=True), start=1):
        thinnest = min(width for width, _ in sizes[number - 1])
        found = _fit(circle, bare / thinnest, brick=brick) if number > 1 or ring or not brick else None
        if found:
            yield Problem(found, row.where, _figures(number, circle, brick=brick))


def _fit(circle: Round, bare: float, *, brick: bool) -> str | None:
    """The code of what is wrong with a round; `bare` is its longest thread in bead widths."""
    if bare > BARE:
        return "round-bare"
    if circle.share > (GAPE if brick else PEYOTE_GAPE):
        return "round-gapes"
    return "round-buckles" if circle.share < BUCKLE else None


def _figures(number: int, circle: Round, *, brick: bool) -> dict[str, object]:
    around = circle.room_mm * circle.beads
    return {
        "row": number,
        "beads": circle.beads,
        "around": plain(around, 1),
        "need": plain(circle.bead_mm * circle.beads, 1),
        "best": max(round(around / circle.bead_mm / (1.0 if brick else 2.0)), LEAST),
    }


def _tube(pattern: Pattern, part: Part) -> Iterator[Problem]:
    """Rounds of a tube are all alike, and each other one begins half a bead further."""
    rows = part.chart.rows if part.chart else ()
    if part.begin not in ("bottom", "top"):
        yield Problem("tube-begin", place(pattern, part.at, "begin"), {"stitch": part.stitch})
    if len(part.all_rows) < LEAST_LONG:
        values = {"stitch": part.stitch, "least": LEAST_LONG}
        yield Problem("tube-short", place(pattern, part.at, "name"), values)
    usual, first = len(rows[0].cells), min(row.cells[0][0] for row in rows)
    even = part.stitch == "tubular herringbone"
    for row in rows:
        if len(row.cells) != usual or (not even and row.cells[0][0] - first > 1):
            values = {"beads": counted(len(row.cells), "bead"), "usual": usual}
            yield Problem("tube-row-unlike", row.where, values)
    if usual < LEAST + even or (even and usual % 2):
        values = {"stitch": part.stitch, "beads": usual}
        yield Problem("tube-pairs" if even else "round-few", rows[0].where, {**values, "least": LEAST})


def _outer(pattern: Pattern, part: Part) -> Iterator[Problem]:
    """Outer beads that are too many, or too short to reach past the core beads they lie beside."""
    assert part.rope is not None and part.chart is not None
    sizes = _sizes(pattern, part.chart.rows[0])
    count = len(part.rope.core.letters)
    core, outer = sizes[:count], sizes[count:]
    if len(sizes) != len(part.chart.rows[0].cells):
        return
    high = sum(length for _, length in core)
    thinnest = min(width for width, _ in outer)
    arc = rope_arc(max(width for width, _ in core), high, outer)
    if arc.gap_mm > MOST_GAP * thinnest or len(outer) > MOST_OUTER:
        lengths = plain(sum(length for _, length in outer), 1)
        values = {
            "beads": counted(len(outer), "bead"),
            "mm": lengths,
            "core": plain(high, 1),
            "most": MOST_OUTER,
        }
        yield Problem("rope-outer", place(pattern, part.rope.at, "outer"), values)
