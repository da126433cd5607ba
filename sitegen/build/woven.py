"""Sources -> woven, measured and drawn pieces, and the problems met on the way."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from sitegen.check import check_pattern
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.measure import measure
from sitegen.model.codes import CODES
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.publish.piece import Piece
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.sources import Sources
from sitegen.weave import weave

Woven = tuple[Pattern, ThreadPath]


def is_fault(problem: Problem) -> bool:
    """Whether the problem keeps anything from being published."""
    return CODES[problem.code].severity is Severity.FAULT


def weave_all(sources: Sources, progress: Callable[[str], None]) -> tuple[list[Woven], list[Problem]]:
    """Check every pattern, and weave each one that is without fault so far."""
    woven: list[Woven] = []
    problems: list[Problem] = []
    faulty = {_stem(problem.where.file) for problem in sources.problems if is_fault(problem)}
    for pattern in sources.patterns:
        progress(f"weave {pattern.name}")
        found = check_pattern(pattern, sources.shop)
        if not any(map(is_fault, found)) and _stem(pattern.file) not in faulty:
            path, more = weave(pattern, sources.shop)
            found = [*found, *more]
            if path is not None:
                woven.append((pattern, path))
        problems += found
    return woven, problems


def _stem(file: str) -> str:
    """A pattern's text and its header file beside it share this."""
    return file.removesuffix(".md").removesuffix(".yaml")


def make_pieces(
    woven: Sequence[Woven], shop: Shop, words: Words, progress: Callable[[str], None]
) -> list[Piece]:
    """Measure and draw every woven pattern."""
    pieces = []
    for pattern, path in woven:
        progress(f"draw {pattern.name}")
        measures = measure(path, pattern, shop)
        drawn = {bead.part for bead in path.beads}
        charts = tuple(
            chart(path, pattern, index) if index in drawn else None for index in range(len(path.parts))
        )
        table = step_table(path, pattern, shop, measures, words)
        picture = finished(path, pattern)
        pieces.append(Piece(pattern, shop, path, measures, words, picture, charts, table))
    return pieces
