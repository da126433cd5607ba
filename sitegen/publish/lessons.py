"""A theme's samples and the frames chosen from them -> its lessons, drawn: one for each stitch there is.

A lesson is a tiny pattern in the normal source format, read, woven and proved like any other; its frames are
steps of that path, with the sentences that a step table would give them. A sample is the same in every
language: the few names in it are words of the language.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby
from pathlib import Path
from typing import Any

import yaml

from sitegen.draw.finished import finished
from sitegen.draw.pens import Drawing
from sitegen.draw.step import StepArtist
from sitegen.measure.plan import thread_changes
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import Step, ThreadPath
from sitegen.publish.piece import Piece
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from sitegen.read.translation import part_called
from sitegen.weave import weave, weave_in_tails

FRAMES = "frames.yaml"
NAMES = "sample"
"""Form of a word in which a language says the names of the samples' colours and parts."""
NO_STITCH = "none"
"""What sources call the stitch of a part that is strung."""
TAIL_MM = 20.0
"""What a sample's short threads leave free at each end."""


@dataclass(frozen=True, slots=True)
class FrameChoice:
    """Which step of which sample a frame shows."""

    name: str
    """Of the frame, for its words: `start`, `next`, `turn` ..."""
    sample: str
    """File of the sample, without its ending."""
    motion: str
    part: int | None = None
    """Number of the part it is a step of, from 1; None for any."""
    row: int | None = None
    nth: int = 1
    """Which of the steps that fit, from 1."""
    steps: int = 1
    """How many steps from there on the frame shows."""


@dataclass(frozen=True, slots=True)
class LessonPlan:
    """One lesson before anything is worked."""

    stitch: str
    group: str
    """`flat`, `open`, `round`, `edges` or `string`."""
    working_mm: float
    """The longest thread of its samples."""
    frames: tuple[FrameChoice, ...]

    @property
    def name(self) -> str:
        """The stitch as an address and in message keys: `right-angle-weave`."""
        return lesson_name(self.stitch)

    @property
    def samples(self) -> tuple[str, ...]:
        """Every sample it takes, its own first."""
        return tuple(dict.fromkeys((self.name, *(frame.sample for frame in self.frames))))


@dataclass(frozen=True, slots=True)
class Sample:
    """A tiny pattern and its proved path, ends woven in."""

    pattern: Pattern
    path: ThreadPath


@dataclass(frozen=True, slots=True)
class DrawnFrame:
    """A frame, worked out."""

    choice: FrameChoice
    steps: tuple[Step, ...]
    drawing: Drawing
    pick_up: tuple[tuple[int, str], ...]
    """(count, letter) in order of picking up."""
    sentences: tuple[str, ...]
    """Those of the step table."""
    turned: bool
    """The work is held the other way up than in the frame before."""


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson, worked out and drawn."""

    plan: LessonPlan
    samples: Mapping[str, Sample]
    picture: Drawing
    """The finished sample."""
    frames: tuple[DrawnFrame, ...]


class LessonFault(Exception):
    """A theme's sample cannot be made, or a frame names a step that is not there."""


def lesson_name(stitch: str) -> str:
    """A stitch's name in addresses and message keys."""
    return stitch.replace(" ", "-")


@lru_cache(maxsize=4)
def lesson_plans(theme: Path) -> tuple[LessonPlan, ...]:
    """The theme's lessons in reading order."""
    file = theme / "lessons" / FRAMES
    groups: dict[str, dict[str, Any]] = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    return tuple(
        LessonPlan(
            stitch,
            group,
            float(lesson["working"]),
            tuple(
                FrameChoice(**{"name": name, "sample": lesson_name(stitch), **choice})
                for name, choice in lesson["frames"].items()
            ),
        )
        for group, lessons in groups.items()
        for stitch, lesson in lessons.items()
    )


@lru_cache(maxsize=4)
def lessons(theme: Path, language: str) -> tuple[Lesson, ...]:
    """Every lesson of the theme, in reading order. Raises LessonFault."""
    words = Words(theme, language)
    folder = theme / "lessons"
    return tuple(_lesson(plan, folder, words) for plan in lesson_plans(theme))


