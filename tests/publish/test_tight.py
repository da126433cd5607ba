"""Tight beads in the printed table, the supplies and the report: one note, at the first."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.report import measures_json, measures_text
from sitegen.publish.table import printed_rows, step_table
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from sitegen.weave import weave

TESTS = Path(__file__).parents[1]
WORDS = Words(TESTS.parent / "themes" / "linen", "en")


def kelp(thread: str, needle: str = "beading 12"):
    pattern = load_pattern(TESTS / "examples" / "kelp-lantern.md", Shop()).patterns[0]
    pattern = replace(pattern, thread=thread, needle=needle)
    path, _ = weave(pattern, Shop())
    assert path is not None
    return pattern, path, measure(path, pattern, Shop())


def notes(thread: str, needle: str = "beading 12"):
    pattern, path, measures = kelp(thread, needle)
    rows = [row for section in step_table(path, pattern, Shop(), measures, WORDS) for row in section.rows]
    return measures, [(row, note) for row in rows for note in row.notes if note.startswith("Tight pass")]


def test_no_note_where_all_fits() -> None:
    assert notes("nylon 0.15 mm")[1] == []


@pytest.mark.parametrize(
    ("thread", "needle", "said"),
    [
        ("nylon 0.20 mm", "beading 10", "Change to a finer needle, beading 12"),
        ("nylon 0.25 mm", "beading 15", "With a finer thread, nylon 0.2 mm"),
        ("nylon 0.30 mm", "beading 10", "it is not"),
        ("nylon 1.0 mm", "beading 12", "Tight pass"),
    ],
)
def test_one_note_at_the_step_of_the_first_tight_pass(thread: str, needle: str, said: str) -> None:
    measures, found = notes(thread, needle)
    ((row, note),) = found
    first = measures.passes.tight[0]
    assert first.step == min(tight.step for tight in measures.passes.tight)
    assert row.first_step <= first.step <= row.last_step
    assert said in note
    assert WORDS.say(first.spot) in note


def test_the_report_names_every_bead_its_step_and_the_remedy() -> None:
    pattern, path, measures = kelp("nylon 0.25 mm")
    rows = printed_rows(path, WORDS)
    text = measures_text(pattern, measures, WORDS, rows.__getitem__)
    first = measures.passes.tight[0]
    fits = f"{first.passes} passes, {first.allowed} fit"
    assert f"{WORDS.say(first.spot)}: {fits}, from step {rows[first.step]}" in text
    data = measures_json(pattern, path, measures, WORDS)
    assert len(data["tight_beads"]) == data["passes"]["beads_tight"] == len(measures.passes.tight)
    for told, tight in zip(data["tight_beads"], measures.passes.tight, strict=True):
        bead = path.beads[tight.bead]
        assert (told["row"], told["place"], told["letter"]) == (bead.row, bead.place, bead.letter)


def test_printed_rows_are_those_of_the_table() -> None:
    pattern, path, measures = kelp("nylon 0.25 mm")
    numbers = printed_rows(path, WORDS)
    for section in step_table(path, pattern, Shop(), measures, WORDS):
        for row in section.rows:
            assert {numbers[step] for step in range(row.first_step, row.last_step + 1)} == {row.number}


def test_figures_of_the_beads_come_with_range_and_source() -> None:
    pattern, path, measures = kelp("nylon 0.25 mm")
    (kind,) = measures_json(pattern, path, measures, WORDS)["bead_kinds"]
    assert kind["bead"] == "round 11/0"
    assert (kind["width_mm"]["low"], kind["width_mm"]["high"]) == (1.8, 2.2)
    assert "[esther S2]" in kind["length_mm"]["source"]
    assert "2.1 (1.8 to 2.2)" in measures_text(pattern, measures, WORDS)
