"""The records that the templates of the lessons are filled from: finished text and finished drawings."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.publish.blocks import Chip, Figure, LegendBlock
from sitegen.publish.view import Fact, ForMachines, Link, Sharing, ShopLine


@dataclass(frozen=True, slots=True)
class FrameView:
    """One frame of a lesson."""

    number: str
    title: str
    figure: Figure
    remark: str
    """How the work is held from here on; empty where nothing changes."""
    pick_up: tuple[Chip, ...]
    sentences: tuple[str, ...]
    """Those of the step table."""
    about: str
    """What the lesson adds; may be empty."""


@dataclass(frozen=True, slots=True)
class LessonView:
    """The page of one lesson."""

    title: str
    description: str
    about: str
    good: str
    picture: Figure
    frames: tuple[FrameView, ...]
    faults: tuple[Fact, ...]
    """What is seen, and its cause and cure."""
    legend: LegendBlock
    cautions: tuple[Fact, ...]
    patterns: tuple[Link, ...]
    """The shop's patterns in this stitch."""
    before: Link | None
    after: Link | None
    canonical: str
    """Full address, or empty."""
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


@dataclass(frozen=True, slots=True)
class LessonCard:
    """One lesson in the list of all."""

    href: str
    title: str
    figure: Figure
    about: str
    frames: str


@dataclass(frozen=True, slots=True)
class LessonGroup:
    """Lessons of one kind."""

    heading: str
    cards: tuple[LessonCard, ...]


@dataclass(frozen=True, slots=True)
class LessonsView:
    """The list of all lessons."""

    groups: tuple[LessonGroup, ...]
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None
