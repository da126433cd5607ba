"""Random charts of herringbone, right-angle weave and netting, and what holds for all of their paths."""

from __future__ import annotations

from collections import Counter

from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.measure import measure
from sitegen.measure.thread import move_lengths
from sitegen.model.codes import CODES
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import MoveKind, ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave
from sitegen.weave.needle import REACH

HEADER = """---
title: Sample
summary: A sample.
makes: one piece
revision: 1
price: free
thread: nylon 0.15 mm
colours:
  A: {bead: round 11/0, name: dark, hex: "#1f4d3a"}
  B: {bead: round 11/0, name: light, hex: "#c9d6a3"}
  C: {bead: cylinder 11/0, name: warm, hex: "#c0603a"}
parts:
  - name: Piece
"""
LETTERS = st.sampled_from("ABC")
TURNS = str.maketrans("AB", "BA")


def source(chart: str, keys: str) -> tuple[Pattern | None, list[str]]:
    """A pattern of one part and the faults of reading and checking it."""
    lines = "".join(f"    {line}\n" for line in keys.splitlines())
    text = f"{HEADER}{lines}---\n\n```chart Piece\n{chart}\n```\n"
    pattern, problems = read_pattern(text, "sample.md", Shop())
    found = [*problems, *(check_pattern(pattern, Shop()) if pattern else [])]
    unused = {"letter-unused", "colour-unused"}
    return pattern, [
        problem.code
        for problem in found
        if CODES[problem.code].severity is Severity.FAULT and problem.code not in unused
    ]


def path_of(chart: str, keys: str) -> tuple[Pattern, ThreadPath]:
    """The woven sample, which must have no fault and to which the needle must not object."""
    pattern, faults = source(chart, keys)
    assert pattern is not None
    assert faults == []
    path, problems = weave(pattern, Shop())
    assert problems == []
    assert path is not None
    return pattern, path


def passes(path: ThreadPath) -> Counter[int]:
    """How often the thread goes through each bead, by its index."""
    return Counter(move.bead for move in path.moves if move.kind in (MoveKind.PICK, MoveKind.THROUGH))


def assert_sound(chart: str, keys: str) -> ThreadPath:
    """What holds for every path, the needle's proof apart.

    Thread lies between the sum of all holes passed and the same with the longest bare way after each move;
    colours that swap their letters change no measure.
    """
    pattern, path = path_of(chart, keys)
    picked = [move.bead for move in path.moves if move.kind is MoveKind.PICK]
    assert sorted(picked) == list(range(len(path.beads)))
    holes = sum(path.beads[bead].length * count for bead, count in passes(path).items())
    thread = sum(move_lengths(path, 0.15))
    widest = max(bead.width for bead in path.beads)
    assert holes <= thread <= holes + len(path.moves) * REACH * widest
    other, renamed = path_of(chart.translate(TURNS), keys)
    one, two = measure(path, pattern, Shop()), measure(renamed, other, Shop())
    assert one.thread == two.thread
    assert one.passes == two.passes
    assert (one.width_mm, one.height_mm, one.weight_g) == (two.width_mm, two.height_mm, two.weight_g)
    return path


def mirrored(chart: str) -> str:
    """The chart's mirror image."""
    width = max(map(len, chart.splitlines()))
    return "\n".join(line.ljust(width)[::-1].rstrip() for line in chart.splitlines())


def mirror_moves(path: ThreadPath, *, mirror: bool) -> list[tuple[object, ...]]:
    """The moves by row, height, way from the middle line and end, as they are or as a mirror shows them."""
    middle = (min(bead.x for bead in path.beads) + max(bead.x for bead in path.beads)) / 2
    sign = -1 if mirror else 1
    moves: list[tuple[object, ...]] = []
    for move in path.moves:
        if move.bead < 0:
            continue
        bead = path.beads[move.bead]
        across = abs(bead.angle % 180 - 90) < 1e-6
        end = move.enter.other if mirror and across else move.enter
        moves.append((move.kind, bead.row, round(bead.y, 4), round(sign * (bead.x - middle), 4) + 0.0, end))
    return moves


@st.composite
def pair_charts(draw: st.DrawFn, begin: str = "bottom", base: int = 1) -> str:
    """Herringbone of 1 to 4 pairs at the base and up to 8 rows, growing where it may."""
    columns = [f"{n}{side}" for n in range(draw(st.integers(1, 4))) for side in "lr"]
    rows = [list(columns)] * base
    grown = True
    for number in range(draw(st.integers(0, 7))):
        grows = not grown and len(columns) > 2 and draw(st.booleans())
        if grows:
            at = 2 * draw(st.integers(1, len(columns) // 2 - 1))
            columns[at:at] = [f"g{number}l", f"g{number}r"]
        rows.append(list(columns))
        grown = grows
    lines = ["".join(draw(LETTERS) if column in row else "." for column in columns) for row in rows]
    return "\n".join(lines if begin == "top" else lines[::-1])


@st.composite
def square_charts(draw: st.DrawFn) -> str:
    """Right-angle weave of up to 6 by 6 squares."""
    wide, high = draw(st.integers(1, 6)), draw(st.integers(1, 6))
    lines = []
    for line in range(2 * high + 1):
        if line % 2:
            lines.append(" ".join(draw(LETTERS) for _ in range(wide + 1)))
        else:
            lines.append("." + ".".join(draw(LETTERS) for _ in range(wide)) + ".")
    return "\n".join(lines)


@st.composite
def net_charts(draw: st.DrawFn) -> tuple[int, str]:
    """(beads in a net, chart) of 3, 5 or 7 half nets across and up to 6 rows, beginning at either side."""
    net = draw(st.sampled_from((3, 5, 7)))
    pitch, wide = (net + 1) // 2, draw(st.sampled_from((3, 5, 7)))
    high, phase = draw(st.integers(3, 6)), draw(st.integers(0, 1))
    lines = []
    for line in range(high * pitch + 1):
        level, inside = divmod(line, pitch)
        places = {
            column * pitch + step * inside
            for column in range((level + phase) % 2, wide + 1, 2)
            for step in ((-1, 1) if inside else (0,))
            if 0 <= column + step <= wide
        }
        signs = (draw(LETTERS) if place in places else " " for place in range(wide * pitch + 1))
        lines.append("".join(signs).rstrip())
    return net, "\n".join(lines)
