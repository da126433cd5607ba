"""ThreadPath + measures -> the printed step table: numbered rows with notes, sentences and drawings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from sitegen.draw.colour import Palette, palette_of
from sitegen.draw.pens import Drawing
from sitegen.draw.step import StepArtist
from sitegen.draw.strip import strip
from sitegen.model.measures import CutLength, Measures
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import Bead, Step, Tail, ThreadPath, way
from sitegen.publish.planned import PlannedRow, planned_rows, sentences
from sitegen.publish.quantities import Quantities
from sitegen.publish.tight import tight_notes
from sitegen.publish.words import Words

TAKES = {0: "steps.beads-none", 1: "steps.beads-one", 2: "steps.beads-two"}
"""How many beads a run takes -> the words that say which, where several runs share a row."""


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
    drawings: tuple[Drawing, ...]
    """Diagrams; none where a strip stands for them."""
    strip: Drawing | None
    """Its beads in order of picking up, where there are many or the way of working is known."""
    see: str
    """Which rows draw how this one is worked; empty where it has diagrams."""
    drawn_at: tuple[int, ...]
    """Numbers of those rows."""

    def dyed(self, palette: Palette) -> TableRow:
        """The same row, its drawings in other colours."""
        drawings = tuple(drawing.dyed(palette) for drawing in self.drawings)
        return replace(self, drawings=drawings, strip=self.strip and self.strip.dyed(palette))


@dataclass(frozen=True, slots=True)
class TableSection:
    """The rows of one part."""

    part: str
    rows: tuple[TableRow, ...]


def step_table(
    path: ThreadPath, pattern: Pattern, shop: Shop, measures: Measures, words: Words
) -> tuple[TableSection, ...]:
    """The table of one piece, part by part, in order of working."""
    artist = _Artist(path, pattern, words)
    rows: list[list[TableRow]] = [[] for _ in path.parts]
    part, turned = -1, False
    for planned in planned_rows(path, words):
        steps = planned.steps
        if steps[0].part != part:
            part, turned = steps[0].part, False
        notes = _thread_notes(steps, measures.thread.lengths, shop, words)
        notes += _need_notes(path, steps, measures, words)
        if steps[0].turned is not turned:
            turned = steps[0].turned
            notes.append(words.text("note.turn" if planned.number > 1 else "note.turned-first"))
        notes += tight_notes(steps, measures.passes, words)
        after = measures.steps[steps[-1].number - 1]
        letters = [path.beads[bead].letter for step in steps for bead in step.picks]
        drawings = artist.diagrams(planned)
        rows[part].append(
            TableRow(
                number=planned.number,
                first_step=steps[0].number,
                last_step=steps[-1].number,
                label=_label(path, steps[0], words),
                pick_up=tuple((len(list(run)), letter) for letter, run in groupby(letters)),
                sentences=_sentences(planned, words),
                notes=tuple(notes),
                beads_so_far=after.beads_so_far,
                thread_mm=after.thread_mm,
                drawings=drawings,
                strip=artist.strip(planned) if planned.strip or _unlettered(drawings, letters) else None,
                see=_see(planned, words),
                drawn_at=planned.see,
            )
        )
    return tuple(TableSection(made.name, tuple(own)) for made, own in zip(path.parts, rows, strict=True))


def printed_rows(path: ThreadPath, words: Words) -> dict[int, int]:
    """Step of the thread path -> the row of the printed table it is in."""
    return {step.number: row.number for row in planned_rows(path, words) for step in row.steps}


def _sentences(row: PlannedRow, words: Words) -> tuple[str, ...]:
    """All that is to do; where several runs share a row, each says which of its beads it takes."""
    if len(row.runs) == 1:
        return sentences(row.runs[0], words)
    said: list[str] = []
    taken = 0
    for run in row.runs:
        first, *others = sentences(run, words)
        count = sum(len(step.picks) for step in run)
        key = TAKES.get(count, "steps.beads-many")
        said += [words.text(key, first=taken + 1, last=taken + count, does=first), *others]
        taken += count
    return tuple(said)


def _unlettered(drawings: Sequence[Drawing], letters: Sequence[str]) -> bool:
    """Whether some beads have no letter in the diagrams, for want of room."""
    calls = [call for drawing in drawings for call in drawing.calls if call[0] == "letters"]
    written = sum(len(marks) for _, (marks, *_) in calls if isinstance(marks, tuple))
    return bool(drawings) and written < len(letters)


def _see(row: PlannedRow, words: Words) -> str:
    if not row.see:
        return ""
    *most, last = map(str, row.see)
    numbers = words.text("steps.and").join([*([", ".join(most)] if most else []), last])
    return words.text("steps.see", count=len(row.see), numbers=numbers)


class _Artist:
    """Draws what planned rows show."""

    def __init__(self, path: ThreadPath, pattern: Pattern, words: Words) -> None:
        self._path = path
        self._palette = palette_of(pattern)
        self._words = words
        self._steps = StepArtist(path, pattern, words.text)

    def diagrams(self, row: PlannedRow) -> tuple[Drawing, ...]:
        """The diagrams of a row."""
        title = self._words.text("drawing.step", number=row.number)
        return tuple(self._steps.draw(first, last, title) for first, last in row.drawn)

    def strip(self, row: PlannedRow) -> Drawing:
        """The strip of a row's beads, on it as the maker holds the work."""
        picked = [[self._path.beads[bead] for bead in step.picks] for step in row.steps]
        beads = [bead for own in picked for bead in own]
        leftward = self._leftward(row.steps, beads)
        after = ""
        if (
            len(picked[0]) > 1 < len(picked)
            and len({tuple(bead.letter for bead in own) for own in picked}) == 1
        ):
            beads, leftward = picked[0], False
            after = self._words.text("drawing.strip-times", count=len(picked))
        letters = " ".join([*(bead.letter for bead in beads), after]).strip()
        return strip(
            beads,
            leftward=leftward,
            title=self._words.text("drawing.strip", number=row.number),
            description=self._words.text("drawing.strip-says", letters=letters),
            palette=self._palette,
            after=after,
        )

    def _leftward(self, steps: Sequence[Step], beads: Sequence[Bead]) -> bool:
        """Whether a straight row is worked to the left; strands, rounds and turns are shown to the right."""
        part = self._path.parts[steps[0].part]
        if part.lines != "rows" or len(beads) < 2:
            return False
        here, there = beads[-2], beads[-1]
        dx, _ = way((here.x, here.y), (there.x, there.y), part.around_mm)
        return (dx < 0) is not steps[0].turned and dx != 0


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
            tell = Quantities(words)
            cut, tail = tell.both_threads(length.cut_mm), tell.both_spans(shop.tail_mm)
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
    needed_mm = 10.0 * math.ceil((measures.steps[last - 1].thread_mm - start) / 10)
    return [words.text(f"note.needs-{lines}", length=Quantities(words).both_spans(needed_mm))]
