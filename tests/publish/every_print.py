"""A work of the demo shop -> all of its finished PDFs, each printed once in a run of the tests.

What the demo's build prints is taken from there. The editions that the demo does not offer of a pattern are
printed from its piece in the shop's first language. Of some PDFs there are personal copies too.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path

import pytest

from sitegen.build.copies import Printed, printed
from sitegen.build.look import Look, shop_look
from sitegen.build.press import print_all
from sitegen.build.woven import make_pieces, weave_all
from sitegen.model.shop import EDITIONS
from sitegen.publish.compose import print_view
from sitegen.publish.printing import print_job
from sitegen.publish.stamping import set_line, stamped
from sitegen.read.sources import load_pattern, load_settings
from tests.shared import ROOT, Once, built_demo

SETTINGS = load_settings(ROOT)
SHOP = SETTINGS.shop
FIRST = SHOP.languages[0]
SOURCES = {path.stem: path for path in sorted(ROOT.glob("content/patterns/*.md")) if "." not in path.stem}
PATTERNS = tuple(SOURCES)
BUNDLES = tuple(bundle.name for bundle in SHOP.bundles)
COPIES = "copies"
"""Stands for the personal copies among the works."""
COPIED = ("meadow-daisy", *BUNDLES)
"""A pattern in every edition, and the bundles."""
WORKS = (*PATTERNS, *BUNDLES, COPIES)
BUYER = "Wilhelmina Hollingsworth-Featherstonehaugh, order 20261125-00417"
"""A line as long as it comes: it is set smaller rather than over paper and page number."""


def grouped(works: Sequence[str]) -> list[object]:
    """Parameters of tests: those of a work go to one worker, so that nothing is read or awaited twice."""
    return [pytest.param(work, marks=pytest.mark.xdist_group(f"print-{work}")) for work in works]


def works_of(work: str, once: Once) -> tuple[Printed, ...]:
    """Every PDF of a pattern or bundle, or every copy; papers of a file follow each other."""
    if work == COPIES:
        originals = [one for name in COPIED for one in works_of(name, once)]
        return once(COPIES, partial(_stamp, originals))
    made = [one for one in demo_prints(once) if one.pattern == work]
    if work in BUNDLES:
        return tuple(made)
    offered = [one.edition for one in made if one.language == FIRST]
    lacking = [edition for edition in EDITIONS if edition not in offered]
    return (*made, *once(f"editions-{work}", partial(_print, work, lacking)))


def demo_prints(once: Once) -> tuple[Printed, ...]:
    """Every PDF that the demo's build made."""
    return printed(once("demo", built_demo).parent, SHOP.languages)


def shop_look_of_demo() -> Look:
    """Theme and words of the demo shop."""
    look, _ = shop_look(SETTINGS)
    assert look is not None
    return look


def _print(name: str, editions: Sequence[str], folder: Path) -> tuple[Printed, ...]:
    look = shop_look_of_demo()
    woven, _ = weave_all(load_pattern(SOURCES[name], SHOP), lambda line: None)
    (piece,) = make_pieces(woven, SHOP, look.words, lambda line: None)
    jobs = [print_job(print_view(piece, edition), look.words, look.theme) for edition in editions]
    made = []
    for edition, sheets in zip(editions, print_all(jobs, 1, lambda line: None), strict=True):
        for paper, data in sheets.files:
            path = folder / sheets.file_name(name, paper)
            path.write_bytes(data)
            made.append(Printed(path, name, paper, edition, FIRST))
    return tuple(made)


def _stamp(originals: Sequence[Printed], folder: Path) -> tuple[Printed, ...]:
    look = shop_look_of_demo()
    lines = {
        words.language: set_line(words.text("copy.line", name=BUYER), look.theme)
        for words in (look.words, *look.others)
    }
    made = []
    for one in originals:
        path = folder / one.path.name
        path.write_bytes(stamped(one.path.read_bytes(), lines[one.language]))
        made.append(Printed(path, one.pattern, one.paper, one.edition, one.language))
    return tuple(made)
