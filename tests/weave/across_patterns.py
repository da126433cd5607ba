"""Rectangular patterns for the tests of square stitch and loom work, and what holds for all of them."""

from __future__ import annotations

from collections import Counter

from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.check.tell import severity
from sitegen.measure import measure
from sitegen.model.location import NOWHERE
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Makes, Part, Pattern
from sitegen.model.thread import MoveKind, ThreadPath

LETTERS = "ABC"
COLOURS = tuple(Colour(letter, "round 11/0", letter, "#112233") for letter in LETTERS)


def pattern_of(rows: list[str], stitch: str, **keys: object) -> Pattern:
    """A pattern of one part; each row a text with `.` for an empty place."""
    chart = Chart("Piece", tuple(_row(row, number) for number, row in enumerate(rows)))
    part = Part("Piece", stitch, chart=chart, at={"": NOWHERE, "name": NOWHERE}, **keys)  # type: ignore[arg-type]
    return Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, (part,), thread="nylon 0.15 mm")


def _row(row: str, number: int) -> ChartRow:
    cells = tuple((column, sign) for column, sign in enumerate(row) if sign != ".")
    where = NOWHERE.__class__("p.md", number + 1, cells[0][0] + 1)
    empty = tuple(column for column, sign in enumerate(row) if sign == ".")
    return ChartRow(cells, where, empty)


@st.composite
def rectangles(draw: st.DrawFn) -> list[str]:
    """Full rows, all of one width."""
    width = draw(st.integers(1, 8))
    rows = draw(st.integers(1, 6))
    return ["".join(draw(st.sampled_from(LETTERS)) for _ in range(width)) for _ in range(rows)]


@st.composite
def stepped(draw: st.DrawFn) -> list[str]:
    """Rows that step in and out by up to three at either edge, each width kept for two rows or three."""
    spans = []
    left, right = 8, 8 + draw(st.integers(0, 6))
    for _ in range(draw(st.integers(1, 5))):
        spans += [(left, right)] * draw(st.integers(2, 3))
        before = (left, right)
        left = max(0, left + draw(st.integers(-3, 3)))
        right = min(24, right + draw(st.integers(-3, 3)))
        if left > min(right, before[1]) or right < before[0]:
            break
    return [
        "." * first
        + "".join(draw(st.sampled_from(LETTERS)) for _ in range(past - first + 1))
        + "." * (24 - past)
        for first, past in spans
    ]


def mirrored(rows: list[str]) -> list[str]:
    """Left and right exchanged."""
    return [row[::-1] for row in rows]


def faults(pattern: Pattern) -> set[str]:
    """The codes of what makes a pattern impossible to weave."""
    return {problem.code for problem in check_pattern(pattern, Shop()) if severity(problem) is Severity.FAULT}


def passes(path: ThreadPath) -> Counter[int]:
    """How often the thread goes through each bead."""
    return Counter(move.bead for move in path.moves if move.bead >= 0)


def trail(path: ThreadPath, flip: bool = False) -> list[tuple[object, ...]]:
    """The path as places and ways, a mirror's exchanged if asked: what mirrored charts share."""
    columns = [round(bead.x, 4) for bead in path.beads]
    last = max(columns) + min(columns)
    found: list[tuple[object, ...]] = []
    for move in path.moves:
        if move.bead < 0:
            found.append((move.kind.value,))
            continue
        bead = path.beads[move.bead]
        x = round(last - bead.x if flip else bead.x, 3)
        found.append((move.kind.value, x, round(bead.y, 3), move.enter ^ 1 if flip else int(move.enter)))
    return found


def thread_bounds(path: ThreadPath, pattern: Pattern) -> tuple[float, float, float]:
    """The least a path can be, what it is, and the most: every move goes one bead's height or one pitch on.

    Lower: the lengths of all holes passed. Upper: besides, a diameter or a pitch for each move.
    """
    shop = Shop(slack=1.0)
    holes = sum(path.beads[move.bead].length for move in path.moves if move.bead >= 0)
    gap = max(max(bead.width for bead in path.beads), path.parts[0].bead_pitch)
    measures = measure(path, pattern, shop)
    return holes, measures.thread.path_mm, holes + gap * len(path.moves)


def picked_once(path: ThreadPath) -> bool:
    """Whether each bead is picked up exactly once."""
    picks = [move.bead for move in path.moves if move.kind is MoveKind.PICK]
    return sorted(picks) == list(range(len(path.beads)))
