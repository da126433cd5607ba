"""Natural hanging: every bead keeps its place on its strand, and no strand is stretched."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest

from sitegen.draw.finished import finished
from sitegen.draw.hang import SLENDER, as_it_hangs
from sitegen.draw.pens import BoundsPen
from sitegen.draw.rolled import as_seen
from sitegen.model.shop import Shop
from sitegen.model.source import Makes
from sitegen.model.thread import Bead, ThreadPath
from sitegen.read.sources import load_pattern
from sitegen.weave import weave
from tests.demo import DEMO_SHOP
from tests.draw.conftest import TESTS
from tests.draw.say import SAY

DEMOS = (
    "hazel-catkins",
    "rockpool-pendant",
    "eaves-rain",
    "bramble-rope",
    "hedge-berry-bracelet",
    "tide-bead",
)


def woven(name):
    pattern = load_pattern(TESTS.parent / "content" / "patterns" / f"{name}.md", DEMO_SHOP).patterns[0]
    path, _ = weave(pattern, Shop())
    assert path is not None
    return pattern, path


@pytest.fixture(scope="module", params=DEMOS)
def demo(request):
    return woven(request.param)


def what(bead: Bead) -> tuple[object, ...]:
    return bead.letter, bead.part, bead.row, bead.place, bead.width, bead.length, bead.kind


def test_no_bead_is_lost_nor_changes_its_place(demo) -> None:
    _, path = demo
    seen = as_seen(path)
    assert [what(bead) for bead in as_it_hangs(seen).beads] == [what(bead) for bead in seen.beads]


def lengths(path: ThreadPath) -> dict[tuple[int, int], float]:
    """The way along each strand, from bead to bead."""
    strands: dict[tuple[int, int], list[Bead]] = {}
    for bead in path.beads:
        if path.parts[bead.part].lines in ("strands", "loops"):
            strands.setdefault((bead.part, bead.row), []).append(bead)
    return {
        key: sum(math.dist((one.x, one.y), (other.x, other.y)) for one, other in pairwise(own))
        for key, own in strands.items()
    }


@pytest.mark.parametrize("name", ["hazel-catkins", "rockpool-pendant", "eaves-rain"])
def test_no_strand_is_stretched(name) -> None:
    _, path = woven(name)
    before, after = lengths(path), lengths(as_it_hangs(path))
    assert before
    assert after == {key: pytest.approx(length, rel=0.03) for key, length in before.items()}


def test_strands_sway_but_little(kelp) -> None:
    _, path = kelp
    moved = [abs(one.x - other.x) for one, other in zip(path.beads, as_it_hangs(path).beads, strict=True)]
    widest = max(bead.width for bead in path.beads)
    assert 0.3 * widest < max(moved) < 2.5 * widest


def test_what_is_not_hung_stays(diamond) -> None:
    _, path = diamond
    assert as_it_hangs(path) == path


def test_strands_hold_where_they_begin(kelp) -> None:
    _, path = kelp
    first = [
        i for i, bead in enumerate(path.beads) if path.parts[bead.part].lines == "strands" and bead.place == 1
    ]
    hung = as_it_hangs(path)
    assert first
    assert all(
        math.dist((path.beads[i].x, path.beads[i].y), (hung.beads[i].x, hung.beads[i].y)) < 0.25
        for i in first
    )


def test_the_second_of_a_pair_falls_otherwise(kelp) -> None:
    _, path = kelp
    assert as_it_hangs(path, 0) != as_it_hangs(path, 1)


def test_a_long_rope_is_laid_in_a_curve_of_its_length() -> None:
    _, path = woven("bramble-rope")
    seen = as_seen(path)
    laid = as_it_hangs(seen)
    tall = max(bead.y for bead in seen.beads) - min(bead.y for bead in seen.beads)
    wide = 2 * max(abs(bead.x) for bead in seen.beads)
    assert tall > SLENDER * wide
    core = sorted(
        (number for number, bead in enumerate(seen.beads) if not bead.x), key=lambda n: seen.beads[n].y
    )
    spots = [(laid.beads[number].x, laid.beads[number].y) for number in core]
    long = seen.beads[core[-1]].y - seen.beads[core[0]].y
    assert sum(map(math.dist, spots, spots[1:])) == pytest.approx(long, rel=0.03)


def test_two_calls_give_the_same_bytes(demo) -> None:
    pattern, path = demo
    assert finished(path, pattern, SAY).svg("x") == finished(path, pattern, SAY).svg("x")


def test_nothing_is_drawn_outside_the_box(demo) -> None:
    pattern, path = demo
    drawing = finished(path, pattern, SAY)
    bounds = BoundsPen()
    drawing.play(bounds)
    assert drawing.left <= bounds.left <= bounds.right <= drawing.left + drawing.width_mm
    assert drawing.top <= bounds.top <= bounds.bottom <= drawing.top + drawing.height_mm


@pytest.mark.parametrize("makes", list(Makes))
def test_every_bead_of_a_flat_piece_is_in_its_picture(makes, kelp) -> None:
    pattern, path = kelp
    drawing = finished(path, replace(pattern, makes=makes), SAY)
    bodies = 0
    open_group = ""
    for name, values in drawing.calls:
        if name == "begin":
            open_group = values[0]
        elif name == "end":
            open_group = ""
        elif name == "shapes" and open_group == "beads":
            bodies += len(values[0])
    assert bodies == len(path.beads) * makes.pieces


def test_the_width_in_words_is_that_of_the_beadwork_lying_flat(kelp) -> None:
    pattern, path = kelp
    left = min(bead.x - bead.width / 2 for bead in path.beads)
    right = max(bead.x + bead.width / 2 for bead in path.beads)
    assert f"{right - left:.0f} mm wide" in finished(path, pattern, SAY).description
