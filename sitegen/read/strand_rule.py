"""A rule for all strands, `from 10D, each 2D longer to the centre, then 3A` -> StrandRule -> the strands.

`each 5D 3A` makes all strands alike. In the other form `from` gives the beads of the strand the rule begins
with, `each 2D longer` or `each 2 shorter` what changes from one strand to the next, `to the centre` (or
`right`, or `left`) the way it goes, and `then` the beads at the foot of every strand. A bare number means so
many of the last bead before it; what grows or goes does so above the beads of `then`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from sitegen.model.location import NOWHERE, Location
from sitegen.model.source import StrandRule, Words
from sitegen.read.faults import Faults
from sitegen.read.words import MOST_BEADS, parse_words

_ALIKE = re.compile(r"\s*each\s(?P<first>[^,]*)")
_GRADED = re.compile(
    r"\s*from\s(?P<first>[^,]*),\s*each\s(?P<change>[^,]*?)\s*\b(?P<way>longer|shorter)"
    r"\s+to\s+the\s+(?P<toward>centre|left|right)\s*(?:,\s*then\s(?P<then>[^,]*))?"
)
_WANTED = (
    (r"\s*from\s", "from"),
    (r"[^,]+,", ", and what changes"),
    (r"\s*each\s", "each"),
    (r"[^,]*?\b(?:longer|shorter)\b", "longer or shorter"),
    (r"\s*to\s+the\s+(?:centre|left|right)\b", "to the centre, to the left or to the right"),
    (r"\s*(?:,\s*then\s|$)", ", then and the beads at every foot, or the end"),
)
"""Piece after piece of the graded form, and how a message names the piece that is missing."""


@dataclass(frozen=True, slots=True)
class _Text:
    """A rule as written, and where it stands."""

    text: str
    where: Location
    exact: bool
    faults: Faults

    def spot(self, start: int, length: int) -> Location:
        """The place of some of the text; the whole value where characters cannot be told apart."""
        if not self.exact:
            return self.where
        return Location(self.where.file, self.where.line, self.where.column + start, max(1, length))

    def words(self, found: re.Match[str], group: str) -> Words | None:
        """The word chart of one group."""
        text, start = found[group], found.start(group)
        where = self.spot(start, len(text))
        return parse_words(text, where, exact=self.exact, branched=True, faults=self.faults)


def parse_rule(
    text: str, where: Location = NOWHERE, *, exact: bool = True, faults: Faults | None = None
) -> StrandRule | None:
    """Read a rule. Problems go to `faults`, each at its own place; with any, the result is None."""
    rule = _Text(text, where, exact, faults if faults is not None else Faults())
    alike, graded = _ALIKE.fullmatch(text), _GRADED.fullmatch(text)
    if alike:
        first = rule.words(alike, "first")
        return StrandRule(first) if first else None
    if graded:
        return _graded(rule, graded)
    start, wanted = _astray(text)
    rule.faults.add("rule-form", rule.spot(start, len(text) - start), wanted=wanted)
    return None


def _astray(text: str) -> tuple[int, str]:
    """Where a text stops being a rule, and what should stand there."""
    if not re.match(r"\s*from\s", text):
        comma = text.find(",") if re.match(r"\s*each\s", text) else 0
        return max(0, comma), "the end" if comma else "from or each"
    place = 0
    for piece, wanted in _WANTED:
        found = re.match(piece, text[place:])
        if not found:
            return place + len(text[place:]) - len(text[place:].lstrip()), wanted
        place += found.end()
    return place, "the end"


def _graded(rule: _Text, found: re.Match[str]) -> StrandRule | None:
    first = rule.words(found, "first")
    then = rule.words(found, "then") if found["then"] is not None else None
    shorter = found["way"] == "shorter"
    change, count = None, 0
    if re.fullmatch(r"[0-9]{1,4}", found["change"]):
        count = int(found["change"])
    elif shorter:
        rule.faults.add("rule-shorter", rule.spot(found.start("change"), len(found["change"])))
        return None
    else:
        change = rule.words(found, "change")
    if not count and change is None and re.fullmatch(r"[0-9]*", found["change"]):
        where = rule.spot(found.start("change"), max(1, len(found["change"])))
        rule.faults.add("rule-form", where, wanted="a number of beads, 1 or more")
        return None
    if first is None or (found["then"] is not None and then is None) or not (count or change):
        return None
    return StrandRule(first, change, -count if shorter else count, found["toward"], then)


def strands_of(rule: StrandRule, strands: int, faults: Faults) -> tuple[Words, ...]:
    """The strands a rule gives, from left to right; () with a problem noted where they cannot be made."""
    steps = [_steps(rule, place, strands) for place in range(strands)]
    most = max(steps, default=0)
    more = len(rule.change.letters) if rule.change else max(0, rule.count)
    if len(rule.first.letters) + most * more > MOST_BEADS:
        faults.add("words-many", rule.first.where, most=MOST_BEADS)
        return ()
    left = len(rule.first.letters) + most * min(0, rule.count)
    if left < 1:
        values = {"strands": strands, "beads": len(rule.first.letters), "gone": -most * rule.count}
        faults.add("rule-none-left", rule.first.where, **values)
        return ()
    made = {count: _strand(rule, count) for count in set(steps)}
    return tuple(made[count] for count in steps)


def _steps(rule: StrandRule, place: int, strands: int) -> int:
    """How often the change has come by the place-th strand (from 0, left to right)."""
    if rule.toward == "centre":
        return min(place, strands - 1 - place)
    if rule.toward == "right":
        return place
    return strands - 1 - place if rule.toward == "left" else 0


def _strand(rule: StrandRule, steps: int) -> Words:
    words = rule.first
    if rule.change:
        for _ in range(steps):
            words = join(words, rule.change)
    elif rule.count > 0:
        last = Words("", words.letters[-1:], words.where, words.spots[-1:])
        for _ in range(steps * rule.count):
            words = join(words, last)
    elif rule.count < 0:
        keep = len(words.letters) + steps * rule.count
        keep = min([keep, *(first for first, past in words.branches if first < keep < past)])
        branches = tuple(branch for branch in words.branches if branch[1] <= keep)
        words = replace(words, letters=words.letters[:keep], spots=words.spots[:keep], branches=branches)
    return join(words, rule.then) if rule.then else words


def join(one: Words, other: Words) -> Words:
    """Two word charts as one strand."""
    shift = len(one.letters)
    return Words(
        f"{one.text} {other.text}".strip(),
        one.letters + other.letters,
        one.where,
        one.spots + other.spots,
        one.branches + tuple((first + shift, past + shift) for first, past in other.branches),
    )
