"""Rows of a printed step table -> sentences handed, one by one, to whoever can follow them.

The core of the interpreters of these tests. It reads what a maker reads: label, beads to pick up, notes and
sentences, with the finishing of every thread; no path, no motion, no chart. A sentence that no rule of the
interpreter matches from its first to its last letter fails the test.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from sitegen.build.woven import work_out
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.table import TableRow, step_table
from sitegen.publish.words import Words
from sitegen.read.pattern import read_pattern

ROOT = Path(__file__).parents[2]
WORDS = Words(ROOT / "themes" / "linen", "en")
ORDINALS = {name: number for number, name in enumerate(WORDS.text("ordinals").split())}


@dataclass
class Row:
    """One printed row."""

    part: str
    label: str
    letters: list[str]
    """Beads to pick up that are not used yet."""
    notes: tuple[str, ...]
    sentences: tuple[str, ...]
    marks: dict[str, Any] = field(default_factory=dict)
    """What an interpreter keeps in mind until the row is done."""


def table_of(source: Path | str, shop: Shop | None = None) -> tuple[Pattern, list[Row]]:
    """The pattern (to compare with, afterwards) and the printed rows of a source file or text."""
    shop = shop or Shop()
    text = source.read_text(encoding="utf-8") if isinstance(source, Path) else source
    pattern, problems = read_pattern(text, "replay.md", shop)
    assert pattern is not None, problems
    path, objections = work_out(pattern, shop)
    assert path is not None, objections
    sections = step_table(path, pattern, shop, measure(path, pattern, shop), WORDS)
    return pattern, [
        Row(
            section.part,
            row.label,
            [letter for count, letter in row.pick_up for _ in range(count)],
            row.notes,
            row.sentences,
        )
        for section in sections
        for row in as_read(section.rows)
    ]


def as_read(rows: Iterable[TableRow]) -> Iterator[TableRow]:
    """Printed rows taken apart where their words say which beads a sentence is for (`Beads 1 to 8: ...`)."""
    for row in rows:
        letters = [letter for count, letter in row.pick_up for _ in range(count)]
        parts: list[tuple[list[str], list[str]]] = []
        for sentence in row.sentences:
            found = re.match(r"(?:No bead|Beads? (\d+)(?: (?:to|and) (\d+))?): (.*)", sentence)
            if found:
                first, last = int(found[1] or 1), int(found[2] or found[1] or 0)
                parts.append((letters[first - 1 : last], [found[3]]))
            elif parts:
                parts[-1][1].append(sentence)
            else:
                parts.append((letters, [sentence]))
        assert [letter for own, _ in parts for letter in own] == letters
        for place, (own, said) in enumerate(parts):
            notes = row.notes if place == 0 else ()
            yield replace(
                row, pick_up=tuple((1, letter) for letter in own), notes=notes, sentences=tuple(said)
            )


Rule = Callable[[Any, Row, Mapping[str, str]], None]


def follow(hand: Any, rows: list[Row], grammar: Mapping[str, Rule], notes: Mapping[str, Rule]) -> None:
    """Follow all rows; each note and sentence by the one rule whose pattern matches it whole."""
    for row in rows:
        for text, rules in [
            *((note, notes) for note in row.notes),
            *((said, grammar) for said in row.sentences),
        ]:
            matched = [(rule, found) for rule, found in _matches(text, rules)]
            assert len(matched) == 1, f"{len(matched)} ways to understand: {text!r}"
            rule, found = matched[0]
            rule(hand, row, found.groupdict())
        assert not row.letters, f"beads left over in {row.label}: {row.letters}"


def _matches(text: str, rules: Mapping[str, Rule]) -> Iterator[tuple[Rule, re.Match[str]]]:
    for pattern, rule in rules.items():
        found = re.fullmatch(pattern, text)
        if found:
            yield rule, found
