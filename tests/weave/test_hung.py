"""What hangs, is sewn on or strung: mechanics, and proof over random words. Sources: weave/*.py."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.measure.thread import move_lengths
from sitegen.model.location import NOWHERE
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Hang, Makes, Over, Part, Pattern, Words
from sitegen.model.thread import End, MoveKind, ThreadPath
from sitegen.trade.beads import bead_kind_names
from sitegen.weave import weave
from sitegen.weave.curves import along, hanging_line
from sitegen.weave.mirror import mirrored
from sitegen.weave.needle import replay
from sitegen.weave.strung import CRIMP_MM

COLOURS = tuple(Colour(letter, "round 11/0", letter, "#112233") for letter in "ABC")
BUGLES = ("bugle 2 mm", "bugle 6 mm", "bugle 12 mm", "bugle 30 mm")
WIDTH, LENGTH = 2.1, 1.5
"""Of those beads, mm."""


def words(letters: str, branches: tuple[tuple[int, int], ...] = ()) -> Words:
    return Words(letters, tuple(letters), NOWHERE, (NOWHERE,) * len(letters), branches)


def base(beads: int) -> Part:
    """A brick strip of two rows, the lower one so many beads wide."""
    rows = tuple(
        ChartRow(tuple((column, "A") for column in range(start, start + 2 * count, 2)))
        for start, count in ((1, beads - 1), (0, beads))
    )
    return Part("Base", "brick", chart=Chart("Base", rows), at={"": NOWHERE})


def hung(stitch: str, strands: list[Words], beads: int, **keys: object) -> Pattern:
    points = str(keys.pop("points", ""))
    edge = str(keys.pop("edge", "bottom"))
    part = Part(
        "Hung",
        stitch,
        hang=Hang(edge, part="Base", points=points),
        strands=tuple(strands),
        at={"": NOWHERE},
        **keys,  # type: ignore[arg-type]
    )
    return Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, (base(beads), part), thread="nylon 0.2 mm")


def path_of(pattern: Pattern) -> ThreadPath:
    path, problems = weave(pattern, Shop())
    assert path is not None, problems
    return path


def passes_of(path: ThreadPath, part: int = 1) -> list[int]:
    """Passes of each bead of a part, in the order laid."""
    count = Counter(move.bead for move in path.moves if move.bead >= 0)
    return [count[index] for index, bead in enumerate(path.beads) if bead.part == part]


def test_strands_from_bridges_go_under_each_bridge_twice():
    path = path_of(hung("fringe", [words("AAAB")] * 4, 5, points="bridges"))
    under = [move.bridge for step in path.steps if step.motion == "strand" for move in moves(path, step)]
    counts = Counter(bridge for bridge in under if bridge)
    assert len(counts) == 4
    assert set(counts.values()) == {2}


def moves(path, step):
    return path.moves[step.first_move : step.past_move]


def test_side_branches_are_worked_from_the_lowest_up():
    """A A A [B C] A A [C C C] A A A: trunk 8, two branches; their tips and the turn bead on one pass."""
    strand = words("AAABCAACCCAAA", ((3, 5), (7, 10)))
    path = path_of(hung("branched fringe", [strand] * 3, 3))
    assert [step.motion for step in path.steps if step.part == 1 and step.row == 1] == [
        "strand",
        "branch",
        "branch",
    ]
    first = [step for step in path.steps if step.part == 1 and step.row == 1]
    assert ["".join(path.beads[bead].letter for bead in step.picks) for step in first] == [
        "AAAAAAAA",
        "CCC",
        "BC",
    ]
    assert passes_of(path)[:13] == [2, 2, 2, 2, 1, 2, 2, 2, 2, 1, 2, 2, 1]


def test_a_loop_hangs_between_two_beads_of_its_own():
    path = path_of(hung("looped fringe", [words("ABABAB")] * 3, 6))
    assert passes_of(path) == [1] * 18
    loop = next(step for step in path.steps if step.motion == "loop")
    ends = [path.beads[move.bead].place for move in moves(path, loop) if move.kind is MoveKind.THROUGH]
    before = path.moves[loop.first_move - 1]
    assert abs(path.beads[before.bead].place - ends[0]) == 1


def test_swags_share_their_bridges():
    path = path_of(hung("swags", [words("A" * 9)] * 3, 8, points="bridges", span=2))
    touched = [move.bridge for move in path.moves if move.kind is MoveKind.UNDER and move.bridge]
    swags = [step for step in path.steps if step.motion == "swag"]
    assert len(swags) == 3
    assert len({touched.index(bridge) for bridge in touched}) == len(set(touched))


def test_a_swag_too_short_for_its_places_is_a_problem():
    _, problems = weave(hung("swags", [words("AAA")], 8), Shop())
    assert [problem.code for problem in problems] == ["weave-swag-short"]


def test_a_twist_too_tight_is_a_problem_and_says_how_much_fits():
    pattern = hung("twisted fringe", [words("A" * 21)] * 2, 2, twist=9)
    _, problems = weave(pattern, Shop())
    assert [problem.code for problem in problems] == ["weave-twist-tight"]
    fits = problems[0].values["most"]
    assert isinstance(fits, int)
    path_of(hung("twisted fringe", [words("A" * 21)] * 2, 2, twist=fits))


def test_a_twisted_strand_is_shorter_than_its_legs_and_crosses():
    path = path_of(hung("twisted fringe", [words("A" * 41)] * 3, 3, twist=2))
    strand = [bead for bead in path.beads if bead.part == 1 and bead.row == 1]
    drop = max(bead.y for bead in strand) - min(bead.y for bead in strand)
    assert 0.7 * 20 * LENGTH < drop < 20 * LENGTH
    assert {bead.front for bead in strand} == {-1, 0, 1}


def test_picots_on_bridges_share_their_stems():
    path = path_of(hung("picot edge", [words("ABA")] * 4, 6))
    assert sum(bead.part == 1 for bead in path.beads) == 3 + 3 * 2
    counts = sorted(passes_of(path))
    assert counts[0] == 1
    stems = [
        count
        for count, bead in zip(passes_of(path), [bead for bead in path.beads if bead.part == 1], strict=True)
        if bead.letter == "A"
    ]
    assert sorted(stems) == [1, 2, 2, 2, 3]


def test_a_whipped_edge_is_passed_twice():
    path = path_of(hung("whipped edge", [words("BB")] * 4, 6))
    assert passes_of(path) == [2] * 8


@pytest.mark.parametrize("edge", ["top", "bottom"])
def test_the_thread_ends_in_the_edge_so_that_another_part_can_follow(edge):
    for stitch, strands in (("picot edge", [words("ABA")] * 3), ("whipped edge", [words("B")] * 3)):
        beads = 5 if edge == "bottom" else 6
        path = path_of(hung(stitch, strands, beads, edge=edge))
        assert path.beads[path.moves[-1].bead].part == 0


def strung(letters: str, **keys: object) -> Pattern:
    part = Part("String", "strung", strands=(words(letters),), clasp="toggle clasp", at={"": NOWHERE})
    thread = str(keys.pop("thread", "nylon 0.2 mm"))
    return Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, (replace(part, **keys),), thread=thread)


def test_a_string_returns_through_three_beads_at_each_clasp():
    path = path_of(strung("ABC" * 10))
    assert passes_of(path, 0) == [2, 2, 2] + [1] * 24 + [2, 2, 2]
    assert path.parts[0].strung_mm == pytest.approx(30 * LENGTH)
    loops = [path.findings[move.finding].kind for move in path.moves if move.kind is MoveKind.LOOP]
    assert loops == ["toggle clasp"] * 2


def test_wire_is_crimped_and_thread_is_knotted_unless_told():
    def kinds(**keys: object) -> list[str]:
        return [finding.kind for finding in path_of(strung("ABC" * 10, **keys)).findings]

    assert kinds(thread="wire 0.38 mm").count("crimp tube") == 2
    assert kinds().count("crimp tube") == 0
    assert kinds(ends="crimps").count("crimp tube") == 2


@pytest.mark.parametrize("ends", ["crimps", "knots"])
@pytest.mark.parametrize("kind", [*(name for name in bead_kind_names() if "bugle" not in name), *BUGLES])
@pytest.mark.parametrize("letters", ["ABCABC", "ABC" * 25], ids=["shortest", "bracelet"])
def test_a_string_of_any_kind_of_bead_reaches_its_clasp(letters, kind, ends):
    """From the last bead to the clasp, or to the crimp and on to it, no way is longer than CRIMP_MM."""
    pattern = strung(letters, ends=ends)
    path = path_of(replace(pattern, colours=tuple(replace(each, bead=kind) for each in COLOURS)))
    clasp = next(finding for finding in path.findings if finding.kind == "toggle clasp")
    for bead, end in ((path.beads[0], End.TOP), (path.beads[-1], End.BOTTOM)):
        far = math.dist(bead.mouth(end), (clasp.x, clasp.y))
        assert 0.5 <= far <= CRIMP_MM * (2 if ends == "crimps" else 1) + 0.2


def test_the_needle_follows_the_thread_from_crimp_to_clasp():
    """2 mm higher the clasp is within reach of beads 2.1 mm wide, 3 mm higher it is not."""
    pattern = strung("ABC" * 10, ends="crimps")
    path = path_of(pattern)

    def objections(higher: float) -> set[str]:
        moved = (replace(each, y=each.y - higher * (each.kind == "toggle clasp")) for each in path.findings)
        return {problem.code for problem in replay(replace(path, findings=tuple(moved)), pattern)}

    assert objections(2.0) == set()
    assert objections(3.0) == {"path-bare-thread"}


def test_a_string_is_a_ring_as_long_as_its_beads():
    path = path_of(strung("A" * 120))
    across = max(bead.x for bead in path.beads) - min(bead.x for bead in path.beads)
    assert math.pi * across == pytest.approx(120 * LENGTH, rel=0.05)


def test_beads_on_top_lie_over_the_gaps():
    over = Part("Top", "ditch", over=Over("Base", 1), strands=(words("BBB"), words("CCCC")), at={"": NOWHERE})
    pattern = Pattern("p", "P", "s", Makes.ONE, 1, None, COLOURS, (base(5), over))
    path = path_of(pattern)
    row = sorted(bead.x for bead in path.beads if bead.part == 0 and bead.row == 2)
    gaps = [(one + other) / 2 for one, other in pairwise(row)]
    assert sorted(bead.x for bead in path.beads if bead.letter == "B") == pytest.approx(gaps)


@given(apart=st.floats(1.5, 40), more=st.floats(1.03, 12), width=st.floats(1.0, 4.0))
def test_a_hanging_line_is_as_long_as_its_beads_and_joins_both_places(apart, more, width):
    length = apart * more
    line = hanging_line((0.0, 0.0), (apart, 0.0), length, width)
    drawn = sum(math.dist(one, other) for one, other in pairwise(line))
    assert drawn == pytest.approx(length, rel=0.01)
    assert line[0] == pytest.approx((0.0, 0.0), abs=1e-6)
    assert line[-1] == pytest.approx((apart, 0.0), abs=1e-6)
    assert len(along(line, [1.0] * 7)) == 7


STITCHES = (
    "fringe",
    "branched fringe",
    "twisted fringe",
    "looped fringe",
    "swags",
    "picot edge",
    "whipped edge",
)
LONGEST_PASS = 1.35 * WIDTH + LENGTH
"""A move is at most the needle's reach and the bead."""


