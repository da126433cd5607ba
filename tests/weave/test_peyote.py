"""Peyote: the first string, turns, edges, two-drop, the zip, and random charts. Sources: weave/peyote.py."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sitegen.check import check_pattern
from sitegen.measure import measure
from sitegen.measure.thread import move_lengths
from sitegen.model.codes import CODES
from sitegen.model.location import NOWHERE
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Makes, Part, Pattern
from sitegen.model.thread import End, MoveKind
from sitegen.read.sources import load_pattern
from sitegen.weave import weave

EVEN = "D D L\n D L L\nD D L\n D L L"
ODD = "D D L\n D L\nD D L\n D L"
LETTERS = "ABC"
COLOURS = tuple(Colour(letter, "cylinder 11/0", letter, "#112233") for letter in LETTERS)


@pytest.fixture
def peyote(sample, woven):
    def make(chart, keys=""):
        return woven(sample(chart, f"stitch: peyote\nbegin: top\n{keys}".strip()))

    return make


def way_of(path, motion):
    """The moves of the first step of a motion, such as `1.3>`: row, place, and to which side."""
    step = next(step for step in path.steps if step.motion == motion)
    return [
        "thread" if move.bead < 0 else f"{name(path, move)}{'>' if move.enter is End.TOP else '<'}"
        for move in path.moves[step.first_move : step.past_move]
    ]


def name(path, move):
    return f"{path.beads[move.bead].row}.{path.beads[move.bead].place}"


def passes_by_row(path):
    count = Counter(move.bead for move in path.moves if move.bead >= 0)
    rows = {}
    for index, bead in enumerate(path.beads):
        rows.setdefault(bead.row, []).append(count[index])
    return rows


def test_the_first_string_is_rows_one_and_two(peyote):
    path = peyote(EVEN)
    assert way_of(path, "peyote-string") == ["1.1>", "2.1>", "1.2>", "2.2>", "1.3>", "2.3>"]
    assert way_of(path, "peyote-string-back") == ["1.3<", "2.2<", "1.2<", "2.1<", "1.1<"]


def test_an_even_row_begins_with_a_bead_beneath_and_ends_at_the_edge(peyote):
    path = peyote(EVEN)
    third = [step for step in path.steps if step.row == 3]
    assert [step.motion for step in third] == ["peyote-next"] * 3
    assert way_of(path, "peyote-next") == ["3.1>", "2.1>"]
    assert [step.rest for step in third] == [False, False, True]


def test_the_odd_turn_leaves_no_bare_thread(peyote):
    """Through the edge bead two rows back, round its outer end, into the new bead beneath it."""
    path = peyote(ODD)
    assert way_of(path, "peyote-odd") == ["1.3>", "3.3<"]
    lengths = move_lengths(path, 0.0)
    turn = next(step for step in path.steps if step.motion == "peyote-odd")
    into_edge_bead, into_new_bead = lengths[turn.first_move : turn.past_move]
    bead = path.beads[0]
    assert into_edge_bead == pytest.approx(bead.length + bead.width / 2)  # mouths that touch
    assert into_new_bead == pytest.approx(bead.length + bead.width)  # from one bead to the one beneath


def test_odd_turns_fall_on_one_edge_only(peyote):
    path = peyote("\n".join([ODD] * 3))
    odd = [path.beads[step.picks[0]] for step in path.steps if step.motion == "peyote-odd"]
    assert [bead.row for bead in odd] == [3, 5, 7, 9, 11]
    assert {bead.place for bead in odd} == {3}


@pytest.mark.parametrize("width", [3, 4, 9])
@pytest.mark.parametrize("odd", [False, True])
def test_passes_of_a_straight_band(peyote, width, odd):
    """Row 1: 2; row 2: 3; others 2: picked up, and gone through once; the last row by the run back.

    The run back gives one more to the row before it, and turns give a few edge beads one more.
    """
    other = " " + " ".join("D" * (width - odd))
    path = peyote("\n".join([" ".join("D" * width), other] * 4))
    rows = passes_by_row(path)
    usual = {row: Counter(count).most_common(1)[0][0] for row, count in rows.items() if row < 7}
    assert usual == {1: 2, 2: 3, 3: 2, 4: 2, 5: 2, 6: 2}
    assert min(map(min, rows.values())) == 2
    assert max(map(max, rows.values())) <= 4


def test_the_side_of_the_string_is_the_authors_where_the_chart_leaves_it_open(sample, woven):
    for start, first in (("left", 1), ("right", 3)):
        path = woven(sample(ODD, f"stitch: peyote\nbegin: top\nstart: {start}"))
        assert path.beads[path.moves[0].bead].place == first
    path = woven(sample(EVEN, "stitch: peyote\nbegin: top\nstart: right"))
    assert path.beads[path.moves[0].bead].place == 1  # an even count leaves no choice


def test_a_decrease_turns_round_the_thread_at_the_edge(peyote):
    path = peyote("D D D D\n D D D D\nD D D D\n D D D D\n  D D D\n   D D")
    turn = next(step for step in path.steps if step.motion == "travel" and step.row in (5, 6))
    assert turn.phrases[0].key in ("peyote-catch", "peyote-way")


@pytest.mark.parametrize(
    ("chart", "motion"),
    [
        ("   D D\n  D D D\n   D D\n  D D D\n D D D D\nD D D D D", "peyote-out"),
        ("    D D D\n   D D D D\n    D D D\n D D D D D D\n  D D D D D\n D D D D D D", "peyote-increase"),
    ],
    ids=["one column", "two columns"],
)
def test_increases_at_both_edges(peyote, chart, motion):
    path = peyote(chart)
    assert motion in [step.motion for step in path.steps]
    assert min(min(count) for count in passes_by_row(path).values()) >= 2


def test_two_drop_takes_two_beads_in_each_stitch(peyote):
    path = peyote("DD  LL  DD\n  DD  LL\nDD  LL  DD\n  DD  LL", "drop: 2")
    assert way_of(path, "peyote-next-drop") == ["3.1>", "3.2>", "2.1>", "2.2>"]
    assert way_of(path, "peyote-odd") == ["1.5>", "1.6>", "3.6<", "3.5<"]


def test_zipping_passes_the_first_and_the_last_row_by_turns(peyote):
    path = peyote("\n".join([EVEN] * 3), "zip: true")
    assert way_of(path, "peyote-zip") == ["1.1>", "12.1>", "1.2>", "12.2>", "1.3>", "12.3>"]
    assert path.steps[-1].motion == "peyote-zip"
    part = path.parts[0]
    assert part.zipped_mm == pytest.approx(12 * part.row_pitch)


def test_gauge_overrules_the_pitch(sample, woven):
    keys = "stitch: peyote\ngauge: {beads: 10, width: 14 mm, rows: 20, height: 18 mm}"
    path = woven(sample(EVEN, keys))
    assert (path.parts[0].bead_pitch, path.parts[0].row_pitch) == pytest.approx((1.4, 0.9))


def test_a_chart_of_two_rows_or_with_a_loose_bead_is_a_problem(sample, problems_of):
    assert problems_of(sample("D D\n D D", "stitch: peyote")) == ["weave-peyote-rows"]
    loose = "D D D\n D D D\nD D D\n D D D D D\nD D D"
    assert problems_of(sample(loose, "stitch: peyote\nbegin: top")) == ["weave-peyote-loose"]


def test_harbour_steps(examples):
    """9 times 12 rows of 8 and 7: 810 beads, 15 lengths wide, 109 half diameters high."""
    pattern = load_pattern(examples / "harbour-steps.md", Shop()).patterns[0]
    path, problems = weave(pattern, Shop())
    assert not problems
    found = measure(path, pattern, Shop())
    assert found.bead_each == 810
    assert found.width_mm == pytest.approx(15 * 1.3)
    assert found.height_mm == pytest.approx(109 * 0.8)


@st.composite
def charts(draw):
    """Charts whose edges go in and out by one column, and by two."""
    rows = []
    left, width = 12, draw(st.integers(3, 8))
    drop = draw(st.sampled_from((1, 1, 2)))
    for number in range(draw(st.integers(3, 9))):
        letters = draw(st.lists(st.sampled_from(LETTERS), min_size=width, max_size=width))
        cells = [
            (drop * (left + 2 * place) + bead, letter)
            for place, letter in enumerate(letters)
            for bead in range(drop)
        ]
        rows.append(ChartRow(tuple(cells)))
        steps = st.sampled_from((-1, 1)) if number < 2 else st.sampled_from((-1, -1, 1, 1, -3, 3))
        right = left + 2 * width - 2 + draw(steps)
        left += draw(steps)
        width = (right - left) // 2 + 1
        if width < 2:
            break
    begin = draw(st.sampled_from(("top", "bottom", "middle")))
    start = draw(st.sampled_from(("left", "right")))
    chart = Chart("Band", tuple(rows))
    return Part("Band", "peyote", begin=begin, start=start, drop=drop, chart=chart, at={"": NOWHERE})


def pattern_of(part):
    return Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, (part,))


def wrong(pattern):
    problems = check_pattern(pattern, Shop())
    return [problem for problem in problems if CODES[problem.code].severity is Severity.FAULT]


def mirrored(part):
    rows = part.chart.rows
    widest = max(row.cells[-1][0] for row in rows)
    turned = [
        ChartRow(tuple((widest - column, letter) for column, letter in row.cells[::-1])) for row in rows
    ]
    start = "right" if part.start == "left" else "left"
    return replace(part, chart=Chart("Band", tuple(turned)), start=start)


@settings(max_examples=150, deadline=None)
@given(part=charts())
def test_every_chart_that_holds_is_proved(part):
    """No objection of the needle; each bead picked up once; at least two passes; thread within its bounds."""
    pattern = pattern_of(part)
    assume(not wrong(pattern))
    path, problems = weave(pattern, Shop())
    assert {problem.code for problem in problems} <= {
        "weave-peyote-loose",
        "weave-peyote-rows",
        "weave-no-way",
    }
    assume(path is not None)
    picks = Counter(move.bead for move in path.moves if move.kind is MoveKind.PICK)
    passes = Counter(move.bead for move in path.moves if move.bead >= 0)
    assert picks == dict.fromkeys(range(len(path.beads)), 1)
    assert min(passes.values()) >= 2
    inside = sum(path.beads[bead].length * count for bead, count in passes.items())
    # Between two passes lies at most the thread along a side of a bead and round its end.
    most = inside + sum(path.beads[0].length + path.beads[0].width for _ in path.moves)
    assert inside <= sum(move_lengths(path, 0.15)) <= most


@settings(max_examples=60, deadline=None)
@given(part=charts())
def test_a_mirrored_chart_gives_the_mirrored_path(part):
    assume(not wrong(pattern_of(part)))
    path, other = (weave(pattern_of(one), Shop())[0] for one in (part, mirrored(part)))
    assert (path is None) == (other is None)
    assume(path is not None)
    assert [step.motion for step in path.steps] == [step.motion for step in other.steps]
    widest = max(bead.x for bead in path.beads)
    for one, two in zip(path.moves, other.moves, strict=True):
        assert one.kind is two.kind
        if one.bead >= 0:
            here, there = path.beads[one.bead], other.beads[two.bead]
            assert (here.letter, here.y) == (there.letter, pytest.approx(there.y))
            assert here.x == pytest.approx(widest - there.x)
            assert one.enter is two.enter.other


@settings(max_examples=30, deadline=None)
@given(part=charts())
def test_measures_do_not_hang_on_the_letters(part):
    assume(not wrong(pattern_of(part)))
    path, _ = weave(pattern_of(part), Shop())
    assume(path is not None)
    swap = dict(zip("ABC", "CAB", strict=True))
    rows = [ChartRow(tuple((at, swap[letter]) for at, letter in row.cells)) for row in part.chart.rows]
    renamed = pattern_of(replace(part, chart=Chart("Band", tuple(rows))))
    again, _ = weave(renamed, Shop())
    one, two = measure(path, pattern_of(part), Shop()), measure(again, renamed, Shop())
    assert one.thread == two.thread
    assert (one.width_mm, one.height_mm) == (two.width_mm, two.height_mm)
    assert (one.passes.most, len(one.passes.tight)) == (two.passes.most, len(two.passes.tight))
    assert one.difficulty.score == pytest.approx(two.difficulty.score)
