"""What hangs from flat peyote: findings and strands at the beads that stand out, and random charts.

Mechanics: weave/{finding,fringe,hooks,teeth}.py; common practice, no source.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.measure.thread import move_lengths
from sitegen.model.codes import CODES
from sitegen.model.location import NOWHERE
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Hang, Makes, Part, Pattern, Words
from sitegen.model.thread import End, MoveKind
from sitegen.weave import weave
from sitegen.weave.needle import replay

EVEN = "A B C A\n C C B A\nA A B B\n B C A A\nC B A A\n A B C B"
ODD = "A B C A B\n C C B A\nA A B B C\n B C A A\nC B A A B"
TWO_DROP = "AB  CA  BB\n  AC  BA\nCC  AB  AA\n  BC  CA\nBA  AA  BC"
WIDE = "AB  CA  BB  CA\n  AC  BA  CC\nCC  AB  AA  BA\n  BC  CA  AB\nBA  AA  BC  CB"
COLOURS = tuple(Colour(letter, "cylinder 11/0", letter, "#112233") for letter in "ABC")
WIDTH, LENGTH = 1.6, 1.3
"""Of those beads, mm."""


def chart_of(text: str) -> Chart:
    return Chart("Band", tuple(ChartRow(_cells(line)) for line in text.split("\n")))


def _cells(line: str) -> tuple[tuple[int, str], ...]:
    return tuple((column, letter) for column, letter in enumerate(line) if letter != " ")


def pattern_of(chart: Chart, edge: str = "bottom", stitch: str = "fringe", **keys: object) -> Pattern:
    """A band with an ear wire at one edge and as many strands as the other takes."""
    other = "top" if edge == "bottom" else "bottom"
    beads = len(chart.rows[-1 if edge == "bottom" else 0].cells)
    count = beads // 2 if stitch in ("looped fringe", "picot edge") else beads
    letters = "ABC" if stitch == "picot edge" else "ABACABCBACABA"
    strand = Words(letters, tuple(letters), NOWHERE, (NOWHERE,) * len(letters))
    band = Part("Band", "peyote", hang=Hang(other, finding="ear wire"), chart=chart, at={"": NOWHERE})
    hung = Part(
        "Hung",
        stitch,
        hang=Hang(edge, part="Band", points="beads"),
        strands=(strand,) * count,
        at={"": NOWHERE},
    )
    parts = (replace(band, **keys), hung)  # type: ignore[arg-type]
    return Pattern("p", "P", "s", Makes.ONE, 1, "ear wire", COLOURS, parts, thread="nylon 0.15 mm")


def path_of(pattern):
    path, problems = weave(pattern, Shop())
    assert path is not None, problems
    return path


def moves_of(path, step):
    return path.moves[step.first_move : step.past_move]


def edge_row(path, edge):
    """The beads of the band's outer row, from the left."""
    band = [index for index, bead in enumerate(path.beads) if bead.part == 0]
    level = (max if edge == "bottom" else min)(path.beads[index].y for index in band)
    row = [index for index in band if path.beads[index].y == pytest.approx(level)]
    return sorted(row, key=lambda index: path.beads[index].x)


@pytest.mark.parametrize("begin", ["top", "bottom", "middle"])
@pytest.mark.parametrize("edge", ["top", "bottom"])
@pytest.mark.parametrize("text", [EVEN, ODD])
def test_a_strand_hangs_from_each_bead_that_stands_out(text, edge, begin):
    """Each strand begins at one end of its bead and ends at the other, then goes on behind the edge."""
    path = path_of(pattern_of(chart_of(text), edge, begin=begin))
    strands = [step for step in path.steps if step.motion == "strand"]
    row = edge_row(path, edge)
    assert len(strands) == len(row) == (4 if text == EVEN else 5)
    held, ways = [], set()
    for step in strands:
        before = path.moves[step.first_move - 1]
        home, *on = [
            move for move in moves_of(path, step) if move.bead >= 0 and path.beads[move.bead].part == 0
        ]
        assert (home.bead, home.enter) == (before.bead, before.enter)
        held.append(home.bead)
        ways.add(home.enter)
        assert len(on) == (0 if step is strands[-1] else 2)
        if on:
            beside = path.beads[on[0].bead]
            assert abs(beside.x - path.beads[home.bead].x) == pytest.approx(LENGTH)
            assert abs(beside.y - path.beads[home.bead].y) == pytest.approx(WIDTH / 2)
    assert held in (row, row[::-1])
    assert len(ways) == 1
    counts = Counter(move.bead for move in path.moves if move.bead >= 0)
    assert sorted(counts[i] for i, bead in enumerate(path.beads) if bead.part == 1 and bead.row == 1) == [
        1,
        *[2] * 12,
    ]


