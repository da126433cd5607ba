"""Symmetric but for one bead: that bead is found, wherever it is, and nothing is said otherwise."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sitegen.check.mirror_bead import FEWEST_PAIRS, mirror_bead
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Makes, Part, Pattern, Words


def charted(lines: list[str], stitch: str = "brick") -> list[Problem]:
    """What the check says to a part with this chart."""
    rows = tuple(
        ChartRow(
            tuple((at, letter) for at, letter in enumerate(line) if letter not in " ."),
            Location("p.md", number, 1 + len(line) - len(line.lstrip())),
            tuple(at for at, letter in enumerate(line) if letter == "."),
        )
        for number, line in enumerate(lines, 1)
    )
    return said(Part("P", stitch, chart=Chart("P", rows)))


def hung(strands: list[str], *, mirror: bool = False) -> list[Problem]:
    """What the check says to a fringe."""
    words = tuple(Words(text, tuple(text)) for text in strands)
    return said(Part("F", "fringe", strands=words, mirror=mirror))


def said(part: Part) -> list[Problem]:
    colours = tuple(Colour(letter, "round 11/0", letter, "#112233") for letter in "ABC")
    return mirror_bead(Pattern("p", "P", "", Makes.ONE, 1, None, colours, (part,)), Shop())


def told(problems: list[Problem]) -> list[tuple[object, object, object]]:
    return [(each.values["place"], each.values["letter"], each.values["mirror"]) for each in problems]


FAN = ["    A A A", "   A B B A", "  A B C B A", " A B C C B A"]


def test_a_symmetric_chart_is_silent() -> None:
    assert charted(FAN) == []


def test_the_bead_on_the_right_is_named_with_its_place() -> None:
    lines = [*FAN[:3], " A B C C A A"]
    (problem,) = charted(lines)
    assert told([problem]) == [("row 4 from the top, bead 5", "A", "B")]
    assert problem.values["mirror_place"] == "row 4 from the top, bead 2"
    assert str(problem.where) == "p.md:4:10"


def test_top_and_bottom_say_which_of_two_is_odd() -> None:
    diamond = ["  A B A", " A B B A", "A B C B A", " A B B A", "  A B A"]
    assert charted(diamond) == []
    diamond[1] = " C B B A"
    assert told(charted(diamond)) == [("row 2 from the top, bead 1", "C", "A")]


def test_a_chart_symmetric_only_from_top_to_bottom() -> None:
    lines = ["A B C", "B A A", "C C B", "B A A", "A C C"]
    assert told(charted(lines, "loom")) == [("row 5 from the top, bead 2", "C", "B")]


def test_two_odd_beads_or_an_unsymmetric_outline_are_the_authors_will() -> None:
    assert charted([*FAN[:2], "  A B C B B", " A B C C A A"]) == []
    assert charted([*FAN[:3], " A B C C A"]) == []


def test_small_charts_are_symmetric_by_chance() -> None:
    assert FEWEST_PAIRS == 6
    assert charted([" A B", "A B A"]) == []


def test_empty_places_count_in_rectangular_charts() -> None:
    lines = ["A.BB.A", "ABCCBA", "AAAAAA", "ABBBBB"]
    assert told(charted(lines, "loom")) == [("row 4 from the top, bead 6", "B", "A")]


def test_strands_are_compared_from_both_ends() -> None:
    strands = ["AAB", "AAAB", "AABBC", "AAAB", "ACB"]
    assert told(hung(strands)) == [("strand 5, bead 2", "C", "A")]
    assert hung(strands, mirror=True) == []


ROWS = st.integers(3, 6).map(lambda width: st.text("AB", min_size=width, max_size=width))
HALVES = ROWS.flatmap(lambda row: st.lists(row, min_size=4, max_size=9))


@given(HALVES, st.data())
def test_one_changed_bead_of_a_symmetric_chart_is_always_found(half: list[str], data: st.DataObject) -> None:
    lines = [row + row[::-1] for row in half]
    row = data.draw(st.integers(0, len(lines) - 1))
    place = data.draw(st.integers(0, len(lines[0]) - 1))
    lines[row] = lines[row][:place] + "C" + lines[row][place + 1 :]
    (problem,) = charted(lines, "loom")
    pair = {problem.values["place"], problem.values["mirror_place"]}
    assert f"row {row + 1} from the top, bead {place + 1}" in pair
