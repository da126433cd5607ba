"""A beginner's replay: ladder, brick and fringe rebuilt from the printed rows, all ends woven in."""

from __future__ import annotations

import pytest

from sitegen.model.shop import Shop
from tests.replay.brick_hand import Hand
from tests.replay.hand import ROOT, follow, table_of

WAY = r"(?P<way>up|down)"
SIDE = r"(?P<side>left|right)"
MANY = r"(?:One bead at a time, in this order: )"
TIMES = r"(?: Repeat(?: to the end of the row)?: (?P<count>\d+) times in all\.)?"
BACK_THROUGH = r"[Gg]o back through the bead before it, then through the new bead once more\."
REST = r"(?P<rest>up through the second bead, down the first, up the second|(?:and )?up through the bead)\."
GRAMMAR = {
    r"This bead is the first row\. Hold it so that the thread comes out at its "
    r"top\.": Hand.ladder_single,
    r"Let both beads slide down to the tail\. Go (?P<first>up|down) through the first bead again, "
    r"then (?P<second>up|down) through the second, so that the two stand side by "
    r"side\.": Hand.ladder_first,
    r"Go (?:up|down) through the bead before it, then (?:up|down) through the new bead once "
    r"more\.": Hand.ladder_next,
    rf"{MANY}?{BACK_THROUGH}(?: The thread runs in circles: one stitch goes up, the next goes "
    rf"down\.)?{TIMES}": Hand.ladder_next,
    rf"Pull the row straight\. Go under the bridge beside the last bead and back {WAY} through it, "
    rf"then weave through the other (?P<count>\d+) beads to the start of the row, (?:up|down) through "
    rf"the next, (?:up|down) through the one after, and so on\. The row is firm, and the thread comes "
    rf"out at the top of the first bead\.": Hand.ladder_back,
    rf"Pull the row straight\. Go under the bridge between the two beads, back {WAY} through the last "
    rf"one and (?:up|down) through the first: the row is firm\.": Hand.ladder_back,
    rf"(?:Counting from the bead your thread comes out of, g|G)o under the (?P<bridge>(?!next)\w+) "
    rf"bridge,? {REST}": Hand.brick_first,
    rf"Go under the bridge just behind the bead your thread comes out of,? {REST}": Hand.brick_first,
    rf"Go up through the bead below once more, then up through the second bead, down the first, up the "
    rf"second\. The first bead sits on the {SIDE}\.": Hand.brick_on_one,
    r"The first bead stands out over the edge by half a bead\.": Hand.stands_out,
    rf"{MANY}?[Gg]o under the next bridge and up through the bead(?:: the row is "
    rf"done)?\.{TIMES}": Hand.brick_next,
    r"Go under the same bridge once more and up through the bead\. It stands out over the edge by "
    r"half a bead\.": Hand.brick_increase,
    r"Ladder stitch, beyond the edge: go (?:up|down) through the bead before it, then (?:up|down) "
    r"through the new bead once more\.": Hand.ladder_next,
    rf"Ladder stitch, beyond the edge(?:, one bead at a time, in this order)?: "
    rf"{BACK_THROUGH}{TIMES}": Hand.ladder_next,
    r"Go down through the first of the two beads: beads are now added beyond the "
    r"edge\.": Hand.back_down,
    r"Go back through the bead beside it\.": Hand.back_along,
    r"Weave back through (?P<count>\d+) beads to where the row goes on\.": Hand.back_along,
    rf"Weave {WAY} through the {SIDE}-hand edge bead of rows (?P<first>\d+) to (?P<last>\d+), one row "
    rf"after the other\.": Hand.weave,
    rf"Weave {WAY} through bead (?P<place>\d+) from the {SIDE} of rows (?P<first>\d+) to "
    rf"(?P<last>\d+), one row after the other\.": Hand.weave,
    rf"Go {WAY} through bead (?P<place>\d+) from the {SIDE} of row (?P<first>\d+)\.": Hand.weave,
    rf"Go {WAY} through the {SIDE}-hand edge bead of row (?P<first>\d+)\.": Hand.weave,
    rf"Go under the bridge beside the bead your thread comes out of, and back {WAY} through that bead "
    rf"\(bead (?P<place>\d+) from the {SIDE} of row (?P<first>\d+)\)\.": Hand.turn_back,
    rf"Go under the bridge beside the bead your thread comes out of, and back {WAY} through that bead "
    rf"\(at the {SIDE}-hand edge of row (?P<first>\d+)\)\.": Hand.turn_back,
    rf"Go through the loop of the [\w ]+ and down through the bead to the {SIDE}\.": Hand.loop,
    r"Go through the loop of the [\w ]+ and back down through the same bead\.": Hand.loop,
    r"Do all this \d+ times, pull snug each time, and the last time stop as soon as you have gone "
    r"down\.": Hand.again,
    r"Pull snug\.": Hand.again,
    r"Leave the last (?:bead|(?P<count>\d+) beads): go back up through the other (?P<back>\d+) and up "
    r"through the bead the strand hangs from\. Pull snug(?P<on>, then go down through the next "
    r"bead)?\.": Hand.strand,
    r"All beads named in this step are beads of the (?P<part>\w+)\.": Hand.name_part,
    r"Weave in the thread you have worked with\. It has just gone (?P<spot>.*)\.": Hand.old_end,
    r"Begin the new thread so that it comes out where the old one did\.": Hand.new_end,
    r"Thread the needle with the tail from the beginning: it hangs out of the (?P<side>top|bottom) of "
    r"bead (?P<place>\d+) of row (?P<row>\d+)(?: of the (?P<part>\w+))? \((?P<letter>\w)\)\. Weave it "
    r"in\.": Hand.first_end,
    r"Beads of a row are counted from the left, as you hold the work\.": Hand.nothing,
    r"Go (?P<spots>(?:up|down) through bead \d+ of row .*\))\.": Hand.go,
    r"Half hitch: under the thread between (?P<ends>.*), through the loop that this makes, and pull "
    r"tight\.": Hand.hitch,
    r"You have now gone (?P<spot>.*)\. Hold the end taut .*": Hand.old_done,
    r"The new thread has now gone (?P<spot>.*), just as the old one had: go on from there\. "
    r".*": Hand.new_done,
    r"The tail has now gone (?P<spot>.*)\. Hold it taut .*": Hand.first_done,
}
NOTES = {
    r"Cut .* of thread and thread the needle.*": Hand.nothing,
    r"(?:This strand|This one) needs \d+ cm \(\d+ in\) of thread\.": Hand.nothing,
    r"This row takes more than one length of thread: the new one begins inside it\.": Hand.nothing,
    r"Give the work half a turn, .*": Hand.turn,
    r"Lay the chart before you upside down: .*": Hand.begin_turned,
    r"Tight pass: .*": Hand.nothing,
}
HEADER = """---
title: Replay
summary: For the hand.
makes: one piece
revision: 1
price: free
colours:
  A: {bead: round 11/0, name: dark, hex: "#1f4d3a"}
  B: {bead: round 11/0, name: light, hex: "#c9d6a3"}
  C: {bead: round 11/0, name: warm, hex: "#c0603a"}
parts:
  - name: Piece
"""
CHARTS = {
    "ladder": ("stitch: ladder", "A B C A A C B"),
    "even rows": ("stitch: brick", "A B C A\n C C B A\nA A B B\n B C A A"),
    "increase": ("stitch: brick\nbegin: top", "   A B\n  C A B\n A B C A\nC C A B B"),
    "from one bead": ("stitch: brick\nbegin: top", "  A\n B C\nA C B"),
    "both ways": ("stitch: brick\nbegin: row 3", "  A B\n C A B\nA B C A\n C A B\n  A C"),
    "not run back": ("stitch: brick\nreinforce: false", "  A C\n C A B\nA B C A"),
    "steps at the edges": ("stitch: brick", "  A B\n A B C A\nA C B A C\n   B A"),
    "two strands of ladder": ("stitch: brick", "A C B A C A\n   B A C\n  A C B B"),
}