@pytest.mark.parametrize(
    ("text", "drop", "between"),
    [(EVEN, 1, 2 * LENGTH), (ODD, 1, 0.0), (TWO_DROP, 2, LENGTH), (WIDE, 2, 3 * LENGTH)],
    ids=["in the notch", "over the middle bead", "between two that touch", "in a wide notch"],
)
@pytest.mark.parametrize("edge", ["top", "bottom"])
def test_a_finding_hangs_in_the_middle(text, drop, between, edge):
    other = "bottom" if edge == "top" else "top"
    path = path_of(pattern_of(chart_of(text), other, drop=drop))
    row = [path.beads[index] for index in edge_row(path, edge)]
    (finding,) = path.findings
    assert finding.x == pytest.approx((row[0].x + row[-1].x) / 2)
    over = 0.8 + (WIDTH / 2 if between <= LENGTH else 0.0)
    assert abs(finding.y - row[0].y) == pytest.approx(over)
    assert (finding.y < row[0].y) is (edge == "top")
    (step,) = [step for step in path.steps if step.motion == "finding"]
    moves = moves_of(path, step)
    loops = [number for number, move in enumerate(moves) if move.kind is MoveKind.LOOP]
    assert len(loops) == Shop().finding_passes
    comes = [path.moves[step.first_move - 1], *moves]
    for number in loops:
        one, two = path.beads[comes[number].bead], path.beads[moves[number + 1].bead]
        assert abs(one.x - two.x) == pytest.approx(between)
        assert comes[number].enter is moves[number + 1].enter
    each = {tuple((m.bead, m.enter) for m in moves[a : a + loops[1]]) for a in loops}
    assert len(each) == 1  # "do all this three times" is true


def test_strands_of_two_drop_hang_from_both_beads():
    path = path_of(pattern_of(chart_of(TWO_DROP), drop=2))
    strands = [step for step in path.steps if step.motion == "strand"]
    on = [sum(path.beads[m.bead].part == 0 for m in moves_of(path, step)) - 1 for step in strands]
    assert on == [1, 3, 1, 3, 1, 0]
    assert {phrase.key for step in strands for phrase in step.phrases} == {
        "strand-across",
        "strand-across-last",
        "edge-on",
    }


@pytest.mark.parametrize("stitch", ["twisted fringe", "looped fringe", "picot edge"])
@pytest.mark.parametrize("edge", ["top", "bottom"])
def test_other_hanging_parts_take_the_same_places(stitch, edge):
    path = path_of(pattern_of(chart_of(EVEN), edge, stitch))
    held = {
        move.bead
        for step in path.steps
        if step.part == 1 and step.motion != "travel"
        for move in moves_of(path, step)
        if move.bead in edge_row(path, edge)
    }
    assert held >= set(edge_row(path, edge)[1:-1])


def test_the_needle_sees_a_strand_that_skips_the_row_behind():
    """Straight from one bead that stands out to the next, thread would lie bare across the notch."""
    pattern = pattern_of(chart_of(TWO_DROP), drop=2)
    path = path_of(pattern)
    step = [step for step in path.steps if step.motion == "strand"][1]
    last = step.past_move - 2
    moves = list(path.moves)
    moves[last] = moves[last - 3]  # back through the strand's own bead, not the bead behind
    assert replay(replace(path, moves=tuple(moves)), pattern)


def faults(pattern):
    problems = check_pattern(pattern, Shop())
    return [problem.code for problem in problems if CODES[problem.code].severity is Severity.FAULT]


