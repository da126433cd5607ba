"""Sources -> woven, measured and drawn pieces, and the problems met on the way."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from sitegen.check import check_pattern
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.measure import measure
from sitegen.measure.design import design
from sitegen.measure.plan import thread_changes
from sitegen.model.codes import CODES
from sitegen.model.measures import Measures
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import ThreadPath
from sitegen.publish.colourways import in_colourways
from sitegen.publish.photo import develop
from sitegen.publish.piece import Piece
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.sources import Sources
from sitegen.weave import weave, weave_in_tails
from sitegen.weave.mirror import mirrored

Woven = tuple[Pattern, ThreadPath, Measures]
"""A pattern that can be made: its thread path, ends woven in, and what is measured of it."""


def is_fault(problem: Problem) -> bool:
    """Whether the problem keeps anything from being published."""
    return CODES[problem.code].severity is Severity.FAULT


def weave_all(sources: Sources, progress: Callable[[str], None]) -> tuple[list[Woven], list[Problem]]:
    """Check every pattern; weave and measure each one that is without fault so far."""
    woven: list[Woven] = []
    problems: list[Problem] = []
    faulty = {_stem(problem.where.file) for problem in sources.problems if is_fault(problem)}
    for pattern in sources.patterns:
        progress(f"weave {pattern.name}")
        found = check_pattern(pattern, sources.shop)
        if not any(map(is_fault, found)) and _stem(pattern.file) not in faulty:
            path, more = work_out(pattern, sources.shop)
            found = [*found, *more]
            if path is not None:
                measures = measure(path, pattern, sources.shop)
                woven.append((pattern, path, measures))
                found += design(path, pattern, sources.shop, measures)
        problems += found
    return woven, problems


def work_out(pattern: Pattern, shop: Shop) -> tuple[ThreadPath | None, list[Problem]]:
    """Weave one piece, plan its threads and weave in their ends; takes what `weave` takes."""
    path, problems = weave(pattern, shop)
    if path is None:
        return None, problems
    return weave_in_tails(path, pattern, thread_changes(path, pattern, shop))


def _stem(file: str) -> str:
    """A pattern's text and its header file beside it share this."""
    return file.removesuffix(".md").removesuffix(".yaml")


def make_pieces(
    woven: Sequence[Woven], shop: Shop, words: Words, progress: Callable[[str], None]
) -> list[Piece]:
    """Draw every woven pattern."""
    pieces = []
    for pattern, path, measures in woven:
        progress(f"draw {pattern.name}")
        piece = _piece((pattern, path, measures), shop, words)
        piece = replace(piece, photos={photo: develop(photo) for photo in pattern.photos})
        other = mirrored(pattern) if pattern.makes is Makes.MIRRORED_PAIR else None
        if other is not None:
            other_path, _ = work_out(other, shop)  # what can be woven can be woven in a mirror
            if other_path is not None:
                seen = (other, other_path, measure(other_path, other, shop))
                piece = replace(piece, second=_piece(seen, shop, words))
        pieces.append(replace(piece, ways=in_colourways(piece)))
    return pieces


def _piece(woven: Woven, shop: Shop, words: Words) -> Piece:
    pattern, path, measures = woven
    drawn = {bead.part for bead in path.beads}
    charts = tuple(
        chart(path, pattern, index, words.text) if index in drawn else None
        for index in range(len(path.parts))
    )
    table = step_table(path, pattern, shop, measures, words)
    return Piece(pattern, shop, path, measures, words, finished(path, pattern, words.text), charts, table)
