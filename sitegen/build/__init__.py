"""A shop folder -> its output folder: read, check, weave, measure, draw, publish, and swap; or nothing at all."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from sitegen.build.letters import pattern_letters, shop_letters
from sitegen.build.press import print_all
from sitegen.build.swap import check_output, replace_output, sole_build
from sitegen.check import check_pattern
from sitegen.check.tell import tell
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.measure import measure
from sitegen.model.codes import CODES
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.publish.chips import style_sheet
from sitegen.publish.compose import PICTURE, card, front_view, page_address, page_view, print_view
from sitegen.publish.pages import front_page, look, pattern_page
from sitegen.publish.papers import Sheets
from sitegen.publish.picture import png
from sitegen.publish.piece import Piece
from sitegen.publish.printing import letters, print_job
from sitegen.publish.report import measures_json, measures_text
from sitegen.publish.table import step_table
from sitegen.publish.theme import theme_folder
from sitegen.publish.view import Card
from sitegen.publish.words import Words
from sitegen.read.sources import SHOP_FILE, Sources, load_shop
from sitegen.weave import weave

OUTPUT = "output"
SITE, FOR_SALE, DESK = "site", "for-sale", "desk"
"""What is uploaded; the PDFs of priced patterns; what only the author reads."""

Progress = Callable[[str], None]


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


def is_fault(problem: Problem) -> bool:
    """Whether the problem keeps anything from being published."""
    return CODES[problem.code].severity is Severity.FAULT


def build(
    root: Path, out: Path | None = None, progress: Progress = lambda line: None, processes: int | None = None
) -> BuildResult:
    """Build the shop in `root` into `out` (`root/output` by default).

    `processes` is how many print at a time; None for as many as there are processors. Raises OutputRefused,
    ThemeMissing and PrintFault; problems of the sources are in the result, and with a fault nothing is written.
    """
    out = out or root / OUTPUT
    progress("read")
    sources = load_shop(root)
    theme = theme_folder(sources.shop.theme, root)
    woven, problems = _weave_all(sources, letters(theme), progress)
    names = tuple(pattern.name for pattern in sources.patterns)
    if any(is_fault(problem) for problem in problems):
        return BuildResult(problems, sources.texts, (), names)
    words = Words(theme, sources.shop.language)
    check_output(out)
    with sole_build(out):
        pieces = [_piece(pattern, path, sources.shop, words, progress) for pattern, path in woven]
        files = dict(sorted(_files(pieces, sources.shop, words, theme, print_all_with(processes, progress))))
        files[f"{DESK}/problems.txt"] = tell(problems, sources.texts).rstrip("\n").encode() + b"\n"
        progress("write")
        replace_output(out, files)
    return BuildResult(problems, sources.texts, tuple(sorted(files)), names)
