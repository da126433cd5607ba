"""ThreadPath + measures -> advice about the design: what can be made but may wear, hang or hold badly."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import pairwise

from sitegen.measure.tools import kind_of, tools
from sitegen.model.location import NOWHERE, Location
from sitegen.model.measures import Measures
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, MoveKind, ThreadPath
from sitegen.trade.rules import rules

STRANDS = "fringe"
"""The stitch whose rows are strands."""
CLOSE = ("ladder", "brick", "square")
"""Stitches in which thread from bead to bead lies hidden between them."""


def design(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> list[Problem]:
    """All advice on one piece; takes what has been woven and measured without a fault."""
    return [problem for advice in ADVICE for problem in advice(path, pattern, shop, measures)]


def _header(pattern: Pattern, *keys: str) -> Location:
    """Where the first of these header keys stands that has a place; else the file."""
    return next((pattern.at[key] for key in keys if key in pattern.at), Location(pattern.file, 0, 0, 0))


def _weight(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> Iterator[Problem]:
    """An earring above the band that is comfortable all day."""
    del path, shop
    most = next(band.up_to for band in rules().comfort if band.name == "all day")
    if measures.comfort and measures.weight_g > most:
        values = {"grams": plain(measures.weight_g, 1), "most": plain(most, 1)}
        yield Problem("design-ear-weight", _header(pattern, "finding", "title"), values)


def _tangle(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> Iterator[Problem]:
    """The longest strand, where it is many times as long as the piece it hangs from is wide or high."""
    del shop
    strands: dict[tuple[int, int], list[Bead]] = {}
    for bead in path.beads:
        if path.parts[bead.part].stitch == STRANDS:
            strands.setdefault((bead.part, bead.row), []).append(bead)
    body = [max(part.width_mm, part.height_mm) for part in measures.parts if part.stitch != STRANDS]
    if not strands or not any(body):
        return
    longest = max(strands.values(), key=_length)
    times = _length(longest) / max(body)
    if times > rules().advice["tangle"]:
        values = {"length": plain(_length(longest) / 10, 1), "times": plain(times, 1)}
        yield Problem("design-strand-tangles", _of_bead(longest[0], pattern), values)


def _length(strand: list[Bead]) -> float:
    return sum(bead.length for bead in strand)


def _of_bead(bead: Bead, pattern: Pattern) -> Location:
    return _header(pattern, "parts") if bead.where == NOWHERE else bead.where


def _tight(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> Iterator[Problem]:
    """The first bead whose hole gets too full, how many there are, and what helps."""
    holes = measures.passes
    if not holes.tight or holes.remedy is None:
        return
    first, in_hand = holes.tight[0], tools(pattern, shop)
    bead = path.beads[first.bead]
    values = {
        "letter": bead.letter,
        "row": ("strand" if path.parts[bead.part].stitch == STRANDS else "row") + f" {bead.row}",
        "place": bead.place,
        "passes": first.passes,
        "allowed": first.allowed,
        "count": len(holes.tight),
        "with_needle": in_hand.needle.name,
        "with_thread": in_hand.thread.text,
        **holes.remedy.values,
    }
    yield Problem(f"design-{holes.remedy.key}", _of_bead(bead, pattern), values)


def _bare(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> Iterator[Problem]:
    """The first place where thread lies bare between two beads of a close stitch."""
    del shop, measures
    for move, following in pairwise(path.moves):
        if not {move.kind, following.kind} <= {MoveKind.PICK, MoveKind.THROUGH}:
            continue
        one, other = path.beads[move.bead], path.beads[following.bead]
        if one.part != other.part or path.parts[one.part].stitch not in CLOSE:
            continue
        gap = math.dist(one.mouth(move.enter.other), other.mouth(following.enter))
        if gap > rules().advice["bare_thread"] * max(one.width, other.width):
            values = {"gap": plain(gap, 1), "letter": other.letter, "row": other.row, "place": other.place}
            yield Problem("design-bare-thread", _of_bead(other, pattern), values)
            return


def _loose(path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures) -> Iterator[Problem]:
    """Bead kinds whose holes the thread leaves all but empty, by the passes that most of them have.

    A bead that thread goes through once, at the turn of a strand or in openwork, hangs loose on purpose.
    """
    del measures
    thread = tools(pattern, shop).thread
    passes: Counter[int] = Counter(
        move.bead for move in path.moves if move.kind in (MoveKind.PICK, MoveKind.THROUGH)
    )
    usual: dict[str, Counter[int]] = {}
    first: dict[str, Bead] = {}
    for index, bead in enumerate(path.beads):
        usual.setdefault(bead.kind, Counter())[passes[index]] += 1
        first.setdefault(bead.kind, bead)
    for kind, counts in usual.items():
        times = counts.most_common(1)[0][0]
        filled = times * thread.diameter_mm**2 / kind_of(kind, pattern.bead_kinds).hole_mm ** 2
        if times > 1 and filled < rules().advice["loose_hole"]:
            values = {"kind": kind, "passes": times, "thread": thread.text, "share": plain(100 * filled, 1)}
            yield Problem("design-loose-beads", _of_bead(first[kind], pattern), values)


Advice = Callable[[ThreadPath, Pattern, Shop, Measures], Iterator[Problem]]

ADVICE: tuple[Advice, ...] = (_weight, _tangle, _tight, _bare, _loose)
"""Each looks at one thing; none of it keeps a piece from being made."""
