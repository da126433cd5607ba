"""A beginner's replay: the printed rows of peyote alone rebuild the chart.

The interpreter knows what a hand knows: which bead the thread comes out of and to which side, which beads
lie beside it, and left from right. It sees no path, no motion and no chart.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.pattern import read_pattern
from sitegen.read.sources import load_pattern
from sitegen.weave import weave
from tests.replay.hand import as_read

ROOT = Path(__file__).parents[2]
WORDS = Words(ROOT / "themes" / "linen", "en")
WAY = {"left": -1, "right": 1}
HEADER = """---
title: Replay
summary: For the hand.
makes: one piece
price: free
colours:
  A: {bead: cylinder 11/0, name: dark, hex: "#1f4d3a"}
  B: {bead: cylinder 11/0, name: light, hex: "#c9d6a3"}
  C: {bead: cylinder 11/0, name: warm, hex: "#c0603a"}
parts:
  - name: Piece
    stitch: peyote
    begin: top
"""

CHARTS = {
    "even": ("A B C A\n C C B A\nA A B B\n B C A A\nC B A A", ""),
    "odd": ("A B C A\n C C B\nA A B B\n B C A\nC B A A", ""),
    "short first row": (" A B C\nB C A A\n C C B\nA A B B\n B C A", ""),
    "decrease": ("A B C A\n C C B A\nA A B B\n B C A A\nC B A A\n B A B\n  C A\n   B A", ""),
    "increase by one": ("   A B C\n  A B C A\n   B C C\n  C C A B\n A C A A A\nB C C B A A\n A A B C B", ""),
    "increase by two": ("   A B C\n  C A B C\n   A A C\nA C A B B A\n C A B A B\nA A B B C C", ""),
    "two-drop": ("AB  CA  BB\n  AC  BA\nCC  AB  AA\n  BC  CA\nBA  AA  BC", "    drop: 2\n"),
    "from the right": ("A B C A\n C C B\nA A B B\n B C A", "    start: right\n"),
    "zipped": ("A B C A\n C C B A\nA A B B\n B C A A", "    zip: true\n"),
}


class Hand:
    """What lies on the table: units of beads by column and height (half a bead each, downward)."""

    def __init__(self) -> None:
        self.beads: dict[tuple[int, int], str] = {}
        self.at = (0, 0)
        self.way = 1
        """The side the thread comes out at."""
        self.drop = 1
        self.new = ""
        self.row = 0

    def put(self, x: int, y: int, way: int) -> None:
        """Lay what the next stitch picks up; strung from left to right it reads from the left."""
        assert (x, y) not in self.beads
        unit, self.new = self.new[: self.drop], self.new[self.drop :]
        self.beads[(x, y)] = unit if way > 0 else unit[::-1]
        self.at, self.way = (x, y), way

    def stitch(self, way: int) -> None:
        """A new unit beneath the one the thread comes out of, or beyond it, and the next that stands out."""
        x, y = self.at
        x, y = (x + way, y + 1) if self.way == way else (x, y + 2)
        self.put(x, y, way)
        self.through(x + way, y - 1, way)

    def through(self, x: int, y: int, way: int) -> None:
        """Go through a unit that is there and stands out."""
        assert (x, y) in self.beads
        assert (x, y + 2) not in self.beads
        self.at, self.way = (x, y), way

    def place(self, number: int, side: str, row: int) -> tuple[int, int]:
        """`bead 2 from the left of row 5`."""
        columns = sorted(x for x, y in self.beads if y == row - 1)
        return (columns[number - 1 if side == "left" else -number], row - 1)

    def letters(self) -> str:
        """Row by row from the top, blanks where nothing lies, as a chart is drawn."""
        left = min(x for x, _ in self.beads)
        lines = []
        for row in sorted({y for _, y in self.beads}):
            line = ""
            for x, y in sorted(self.beads):
                if y == row:
                    line = line.ljust((x - left) * self.drop) + self.beads[(x, y)]
            lines.append(line)
        return "\n".join(lines)


def follow(hand: Hand, sentence: str) -> None:
    """Do what one printed sentence says."""
    for pattern, action in GRAMMAR:
        found = re.match(pattern, sentence)
        if found:
            action(hand, found)
            return
    raise AssertionError(f"the hand does not know what to do: {sentence}")


def string(hand, found):
    assert len(hand.new) == int(found[1])
    for place in range(len(hand.new) // hand.drop):
        hand.put(place, place % 2, 1)


def string_back(hand, found):
    if found[1] == "right":  # so the string was laid to the left
        hand.beads = {(-x, y): unit[::-1] for (x, y), unit in hand.beads.items()}
    assert int(found[2]) == sum(map(len, hand.beads.values())) - 1
    hand.at, hand.way = (0, 0), WAY[found[1]]


def stitches(hand, found):
    times = re.search(r"(\d+) times in all", found.string)
    for _ in range(int(times[1]) if times else 1):
        hand.stitch(WAY[found[1]])


def odd_turn(hand, found):
    out = WAY[found[1]]
    x, y = hand.at[0] + out, hand.row - 3
    hand.through(x, y, out)
    assert (x + out, y + 1) not in hand.beads  # an edge bead
    hand.put(x, y + 2, WAY[found[2]])


def tip(hand, found):
    hand.put(hand.at[0] + hand.way, hand.row - 1, WAY[found[1]])


def beyond(hand, found):
    out, begin = hand.way, hand.at[0]
    first = hand.row - 1
    step = 0
    while hand.new:
        step += 1
        hand.put(begin + step * out, first + (step + 1) % 2, out)
    hand.at, hand.way = (begin + out, first), -out


def increase(hand, found):
    way = hand.way
    hand.put(hand.at[0] + way, hand.at[1] + 1, way)
    hand.put(hand.at[0] + way, int(found[1]) - 1, way)


def way_to(hand, found):
    hand.at = hand.place(-(-int(found[2]) // hand.drop), found[3], int(found[4]))
    hand.way = WAY[found[1]]


def nothing_new(hand, found):
    assert not hand.new


def explained(hand, found):
    """What the next row is like: nothing to do yet."""


GRAMMAR = (
    (r"So far the beads lie in one line\. In row 3 every stitch leaves out", explained),
    (r"Stop bead first: .* Pick up the (\d+) beads in order", string),
    (r"Skip the last bead and go back to the (left|right) through the other (\d+)\.", string_back),
    (r"To the (left|right)(?:, one stitch at a time)?: .*go through the next", stitches),
    (
        r"Odd turn, .*?to the (left|right) through .*? two rows back and .* to the (left|right), back",
        odd_turn,
    ),
    (r"Tip, .* to the (left|right)", tip),
    (r"Increase, beyond the edge: pick these up, skip the last one and go back", beyond),
    (r"Increase, beyond the edge: .* of row (\d+)\. Turn back", increase),
    (
        r"(?:Go|Weave|Lay) .*?to the (left|right) through .*?bead (\d+) from the (left|right) of row (\d+)",
        way_to,
    ),
    (
        r"Go under the thread that lies at the edge and back to the (left|right) through the bead you",
        nothing_new,
    ),
    (r"Run back", nothing_new),
    (r"Zip: ", nothing_new),
)


@dataclass
class Hanging:
    """What hangs from the edges: where the thread was when each thing was taken, and where it went."""

    hand: Hand
    strands: list[tuple[tuple[int, int], str]] = field(default_factory=list)
    """Each with the bead it hangs from."""
    findings: list[tuple[tuple[int, int], tuple[int, int]]] = field(default_factory=list)

    def follow(self, sentences: str) -> None:
        rest = sentences
        while rest:
            for pattern, action in HUNG:
                found = re.match(pattern, rest)
                if found:
                    action(self, found)
                    rest = rest[found.end() :].lstrip()
                    break
            else:
                pytest.fail(f"the hand does not know what to do: {rest}")


def strand(hanging, found):
    letters = hanging.hand.new
    assert int(found["back"]) == len(letters) - 1
    hanging.strands.append((hanging.hand.at, letters))
    hanging.hand.new = ""
    assert hanging.hand.way == WAY[found["way"]]  # out at the end it began at: round its own bead
    if found["on"]:
        x, y = hanging.hand.at
        hanging.hand.at = (x + hanging.hand.way, y)
        assert hanging.hand.at in hanging.hand.beads


def strand_on(hanging, found):
    """Behind the edge, and on to the next bead that stands out."""
    (x, y), way, beads = hanging.hand.at, WAY[found["way"]], hanging.hand.beads
    assert hanging.hand.way == way
    (row,) = {level for column, level in beads if abs(level - y) == 1}  # an edge has one row behind it
    count = int(found["count"] or 1)
    assert all((x + way * number, row) in beads for number in range(1, count + 1))
    hanging.hand.at = (x + way * (count + 1), y)
    assert hanging.hand.at in beads


def on_finding(hanging, found):
    """Out of one bead, through the loop, and into the next of the same height."""
    (x, y), way = hanging.hand.at, WAY[found["way"]]
    assert hanging.hand.way == way
    after = [other for other, level in hanging.hand.beads if level == y and (other - x) * way > 0]
    onto = min(after, key=lambda other: abs(other - x)) if found["next"] else x
    hanging.findings.append(((x, y), (onto, y)))
    hanging.hand.at = (onto, y)


def began(hanging, found):
    assert hanging.hand.at == hanging.findings[-1][0]


def along(hanging, found):
    hanging.hand.at = hanging.hand.place(int(found["place"]), found["side"], int(found["row"]))
    hanging.hand.way = WAY[found["way"]]


def turn_back(hanging, found):
    assert hanging.hand.way == -WAY[found["way"]]
    hanging.hand.way = WAY[found["way"]]


SIDE = "(?P<way>left|right)"
HUNG = (
    (
        r"Leave the last bead: go back up through the other (?P<back>\d+)\. The strand hangs under the "
        rf"middle of its bead: go to the {SIDE} through that bead once more"
        r"(?P<on> and on through the next bead of the row)?\. Pull snug\.",
        strand,
    ),
    (
        rf"Then go on to the {SIDE} through the next (?:bead|(?P<count>\d+) beads) of the row behind the "
        r"edge and the next bead that stands out\.",
        strand_on,
    ),
    (
        rf"Go through the loop of the ear wire and(?:, across the notch,)? to the {SIDE} through the "
        r"(?:same bead|(?P<next>next bead that stands out|bead beside it))\.",
        on_finding,
    ),
    (r"The thread comes out where it began\. Do all this 3 times, and pull snug each time\.", began),
    (r"Do this 3 times in all, and pull snug each time\.", began),
    (
        rf"Go under the thread that lies at the edge and back to the {SIDE} through the bead you came from\.",
        turn_back,
    ),
    (
        rf"(?:Go|Weave) [^.]*?to the {SIDE} through [^.]*?bead (?P<place>\d+) from the (?P<side>left|right) "
        r"of row (?P<row>\d+)\.",
        along,
    ),
)
"""Sentences of what hangs, and what the hand does; the first that fits is done."""


def replay(pattern) -> Hand:
    path, problems = weave(pattern, Shop())
    assert not problems
    hand = Hand()
    hand.drop = pattern.parts[0].drop
    for section in step_table(path, pattern, Shop(), measure(path, pattern, Shop()), WORDS):
        for row in as_read(section.rows):
            hand.new = "".join(letter * count for count, letter in row.pick_up)
            number = re.fullmatch(r"Row (\d+)", row.label)
            hand.row = int(number[1]) if number else 2
            for sentence in row.sentences:
                follow(hand, sentence)
            assert not hand.new
    return hand


@pytest.mark.parametrize("name", CHARTS)
def test_the_words_alone_rebuild_the_chart(name):
    chart, keys = CHARTS[name]
    pattern, problems = read_pattern(f"{HEADER}{keys}---\n```chart Piece\n{chart}\n```\n", "r.md", Shop())
    assert not problems
    assert replay(pattern).letters() == chart


def test_the_words_alone_rebuild_the_demo():
    pattern = load_pattern(ROOT / "content" / "patterns" / "tideline-band.md", Shop()).patterns[0]
    rows = pattern.parts[0].all_rows
    lines = []
    for row in rows:
        line = ""
        for column, letter in row.cells:
            line = line.ljust(column) + letter
        lines.append(line)
    assert replay(pattern).letters() == "\n".join(lines)


EARRING = HEADER.replace("price: free\n", "price: free\nfinding: ear wire\n")
FRINGE = """    hang: {finding: ear wire, from: top}
  - name: Fringe
    stitch: fringe
    hang: {from: Piece, edge: bottom}
    strands: each 4A B C
