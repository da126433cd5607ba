"""A beginner's replay of herringbone: the printed rows alone rebuild the chart.

The interpreter knows what a hand knows: columns of beads, left from right, and where the thread comes out.
"""

from __future__ import annotations

import re

import pytest

from tests.replay.printed import Printed, drawn, groups, printed

PLACE = re.compile(
    r"(?:Weave|Go) (up|down) through (?:bead (\d+) from the (left|right)|the (left|right)-hand edge bead) "
    r"of rows? (\d+)(?: to (\d+))?"
)


class Hand:
    """The piece held with its ladder at the foot, unless it has been turned."""

    def __init__(self) -> None:
        self.columns: list[int] = []
        """Names of the columns from the left; a new pair gets two new names."""
        self.rows: list[dict[int, str]] = []
        """From the foot: column -> letter."""
        self.at = (0, 0)
        """Row (from 0) and column the thread comes out of."""
        self.top = True
        """Whether it comes out at the top of that bead."""
        self.turned = False
        self.step = 1
        """1 while the row is worked to the right, -1 to the left."""

    def there(self, row: int) -> list[int]:
        """The columns that have a bead in this row, from the left."""
        return [column for column in self.columns if column in self.rows[row]]

    def new_columns(self, after: int | None, step: int) -> list[int]:
        """Two more columns beyond (or, going on in a direction, after) a column."""
        names = [len(self.columns), len(self.columns) + 1]
        if after is None:
            self.columns += names
        else:
            at = self.columns.index(after) + (1 if step > 0 else 0)
            self.columns[at:at] = names[::step]
        return names

    # The ladder, two beads high

    def stack(self, pair: list[str], *, down: bool) -> None:
        column = len(self.columns)
        self.columns.append(column)
        high, low = pair if down else pair[::-1]
        self.rows[1][column], self.rows[0][column] = high, low
        self.at, self.top = ((0, column), False) if down else ((1, column), True)

    # Rows

    def onward(self, beads: int) -> int:
        """The column so many beads further along the row below."""
        below = self.there(self.at[0])
        place = below.index(self.at[1]) + beads * self.step
        assert 0 <= place < len(below)
        return below[place]

    def begin_row(self, row: int) -> None:
        if len(self.rows) == row:
            return
        assert row == len(self.rows) + 1
        assert self.at[0] == row - 2
        assert self.top
        below = self.there(row - 2)
        assert self.at[1] in (below[0], below[-1])
        self.step = 1 if self.at[1] == below[0] else -1
        self.rows.append({})

    def add(self, pair: list[str]) -> None:
        """A pair over the bead the thread comes out of and the next."""
        assert self.top
        self.rows[-1][self.at[1]], self.rows[-1][self.onward(1)] = pair

    def turn(self, *, deep: bool) -> None:
        last = self.onward(1)
        below = self.there(self.at[0])
        assert last == (below[-1] if self.step > 0 else below[0])
        if deep:
            under = self.there(self.at[0] - 1)
            assert last in (under[0], under[-1])
        self.at, self.top = (len(self.rows) - 1, last), True


def follow(hand: Hand, row: Printed) -> None:
    text = row.text
    if "half a turn" in row.notes:
        hand.turned = not hand.turned
    if row.label == "Rows 1 and 2, the ladder":
        ladder(hand, row)
    elif PLACE.match(text) and not row.letters:
        for way, place, side, edge, _, last in (found.groups() for found in PLACE.finditer(text)):
            number = int(last or PLACE.match(text)[5])
            columns = hand.there(number - 1)
            left = ((side or edge) == "left") is not hand.turned
            hand.at = (number - 1, (columns if left else columns[::-1])[int(place or 1) - 1])
            hand.top = (way == "up") is not hand.turned
    elif text.startswith("Go through the loop of"):
        assert not row.letters
    elif text.startswith("Once more through this row"):
        assert f"through {len(hand.there(len(hand.rows) - 1)) - 1} beads" in text
    else:
        assert not hand.turned
        hand.begin_row(row.row)
        stitches(hand, row)


def ladder(hand: Hand, row: Printed) -> None:
    text = row.text
    if text.startswith("Let the four beads slide"):
        hand.rows = [{}, {}]
        hand.stack(row.letters[:2], down="Go down through the first two" in text)
        hand.stack(row.letters[2:], down="down through the other two" in text)
    elif "make a stack" in text:
        for pair in groups(row.letters, 2):
            hand.stack(pair, down=hand.top)
    else:
        assert text.startswith("Pull the stacks straight")
        assert text.endswith("at the top of the first stack.")
        hand.at, hand.top = (1, hand.columns[0]), True


def stitches(hand: Hand, row: Printed) -> None:
    text = row.text
    if "down through the next bead of the row below and up through the one after it" in text:
        times = int((re.search(r"Repeat: (\d+) times", text) or [0, 1])[1])
        assert len(row.letters) == 2 * times
        for pair in groups(row.letters, 2):
            hand.add(pair)
            hand.at = (hand.at[0], hand.onward(2))
    elif text == "Go down through the next bead of the row below, and stop there.":
        hand.add(row.letters)
        hand.at, hand.top = (hand.at[0], hand.onward(1)), False
    elif text.startswith("Go up through the next bead of the row below: the two new beads stand between"):
        assert not hand.top
        following = hand.onward(1)
        for name, letter in zip(hand.new_columns(hand.at[1], hand.step), row.letters, strict=True):
            hand.rows[-1][name] = letter
        hand.at, hand.top = (hand.at[0], following), True
    elif text.startswith("Go down through the last bead of the row below, up through the bead beside it"):
        hand.add(row.letters)
        hand.turn(deep=False)
    elif text.startswith("Go down through the last bead of the row below, and down through the last bead of"):
        hand.add(row.letters)
        hand.turn(deep=True)
    else:
        pytest.fail(f"no hand can follow: {text}")


def test_the_printed_rows_rebuild_the_wing():
    hand = Hand()
    for row in printed("wren-wing"):
        follow(hand, row)
    built = ["".join(row.get(column, ".") for column in hand.columns) for row in hand.rows]
    assert [line[::-1] for line in built] == drawn("wren-wing")  # the ladder is the top, as the chart says
