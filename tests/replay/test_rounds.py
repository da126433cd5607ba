"""A beginner's replay: rounds, tubes and ropes rebuilt from the printed table alone.

The reader knows the rows of the table (label, what to pick up, sentences) and nothing of paths or motions.
It keeps the beads it has, the round it is in, and where its thread is; a sentence it cannot follow fails.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from tests.replay.hand import as_read
from tests.weave.round_samples import path_of, piece, rounds, staggered

ROOT = Path(__file__).parents[2]
TIMES = re.compile(r"Repeat(?: to the end of the row)?: (\d+) times in all")
ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4}


def table_rows(pattern):
    """What a buyer sees: (label, letters to pick up, all sentences as one text)."""
    path = path_of(pattern)
    words = Words(ROOT / "themes" / "linen", "en")
    for section in step_table(path, pattern, Shop(), measure(path, pattern, Shop()), words):
        for row in as_read(section.rows):
            letters = [letter for count, letter in row.pick_up for _ in range(count)]
            if not row.label and not letters:
                continue  # weaving in an end, or sewing on a finding: adds no bead
            yield row.label, letters, " ".join(row.sentences)


def times(text):
    """How often a stitch is made; once where the text does not say."""
    found = TIMES.search(text)
    return int(found.group(1)) if found else 1


@dataclass
class Brick:
    """Circular brick: beads of each round in order, and the bridge last gone under."""

    done: list[list[str]] = field(default_factory=list)
    now: list[str] = field(default_factory=list)
    bridge: int = 0
    used: list[int] = field(default_factory=list)
    strung: bool = False

    def follow(self, label, letters, text):
        self.now += letters
        if "pull them into a ring" in text:
            assert "Go on through the first bead." in text
            self.strung = True
            self.end()
        elif text.startswith("Go through the ring from behind, out through the second bead"):
            assert len(letters) == 2
        elif "go through the ring from behind and out through the bead" in text.lower():
            assert len(letters) == times(text)
        elif "out through the second bead" in text:
            ahead = re.search(r"under the (\w+) bridge ahead", text)
            self.bridge = ORDINALS[ahead.group(1)] if ahead else 0
            self.used = [1 if self.strung else 0, self.bridge]  # the first bead sits beside the thread
        elif "under the same bridge once more" in text:
            self.used += [self.bridge] * len(letters)
        elif "eave out one bridge" in text:
            for _ in letters:
                self.bridge += 2
                self.used.append(self.bridge)
        elif "under the next bridge and out" in text:
            assert len(letters) == times(text)
            for _ in letters:
                self.bridge += 1
                self.used.append(self.bridge)
        elif text.startswith("Close the round"):
            self.end()
        else:
            raise AssertionError(text)

    def end(self):
        """A round is closed: its bridges were used from first to last, and the thread is at its start."""
        if self.done:
            first = 1 if self.strung else 0
            bridges = len(self.done[-1])
            assert self.used[0] == first
            assert first <= self.used[-1] < bridges + first
            assert bridges + first - self.used[-1] <= 2
            assert len(self.used) == len(self.now)
        self.strung = not self.done and self.strung
        self.done.append(self.now)
        self.now = []


@dataclass
class Peyote:
    """Peyote in rounds: beads on the thread as they lie round the ring, each with its round."""

    done: list[list[str]] = field(default_factory=list)
    now: list[str] = field(default_factory=list)
    stitches: int = 0
    before: int = 0
    """Stitches a round must have: the beads of the round before."""

    def follow(self, label, letters, text):
        if "pull them into a ring" in text:
            self.done.append(letters)
            self.before = len(letters)
        elif "next bead of the round before" in text:
            each = 2 if "two beads" in text.lower() or "both beads" in text else 1
            assert len(letters) == each * times(text)
            self.now += letters
            self.stitches += times(text)
        elif text.startswith("Step up"):
            assert self.stitches == self.before
            self.done.append(self.now)
            self.before, self.now, self.stitches = len(self.now), [], 0
        else:
            assert text.startswith("Make the edge firm") and not letters, text


@dataclass
class Tube:
    """A tube: letters by (round, column); the thread's column tells where the next bead comes to lie."""

    around: int
    beads: dict[tuple[int, int], str] = field(default_factory=dict)
    number: int = 1
    at: int = 0
    first: int = 0

    def lay(self, number, column, letter):
        place = (number, column % self.around)
        assert place not in self.beads
        self.beads[place] = letter

    def follow(self, label, letters, text):
        if "pull them into a ring" in text:
            assert label == "Rounds 1 and 2"
            extra = re.search(r"Go on through the first (?:bead|(\d+) beads)", text)
            passed = int(extra.group(1) or 1)
            for column, letter in enumerate(letters):
                self.lay(2 if (passed - 1 - column) % 2 == 0 else 1, column, letter)
            self.number, self.at, self.first = 3, passed - 1, passed
        elif "next bead of the round before" in text:
            assert label == f"Round {self.number}"
            for letter in letters:
                self.lay(self.number, self.at + 1, letter)
                self.at += 2
                assert (self.number - 1, self.at % self.around) in self.beads
        elif text.startswith("Step up: go on through the first bead"):
            self.at, self.first, self.number = self.first, self.first + 1, self.number + 1
        elif "under the first bridge ahead" in text:
            self.number += 1
            self.first = self.at - 1
            self.lay(self.number, self.at - 1, letters[0])
            self.lay(self.number, self.at + 1, letters[1])
            self.at += 1
        elif "under the next bridge and up" in text:
            assert len(letters) == times(text)
            for letter in letters:
                self.at += 2
                self.lay(self.number, self.at, letter)
        elif text.startswith("Close the round"):
            assert (self.at + 2 - self.first) % self.around == 0
            self.at = self.first
        elif "down through the next bead of the round below" in text:
            assert label == f"Round {self.number + 1}"
            assert len(letters) == 2 * times(text)
            for letter in letters:
                self.lay(self.number + 1, self.at, letter)
                self.at += 1
        elif text.startswith("Step up: go on up"):
            self.number += 1
            assert self.at == self.around
            self.at = 0
        else:
            self.ladder(letters, text)

    def ladder(self, letters, text):
        """The first round of brick and herringbone, which ends at its first bead."""
        step = 2 if self.staggered else 1
        for letter in letters:
            self.lay(1, self.at, letter)
            self.at += step
        if "comes out at the top of the first bead" in text:
            self.at = 0
        known = (
            "Let both beads",
            "One bead at a time",
            "Pull the row straight",
            "Bend the ladder",
            "Make the edge",
        )
        assert text.startswith((*known, "Go ")), text

    staggered: bool = True