"""


@pytest.mark.parametrize("begin", ["top", "bottom"])
@pytest.mark.parametrize("name", ["even", "odd", "two-drop", "from the right", "decrease"])
def test_the_words_alone_hang_the_finding_and_the_fringe(name, begin):
    """The chart's own rows are replayed above; here only where the thread goes once the band is made."""
    chart, keys = CHARTS[name]
    header = EARRING.replace("begin: top", f"begin: {begin}")
    text = f"{header}{keys}{FRINGE}---\n```chart Piece\n{chart}\n```\n"
    pattern, problems = read_pattern(text, "r.md", Shop())
    assert not problems
    path, problems = weave(pattern, Shop())
    assert not problems
    band, fringe = step_table(path, pattern, Shop(), measure(path, pattern, Shop()), WORDS)
    hand = Hand()
    lines = chart.split("\n")
    rows = lines if begin == "top" else lines[::-1]
    hand.beads = {(x, y): sign for y, line in enumerate(rows) for x, sign in enumerate(line) if sign != " "}
    hanging = Hanging(hand)
    started = False
    for row in as_read((*band.rows, *fringe.rows)):
        said = " ".join(row.sentences)
        hand.new = "".join(letter * count for count, letter in row.pick_up)
        started = started or (row.number <= band.rows[-1].number and not row.label and not hand.new)
        if not started:
            continue
        hanging.follow(said)
    top = sorted(x for x, y in hand.beads if y == (0 if begin == "top" else len(rows) - 1))
    bottom = sorted(x for x, y in hand.beads if y == (len(rows) - 1 if begin == "top" else 0))
    middle = {top[(len(top) - 1) // 2], top[len(top) // 2]}
    assert [{one[0], other[0]} for one, other in hanging.findings] == [middle]
    places = [place[0] for place, _ in hanging.strands]
    assert places in (bottom, bottom[::-1])
    assert {letters for _, letters in hanging.strands} == {"AAAABC"}
