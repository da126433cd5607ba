"""A beginner's replay: the printed rows alone rebuild fringes, loops, edgings, strings and beads on top.

The interpreter knows what a hand knows: the edge before it, which bead of it the thread comes out of, and
what hangs on the thread. It sees no path, no motion and no chart, and refuses every sentence it cannot follow.
"""
# ruff: noqa: E501 - a sentence of the grammar is easier to read in few lines

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.table import TableRow, step_table
from sitegen.publish.words import Words
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

ROOT = Path(__file__).parents[2]
WORDS = Words(ROOT / "themes" / "linen", "en")
ORDINALS = WORDS.text("ordinals").split()
THREAD = ("All beads named in this step", "Weave in the thread", "Weave in the tail", "Begin the new thread")
"""How the rows begin that care for the thread's ends: it comes out again where it was."""
NUMBERS = ("one bead", "two beads", "three beads", "four beads")
HEADER = """---
title: Replay
summary: For the hand.
makes: one piece
price: free
thread: nylon 0.2 mm
colours:
  D: {{bead: round 11/0, name: dark, hex: "#1f4d3a"}}
  L: {{bead: round 11/0, name: light, hex: "#a9b665"}}
  A: {{bead: round 11/0, name: amber, hex: "#c9822b"}}
parts:
{parts}---
{chart}"""
BASE = "  - {name: Base, stitch: brick}\n"
CHART = "\n```chart Base\n L L L L L\nD D D D D D\n```\n"
"""A lower edge of six beads with five bridges."""


def rows_of(part: str, *, base: bool = True) -> tuple[TableRow, ...]:
    """The printed rows of the last part."""
    parts = (BASE if base else "") + "  - " + part.replace("\n", "\n    ") + "\n"
    text = HEADER.format(parts=parts, chart=CHART if base else "")
    pattern, problems = read_pattern(text, "replay.md", Shop())
    assert pattern is not None
    assert not problems
    path, objections = weave(pattern, Shop())
    assert path is not None, objections
    return step_table(path, pattern, Shop(), measure(path, pattern, Shop()), WORDS)[-1].rows


@dataclass
class Hand:
    """The edge, counted from where the work begins, and what was made on it."""

    bead: int = 1
    """The bead of the edge the thread comes out of."""
    under: int = 0
    """The bridge the needle was last brought under; 0 for none."""
    begun: list[tuple[str, int]] = field(default_factory=list)
    """Where each thing begins: ("bead" or "bridge", number)."""
    ended: list[tuple[str, int]] = field(default_factory=list)
    made: list[str] = field(default_factory=list)
    """Each strand as it hangs; a branch in square brackets."""
    trunk: list[str] = field(default_factory=list)
    stop: int = 0
    """Beads of the trunk above the place the thread comes out at."""
    new: list[str] = field(default_factory=list)
    backwards: bool = False
    """The work goes to the left."""

    def do(self, row: TableRow) -> None:
        self.new = [letter for count, letter in row.pick_up for _ in range(count)]
        rest = " ".join(row.sentences)
        if not self.new and rest.startswith(THREAD):
            return
        while rest:
            for pattern, act in GRAMMAR:
                found = re.match(pattern, rest)
                if found:
                    act(self, found)
                    rest = rest[found.end() :].lstrip()
                    break
            else:
                pytest.fail(f"a beginner cannot follow: {rest}")

    def begin(self) -> None:
        place = ("bridge", self.under) if self.under else ("bead", self.bead)
        self.begun.append(place)

    def end(self, place: tuple[str, int]) -> None:
        self.ended.append(place)
        self.made.append("".join(self.trunk))

    def take(self, found: re.Match[str]) -> None:
        """Leave the last beads, go back up through others."""
        turn, back = int(found["turn"] or 1), int(found["back"])
        self.begin()
        self.trunk, self.stop = list(self.new), len(self.new) - turn - back
        assert self.stop >= 0


def number(found: re.Match[str], name: str = "which") -> int:
    return ORDINALS.index(found[name])


def nothing(hand: Hand, found: re.Match[str]) -> None:
    """Care for the thread, not a place."""


def way(hand: Hand, found: re.Match[str]) -> None:
    hand.backwards = found["side"] == "right"


def bring_under(hand: Hand, found: re.Match[str]) -> None:
    hand.under = number(found) if "which" in found.groupdict() else 1


def up_and_on(hand: Hand, found: re.Match[str]) -> None:
    assert hand.stop == 0, "the strand is not passed to its top"
    hand.end(("bead", hand.bead))
    hand.bead += "next" in found[0]


