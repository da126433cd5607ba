"""Sources -> woven, measured and drawn pieces, and the problems met on the way."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from sitegen.check import check_pattern
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.measure import measure
from sitegen.measure.design import design
from sitegen.measure.materials import materials
from sitegen.measure.plan import thread_changes
from sitegen.model.codes import CODES
from sitegen.model.measures import Measures
from sitegen.model.photo import Photo
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import ThreadPath
from sitegen.publish.colourways import in_colourways
from sitegen.publish.photo import Developed, develop
from sitegen.publish.piece import Piece
from sitegen.publish.renamed import renamed
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


def in_language(pieces: Sequence[Piece], words: Words, progress: Callable[[str], None]) -> list[Piece]:
    """Every piece in another of the shop's languages: nothing is woven or measured again, only drawn.

    Pages keep their addresses: a colourway's folder is that of the first language.
    """
    made = []
    for piece in pieces:
        progress(f"draw {piece.pattern.name} in {words.language}")
        shop = piece.shop.in_language(words.language)
        pattern = piece.pattern.translations.get(words.language, piece.pattern)
        own = _said(piece, pattern, shop, words)
        second = piece.second and _second(piece.second, own)
        own = replace(own, photos=_photos(pattern, piece), second=second)
        ways = zip(in_colourways(own), piece.ways, strict=True)
        made.append(replace(own, ways=tuple(replace(way, folder=first.folder) for way, first in ways)))
    return made


def _photos(pattern: Pattern, piece: Piece) -> dict[Photo, Developed]:
    """The photos of a pattern in other words: one that the piece shows as well is not developed again."""
    known = {(photo.digest, photo.lead): made for photo, made in piece.photos.items()}
    made = {photo: known.get((photo.digest, photo.lead)) or develop(photo) for photo in pattern.photos}
    return {photo: replace(developed, photo=photo) for photo, developed in made.items()}


def _second(second: Piece, first: Piece) -> Piece:
    """The other piece of a mirrored pair, with the words of the first."""
    words = {part.name: own.name for part, own in zip(second.pattern.parts, first.pattern.parts, strict=True)}
    parts = tuple(replace(part, name=words[part.name]) for part in second.pattern.parts)
    pattern = replace(
        second.pattern, parts=parts, colours=first.pattern.colours, colourways=first.pattern.colourways
    )
    return _said(second, pattern, first.shop, first.words)


def _said(piece: Piece, pattern: Pattern, shop: Shop, words: Words) -> Piece:
    """A piece in the words of another language."""
    parts = zip(piece.pattern.parts, pattern.parts, strict=True)
    names = {part.name: other.name for part, other in parts}
    path, measures = renamed(piece.path, piece.measures, names)
    measures = replace(measures, beads=materials(path, pattern, shop))
    return replace(_piece((pattern, path, measures), shop, words), written=piece.pattern)


def _piece(woven: Woven, shop: Shop, words: Words) -> Piece:
    pattern, path, measures = woven
    drawn = {bead.part for bead in path.beads}
    charts = tuple(
        chart(path, pattern, index, words.text) if index in drawn else None
        for index in range(len(path.parts))
    )
    table = step_table(path, pattern, shop, measures, words)
    return Piece(pattern, shop, path, measures, words, finished(path, pattern, words.text), charts, table)
