"""A beginner's replay of right-angle weave: the printed rows alone rebuild the chart.

The interpreter knows what a hand knows: squares and their sides, and which way the thread comes out.
"""

from __future__ import annotations

import re

import pytest

from tests.replay.printed import Printed, drawn, groups, printed

SIDES = ("left", "top", "right", "bottom")
"""Clockwise."""
ROUND = {"left": "up", "top": "right", "right": "down", "bottom": "left"}
"""The way a thread goes in each side, clockwise."""
BACK = {"up": "down", "down": "up", "left": "right", "right": "left"}
NUMBERS = {"the first of": 1, "the first two of": 2, "both": 2}
CLOSED = "Go through that bead again, from its other end: the square is closed."

Square = tuple[int, int]
Spot = tuple[str, int, int]


def spot(square: Square, side: str) -> Spot:
    """A side by its own name: `lying` or `upright`, column and height."""
    column, row = square
    if side in ("left", "right"):
        return ("upright", column + (side == "right"), row)
    return ("lying", column, row + (side == "top"))


class Hand:
    def __init__(self) -> None:
        self.beads: dict[Spot, str] = {}
        self.square: Square = (0, 0)
        self.side = ""
        """The side of that square the thread is in."""
        self.way = ""
        """The way it comes out."""

    def ring(self, start: str, *, clockwise: bool) -> list[str]:
        """The sides from one, round one way."""
        at = SIDES.index(start)
        return [SIDES[(at + (turn if clockwise else -turn)) % 4] for turn in range(4)]

    def put(self, square: Square, side: str, letter: str) -> None:
        assert spot(square, side) not in self.beads, "a bead is there already"
        self.beads[spot(square, side)] = letter

    def come_out(self, square: Square, side: str, *, clockwise: bool) -> None:
        self.square, self.side = square, side
        self.way = ROUND[side] if clockwise else BACK[ROUND[side]]

    def next_square(self) -> tuple[Square, str]:
        """The square on the other side of the bead the thread is in, and which side of it that bead is."""
        column, row = self.square
        return {
            "left": ((column - 1, row), "right"),
            "right": ((column + 1, row), "left"),
            "top": ((column, row + 1), "bottom"),
        }[self.side]

    def three(self, letters: list[str], onward: int) -> None:
        """Three new beads and the one the thread comes out of, then on through so many of the new ones."""
        square, shared = self.next_square()
        clockwise = ROUND[shared] == self.way
        _, *others = self.ring(shared, clockwise=clockwise)
        for side, letter in zip(others, letters, strict=True):
            self.put(square, side, letter)
        self.come_out(square, others[onward - 1], clockwise=clockwise)

    def two(self, letters: list[str], sides: list[str], onward: str) -> None:
        """Two new beads, the top bead of the square below and the one the thread comes out of."""
        square, shared = self.next_square()
        clockwise = ROUND[shared] == self.way
        _, *others = self.ring(shared, clockwise=clockwise)
        far = "left" if shared == "right" else "right"
        assert [{"far side": far}.get(side, side) for side in sides] == others
        assert spot(square, "bottom") in self.beads
        new = [side for side in others if side != "bottom"]
        for side, letter in zip(new, letters, strict=True):
            self.put(square, side, letter)
        self.come_out(square, {"first": new[0], "second": new[1]}[onward], clockwise=clockwise)


def onward(text: str) -> int:
    """How many new beads the thread goes on through."""
    found = re.search(r"[Tt]hen (?:go )?on through (the first of|the first two of|both|all (\d))", text)
    assert found is not None, text
    return int(found[2]) if found[2] else NUMBERS[found[1]]


def follow(hand: Hand, row: Printed) -> None:
    text = row.text
    if text.startswith("Let the four beads slide"):
        first, second = re.findall(r"its (\w+) side", text)
        order = hand.ring(first, clockwise=True)
        clockwise = order[1] == second
        order = hand.ring(first, clockwise=clockwise)
        for side, letter in zip(order, row.letters, strict=True):
            hand.put((0, 0), side, letter)
        count = int((re.search(r"the first (\d) beads once more", text) or [0, 1])[1])
        hand.come_out((0, 0), order[count - 1], clockwise=clockwise)
    elif text.startswith(("Three beads at a time", "These beads make a square")):
        squares = list(groups(row.letters, 3))
        assert len(squares) == int((re.search(r"Repeat: (\d+) squares", text) or [0, 1])[1])
        if len(squares) == 1:
            assert CLOSED in text
        assert ("stands on the bead" in text) is (hand.side == "top")
        for letters in squares:
            hand.three(letters, onward(text))
    elif text.startswith("These beads are the top and the far side"):
        assert (
            "Go through the top bead of the square below, then through the bead the thread came out of"
            in text
        )
        hand.two(row.letters, ["top", "far side", "bottom"], "second" if onward(text) == 2 else "first")
    elif text.startswith("Before you pick them up, go through the top bead of the square below."):
        assert "These beads are the far side and the top" in text
        last = text.endswith("both new beads: the second is the top of the square.")
        hand.two(row.letters, ["bottom", "far side", "top"], "second" if last else "first")
    else:
        pytest.fail(f"no hand can follow: {text}")
    if "top of the square" in text.rsplit("Then go on", 1)[-1].split("below")[-1]:
        assert hand.side == "top"


def test_the_printed_rows_rebuild_the_trellis():
    hand = Hand()
    passed = 0
    for row in printed("orchard-lattice"):
        assert not row.notes or row.notes.startswith("Cut")
        if row.row:
            follow(hand, row)
        elif "round the edge" in row.text:
            passed += int(re.search(r"(?:through|other) (\d+) beads", row.text)[1])
        else:
            assert "loop of the ear wire" in row.text
        assert row.row or not row.letters
    high = max(height for kind, _, height in hand.beads if kind == "lying")
    left = min(column for _, column, _ in hand.beads)
    wide = max(column for kind, column, _ in hand.beads if kind == "upright") - left
    assert passed == 2 * (wide + high)
    lines = []
    for height in range(high, -1, -1):
        lying = [hand.beads["lying", left + column, height] for column in range(wide)]
        lines.append("." + ".".join(lying) + ".")
        if height:
            lines.append(
                " ".join(hand.beads["upright", left + column, height - 1] for column in range(wide + 1))
            )
    assert lines == drawn("orchard-lattice")
