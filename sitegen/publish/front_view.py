"""The records that the front page's template is filled from: finished text and addresses."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.publish.view import Card, ForMachines, Link, Sharing, ShopLine


@dataclass(frozen=True, slots=True)
class WayIn:
    """A line of the front page's table of contents."""

    href: str
    title: str
    about: str
    count: str = ""
    """What stands there, such as `21 patterns`."""
    parts: tuple[Link, ...] = ()
    """Places within it."""
    language: str = ""
    """Of its words, where it is not that of the page."""


@dataclass(frozen=True, slots=True)
class FrontView:
    """The front page."""

    cards: tuple[Card, ...]
    """The newest patterns."""
    ways_in: tuple[WayIn, ...]
    count: str
    canonical: str
    description: str
    shop: ShopLine
    sharing: Sharing | None
    machines: ForMachines | None = None