def test_as_many_strands_as_beads_stand_out():
    pattern = pattern_of(chart_of(ODD))
    assert not faults(pattern)
    hung = replace(pattern.parts[1], strands=pattern.parts[1].strands[:-1])
    assert faults(replace(pattern, parts=(pattern.parts[0], hung))) == ["strand-count"]


@st.composite
def charts(draw):
    """Charts whose edges go in and out by one column, and by two, in units of one bead or two."""
    rows = []
    left, width = 12, draw(st.integers(2, 7))
    drop = draw(st.sampled_from((1, 1, 2)))
    for number in range(draw(st.integers(3, 9))):
        columns = [drop * (left + 2 * place) + bead for place in range(width) for bead in range(drop)]
        rows.append(ChartRow(tuple((column, draw(st.sampled_from("ABC"))) for column in columns)))
        steps = st.sampled_from((-1, 1)) if number < 2 else st.sampled_from((-1, -1, 1, 1, -3, 3))
        right = left + 2 * width - 2 + draw(steps)
        left += draw(steps)
        width = (right - left) // 2 + 1
        if width < 1:
            break
    return drop, Chart("Band", tuple(rows))


@settings(max_examples=200, deadline=None)
@given(
    made=charts(),
    begin=st.sampled_from(("top", "bottom", "middle")),
    start=st.sampled_from(("left", "right")),
    edge=st.sampled_from(("top", "bottom")),
)
def test_what_hangs_from_a_chart_that_holds_is_proved(made, begin, start, edge):
    """Wherever the band alone can be made, so can what hangs from it."""
    drop, chart = made
    pattern = pattern_of(chart, edge, begin=begin, start=start, drop=drop)
    alone = replace(pattern, parts=(replace(pattern.parts[0], hang=None),))
    assume(not faults(pattern))
    band, _ = weave(alone, Shop())
    assume(band is not None)
    path, problems = weave(pattern, Shop())
    assert not problems
    assert path.moves[: len(band.moves)] == band.moves
    picks = Counter(move.bead for move in path.moves if move.kind is MoveKind.PICK)
    assert picks == dict.fromkeys(range(len(path.beads)), 1)
    inside = sum(path.beads[move.bead].length for move in path.moves if move.bead >= 0)
    assert inside <= sum(move_lengths(path, 0.15)) <= inside + 1.35 * WIDTH * len(path.moves)


@settings(max_examples=60, deadline=None)
@given(made=charts(), edge=st.sampled_from(("top", "bottom")))
def test_a_mirrored_band_hangs_mirrored(made, edge):
    """Strands and the finding lie in mirrored places."""
    drop, chart = made
    widest = max(row.cells[-1][0] for row in chart.rows)
    rows = [ChartRow(tuple((widest - at, letter) for at, letter in row.cells[::-1])) for row in chart.rows]
    one = pattern_of(chart, edge, drop=drop)
    other = pattern_of(replace(chart, rows=tuple(rows)), edge, drop=drop, start="right")
    assume(not faults(one))
    path, twin = weave(one, Shop())[0], weave(other, Shop())[0]
    assert (path is None) == (twin is None)
    assume(path is not None)

    def first_beads(path, sign):
        middle = sum(path.beads[index].x for index in edge_row(path, edge)) / len(edge_row(path, edge))
        hung = [bead for bead in path.beads if bead.part == 1 and bead.place == 1]
        return sorted((round(sign * (bead.x - middle), 3) + 0.0, round(bead.y, 3)) for bead in hung)

    assert first_beads(path, 1.0) == first_beads(twin, -1.0)
    assert path.findings[0].y == pytest.approx(twin.findings[0].y)


def test_the_way_back_to_the_far_edge_grows_with_the_band_and_no_faster():
    """From the bottom, where the thread is, to a finding at the top: about a pass for each row."""
    made = [path_of(pattern_of(chart_of("\n".join([EVEN] * times)))) for times in (2, 8)]
    ways = []
    for path in made:
        travel = next(step for step in path.steps[::-1] if step.motion == "travel" and step.part == 0)
        ways.append(travel.past_move - travel.first_move)
        assert all(move.enter in (End.TOP, End.BOTTOM) for move in moves_of(path, travel))
    assert ways[1] <= 48 + ways[0]
