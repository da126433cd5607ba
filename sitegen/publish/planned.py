"""A thread path -> the rows its steps go into in the printed table, and how each row is shown.

What is worked in one way again and again is drawn twice and then again now and then; between, the beads of a
whole row stand as a strip in one table row, with every sentence and the number of the row that draws it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import groupby

from sitegen.model.thread import Phrase, Step, ThreadPath
from sitegen.publish.words import Words

Run = tuple[Step, ...]
"""Steps that a maker repeats without looking up."""

DRAWN_FIRST = 2
"""So many times a way of working is drawn before strips stand for it."""
DRAWN_AGAIN = 40
"""After so many table rows without its drawing it is drawn once more."""
WIDEST_MM = 14.0
"""A run whose new beads reach further is shown by its first stitches and a strip."""
STITCHES = 2
"""So many of its stitches are drawn."""


@dataclass(frozen=True, slots=True)
class PlannedRow:
    """One row of the printed table."""

    number: int
    """From 1 through the whole piece."""
    runs: tuple[Run, ...]
    drawn: tuple[tuple[int, int], ...]
    """Diagrams, each of the steps from one number to another."""
    strip: bool
    """Its beads stand as a strip."""
    see: tuple[int, ...] = ()
    """Table rows whose diagrams show how this one is worked, where it has none itself."""

    @property
    def steps(self) -> Run:
        """All its steps."""
        return tuple(step for run in self.runs for step in run)


def planned_rows(path: ThreadPath, words: Words) -> list[PlannedRow]:
    """All rows of a piece, part by part, in order of working."""
    rows: list[PlannedRow] = []
    for index in range(len(path.parts)):
        part = _Part(path, words, len(rows))
        steps = [step for step in path.steps if step.part == index]
        for row in _worked_rows(runs(steps, words)):
            rows += part.rows(row)
    return rows


@dataclass(slots=True)
class _Part:
    """What was drawn so far in a part."""

    path: ThreadPath
    words: Words
    number: int
    """Of the last table row."""
    drawn: dict[str, list[int]] = field(default_factory=dict)
    """Way of working -> the table rows that draw it."""

    def rows(self, worked: Sequence[Run]) -> Iterator[PlannedRow]:
        """The table rows of one worked row: one strip if all its ways are known, else one row a run."""
        ways = [self._way(run) for run in worked]
        if any(step.picks for run in worked for step in run) and all(map(self._known, ways)):
            self.number += 1
            see = tuple(dict.fromkeys(self.drawn[way][-1] for way in ways))
            yield PlannedRow(self.number, tuple(worked), (), strip=True, see=see)
            return
        for run, way in zip(worked, ways, strict=True):
            self.number += 1
            self.drawn.setdefault(way, []).append(self.number)
            long = len(run) > STITCHES and self._reach(run) > WIDEST_MM
            last = run[STITCHES - 1] if long else run[-1]
            yield PlannedRow(self.number, (run,), ((run[0].number, last.number),), strip=long)

    def _known(self, way: str) -> bool:
        """Whether a way of working need not be drawn again yet."""
        drawn = self.drawn.get(way, [])
        return len(drawn) >= DRAWN_FIRST and self.number - drawn[-1] < DRAWN_AGAIN

    def _way(self, run: Run) -> str:
        """What is done, apart from where and how often: its words without their numbers."""
        return re.sub(r"\d+", "", f"{run[0].motion} {' '.join(sentences(run, self.words))}")

    def _reach(self, run: Run) -> float:
        """How far apart the new beads of a run lie, mm."""
        beads = [self.path.beads[bead] for step in run for bead in step.picks]
        xs = [bead.x for bead in beads] or [0.0]
        return max(xs) - min(xs)


def runs(steps: Sequence[Step], words: Words) -> list[Run]:
    """Steps that go together: a motion repeated within a row, everything else by itself.

    A motion is one that a beginner repeats without looking up if the language has words for many of it.
    """
    found: list[list[Step]] = []
    for step in steps:
        last = found[-1][-1] if found else None
        same = last and (last.row, last.motion, last.turned) == (step.row, step.motion, step.turned)
        if same and words.has(f"{step.motion}-many"):
            found[-1].append(step)
        else:
            found.append([step])
    return [tuple(run) for run in found]


def _worked_rows(found: Sequence[Run]) -> Iterator[list[Run]]:
    """Runs of one row, round or strand; what belongs to none comes alone."""

    def row(numbered: tuple[int, Run]) -> tuple[int, bool, int]:
        place, run = numbered
        alone = run[0].row == 0 or run[0].tail is not None
        return (run[0].row, run[0].turned, place if alone else -1)

    for _, same in groupby(enumerate(found), key=row):
        yield [run for _, run in same]


def sentences(run: Run, words: Words) -> tuple[str, ...]:
    """Where the needle goes, in words."""
    if len(run) == 1:
        return tuple(words.say(phrase) for phrase in run[0].phrases)
    end = f"{run[0].motion}-end"
    key = end if run[-1].rest and words.has(end) else f"{run[0].motion}-many"
    return (words.say(Phrase(key, {**run[0].phrases[0].values, "count": len(run)})),)