def rebuilt(pattern, reader):
    for label, letters, text in table_rows(pattern):
        reader.follow(label, letters, text)
    return reader


def written(pattern):
    return [[letter for _, letter in row.cells] for row in pattern.parts[0].all_rows]


@pytest.mark.parametrize(
    "pattern",
    [
        load_pattern(ROOT / "content" / "patterns" / "orchard-ring.md", Shop()).patterns[0],
        rounds("circular brick", ["6A", "9(B)", "7(A C)", "18B", "20A 2B"]),
        rounds("circular brick", ["23A", "B 20C A", "24B"], "around: {ring: 12 mm}"),
    ],
    ids=["ring", "centre", "shrinking"],
)
def test_circular_brick(pattern):
    assert rebuilt(pattern, Brick()).done == written(pattern)


@pytest.mark.parametrize("words", [["3A", "6B", "6C", "3(A B B C)"], ["4A", "4B", "4(A C)", "8B"]])
def test_circular_peyote(words):
    pattern = rounds("circular peyote", words)
    assert rebuilt(pattern, Peyote()).done == written(pattern)


def rows_of(reader, rows):
    """The rebuilt rows in order of working, each from the first column on."""
    return [
        [reader.beads[place] for place in sorted(reader.beads) if place[0] == number]
        for number in range(1, rows + 1)
    ]


@pytest.mark.parametrize("first", [0, 1])
@pytest.mark.parametrize("stitch", ["tubular peyote", "tubular brick"])
def test_staggered_tubes(stitch, first):
    pattern = piece(f"stitch: {stitch}", staggered(["ABCAB", "BBCAA", "ABCCB", "CABAB", "AACBB"], first))
    reader = rebuilt(pattern, Tube(around=10))
    got = rows_of(reader, 5)
    want = written(pattern)[::-1]
    shifts = [{tuple(row[place:] + row[:place]) for place in range(5)} for row in want]
    assert all(tuple(row) in turned for row, turned in zip(got, shifts, strict=True))
    columns = [{column % 2 for number, column in reader.beads if number == row} for row in range(1, 6)]
    assert all(one != other for one, other in pairwise(columns))
    assert tuple(got[0]) == tuple(want[0]) or stitch == "tubular peyote"


def test_the_demo_tube():
    pattern = load_pattern(ROOT / "content" / "patterns" / "tide-bead.md", Shop()).patterns[0]
    reader = rebuilt(pattern, Tube(around=12))
    want = written(pattern)[::-1]
    assert rows_of(reader, len(want)) == want


def test_tubular_herringbone():
    pattern = piece("stitch: tubular herringbone", "AABBCC\nABABCA\nCCAABB\nABCABC")
    reader = rebuilt(pattern, Tube(around=6, staggered=False))
    assert rows_of(reader, 4) == written(pattern)[::-1]


def test_spiral_rope():
    pattern = load_pattern(ROOT / "content" / "patterns" / "bramble-rope.md", Shop()).patterns[0]
    rope = pattern.parts[0].rope
    core, outer, stitches = [], [], 0
    for _, letters, text in table_rows(pattern):
        if text.startswith("Let the beads slide down to the tail"):
            count = int(re.search(r"Go up through the first (\d+), the core", text).group(1))
            core += letters[:count]
            outer += letters[count:]
            each = len(letters) - count
            stitches += 1
            continue
        assert "core beads from the top" in text or f"go up through those {count}" in text
        assert len(letters) == times(text) * (1 + each)
        for place in range(0, len(letters), 1 + each):
            core.append(letters[place])
            outer += letters[place + 1 : place + 1 + each]
        stitches += times(text)
    assert stitches == rope.stitches
    assert core == [rope.core.letters[place % count] for place in range(count + stitches - 1)]
    assert outer == list(rope.outer.letters) * stitches
