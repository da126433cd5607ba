"""The printed step table: what a beginner follows alone."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest

from sitegen.build.woven import work_out
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.shared import shared_words
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from tests.demo import DEMO_SHOP

TESTS = Path(__file__).parents[1]
GOLDENS = Path(__file__).parent / "goldens"
SOURCES = [
    TESTS / "examples" / "kelp-lantern.md",
    *sorted(file for file in (TESTS.parent / "content" / "patterns").glob("*.md") if "." not in file.stem),
]


def table_of(file, language="en"):
    pattern = load_pattern(file, DEMO_SHOP).patterns[0]
    path, _ = work_out(pattern, Shop())
    assert path is not None
    words = Words(TESTS.parent / "themes" / "linen", language)
    return pattern, path, step_table(path, pattern, Shop(), measure(path, pattern, Shop()), words)


def as_text(sections):
    lines = []
    for section in sections:
        lines.append(f"== {section.part}")
        for row in section.rows:
            lines += [f"   ! {note}" for note in row.notes]
            picks = " ".join(f"{count}{letter}" for count, letter in row.pick_up) or "no bead"
            so_far = f"{row.beads_so_far} beads, {row.thread_mm / 1000:.2f} m"
            lines.append(f"{row.number:3} [ ] {row.label or '-'} | {picks} | {so_far}")
            lines += [f"        {sentence}" for sentence in row.sentences]
            lines += [f"        ({row.see})"] if row.see else []
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_table_as_text(file, golden):
    _, _, sections = table_of(file)
    golden(GOLDENS / f"{file.stem}-table.txt", as_text(sections))


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_every_bead_is_in_the_table_once_in_order(file):
    """Following the table bead by bead strings exactly the path's beads: collapsing hides none."""
    _, path, sections = table_of(file)
    listed = [
        letter
        for section in sections
        for row in section.rows
        for count, letter in row.pick_up
        for _ in range(count)
    ]
    assert listed == [path.beads[bead].letter for step in path.steps for bead in step.picks]


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_rows_take_up_all_steps_and_their_sums_run_on(file):
    _, path, sections = table_of(file)
    rows = [row for section in sections for row in section.rows]
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))
    assert [row.first_step for row in rows] == [1, *(row.last_step + 1 for row in rows[:-1])]
    assert rows[-1].last_step == len(path.steps)
    so_far = 0
    for row in rows:
        so_far += sum(count for count, _ in row.pick_up)
        assert row.beads_so_far == so_far
    assert all(one.thread_mm <= other.thread_mm for one, other in pairwise(rows))


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_a_row_without_a_diagram_shows_its_beads_and_names_rows_that_have_one(file):
    _, _, sections = table_of(file)
    for section in sections:
        drawn = set()
        for row in section.rows:
            if row.drawings:
                assert not row.see
                drawn.add(row.number)
                continue
            assert row.strip is not None
            named = {int(number) for number in re.findall(r"\d+", row.see)}
            assert named
            assert named <= drawn


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: file.stem)
def test_words_printed_once_are_those_of_every_row_they_are_for(file):
    _, _, sections = table_of(file)
    for section in sections:
        rows = {row.number: row for row in section.rows}
        for first, several in shared_words(section.rows).items():
            for shared in several:
                assert min(shared.rows) >= first
                assert all(rows[number].sentences == shared.sentences for number in shared.rows)
                assert all(rows[number].see == shared.see for number in shared.rows)
