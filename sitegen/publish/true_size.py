"""The records that a full-size template is filled from: drawings at their true size and finished text."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class TrueSize:
    """A drawing at 100 %."""

    svg: Markup
    caption: str
    """Empty where none is wanted."""


@dataclass(frozen=True, slots=True)
class TemplateSheet:
    """A sheet of the full-size template beyond the first."""

    heading: str
    upright: Markup
    lying: Markup
    """Its own bars of 100 mm."""
    figures: tuple[TrueSize, ...]
    key: Markup
    """The map of all sheets with this one marked; empty where there is only one."""


@dataclass(frozen=True, slots=True)
class TemplateView:
    """The full-size template: bars to check the print with, and the piece in outline, true to scale."""

    placing: str
    """Where the piece stands: `beside` or `under` the bars, or on `sheets` of its own."""
    about: tuple[str, ...]
    upright: Markup
    lying: Markup
    inches: Markup
    figures: tuple[TrueSize, ...]
    sheets: tuple[TemplateSheet, ...]
