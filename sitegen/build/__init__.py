"""A shop folder -> its output folder: every stage in turn and the swap; with a fault, nothing at all."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from pathlib import Path

from sitegen.build.files import output_files
from sitegen.build.look import Look, shop_look
from sitegen.build.press import print_all
from sitegen.build.swap import check_output, replace_output, sole_build
from sitegen.build.tree import Tree
from sitegen.build.woven import in_language, is_fault, make_pieces, weave_all
from sitegen.check.tell import tell
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.publish.compose import print_view
from sitegen.publish.editions import editions_of
from sitegen.publish.piece import Piece
from sitegen.publish.printing import PrintJob, print_job
from sitegen.read.sources import load_shop

OUTPUT = "output"
"""The output folder's name in a shop."""


@dataclass(frozen=True, slots=True)
class BuildResult:
    """What a build found and made."""

    problems: tuple[Problem, ...]
    texts: Mapping[str, str]
    """Source texts, for showing the problems."""
    files: tuple[str, ...]
    """Paths below the output folder, sorted; empty where faults kept anything from being written."""
    patterns: tuple[str, ...]
    """Names of the shop's patterns."""


def build(
    root: Path,
    out: Path | None = None,
    progress: Callable[[str], None] = lambda line: None,
    processes: int | None = None,
) -> BuildResult:
    """Build the shop in `root` into `out` (`root/output` by default).

    `progress` is told each stage. `processes` is how many may print at a time; None for as many as there are
    processors. Problems of the sources are in the result, and with a fault among them nothing is written.
    Raises OutputRefused where the output folder is not ours, and PrintFault where the print engine complains.
    """
    out = out or root / OUTPUT
    progress("read")
    sources = load_shop(root)
    look, unprintable = shop_look(sources)
    woven, found = weave_all(sources, progress)
    problems = (*sources.problems, *unprintable, *found)
    names = tuple(pattern.name for pattern in sources.patterns)
    if look is None or any(map(is_fault, problems)):
        return BuildResult(problems, sources.texts, (), names)
    check_output(out)
    with sole_build(out):
        pieces = make_pieces(woven, sources.shop, look.words, progress)
        trees = _printed(_trees(pieces, sources.shop, look, progress), processes, progress)
        notes = tell(problems, sources.texts) or look.words.text("desk.no-problem") + "\n"
        files = output_files(trees, look, notes)
        progress("write")
        problems += replace_output(out, files)
    return BuildResult(problems, sources.texts, tuple(sorted(files)), names)


def _trees(
    pieces: Sequence[Piece], shop: Shop, look: Look, progress: Callable[[str], None]
) -> Iterator[Tree]:
    """The shop in each of its languages, not yet printed."""
    yield Tree(shop, look.theme, look.words, pieces)
    for words in look.others:
        own = shop.in_language(words.language)
        yield Tree(own, look.theme, words, in_language(pieces, words, progress))


def _printed(trees: Iterable[Tree], processes: int | None, progress: Callable[[str], None]) -> list[Tree]:
    """All languages with their sheets: each edition of each pattern in each language is a job of its own."""
    jobs: list[PrintJob] = []
    drawn = list(trees)
    for tree in drawn:
        before = len(jobs)
        for piece in tree.pieces:
            progress(f"draw the steps of {piece.label}")
            for edition in editions_of(piece):
                jobs.append(print_job(print_view(piece, edition), tree.words, tree.theme))
        jobs += tree.bundles.jobs(jobs[before:])
    made = iter(print_all(jobs, processes, progress))
    return [
        replace(
            tree,
            sheets=[tuple(islice(made, len(editions_of(piece)))) for piece in tree.pieces],
            bound=list(islice(made, len(tree.shop.bundles))),
        )
        for tree in drawn
    ]