def source(keys: str, chart: str) -> str:
    lines = "".join(f"    {line}\n" for line in keys.splitlines())
    return f"{HEADER}{lines}---\n\n```chart Piece\n{chart}\n```\n"


def rebuild(hand: Hand, part: str) -> list[list[tuple[int, str]]]:
    """What lies there, top row first, as it hangs: (half places from the left, letter)."""
    sign = -1 if hand.turned else 1
    beads = [bead for (name, _), row in hand.rows.items() if name == part for bead in row]
    left = min(bead.x * sign for bead in beads)
    heights = sorted({bead.y * sign for bead in beads}, reverse=True)
    return [
        sorted((bead.x * sign - left, bead.letter) for bead in beads if bead.y * sign == height)
        for height in heights
    ]


def written(rows) -> list[list[tuple[int, str]]]:
    first = min(row.cells[0][0] for row in rows)
    return [[(column - first, letter) for column, letter in row.cells] for row in rows]


@pytest.mark.parametrize("name", CHARTS)
@pytest.mark.parametrize("shop", [Shop(), Shop(working_length_mm=450, tail_mm=100)], ids=["long", "short"])
def test_the_printed_rows_rebuild_the_chart(name, shop):
    pattern, rows = table_of(source(*CHARTS[name]), shop)
    hand = Hand()
    follow(hand, rows, GRAMMAR, NOTES)
    assert rebuild(hand, "Piece") == written(pattern.parts[0].all_rows)
    assert hand.woven_in[-2:] == ["old", "first"]


DEMOS = [
    ROOT / "tests" / "examples" / "kelp-lantern.md",
    *(ROOT / "content" / "patterns" / f"{name}.md" for name in ("evening-fern", "hearth-diamond")),
]


@pytest.mark.parametrize("file", DEMOS, ids=lambda file: file.stem)
@pytest.mark.parametrize("shop", [Shop(), Shop(working_length_mm=700)], ids=["long", "short"])
def test_the_printed_rows_rebuild_a_demo_with_its_fringe(file, shop):
    pattern, rows = table_of(file, shop)
    hand = Hand()
    follow(hand, rows, GRAMMAR, NOTES)
    for part in pattern.parts:
        if part.strands:
            words = ["".join(strand.letters) for strand in part.all_strands]
            hung = ["".join(letters) for _, letters in sorted(hand.strands.items())]
            assert hung in (words, words[::-1])
        elif part.chart:
            assert rebuild(hand, part.name) == written(part.all_rows)
    assert hand.woven_in[-2:] == ["old", "first"]
    changes = sum("this is the new thread" in note for row in rows for note in row.notes)
    assert hand.woven_in == ["old", "new"] * changes + ["old", "first"]
