"""A photo of the author's: the words beside it, its file, and how large it is printed."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from sitegen.model.location import Places
from sitegen.model.numbers import MM_PER_INCH

PRINT_DPI = 300
"""Dots per inch that print asks of a photo. Common practice, no source."""
LEAST_DPI = 150
"""No photo is printed coarser than this; it is printed smaller instead. Own judgement, no source."""
LEAD_ROOM_MM = (170.0, 150.0)
"""Largest width and height of the lead photo in print: the whole measure of the sheet."""
BODY_ROOM_MM = (128.0, 105.0)
"""Largest width and height of any other photo in print: the measure of the text."""


@dataclass(frozen=True, slots=True)
class Photo:
    """One photo, as the source places it; the reader adds what it found in the file."""

    file: str
    """As written: a path from the pattern's own folder."""
    alt: str
    """What is seen, for those who do not see it."""
    caption: str = ""
    lead: bool = False
    """Whether it is the header's, which helps to choose a pattern; any other is part of the making."""
    path: Path | None = field(default=None, compare=False, repr=False)
    """The file itself; None where it could not be read."""
    digest: str = ""
    """SHA-256 of the file as it was read, in hex."""
    width: int = 0
    """Pixels, the photo standing upright."""
    height: int = 0
    at: Places = field(default_factory=dict, compare=False, repr=False)

    @property
    def room_mm(self) -> tuple[float, float]:
        """Largest width and height in print."""
        return LEAD_ROOM_MM if self.lead else BODY_ROOM_MM

    @property
    def widest_mm(self) -> float:
        """How wide its shape can be in its room."""
        return min(self.room_mm[0], self.room_mm[1] * self.width / self.height)

    @property
    def printed_mm(self) -> float:
        """How wide it is printed: as its room allows, and no coarser than is bearable."""
        return min(self.widest_mm, self.width * MM_PER_INCH / LEAST_DPI)