def under_again(hand: Hand, found: re.Match[str]) -> None:
    assert hand.stop == 0
    hand.end(("bridge", number(found) if "which" in found.groupdict() else hand.under))


def whole_strand(hand: Hand, found: re.Match[str]) -> None:
    hand.take(found)
    up_and_on(hand, found)


def strand_on_bridge(hand: Hand, found: re.Match[str]) -> None:
    hand.take(found)
    under_again(hand, found)


def branched(hand: Hand, found: re.Match[str]) -> None:
    hand.take(found)


def branch(hand: Hand, found: re.Match[str]) -> None:
    assert len(hand.new) == (1 if found["back"] == "one" else int(found["back"])) + 1
    hand.trunk[hand.stop : hand.stop] = ["[" + "".join(hand.new) + "]"]


def up_trunk(hand: Hand, found: re.Match[str]) -> None:
    hand.stop -= int(found["count"])


def twist(hand: Hand, found: re.Match[str]) -> None:
    hand.begin()
    hand.trunk, hand.stop = list(hand.new), 0


def loop_to(hand: Hand, places: int, *, on: bool) -> None:
    hand.begin()
    hand.trunk = hand.new[::-1] if hand.backwards else list(hand.new)
    hand.bead += places
    hand.end(("bead", hand.bead))
    hand.bead += on


def loop(hand: Hand, found: re.Match[str]) -> None:
    loop_to(hand, 1, on=bool(found["on"]))


def swag(hand: Hand, found: re.Match[str]) -> None:
    loop_to(hand, int(found["places"]), on=bool(found["on"]))


def loop_on_bridge(hand: Hand, found: re.Match[str]) -> None:
    hand.begin()
    hand.trunk = hand.new[::-1] if hand.backwards else list(hand.new)
    hand.under = number(found)
    hand.end(("bridge", hand.under))


def picot_first(hand: Hand, found: re.Match[str]) -> None:
    hand.begin()
    hand.trunk, hand.under = list(hand.new), number(found)
    hand.made.append("".join(hand.trunk))


def picots(hand: Hand, found: re.Match[str]) -> None:
    each = NUMBERS.index(found["each"].lower()) + 1 if found["each"] else len(hand.new)
    count = int(found["count"] or 1)
    assert len(hand.new) == each * count
    for first in range(0, len(hand.new), each):
        hand.made.append(hand.made[-1][-1] + "".join(hand.new[first : first + each]))
        hand.under += 1


def whip_first(hand: Hand, found: re.Match[str]) -> None:
    hand.begin()
    hand.under = number(found)
    hand.made.append("".join(hand.new))


def whip(hand: Hand, found: re.Match[str]) -> None:
    each = NUMBERS.index(found["each"].lower()) + 1 if found["each"] else len(hand.new)
    assert len(hand.new) == each * int(found["count"] or 1)
    for first in range(0, len(hand.new), each):
        hand.made.append("".join(hand.new[first : first + each]))
        hand.under += 1


def whip_back(hand: Hand, found: re.Match[str]) -> None:
    assert int(found["count"]) == len("".join(hand.made))


def on_top(hand: Hand, found: re.Match[str]) -> None:
    assert len(hand.new) == int(found["count"] or 1)
    hand.made.append("".join(hand.new[::-1] if hand.backwards else hand.new))


def string_on(hand: Hand, found: re.Match[str]) -> None:
    assert len(hand.new) == int(found["count"])
    hand.trunk += hand.new
    assert len(hand.trunk) == int(found["so_far"])


def string_start(hand: Hand, found: re.Match[str]) -> None:
    """The beads are strung towards the clasp; the string goes on from the last of them outward."""
    assert len(hand.new) == int(found["count"])
    hand.trunk = hand.new[::-1]


def string_end(hand: Hand, found: re.Match[str]) -> None:
    assert len(hand.trunk) > int(found["count"])
    hand.made.append("".join(hand.trunk))


