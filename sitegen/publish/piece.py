"""All that is known of one pattern once it is woven, measured and drawn: what every product is made from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from sitegen.draw.pens import Drawing
from sitegen.model.measures import Measures
from sitegen.model.numbers import plain
from sitegen.model.photo import Photo
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.publish.photo import Developed
from sitegen.publish.table import TableSection
from sitegen.publish.words import Words

CRIMP = "crimp tube"
"""Holds the end of a string; it is not written in the source."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One pattern, worked out."""

    pattern: Pattern
    shop: Shop
    path: ThreadPath
    measures: Measures
    words: Words
    picture: Drawing
    """The finished piece."""
    charts: tuple[Drawing | None, ...]
    """One for each of the path's parts; None for a part without beads."""
    table: tuple[TableSection, ...]
    """The step table, part by part."""
    second: Piece | None = None
    """The other piece of a mirrored pair, where it differs: its own path, charts and step table."""
    colourway: str = ""
    """The colourway it is shown in; empty for the author's own colours."""
    folder: str = ""
    """Of its page, below that of the author's colours; empty for those."""
    ways: tuple[Piece, ...] = ()
    """The same piece in each colourway; empty for a piece in one."""
    photos: Mapping[Photo, Developed] = field(default_factory=dict)
    """Every photo of the pattern at its sizes."""
    unfilled: bool = False
    """Shown in outlines and letters alone, to save ink."""
    written: Pattern | None = None
    """The pattern in its author's words, where it is shown in another language."""

    @property
    def label(self) -> str:
        """What messages to the author call it: `fern`; in another language than the first, `fern in de`."""
        return f"{self.pattern.name} in {self.shop.language}" if self.shop.folder else self.pattern.name

    @property
    def beside(self) -> str:
        """The way from its page to that in the first language: files without words lie there alone."""
        if not self.shop.folder:
            return ""
        own = "/".join(filter(None, ("patterns", self.pattern.name, self.folder))) + "/"
        return "../" * (self.shop.folder + own).count("/") + own

    def language_of(self, text: Callable[[Pattern], object]) -> str:
        """The author's language, for a text that is shown as written; empty where it is translated."""
        if self.written is None or text(self.pattern) != text(self.written):
            return ""
        return self.shop.languages[0]

    def author_name(self, letter: str) -> str:
        """What the author calls a colour: in every language, equal beads are known by it."""
        colour = (self.written or self.pattern).colour(letter)
        return colour.name if colour else letter

    @property
    def thread(self) -> str:
        """The thread in trade words."""
        return self.pattern.thread or self.shop.thread

    @property
    def needle(self) -> str:
        """The needle in trade words."""
        return self.pattern.needle or self.shop.needle

    def row_of(self, step: int) -> int:
        """The row of the step table that a step of the thread path is in."""
        rows = (row for section in self.table for row in section.rows)
        return next(row.number for row in rows if row.first_step <= step <= row.last_step)

    @property
    def findings(self) -> dict[str, int]:
        """Kind of finding -> how many one piece takes, in the order of the source."""
        kinds: dict[str, int] = {}
        for part in self.pattern.parts:
            for kind in (part.hang and part.hang.finding, part.finding and part.finding.kind, part.clasp):
                if kind:
                    kinds[kind] = kinds.get(kind, 0) + 1
        for placed in self.path.findings:
            if placed.ring_mm:
                kinds[f"{placed.kind}, {plain(placed.ring_mm, 1)} mm outside"] = 1
        crimps = sum(placed.kind == CRIMP for placed in self.path.findings)
        if crimps:
            kinds[CRIMP] = crimps
        if self.pattern.finding:
            kinds.setdefault(self.pattern.finding, 1)
        return kinds
