"""Beads that hang from, or lie on, an earlier part -> what they read like, against what was written.

The needle's own reading of fringes, edgings, strings and beads sewn on top; it knows nothing of how they
were made.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from sitegen.model.source import Part
from sitegen.model.thread import Bead

Reading = tuple[list[str], list[str]]
"""As it hangs, and as written."""
MOST_STRUNG = 5_000
"""As many beads as one word chart may have: a string hangs on its thread alone."""
HELD_OPEN: Mapping[str, int] = {
    "looped fringe": MOST_STRUNG,  # each loop is one string, held at both ends
    "swags": MOST_STRUNG,
    "twisted fringe": MOST_STRUNG,
    "strung": MOST_STRUNG,  # held at both clasps, where the thread returns
    "picot edge": 5,  # a whole little picot on bead holes; on bridges the stems are passed twice
    "ditch": 1,  # each bead lies between two beads of its row
}
"""How many beads in a row may hang on one pass between two that are held, by stitch."""


def _left_to_right(beads: Sequence[Bead]) -> str:
    return "".join(bead.letter for bead in sorted(beads, key=lambda bead: bead.x))


def _by_row(beads: Sequence[Bead]) -> list[list[Bead]]:
    rows: dict[int, list[Bead]] = {}
    for bead in beads:
        rows.setdefault(bead.row, []).append(bead)
    return list(rows.values())


def _written(part: Part) -> list[str]:
    return ["".join(words.letters) for words in part.all_strands]


def _loops(beads: Sequence[Bead], part: Part) -> Reading:
    """Loop after loop from the left, each followed from its left end; each bead touches the one before."""
    loops = sorted(
        (sorted(loop, key=lambda bead: bead.place) for loop in _by_row(beads)), key=lambda loop: loop[0].x
    )
    read = []
    for loop in loops:
        ends_right = loop[-1].x >= loop[0].x - 1e-6
        read.append("".join(bead.letter for bead in loop) if ends_right and _touching(loop) else "apart")
    return read, _written(part)


def _touching(string: Sequence[Bead]) -> bool:
    """Whether the beads follow each other along a line without sitting inside each other or far apart."""
    for one, other in pairwise(string):
        gap = ((one.x - other.x) ** 2 + (one.y - other.y) ** 2) ** 0.5
        half = (one.length + other.length) / 2
        if not 0.6 * half <= gap <= 1.6 * half + 0.4 * (one.width + other.width) / 2:
            return False
    return True


def _picots(beads: Sequence[Bead], part: Part) -> Reading:
    """On bridges the picots share their stems: one line of beads, the stems upright in it; on bead holes they
    are little loops."""
    if part.hang is not None and part.hang.points == "beads":
        return _loops(beads, part)
    written = _written(part)
    stems = [bead for bead in beads if bead.angle % 180 == 0]
    ends = written[0][0] + "".join(picot[-1] for picot in written)
    whole = written[0] + "".join(picot[1:] for picot in written[1:])
    return [_left_to_right(stems), _left_to_right(beads)], [ends, whole]


def _edge(beads: Sequence[Bead], part: Part) -> Reading:
    return [_left_to_right(beads)], ["".join(_written(part))]


def _covers(beads: Sequence[Bead], part: Part) -> Reading:
    """Rows of beads on top, from the top row down."""
    rows = sorted(_by_row(beads), key=lambda row: sum(bead.y for bead in row) / len(row))
    return [_left_to_right(row) for row in rows], _written(part)


def _string(beads: Sequence[Bead], part: Part) -> Reading:
    """The beads in order round from the clasp, each touching the one before it."""
    order = sorted(beads, key=lambda bead: bead.place)
    return ["".join(bead.letter for bead in order) if _touching(order) else "apart"], _written(part)


READ_HUNG: Mapping[str, Callable[[Sequence[Bead], Part], Reading]] = {
    "looped fringe": _loops,
    "swags": _loops,
    "picot edge": _picots,
    "whipped edge": _edge,
    "ditch": _covers,
    "strung": _string,
}
"""Stitches whose beads are not read as rows of a chart or as strands from the top down."""