BRIDGE = r"the (?P<which>\w+) bridge of the edge(?:, counted from the end where you began)?"
BEFORE = rf"Bring the needle under {BRIDGE}(, from the back to the front,)? before you pick up the beads\."
LEAVE = (
    r"Leave the last (?:(?P<turn>\d+) beads|bead)(?::| and) go back up through (?:the other )?(?P<back>\d+)"
)
UP = r" and up through the bead the strand hangs from\. Pull snug(?:, then go down through the next bead)?\."
ON = r"(?P<on>, then go down through the bead after it)?\."
BEYOND = r"and go up through the bead of the edge beyond that bridge\."
GRAMMAR = (
    (r"Go under the bridge beside the bead your thread comes out of, and back down through that bead \(at the "
     r"(?P<side>left|right)-hand edge of row \d+\)\.", way),
    (r"(?:Weave|Go) (?:up|down) through the (?P<side>left|right)-hand edge bead of rows? [^.]*\.", way),
    (rf"{BEFORE} Then go under the (?P<to>\w+) bridge and back out[^.]*\. Pull[^.]*\.", None),
    (BEFORE, bring_under),
    (LEAVE + UP, whole_strand),
    (rf"{LEAVE} and under the same bridge once more\. Pull snug(?:\.|, {BEYOND})", strand_on_bridge),
    (rf"{LEAVE} of the others\. Stop there: a side branch grows here\.", branched),
    (
        r"Side branch: leave its last bead and go back through the other (?P<back>\w+), towards the strand\. "
        r"Pull snug, so that no thread shows between branch and strand\.",
        branch,
    ),
    (r"Go on up through (?P<count>\d+) beads? of the strand\.", up_trunk),
    (r"Go up" + UP.removeprefix(" and up"), up_and_on),
    (rf"Go under {BRIDGE} once more\. Pull snug(?:\.|, {BEYOND})", under_again),
    (r"Let the beads slide up to the edge\. Roll the thread [^.]*\. Hold the twist\.", twist),
    (r"Go up through the next bead of the edge: the beads (?:hang as a loop|stand out in a point)\. Pull[^.,]*"
     r"(?: but the loop still swings)?" + ON, loop),
    (r"Count (?P<places>\d+) beads on along the edge from the one the thread comes out of, and go up through "
     r"that bead: the beads hang as a swag\. Pull until no thread shows" + ON, swag),
    (rf"Go under {BRIDGE}: the beads hang between this bridge and the one the needle came from\. Pull[^.]*\.",
     loop_on_bridge),
    (r"Go up through the bead of the edge beyond that bridge\.", nothing),
    (r"(?:(?P<each>[\w ]+) at a time, in this order: g|G)o under the next bridge and back out through the last "
     r"bead\. The last bead of (?:each|the) picot[^.]*\.(?: (?:Repeat to the end of the edge: )?(?P<count>\d+) "
     r"times in all\.)?", picots),
    (r"Go back through the (?:bead|\d+ beads) of the last point, up through the stem before (?:it|them), and up "
     r"through the bead of the edge beside that stem\.", nothing),
    (r"Then go under the (?P<which>\w+) bridge, from the back to the front again\.", whip_first),
    (r"(?:(?P<each>[\w ]+) at a time, in this order: g|G)o under the next bridge, (?:always )?from the back to "
     r"the front\.(?: (?P<count>\d+) times in all\.)?", whip),
    (r"Go back through all (?P<count>\d+) beads of the edging, under the first bridge once more, and (?:up|down) "
     r"through the bead at the end of the edge\.", whip_back),
    (r"(?:One bead at a time, in this order: g|G)o (?:up |down )?through the next bead of the row[:,] [^.]*\."
     r"(?: The thread goes down[^.]*\.)?(?: (?P<count>\d+) times in all\.)?", on_top),
    (r"Pick up these beads, then (?:a crimp and )?the first half of the toggle clasp\. (?:Leave a tail[^.]*\. )?"
     r"Go back through (?:the crimp and )?the (?P<count>\d+) beads, [^.]*\. The thread now comes out beside its "
     r"tail\.", string_start),
    (r"String these (?P<count>\d+) beads in this order: (?:all )?(?P<so_far>\d+) are on the string now\.",
     string_on),
    (r"Pick up (?:a crimp and )?the other half of the toggle clasp\. Go back through (?:the crimp and )?the last "
     r"(?P<count>\d+) beads\. Draw the string up [^.]*\. (?:Cut|Weave) [^.]*\.", string_end),
)  # fmt: skip
"""Every sentence a beginner meets here, and what the hand does; the first that fits is done."""
GRAMMAR = tuple(
    (pattern.replace("(?P<which>", "(?P<from>").replace("(?P<to>", "(?P<which>"), picot_first)
    if act is None
    else (pattern, act)
    for pattern, act in GRAMMAR
)


def replayed(part: str, *, base: bool = True) -> Hand:
    hand = Hand()
    for row in rows_of(part, base=base):
        hand.do(row)
    return hand


def left_to_right(hand: Hand) -> list[str]:
    return hand.made[::-1] if hand.backwards else hand.made


HANG = "hang: {from: Base, edge: bottom}"
BRIDGES = "hang: {from: Base, edge: bottom, at: bridges}"