@st.composite
def patterns(draw):
    """Random strands in a random stitch, as many as the edge takes."""
    stitch = draw(st.sampled_from(STITCHES))
    bridges = draw(st.booleans()) or stitch == "whipped edge"
    letters = st.text("ABC", min_size=6, max_size=14)
    span = draw(st.integers(1, 3)) if stitch in ("looped fringe", "swags") else 1
    count = draw(st.integers(1, 5))
    keys: dict[str, object] = {"points": "bridges" if bridges else "beads"}
    places = count
    if stitch in ("looped fringe", "swags"):
        keys["span"] = span
        places = count * span + 1 if bridges else count * (span + 1)
    elif stitch == "picot edge":
        places = count + 1 if bridges else count * 2
    elif stitch == "whipped edge":
        places = count + 1
    beads = places + 1 if bridges else max(places, 2)
    if not bridges and places < 2:
        count, beads = 2, 2
    strands = []
    for _ in range(count):
        text = draw(letters)
        if stitch == "branched fringe":
            strands.append(words("AA" + text + "BBC", ((2, 4), (6, 8))))
        elif stitch == "twisted fringe":
            strands.append(words(text + "B" + text[::-1]))
        elif stitch == "picot edge":
            strands.append(words("A" + text[: draw(st.integers(1, 3))] + "A"))
        elif stitch == "whipped edge":
            strands.append(words(text[: draw(st.integers(1, 3))]))
        else:
            strands.append(words(text))
    if stitch == "twisted fringe":
        keys["twist"] = 1
        strands = [words(strand.text * 3) if len(strand.letters) % 2 else strand for strand in strands]
    return hung(stitch, strands, beads, **keys)


