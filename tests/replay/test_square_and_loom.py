"""A beginner's replay: the printed rows of square stitch and loom work alone rebuild the chart.

The interpreter knows what a hand knows: which bead the thread comes out of and at which side, what lies
beside and beneath it, and left from right. It sees no path, no motion and no chart.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave
from tests.replay.hand import as_read

ROOT = Path(__file__).parents[2]
WORDS = Words(ROOT / "themes" / "linen", "en")
STEP = {"left": -1, "right": 1}
COUNT = {"the bead": 1, "the two beads": 2, "the three beads": 3}

HEADER = """---
title: Replay
summary: For the hand.
makes: one piece
revision: 1
price: free
thread: nylon 0.15 mm
colours:
  A: {bead: cylinder 11/0, name: dark, hex: "#1f4d3a"}
  B: {bead: cylinder 11/0, name: light, hex: "#c9d6a3"}
  C: {bead: cylinder 11/0, name: warm, hex: "#c0603a"}
parts:
  - name: Piece
"""

Place = tuple[int, int]
"""Column and height in the hand, both from anywhere; heights grow upward."""


class Hand:
    """What lies on the table, as the maker holds it."""

    def __init__(self) -> None:
        self.beads: dict[Place, str] = {}
        self.rows: dict[int, int] = {}
        """Number of a row -> its height."""
        self.at: Place = (0, 0)
        self.side = "right"
        """The side of that bead the thread comes out at."""
        self.turned = False
        self.row = 0
        self.new: list[str] = []

    def turn(self) -> None:
        """Half a turn, the same side towards the maker."""
        self.beads = {(-x, -y): letter for (x, y), letter in self.beads.items()}
        self.rows = {number: -y for number, y in self.rows.items()}
        self.at = (-self.at[0], -self.at[1])
        self.side = "left" if self.side == "right" else "right"
        self.turned = not self.turned

    def put(self, place: Place) -> None:
        """Lay the next bead picked up where it belongs."""
        assert place not in self.beads
        self.beads[place] = self.new.pop(0)
        self.rows.setdefault(self.row, place[1])
        self.at = place

    def pass_through(
        self, way: str, *, row: int | None = None, start: Place | None = None, count: int = 1
    ) -> None:
        """Go through some beads one after the other, to the left or right; all must be there."""
        x, y = start or self.at
        for number in range(count):
            assert (x + STEP[way] * number, y) in self.beads
        self.at = (x + STEP[way] * (count - 1), y)
        self.side = way

    def place_of(self, number: int, side: str, row: int) -> Place:
        """The bead so many from a side of a row."""
        y = self.rows[row]
        columns = sorted((x for x, height in self.beads if height == y), reverse=side == "right")
        return columns[number - 1], y

    def on(self) -> int:
        return STEP[self.side]


def string(hand: Hand, way: str) -> None:
    hand.row = 1
    start = hand.at
    hand.side = way
    for number in range(len(hand.new)):
        hand.put((start[0] + STEP[way] * number, start[1]))


def stitches(hand: Hand, size: int, times: int, *, starts: str = "") -> None:
    """Groups of new beads on the beads beneath; the first group of a row sits where the thread comes out."""
    if starts:
        assert hand.side != starts or size == 1
        x, y = hand.at
        hand.at, hand.side = (x - STEP[starts], y + 1), starts
    for _ in range(times):
        for _ in range(size):
            place = (hand.at[0] + hand.on(), hand.at[1])
            assert (place[0], place[1] - 1) in hand.beads
            hand.put(place)


def pair(hand: Hand) -> None:
    x, y = hand.at[0] + hand.on(), hand.at[1]
    assert (x - hand.on(), y - 1) in hand.beads
    below = next(number for number, height in hand.rows.items() if height == y - 1)
    now, hand.row = hand.row, hand.row
    hand.put((x, y))
    hand.row = below
    hand.put((x, y - 1))
    hand.row, hand.at = now, (x, y)


def firm(hand: Hand, back: str, below: int, on: str, count: int) -> None:
    x, y = hand.at
    assert hand.side == on
    hand.pass_through(back, start=(x, y - 1), count=below)
    hand.pass_through(on, start=(hand.at[0], y), count=count)


def weave_column(hand: Hand, place: Place, first: int, last: int, way: str) -> None:
    for row in range(first, last + (1 if last > first else -1), 1 if last > first else -1):
        hand.pass_through(way, start=(place[0], hand.rows[row]))
        way = "left" if way == "right" else "right"


def loom_row(hand: Hand, height: int, on: str, back: str, count: int) -> None:
    assert on != back
    assert len(hand.new) == count
    start = hand.at[0] if hand.beads else 0
    for number in range(count):
        hand.put((start + STEP[on] * number, height))
    hand.pass_through(back, count=count)


def obey(hand: Hand, sentence: str) -> None:
    """Do what one sentence says; a sentence it cannot follow is an error."""

    def said(words: str) -> re.Match[str] | None:
        return re.match(words, sentence)

    way = "(left|right)"
    if match := said(f"These \\d+ beads are row 1\\. .* thread comes out at the {way}-hand end"):
        string(hand, match[1])
    elif said("This bead is row 1"):
        string(hand, "right")
    elif match := said(
        f"This row goes to the {way}\\. The new bead sits on the bead the thread comes out of"
    ):
        stitches(hand, 1, 1, starts=match[1])
    elif match := said(f"This row goes to the {way}\\. The (\\d+) new beads sit on"):
        stitches(hand, int(match[2]), 1, starts=match[1])
    elif match := said(
        "(?:One|Two|Three) beads? at a time.* go back through (the(?: two| three)? beads?) beneath"
    ):
        times = re.search(r"Repeat.*: (\d+) times in all", sentence)
        assert times
        stitches(hand, COUNT[match[1]], int(times[1]))
    elif match := said(
        f"Go to the {way} through (the(?: two| three)? beads?) beneath (?:it|them), then to the"
    ):
        assert match[1] != hand.side
        stitches(hand, COUNT[match[2]], 1)
    elif said("Both rows grow beyond the edge"):
        pair(hand)
    elif match := said(f"Firm the row: go to the {way} through the bead beneath it, then to the {way}"):
        firm(hand, match[1], 1, match[2], 1)
    elif match := said(
        f"Firm the row: go to the {way} through the (\\d+) beads of the row below that lie beneath it, "
        f"then to the {way} through (?:all (\\d+) beads|the first bead|the first (\\d+) beads)"
    ):
        count = int(match[4] or match[5] or 1)
        firm(hand, match[1], int(match[2]), match[3], count)
    elif said(r"This bead lengthens|These \d+ beads lengthen"):
        for _ in range(len(hand.new)):
            hand.put((hand.at[0] + hand.on(), hand.at[1]))
    elif not obey_way(hand, sentence):
        obey_loom(hand, sentence)


def obey_way(hand: Hand, sentence: str) -> bool:
    """A way through beads that are there; False for another sentence."""

    def said(words: str) -> re.Match[str] | None:
        return re.match(words, sentence)

    def named(found: tuple[str | None, ...]) -> tuple[int, str]:
        number, side, edge = found
        return (int(number), str(side)) if number else (1, str(edge))

    way = "(left|right)"
    bead = f"(?:bead (\\d+) from the {way}|the {way}-hand edge bead)"
    if match := said(f"Go to the {way} through {bead} of row (\\d+)\\.$"):
        number, side = named(match.groups()[1:4])
        hand.pass_through(match[1], start=hand.place_of(number, side, int(match[5])))
    elif match := said(f"Go to the {way} through (\\d+) beads of row (\\d+), from {bead} on\\.$"):
        number, side = named(match.groups()[3:6])
        start = hand.place_of(number, side, int(match[3]))
        hand.pass_through(match[1], start=start, count=int(match[2]))
    elif match := said(
        f"Weave (?:up|down) through {bead} of rows (\\d+) to (\\d+).*: to the {way} through the first"
    ):
        number, side = named(match.groups()[0:3])
        first, last = int(match[4]), int(match[5])
        weave_column(hand, hand.place_of(number, side, first), first, last, match[6])
    else:
        return False
    return True


def obey_loom(hand: Hand, sentence: str) -> None:
    way = "(left|right)"
    if re.match(r"Stretch|Tie the thread|Now that both ends|Go through the loop of the", sentence):
        return
    first = re.match(f"Bring the strung beads? under the warps, going to the {way}", sentence)
    later = re.match(
        f"This row lies (above|below) (?:row (\\d+)|the one before)\\. .* under the warps, going to the "
        f"{way}",
        sentence,
    )
    back = re.search(
        f"Go round the outer warp and to the {way} through (?:all (\\d+) beads|the bead), with", sentence
    )
    assert back, sentence
    count = int(back[2] or 1)
    if first:
        hand.row = 1
        loom_row(hand, 0, first[1], back[1], count)
    else:
        assert later, sentence
        height = hand.rows[int(later[2] or max(hand.rows))] + (1 if later[1] == "above" else -1)
        loom_row(hand, height, later[3], back[1], count)


def replay(pattern) -> list[str]:
    """The chart as the hand has it when the table is done, top row first."""
    path, problems = weave(pattern, Shop())
    assert path is not None, problems
    hand = Hand()
    for section in step_table(path, pattern, Shop(), measure(path, pattern, Shop()), WORDS):
        for row in as_read(section.rows):
            if WORDS.text("note.turned-first") in row.notes:
                hand.turned = True
            if WORDS.text("note.turn") in row.notes:
                hand.turn()
            hand.new = [letter for count, letter in row.pick_up for _ in range(count)]
            label = re.fullmatch(r"Row (\d+)", row.label)
            hand.row = int(label[1]) if label else 0
            for sentence in row.sentences:
                obey(hand, sentence)
            assert not hand.new
    if hand.turned:
        hand.turn()
    return picture(hand.beads)


def picture(beads: dict[Place, str]) -> list[str]:
    columns, heights = [x for x, _ in beads], [y for _, y in beads]
    return [
        "".join(beads.get((x, y), ".") for x in range(min(columns), max(columns) + 1))
        for y in range(max(heights), min(heights) - 1, -1)
    ]


def read(text: str):
    pattern, problems = read_pattern(text, "replay.md", Shop())
    assert pattern is not None
    assert not problems
    return pattern


def written(pattern) -> list[str]:
    rows = pattern.parts[0].all_rows
    return [
        "".join(dict(row.cells).get(x, ".") for x in range(len(row.cells) + len(row.empty))) for row in rows
    ]


@pytest.mark.parametrize("name", ["allotment-tag", "tidemark-fob"])
def test_the_demo(name):
    pattern = read((ROOT / "content" / "patterns" / f"{name}.md").read_text(encoding="utf-8"))
    assert replay(pattern) == written(pattern)


@pytest.mark.parametrize(
    ("keys", "rows"),
    [
        ("stitch: square", ["ABC", "CAB", "BCA"]),
        ("stitch: square, start: right", ["ABCA", "CABB", "BCAA"]),
        ("stitch: square, drop: 2", ["ABCAB", "CABBC", "BCAAB"]),
        ("stitch: square, drop: 3", ["ABCABCA", "CABBCAB", "BCAABCC"]),
        ("stitch: square", ["A", "B", "C", "A"]),
        ("stitch: square, begin: middle", ["ABC", "BCA", "CAB", "AAB", "BBC"]),
        ("stitch: square, begin: top", ["ABC", "BCA", "CAB"]),
        ("stitch: square, reinforce: false", [".AB.", "ABCA", "BCAB", ".BA."]),
        ("stitch: square", ["..AB...", "..BAC..", "ABCABCA", "BACBACB", "..ACA..", "..CAC.."]),
        ("stitch: square, reinforce: false", ["..ABC..", "ABCABCA", "BACBACB", "..ACA..", "..CAC.."]),
        ("stitch: loom", ["ABC", "CAB", "BCA"]),
        ("stitch: loom, start: right", ["ABCA", "CABB", "BCAC"]),
        ("stitch: loom, begin: middle", ["ABCA", "CABB", "BCAC", "AABB", "BBAC"]),
        ("stitch: loom, begin: top", ["A", "B"]),
    ],
)
def test_charts(keys, rows):
    lines = "".join(f"    {key}\n" for key in keys.split(", "))
    pattern = read(f"{HEADER}{lines}---\n\n```chart Piece\n" + "\n".join(rows) + "\n```\n")
    assert replay(pattern) == rows


def test_a_hand_that_hears_another_word_makes_another_piece():
    """The interpreter listens: a row begun at the wrong side, or a count too low, is seen."""
    hand = Hand()
    hand.new = list("ABC")
    obey(hand, "These 3 beads are row 1. Lay them so that the thread comes out at the right-hand end, so.")
    hand.new, hand.row = ["A"], 2
    with pytest.raises(AssertionError):
        obey(
            hand,
            "Go to the right through the bead beneath it, then to the left through the new bead once more.",
        )
    with pytest.raises(AssertionError):
        obey(hand, "Tickle the bead.")