def work_sample(file: Path, working_mm: float, words: Words) -> Sample:
    """The sample in a file, woven and proved, no thread longer than `working_mm`. Raises LessonFault."""
    shop = Shop(working_length_mm=working_mm, tail_mm=TAIL_MM)
    sources = load_pattern(file, shop)
    if sources.problems or not sources.patterns:
        raise LessonFault(f"the sample {file.name} cannot be read: {sources.problems}")
    pattern = _said(sources.patterns[0], words)
    path, problems = weave(pattern, shop)
    if path is not None:
        path, problems = weave_in_tails(path, pattern, thread_changes(path, pattern, shop))
    if path is None:
        raise LessonFault(f"the sample {file.name} cannot be woven: {problems}")
    return Sample(pattern, path)


def _said(pattern: Pattern, words: Words) -> Pattern:
    """A sample whose colours and parts have the names of the language."""
    names = {part.name: words.term(NAMES, part.name) for part in pattern.parts}
    colours = (replace(colour, name=words.term(NAMES, colour.name)) for colour in pattern.colours)
    parts = (part_called(part, names) for part in pattern.parts)
    return replace(pattern, colours=tuple(colours), parts=tuple(parts))


def chosen_steps(choice: FrameChoice, path: ThreadPath) -> tuple[Step, ...]:
    """The steps a frame shows. Raises LessonFault where the path has no such step."""
    fitting = [
        step
        for step in path.steps
        if step.motion == choice.motion
        and choice.row in (None, step.row)
        and choice.part in (None, step.part + 1)
    ]
    if len(fitting) < choice.nth:
        raise LessonFault(f"no step for the frame {choice}")
    first = fitting[choice.nth - 1].number
    return path.steps[first - 1 : first - 1 + choice.steps]


def _lesson(plan: LessonPlan, folder: Path, words: Words) -> Lesson:
    samples = {name: work_sample(folder / f"{name}.md", plan.working_mm, words) for name in plan.samples}
    own = samples[plan.name]
    titled = replace(own.pattern, title=lesson_title(plan.name, words))
    artists = {name: StepArtist(sample.path, sample.pattern, words.text) for name, sample in samples.items()}
    frames: list[DrawnFrame] = []
    for choice in plan.frames:
        path = samples[choice.sample].path
        steps = chosen_steps(choice, path)
        names = {"stitch": lesson_title(plan.name, words), "frame": frame_title(plan, choice, words)}
        title = words.text("lesson.drawing", **names)
        letters = [path.beads[bead].letter for step in steps for bead in step.picks]
        frames.append(
            DrawnFrame(
                choice=choice,
                steps=steps,
                drawing=artists[choice.sample].draw(steps[0].number, steps[-1].number, title),
                pick_up=tuple((len(list(run)), letter) for letter, run in groupby(letters)),
                sentences=tuple(words.say(phrase) for step in steps for phrase in step.phrases),
                turned=steps[0].turned is not (frames[-1].steps[0].turned if frames else False),
            )
        )
    return Lesson(plan, samples, finished(own.path, titled, words.text), tuple(frames))


def lesson_title(name: str, words: Words) -> str:
    """A lesson's title."""
    return words.text(f"lesson.{name}.title")


def stitches(pattern: Pattern, words: Words) -> Mapping[str, str]:
    """Address word -> title of each stitch the pattern is worked in, in the order of its parts."""
    names = dict.fromkeys(part.stitch for part in pattern.parts if part.stitch != NO_STITCH)
    return {lesson_name(name): stitch_title(name, words) for name in names}


def stitch_title(stitch: str, words: Words) -> str:
    """A stitch as its lesson calls it; one without a lesson as its sources do."""
    name = lesson_name(stitch)
    return lesson_title(name, words) if words.has(f"lesson.{name}.title") else stitch


def frame_title(plan: LessonPlan, choice: FrameChoice, words: Words) -> str:
    """A frame's title: its lesson's own, or the one that frames of this name share."""
    own = f"lesson.{plan.name}.{choice.name}.title"
    return words.text(own if words.has(own) else f"lesson.frame.{choice.name}")


def used_in(stitch: str, pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The pieces with a part in this stitch."""
    return tuple(piece for piece in pieces if any(part.stitch == stitch for part in piece.pattern.parts))