@settings(max_examples=120, deadline=None)
@given(pattern=patterns())
def test_random_strands_are_proved_and_take_a_sane_length_of_thread(pattern):
    path = path_of(pattern)
    assert not replay(path, pattern)
    picked = Counter(move.bead for move in path.moves if move.kind is MoveKind.PICK)
    assert set(picked.values()) == {1}
    lengths = move_lengths(path, 0.2)
    passes = sum(move.bead >= 0 for move in path.moves)
    assert LENGTH * passes <= sum(lengths) + 1e-6
    assert sum(lengths) <= LONGEST_PASS * len(path.moves)


@settings(max_examples=60, deadline=None)
@given(pattern=patterns())
def test_a_mirrored_source_gives_a_mirrored_piece(pattern):
    other = mirrored(pattern)
    if other is None:
        return
    one, two = path_of(pattern), path_of(other)

    def shape(path: ThreadPath, sign: float) -> list[tuple[str, float, float]]:
        middle = sum(bead.x for bead in path.beads if bead.part == 0) / sum(
            bead.part == 0 for bead in path.beads
        )
        return sorted(
            (bead.letter, round(sign * (bead.x - middle), 3) + 0.0, round(bead.y, 3)) for bead in path.beads
        )

    if pattern.parts[1].stitch not in ("fringe", "branched fringe"):  # their turn beads keep one side
        assert shape(one, 1.0) == shape(two, -1.0)
    assert sorted(passes_of(one)) == sorted(passes_of(two))


@settings(max_examples=30, deadline=None)
@given(pattern=patterns())
def test_other_letters_make_the_same_path(pattern):
    swap = str.maketrans("ABC", "CAB")
    parts = []
    for part in pattern.parts:
        strands = tuple(
            replace(strand, letters=tuple(letter.translate(swap) for letter in strand.letters))
            for strand in part.strands
        )
        chart = part.chart and replace(
            part.chart,
            rows=tuple(
                replace(row, cells=tuple((at, letter.translate(swap)) for at, letter in row.cells))
                for row in part.chart.rows
            ),
        )
        parts.append(replace(part, strands=strands, chart=chart))
    renamed = replace(pattern, parts=tuple(parts))
    assert path_of(renamed).moves == path_of(pattern).moves
