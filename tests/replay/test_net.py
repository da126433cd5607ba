"""A beginner's replay of netting: the printed rows alone rebuild the chart.

The interpreter knows what a hand knows: beads follow each other on the thread, and hang down between two
joins as far as their number allows.
"""

from __future__ import annotations

import re

import pytest

from tests.replay.printed import Printed, drawn, groups, printed

Place = tuple[int, int]
"""(column, line) as the net hangs."""


class Hand:
    def __init__(self) -> None:
        self.laid: dict[Place, str] = {}
        self.before: list[Place] = []
        """The row before, in the order of its thread, joins too."""
        self.row: list[Place] = []
        self.number = 0
        self.step = 1

    def begin_row(self, number: int) -> None:
        """The work goes back from the edge bead of the row before."""
        if number == self.number:
            return
        assert number == self.number + 1
        self.before, self.row = self.row, self.row[-1:]
        self.step = 1 if number % 2 else -1
        self.number = number

    def hang(self, letters: list[str], deep: int) -> None:
        """Beads that hang from the last place down to so many lines below and up again."""
        column, line = self.row[-1]
        for number, letter in enumerate(letters, 1):
            down = number if number <= deep else 2 * deep - number
            place = (column + self.step * number, line + down)
            assert place not in self.laid
            self.laid[place] = letter
            self.row.append(place)

    def net(self, letters: list[str], leave: int) -> None:
        """A net that is joined to the row before after so many beads left."""
        back = self.before[::-1]
        join = back[back.index(self.row[-1]) + leave + 1]
        self.hang(letters, (len(letters) + 1) // 2)
        column, line = self.row[-1]
        assert join == (column + self.step, line - 1), "the net does not reach its join"
        self.row.append(join)


def follow(hand: Hand, row: Printed) -> None:
    text = row.text
    if text.startswith("This is the edge bead of the first row"):
        (letter,) = row.letters
        hand.number, hand.row = 1, [(0, 0)]
        hand.laid[0, 0] = letter
        return
    hand.begin_row(row.row)
    if text.startswith("String these beads"):
        zigzag(hand, row)
    elif text.startswith("Turn back. Count back along the row before from its edge bead"):
        hand.net(row.letters, int(re.search(r"leave (\d) beads, and go through the one after them", text)[1]))
    elif text.startswith(("Five beads at a time", "Go through the middle bead of the next net")):
        leave = int(re.search(r"leave (\d) beads", text)[1])
        nets = list(groups(row.letters, 5))
        assert len(nets) == int((re.search(r"Repeat: (\d+) nets", text) or [0, 1])[1])
        for letters in nets:
            hand.net(letters, leave)
    elif text.startswith("These beads are the half net at the edge"):
        hand.hang(row.letters, len(row.letters))
    elif text.startswith("Leave the edge bead. Go back through the other 2 beads of the half net"):
        assert not row.letters
    else:
        pytest.fail(f"no hand can follow: {text}")


def test_the_printed_rows_rebuild_the_net():
    hand = Hand()
    for row in printed("tide-pool-net"):
        follow(hand, row)
    lines = max(line for _, line in hand.laid) + 1
    width = max(column for column, _ in hand.laid) + 1
    built = [
        "".join(hand.laid.get((column, line), " ") for column in range(width)).rstrip()
        for line in range(lines)
    ]
    assert built == drawn("tide-pool-net")


def zigzag(hand: Hand, row: Printed) -> None:
    """The strung row hangs in the zigzag in which the second row will hold it: three beads down, three up."""
    assert len(row.letters) == int(re.search(r"(\d+) beads", row.text)[1])
    for first in range(0, len(row.letters), 6):
        hand.hang(row.letters[first : first + 6], 3)
