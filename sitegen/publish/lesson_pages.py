"""Lessons + the shop's patterns -> the views of the lessons' pages, and the links that lead to them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import count, groupby
from pathlib import Path

from markupsafe import Markup

from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.blocks import SCREEN, Figure
from sitegen.publish.chips import chip, inks
from sitegen.publish.compose import SUMMARY, TITLE, canonical, page_address, shop_line
from sitegen.publish.lesson_view import (
    FrameView,
    LessonCard,
    LessonGroup,
    LessonsView,
    LessonView,
)
from sitegen.publish.lessons import (
    DrawnFrame,
    Lesson,
    LessonPlan,
    frame_title,
    lesson_name,
    lesson_plans,
    lesson_title,
    used_in,
)
from sitegen.publish.making import fitted, legend
from sitegen.publish.materials import cautions_of, uses_of
from sitegen.publish.piece import Piece
from sitegen.publish.view import Fact, Ink, Link
from sitegen.publish.words import Words

FRAME_ROOM, LARGEST_FRAME = (88.0, 84.0), 6.5
PICTURE_ROOM, LARGEST_PICTURE = (96.0, 76.0), 5.5
CARD_ROOM, LARGEST_CARD = (54.0, 46.0), 4.2
"""Width and height in mm that drawings may take, and how much they are enlarged at most: frames, the finished
sample on its page, and in the list of all lessons."""
LEAST_SHARE = 0.6
"""What would need less than this share of the largest scale is drawn smaller by itself."""
LIST = "techniques/index.html"
COLOURS = "techniques/colours.css"
"""Where the list of all lessons and the colours of their letters stand in the site."""


def lesson_address(name: str) -> str:
    """Where a lesson's page stands in the site."""
    return f"techniques/{name}/index.html"


def lesson_links(pattern: Pattern, theme: Path, words: Words) -> tuple[Link, ...]:
    """The lessons of a pattern's stitches, in the order of its parts."""
    taught = {plan.stitch for plan in lesson_plans(theme)}
    stitches = dict.fromkeys(part.stitch for part in pattern.parts if part.stitch in taught)
    return tuple(Link(lesson_address(name), lesson_title(name, words)) for name in map(lesson_name, stitches))


def lesson_view(
    made: Sequence[Lesson], place: int, pieces: Sequence[Piece], shop: Shop, words: Words
) -> LessonView:
    """The page of the lesson at that place; `pieces` are all of the shop."""
    lesson = made[place]
    name, say = lesson.plan.name, words.text
    title = lesson_title(name, words)
    samples = lesson.samples.values()
    threads = [sample.pattern.thread or shop.thread for sample in samples]
    findings = {placed.kind for sample in samples for placed in sample.path.findings}
    used = uses_of([sample.pattern for sample in samples], threads, findings)
    svg, _ = fitted(lesson.picture, "finished", PICTURE_ROOM, LARGEST_PICTURE)
    return LessonView(
        title=title,
        description=say("lesson.description", stitch=title, count=len(lesson.frames)),
        about=say(f"lesson.{name}.is"),
        good=say(f"lesson.{name}.good"),
        picture=Figure(svg, say("lesson.sample")),
        frames=tuple(_frames(lesson, words)),
        faults=tuple(_faults(lesson.plan, words)),
        legend=legend(lesson.samples[name].path, say, SCREEN),
        cautions=cautions_of(used, words),
        patterns=tuple(
            Link(
                page_address(piece.pattern.name),
                piece.pattern.title,
                piece.pattern.summary,
                piece.language_of(TITLE),
                piece.language_of(SUMMARY),
            )
            for piece in used_in(lesson.plan.stitch, pieces)
        ),
        before=_link(made[place - 1].plan, words) if place else None,
        after=_link(made[place + 1].plan, words) if place + 1 < len(made) else None,
        canonical=canonical(shop, lesson_address(name)),
        shop=shop_line(shop),
    )


def lessons_view(made: Sequence[Lesson], shop: Shop, words: Words) -> LessonsView:
    """The list of all lessons, group by group."""
    groups = groupby(made, key=lambda lesson: lesson.plan.group)
    return LessonsView(
        groups=tuple(
            LessonGroup(words.text(f"lessons.group-{group}"), tuple(_card(lesson, words) for lesson in some))
            for group, some in groups
        ),
        canonical=canonical(shop, LIST),
        shop=shop_line(shop),
    )


def sample_inks(made: Sequence[Lesson]) -> tuple[Ink, ...]:
    """The chip colours of all samples; a letter has one colour in all of them."""
    shown = (ink for lesson in made for sample in lesson.samples.values() for ink in inks(sample.pattern))
    return tuple(dict.fromkeys(shown))


def _link(plan: LessonPlan, words: Words) -> Link:
    return Link(lesson_address(plan.name), lesson_title(plan.name, words))


def _card(lesson: Lesson, words: Words) -> LessonCard:
    name = lesson.plan.name
    svg, _ = fitted(lesson.picture, f"sample-{name}", CARD_ROOM, LARGEST_CARD)
    return LessonCard(
        href=lesson_address(name),
        title=lesson_title(name, words),
        figure=Figure(svg, ""),
        about=words.text(f"lesson.{name}.is"),
        frames=words.text("lessons.frames", count=len(lesson.frames)),
    )


def _frames(lesson: Lesson, words: Words) -> Iterator[FrameView]:
    """All frames at one scale, so that a bead keeps its size, but for those too wide for it."""
    fits = [
        min(FRAME_ROOM[0] / frame.drawing.width_mm, FRAME_ROOM[1] / frame.drawing.height_mm)
        for frame in lesson.frames
    ]
    shared = min([LARGEST_FRAME, *(fit for fit in fits if fit >= LEAST_SHARE * LARGEST_FRAME)])
    for number, (frame, fit) in enumerate(zip(lesson.frames, fits, strict=True), 1):
        pattern = lesson.samples[frame.choice.sample].pattern
        yield FrameView(
            number=str(number),
            title=frame_title(lesson.plan, frame.choice, words),
            figure=Figure(Markup(frame.drawing.svg(f"frame-{number}", min(shared, fit))), ""),
            remark=words.text("lesson.turned") if frame.turned else "",
            pick_up=tuple(chip(pattern, count, letter) for count, letter in frame.pick_up),
            sentences=frame.sentences,
            about=_about(lesson.plan, frame, words),
        )


def _about(plan: LessonPlan, frame: DrawnFrame, words: Words) -> str:
    """What the lesson adds to a frame's own sentences, or what all lessons add to frames of this name."""
    own = f"lesson.{plan.name}.{frame.choice.name}"
    about = words.text(own if words.has(own) else f"lesson.say.{frame.choice.name}")
    by_word_chart = any(phrase.key == "tail-count" for step in frame.steps for phrase in step.phrases)
    return f"{about} {words.text('lesson.counted')}" if by_word_chart else about


def _faults(plan: LessonPlan, words: Words) -> Iterator[Fact]:
    """What goes wrong: what is seen, and its cause and cure."""
    for number in count(1):
        if not words.has(f"lesson.{plan.name}.fault-{number}"):
            return
        seen, cure = (words.text(f"lesson.{plan.name}.{kind}-{number}") for kind in ("fault", "cure"))
        yield Fact(seen, cure)
