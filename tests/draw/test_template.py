"""The full-size template and the bars beside it have the lengths they claim and show every bead."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.draw.bars import inch_bar, millimetre_bar
from sitegen.draw.pens import BoundsPen, Paint
from sitegen.draw.template import is_round, is_string, laid_straight, template
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.read.sources import load_pattern
from sitegen.weave import weave
from tests.demo import DEMO_SHOP
from tests.draw.say import SAY

DEMOS = Path(__file__).parents[2] / "content" / "patterns"


def shapes(drawing, kind):
    """(outlines, paint) of every call within groups of a kind."""
    found, open_kinds = [], []
    for name, values in drawing.calls:
        if name == "begin":
            open_kinds.append(values[0])
        elif name == "end":
            open_kinds.pop()
        elif name == "shapes" and kind in open_kinds:
            found.append(values)
    return found


def box(outlines):
    pen = BoundsPen()
    pen.shapes(outlines, Paint())
    return pen


def texts(drawing):
    return [values[0] for name, values in drawing.calls if name == "text"]


def letters(drawing):
    return [mark for name, values in drawing.calls if name == "letters" for mark in values[0]]


def demo(name):
    pattern = load_pattern(DEMOS / f"{name}.md", DEMO_SHOP).patterns[0]
    path, _ = weave(pattern, Shop())
    return path, pattern.title, measure(path, pattern, Shop())


@pytest.mark.parametrize("upright", [True, False])
def test_the_bar_of_100_mm(upright):
    (spine, _), (ticks, _) = shapes(millimetre_bar(SAY, upright), "bar")
    sides = box(spine)
    size = (sides.right - sides.left, sides.bottom - sides.top)
    assert size == ((0, 100) if upright else (100, 0))
    lengths = {}
    for tick in ticks:
        one = box([tick])
        width, height = one.right - one.left, one.bottom - one.top
        lengths[100 - one.top if upright else one.left] = width if upright else height
    assert sorted(lengths) == list(range(101))
    short, five, ten = (
        {length for place, length in lengths.items() if rule(place)}
        for rule in (lambda at: at % 5, lambda at: at % 5 == 0 and at % 10, lambda at: at % 10 == 0)
    )
    assert max(short) < min(five) <= max(five) < min(ten)
    labels = texts(millimetre_bar(SAY, upright))
    assert [label.text for label in labels] == [*map(str, range(0, 101, 10)), "mm"]
    for label in labels[:-1]:
        assert (100 - label.y if upright else label.x) == int(label.text)


def test_the_bar_of_4_inches():
    """An inch is 25.4 mm (international yard and pound agreement, 1959)."""
    (spine, _), (ticks, _) = shapes(inch_bar(SAY), "bar")
    assert box(spine).right - box(spine).left == pytest.approx(4 * 25.4)
    places = sorted(box([tick]).left for tick in ticks)
    assert places == pytest.approx([number * 25.4 / 8 for number in range(33)])
    lengths = {round(box([tick]).left / 25.4 * 8): box([tick]).bottom for tick in ticks}
    assert lengths[8] > lengths[4] > lengths[2] > lengths[1]
    assert [label.text for label in texts(inch_bar(SAY))] == ["0", "1", "2", "3", "4", "in"]


@pytest.mark.parametrize(
    ("name", "within"),
    [
        ("hearth-diamond", 0.01),
        ("tideline-band", 0.01),
        ("harbour-light", 0.01),
        ("tide-bead", 0.01),
        ("beehive-bead", 0.01),
        ("bramble-rope", 0.01),
        ("window-box", 0.1),  # its tilted beads are measured by their boxes and drawn with round corners
    ],
)
def test_the_piece_is_as_large_as_it_is_measured(name, within):
    path, title, measures = demo(name)
    drawing = template(path, title, measures, SAY)
    drawn = [
        outline
        for kind in ("beads", "round")
        for outlines, _ in shapes(drawing, kind)
        for outline in outlines
    ]
    sides = box(drawn)
    assert sides.right - sides.left == pytest.approx(measures.width_mm, abs=within)
    assert sides.bottom - sides.top == pytest.approx(measures.height_mm, abs=within)
    (lying, upright), _ = shapes(drawing, "sizes")[0]
    assert box([lying]).right - box([lying]).left == pytest.approx(measures.width_mm)
    assert box([upright]).bottom - box([upright]).top == pytest.approx(measures.height_mm)


def test_every_bead_is_drawn_with_its_letter_in_its_place(diamond):
    pattern, path = diamond
    drawing = template(path, pattern.title, measure(path, pattern, Shop()), SAY)
    assert sum(len(outlines) for outlines, _ in shapes(drawing, "beads")) == len(path.beads)
    assert sorted(letters(drawing)) == sorted((bead.x, bead.y, bead.letter) for bead in path.beads)


def test_beads_that_lie_behind_others_keep_their_edge_and_lose_their_letter(kelp):
    pattern, path = kelp
    drawing = template(path, pattern.title, measure(path, pattern, Shop()), SAY)
    assert sum(len(outlines) for outlines, _ in shapes(drawing, "beads")) == len(path.beads)
    shown = Counter(letters(drawing))
    assert 0.6 * len(path.beads) < len(shown) < len(path.beads)
    assert set(shown.values()) == {1}
    places = list(shown)
    for number, (x, y, _) in enumerate(places):
        assert all(abs(x - other) > 0.6 or abs(y - down) > 0.6 for other, down, _ in places[:number])


def test_letters_too_small_to_read_are_left_out(diamond):
    pattern, path = diamond
    measures = measure(path, pattern, Shop())
    small = replace(path.beads[0], width=1.5, length=1.1)  # a round 15/0 among larger beads
    mixed = replace(path, beads=(small, *path.beads[1:]))
    shown = letters(template(mixed, pattern.title, measures, SAY))
    assert sorted(shown) == sorted((bead.x, bead.y, bead.letter) for bead in path.beads[1:])


def test_black_and_grey_on_white_alone(kelp):
    pattern, path = kelp
    svg = template(path, pattern.title, measure(path, pattern, Shop()), SAY).svg("t")
    colours = {svg[at : at + 7] for at in range(len(svg)) if svg[at] == "#" and svg[at - 1] == '"'}
    assert colours == {"#ffffff", "#000000", "#3c3c3c"}


def test_a_tube_is_an_outline_and_says_so():
    path, title, measures = demo("tide-bead")
    drawing = template(path, title, measures, SAY)
    assert all(map(is_round, path.parts))
    assert not letters(drawing)
    assert "Tube is round" in drawing.description


def test_a_string_laid_straight_keeps_order_and_length():
    path, title, measures = demo("hedge-berry-bracelet")
    assert is_string(path)
    drawing = laid_straight(path, title, 60.0, SAY)
    lines = [outlines for outlines, _ in shapes(drawing, "beads")]
    assert len(lines) > 2
    lengths = [box(line).right - box(line).left for line in lines]
    assert sum(lengths) == pytest.approx(measures.parts[0].strung_mm, abs=0.01)
    assert drawing.width_mm <= 61.0 + 1
    counts = [int(label.text) for label in texts(drawing)]
    ends = [sum(map(len, lines[: number + 1])) for number in range(len(lines))]
    assert counts == ends
    strung = [bead.letter for bead in sorted(path.beads, key=lambda bead: bead.place)]
    assert [
        letter for _, _, letter in sorted(letters(drawing), key=lambda mark: (mark[1], mark[0]))
    ] == strung
