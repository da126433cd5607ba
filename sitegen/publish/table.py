"""ThreadPath + measures -> the printed step table: equal stitches that follow each other share a row."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from sitegen.draw.pens import Drawing
from sitegen.draw.step import StepArtist
from sitegen.model.measures import CutLength, Measures
from sitegen.model.numbers import plain
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import Phrase, Step, Tail, ThreadPath
from sitegen.publish.tight import tight_notes
from sitegen.publish.words import Words


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of the printed table: one or more steps of the thread path."""

    number: int
    """From 1 through the whole pattern."""
    first_step: int
    last_step: int
    label: str
    """The row or strand it belongs to; empty for what belongs to none."""
    pick_up: tuple[tuple[int, str], ...]
    """(count, letter) in order of picking up: every colour shows."""
    sentences: tuple[str, ...]
    notes: tuple[str, ...]
    """What to do before it: cut thread, turn the work."""
    beads_so_far: int
    thread_mm: float
    """Thread used so far, mm."""
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class TableSection:
    """The rows of one part."""

    part: str
    rows: tuple[TableRow, ...]


def step_table(
    path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures, words: Words
) -> tuple[TableSection, ...]:
    """The table of one piece, part by part, in order of working."""
    artist = StepArtist(path, pattern, words.text)
    sections: list[TableSection] = []
    number = 0
    turned = False
    for index, part in enumerate(path.parts):
        rows: list[TableRow] = []
        for steps in _runs([step for step in path.steps if step.part == index], words):
            number += 1
            notes = _thread_notes(steps, measures.thread.lengths, shop, words)
            notes += _need_notes(path, steps, measures, words)
            if steps[0].turned is not turned:
                turned = steps[0].turned
                notes.append(words.text("note.turn" if number > 1 else "note.turned-first"))
            notes += tight_notes(steps, measures.passes, words)
            after = measures.steps[steps[-1].number - 1]
            letters = [path.beads[bead].letter for step in steps for bead in step.picks]
            title = words.text("drawing.step", number=number)
            rows.append(
                TableRow(
                    number=number,
                    first_step=steps[0].number,
                    last_step=steps[-1].number,
                    label=_label(path, steps[0], words),
                    pick_up=tuple((len(list(run)), letter) for letter, run in groupby(letters)),
                    sentences=_sentences(steps, words),
                    notes=tuple(notes),
                    beads_so_far=after.beads_so_far,
                    thread_mm=after.thread_mm,
                    drawing=artist.draw(steps[0].number, steps[-1].number, title),
                )
            )
        sections.append(TableSection(part.name, tuple(rows)))
    return tuple(sections)


def printed_rows(path: ThreadPath, words: Words) -> dict[int, int]:
    """Step of the thread path -> the row of the printed table it is in."""
    runs = [
        run
        for index in range(len(path.parts))
        for run in _runs([step for step in path.steps if step.part == index], words)
    ]
    return {step.number: number for number, run in enumerate(runs, 1) for step in run}


def _runs(steps: Sequence[Step], words: Words) -> list[list[Step]]:
    """Steps that go into one table row: a motion repeated within a row, everything else by itself.

    A motion is one that a beginner repeats without looking up if the language has words for many of it.
    """
    runs: list[list[Step]] = []
    for step in steps:
        last = runs[-1][-1] if runs else None
        same = last and (last.row, last.motion, last.turned) == (step.row, step.motion, step.turned)
        if same and words.has(f"{step.motion}-many"):
            runs[-1].append(step)
        else:
            runs.append([step])
    return runs


def _sentences(steps: Sequence[Step], words: Words) -> tuple[str, ...]:
    if len(steps) == 1:
        return tuple(words.say(phrase) for phrase in steps[0].phrases)
    end = f"{steps[0].motion}-end"
    key = end if steps[-1].rest and words.has(end) else f"{steps[0].motion}-many"
    return (words.say(Phrase(key, {**steps[0].phrases[0].values, "count": len(steps)})),)


def _label(path: ThreadPath, step: Step, words: Words) -> str:
    own = f"label.{step.motion}"
    if words.has(own):
        return words.text(own, number=step.row)
    if step.row == 0:
        return ""
    if path.parts[step.part].lines in ("rounds", "turns"):
        return _round_label(path, step, words)
    if step.motion in ("peyote-string", "peyote-string-back"):
        return words.text("label.string")
    ladder = step.motion.startswith("ladder") and path.parts[step.part].rows > 1
    return words.text("label.ladder" if ladder else "label.row", number=step.row)


def _round_label(path: ThreadPath, step: Step, words: Words) -> str:
    """The round or the turn of a rope; in a tube two rounds are strung at once, or the first is a ladder."""
    part = path.parts[step.part]
    if part.lines == "turns":
        return words.text("label.rope", number=step.row)
    if step.motion == "ring-strung" and part.around_mm:
        return words.text("label.rounds-strung")
    key = "label.round-ladder" if step.motion.startswith("ladder") else "label.round"
    return words.text(key, number=step.row)


def _thread_notes(steps: Sequence[Step], lengths: Sequence[CutLength], shop: Shop, words: Words) -> list[str]:
    for place, length in enumerate(lengths):
        if length.first_step == steps[0].number:
            key = "note.new-thread" if place else "note.first-thread"
            if steps[0].motion == "strung-start":
                key = "note.first-string"
            cut = words.text("unit.m", value=plain(length.cut_mm / 1000))
            tail = words.text("unit.cm", value=plain(shop.tail_mm / 10, 1))
            return [words.text(key, cut=cut, tail=tail)]
    return []


def _need_notes(path: ThreadPath, steps: Sequence[Step], measures: Measures, words: Words) -> list[str]:
    """Before a strand: the thread it needs. Before a new thread: that it begins inside a row, if it does."""
    first = steps[0]
    before = path.steps[first.number - 2] if first.number > 1 else None
    after = path.steps[steps[-1].number] if steps[-1].number < len(path.steps) else None
    new = after is not None and after.tail is Tail.NEW
    if first.tail is Tail.OLD and new and before is not None and not before.rest:
        return [words.text("note.inside-row")]
    strand = (first.part, first.row)
    begun = before is not None and (before.part, before.row) == strand
    lines = path.parts[first.part].lines
    if lines not in ("strands", "loops") or not first.row or begun:
        return []
    last = first.number
    while last < len(path.steps) and (path.steps[last].part, path.steps[last].row) == strand:
        last += 1
    start = measures.steps[before.number - 1].thread_mm if before else 0.0
    needed = math.ceil((measures.steps[last - 1].thread_mm - start) / 10)
    return [words.text(f"note.needs-{lines}", length=words.text("unit.cm", value=needed))]
