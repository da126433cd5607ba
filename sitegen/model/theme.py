"""A theme's own file, read: the theme it rests on, its colours and its faces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.model.location import Places

COLOURS = ("paper", "plate", "ground", "ink", "soft", "rule", "hair", "edge", "accent")
"""Page; panels and controls; what drawings lie on; text; lesser text; lines; thin lines; outlines; links."""
FACES: Mapping[str, tuple[str, ...]] = {"title": ("regular",), "text": ("regular", "italic", "bold")}
"""Face -> its cuts."""


@dataclass(frozen=True, slots=True)
class ThemeFile:
    """What `theme.yaml` says."""

    base: str = ""
    """The theme that lends everything else; empty where the theme is whole."""
    colours: Mapping[str, str] = field(default_factory=dict)
    """Name -> `#rrggbb`, on light pages and in print."""
    dark_colours: Mapping[str, str] = field(default_factory=dict)
    faces: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Face -> cut -> name of its font files, without their ending."""
    at: Places = field(default_factory=dict, compare=False, repr=False)
    """Such as `base`, `colours.ink`, `faces.title.regular`."""
