"""Broken sources: the whole message an author gets, kept as readable text beside each."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sitegen.check import check_pattern
from sitegen.check.tell import severity, tell
from sitegen.model.codes import CODES
from sitegen.model.problem import Problem, Severity
from sitegen.model.shop import Shop
from sitegen.read.faults import Faults
from sitegen.read.pattern import read_pattern
from sitegen.read.photos import with_photos
from tests.conftest import Golden

BROKEN = sorted((Path(__file__).parent.parent / "broken").glob("*.md"))
ADVICE_ONLY = {
    "rounds-not-flat",
    "bead-kind-unused",
    "beads-uneven",
    "bead-kind-weight",
    "colour-unused",
    "colours-alike",
    "finding-differs",
    "finding-not-hung",
    "finish-unknown",
    "html-in-text",
    "mirror-bead",
    "photo-coarse",
}
LATER = re.compile(
    r"(weave|path|design|orders|bundle)-.+|copies-in-output|theme-.+|language-unknown|letter-not-in-fonts"
    "|former-left"
)
"""Codes that only weaving, building and copying can give; they are tested there."""


def problems(path: Path) -> tuple[str, list[Problem]]:
    """The text and everything that reading and checking find in it."""
    text = path.read_text(encoding="utf-8")
    pattern, found = read_pattern(text, path.name, Shop())
    if pattern is not None:
        faults = Faults()
        pattern = with_photos(pattern, path.parent, path.parent, faults)
        found += faults.problems
    return text, [*found, *(check_pattern(pattern, Shop()) if pattern else [])]


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_the_message(path: Path, golden: Golden) -> None:
    text, found = problems(path)
    assert found
    assert (Severity.FAULT in map(severity, found)) != (path.stem in ADVICE_ONLY)
    golden(path.with_suffix(".txt"), tell(found, {path.name: text}))


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_every_problem_lies_in_the_text(path: Path) -> None:
    text, found = problems(path)
    lines = text.split("\n")
    for problem in found:
        assert problem.where.file == path.name
        assert 1 <= problem.where.line <= len(lines)
        assert 1 <= problem.where.column <= len(lines[problem.where.line - 1]) + 1


def test_there_are_enough() -> None:
    assert len(BROKEN) >= 40


def test_every_code_has_a_test() -> None:
    """A code is given by a broken source, or a test of reading names it with its place."""
    given = {problem.code for path in BROKEN for problem in problems(path)[1]}
    tests = Path(__file__).parent.parent / "read"
    files = ("test_header.py", "test_sources.py", "test_shop_file.py", "test_words.py", "test_file_names.py")
    named = "".join((tests / name).read_text(encoding="utf-8") for name in files)
    elsewhere = {code for code in CODES if f'("{code}", ' in named}
    assert {code for code in set(CODES) - given - elsewhere if not LATER.fullmatch(code)} == set()
