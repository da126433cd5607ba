"""A word chart, `6D 2L 3(D A) 4D` -> the beads it spells out, or problems.

A count stands directly before a letter or a bracket; no count means one. Digits that no letter or bracket
follows end in a bead's letter: `12` is one bead `2`, and `3 A` is the bead `3`, then the bead `A`.
In a strand, square brackets hold a side branch that grows below the bead before them: `6D [3L A] 4D`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from sitegen.model.location import NOWHERE, Location
from sitegen.model.source import Words
from sitegen.read.faults import Faults

MOST_BEADS = 5_000
"""Beads in one word chart."""
MOST_LEVELS = 12
"""Brackets inside each other."""

_TOKEN = re.compile(
    r"(?P<blank>\s+)|(?P<count>[-+]?[0-9]*)(?P<what>[A-Za-z0-9()\[\]])|(?P<strange>.)", re.DOTALL
)


@dataclass(slots=True)
class _Level:
    """A bracket that is open (or the whole chart)."""

    count: int
    start: int
    opening: str = "("
    beads: list[tuple[str, int]] = field(default_factory=list)
    """(letter, offset in the text); `[` and `]` stand around the beads of a branch."""


class _Reader:
    def __init__(self, text: str, where: Location, exact: bool, faults: Faults, branched: bool) -> None:
        self.text, self.where, self.exact, self.faults = text, where, exact, faults
        self.branched = branched
        self.levels = [_Level(1, 0)]
        self.failed = False

    def spot(self, start: int, length: int = 1) -> Location:
        """The place of some of the text; the whole value where characters cannot be told apart."""
        if not self.exact:
            return self.where
        return Location(self.where.file, self.where.line, self.where.column + start, max(1, length))

    def fail(self, code: str, start: int, length: int = 1, **values: object) -> None:
        self.failed = True
        self.faults.add(code, self.spot(start, length), **values)

    def read(self) -> Words | None:
        for token in _TOKEN.finditer(self.text):
            if token["strange"] or (token["what"] in ("[", "]") and not self.branched):
                sign, place = token["strange"] or token["what"], "strange" if token["strange"] else "what"
                self.fail("words-character", token.start(place), sign=sign)
            elif token["what"] and not self.take(token):
                return None
        for level in self.levels[1:]:
            self.fail("words-unclosed", level.start)
        beads, branches = self.unfold(self.levels[0].beads)
        if not beads and not self.failed:
            self.fail("words-empty", 0, len(self.text))
        if self.failed:
            return None
        spots = {offset: self.spot(offset) for _, offset in beads}
        return Words(
            self.text,
            tuple(letter for letter, _ in beads),
            self.where,
            tuple(spots[offset] for _, offset in beads),
            branches,
        )

    def unfold(
        self, marked: list[tuple[str, int]]
    ) -> tuple[list[tuple[str, int]], tuple[tuple[int, int], ...]]:
        """The beads without the marks of branches, and where each branch lies among them."""
        beads: list[tuple[str, int]] = []
        branches: list[tuple[int, int]] = []
        opened: list[tuple[int, int]] = []
        for sign, offset in marked:
            if sign == "[":
                if opened:
                    self.fail("branch-nested", offset)
                if not beads:
                    self.fail("branch-start", offset)
                opened.append((len(beads), offset))
            elif sign == "]":
                first, start = opened.pop()
                branches.append((first, len(beads)))
                if len(beads) - first < 2:
                    self.fail("branch-short", start, offset - start + 1)
            else:
                beads.append((sign, offset))
        return beads, tuple(branches)

    def take(self, token: re.Match[str]) -> bool:
        """Take one counted letter or bracket; False where going on would be endless."""
        what, digits, place = token["what"], token["count"], token.start("what")
        if what in ")]":
            return self.close(place, digits, token.start(), what)
        count = self.count(digits, token.start())
        if what in "([":
            if len(self.levels) > MOST_LEVELS:
                self.fail("words-deep", place, most=MOST_LEVELS)
                return False
            self.levels.append(_Level(count, place, what))
            return True
        return self.add([(what, place)], count)

    def count(self, digits: str, start: int) -> int:
        """The count written, 1 if none; a wrong one is noted and taken as 1."""
        if not digits:
            return 1
        if len(digits) > 6:
            self.fail("words-many", start, len(digits), most=MOST_BEADS)
            return 1
        if not digits.isdigit() or int(digits) == 0:
            self.fail("words-count", start, len(digits), count=digits)
            return 1
        return int(digits)

    def add(self, beads: list[tuple[str, int]], count: int) -> bool:
        level = self.levels[-1]
        if len(level.beads) + len(beads) * count > MOST_BEADS:
            self.fail("words-many", 0, len(self.text), most=MOST_BEADS)
            return False
        level.beads.extend(beads * count)
        return True

    def close(self, place: int, digits: str, start: int, what: str) -> bool:
        if digits.isdigit():  # `(D 3)`: the last digit is a bead, as it is before a blank
            if not self.add([(digits[-1], place - 1)], self.count(digits[:-1], start)):
                return False
        elif digits:
            self.fail("words-count", start, len(digits), count=digits)
        if len(self.levels) == 1 or self.levels[-1].opening + what not in ("()", "[]"):
            self.fail("words-stray", place, sign=what)
            return True
        level = self.levels.pop()
        if not level.beads:
            self.fail("words-hollow", level.start, place - level.start + 1)
        if what == "]":
            return self.add([("[", level.start), *level.beads, ("]", place)], level.count)
        return self.add(level.beads, level.count)


def parse_words(
    text: str,
    where: Location = NOWHERE,
    *,
    exact: bool = True,
    branched: bool = False,
    faults: Faults | None = None,
) -> Words | None:
    """Spell out a word chart.

    `where` is the place of the text; `exact` says that the text stands there character for character, so
    that each bead's own place is known; `branched` that it may hold side
    branches. Problems go to `faults`; with any, the result is None.
    """
    return _Reader(text, where, exact, faults if faults is not None else Faults(), branched).read()
