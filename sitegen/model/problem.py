"""A fault in a source, as a value -> the message an author reads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

from sitegen.model.location import Location


class Severity(Enum):
    """How much a problem matters."""

    FAULT = "fault"
    """Nothing is published until it is mended."""
    ADVICE = "advice"
    """Worth a look; publishing goes on."""


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong (or doubtful) in a source."""

    code: str
    """Stable code, a key of `sitegen.model.codes.CODES`."""
    where: Location
    """The place to look at."""
    values: Mapping[str, object] = field(default_factory=dict)
    """What fills the braces of the code's two sentences."""