@pytest.mark.parametrize(
    ("keys", "strands", "held"),
    [
        (HANG, ["4D", "5D", "6D A", "7D A", "5D", "4D"], "bead"),
        (BRIDGES, ["4D", "5D A", "6D A", "5D A", "4D"], "bridge"),
        (f"{HANG}\nturn: 3", ["6D 3A"] * 6, "bead"),
    ],
)
def test_straight_fringe(keys, strands, held):
    hand = replayed(f"name: Hung\nstitch: fringe\n{keys}\nstrands: [{', '.join(strands)}]")
    assert left_to_right(hand) == [spelled(text) for text in strands]
    assert hand.begun == hand.ended == [(held, place) for place in range(1, len(strands) + 1)]


def spelled(text: str) -> str:
    return "".join(
        letter * int(count or 1) if letter.isalpha() else letter
        for count, letter in re.findall(r"(\d*)([A-Z\[\]])", text)
    )


@pytest.mark.parametrize("keys", [HANG, BRIDGES])
def test_branched_fringe(keys):
    strands = ["5D [2L A] 4D [L A] 3D A", "8D A", "3D [2L A] [2L A] 4D A", "3D [2L A] 8D A", "6D A", "7D A"]
    strands = strands if keys == HANG else strands[:5]
    listed = "".join(f"\n  - {strand}" for strand in strands)
    hand = replayed(f"name: Hung\nstitch: branched fringe\n{keys}\nstrands:{listed}")
    assert left_to_right(hand) == [spelled(text) for text in strands]


@pytest.mark.parametrize("keys", [HANG, BRIDGES])
def test_twisted_fringe(keys):
    hand = replayed(f"name: Hung\nstitch: twisted fringe\n{keys}\nstrands: each 14D A 14L")
    assert set(hand.made) == {spelled("14D A 14L")}
    assert hand.begun == hand.ended


def test_loops_and_swags():
    hand = replayed(f"name: Hung\nstitch: looped fringe\n{HANG}\nstrands: [6D A 5D, 8D A 7L, 6D L 5D]")
    assert left_to_right(hand) == [spelled(text) for text in ("6D A 5D", "8D A 7L", "6D L 5D")]
    assert list(zip(hand.begun, hand.ended, strict=True)) == [
        (("bead", place), ("bead", place + 1)) for place in (1, 3, 5)
    ]
    hand = replayed(f"name: Hung\nstitch: swags\nspan: 2\n{HANG}\nstrands: [6D A 5L, 6D L 5D]")
    assert list(zip(hand.begun, hand.ended, strict=True)) == [
        (("bead", place), ("bead", place + 2)) for place in (1, 4)
    ]
    hand = replayed(f"name: Hung\nstitch: swags\nspan: 2\n{BRIDGES}\nstrands: [6D A 5L, 6D L 5D]")
    assert left_to_right(hand) == [spelled("6D A 5L"), spelled("6D L 5D")]
    assert list(zip(hand.begun, hand.ended, strict=True)) == [
        (("bridge", place), ("bridge", place + 2)) for place in (1, 3)
    ]


def test_edgings():
    hand = replayed(f"name: Hem\nstitch: picot edge\n{HANG}\nstrands: [D A D, D L D, D 2A D, D A D]")
    made = [picot[::-1] for picot in hand.made[::-1]] if hand.backwards else hand.made
    assert made == ["DAD", "DLD", "DAAD", "DAD"]
    hand = replayed(f"name: Hem\nstitch: whipped edge\n{HANG}\nstrands: [2D, 2A, 2L, D A]")
    made = [run[::-1] for run in hand.made[::-1]] if hand.backwards else hand.made
    assert made == ["DD", "AA", "LL", "DA"]
    hand = replayed(
        "name: Hem\nstitch: picot edge\nhang: {from: Base, edge: bottom, at: beads}\nstrands: each D A L"
    )
    assert left_to_right(hand) == ["DAL"] * 3


def test_beads_on_top():
    hand = replayed("name: Top\nstitch: ditch\nover: {part: Base, row: 2}\nstrands: [3A 2L]")
    assert sorted(hand.made[0]) == sorted("AAALL")
    assert hand.made[0] in ("AAALL", "LLAAA")


@pytest.mark.parametrize("ends", ["crimps", "knots"])
def test_a_string(ends):
    words = "3D 12(A 2L D) 3A"
    hand = replayed(
        f"name: String\nstitch: strung\nclasp: toggle clasp\nends: {ends}\nstrands: [{words}]", base=False
    )
    assert hand.made == ["DDD" + "ALLD" * 12 + "AAA"]
