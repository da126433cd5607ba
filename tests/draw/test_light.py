"""Light on beads: it stays on the bead, falls from above, and tells every finish from every other."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.draw.colour import INK, WHITE, Dye, Palette, contrast
from sitegen.draw.light import BALL, EDGE, LIGHT, TUBE, coats, draw_beads, draw_end, zone
from sitegen.draw.pens import Recorder, finish
from sitegen.draw.shapes import bead_outline
from sitegen.model.thread import Bead
from sitegen.trade.finishes import PLAIN, finish_kind, finish_words
from tests.draw.outlines import along, within

SHAPES = ("round", "cylinder", "cube", "bugle", "drop", "bicone", "faceted")
ZONES = (*BALL, "channel", "core", "line")
SIZES = {"bugle": (1.8, 6.0), "drop": (3.4, 2.8), "round": (2.1, 1.5), "cylinder": (1.6, 1.3)}


def bead(shape: str, angle: float = 0.0) -> Bead:
    width, length = SIZES.get(shape, (4.0, 4.0))
    return Bead("A", 0, 1, 1, 5.0, 7.0, angle, width, length, shape, "own")


def test_each_zone_of_a_ball_is_one_of_a_tube() -> None:
    assert set(BALL) == set(TUBE)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("name", ZONES)
@given(st.integers(0, 359))
def test_light_stays_on_the_bead(shape: str, name: str, angle: int) -> None:
    one = bead(shape, float(angle))
    contour = along(bead_outline(one, 0.0))
    assert all(within(spot, contour, 0.005) for part in zone(one, name) for spot in along(part))


@pytest.mark.parametrize("shape", SHAPES)
@given(st.integers(0, 359))
def test_light_falls_on_the_side_that_faces_it(shape: str, angle: int) -> None:
    one = bead(shape, float(angle))

    def lit(name: str) -> float:
        spots = [spot for part in zone(one, name) for spot in along(part)]
        facing = [x * LIGHT[0] + y * LIGHT[1] for x, y in spots]
        return (min(facing) + max(facing)) / 2

    assert LIGHT[1] < 0, "it comes from above"
    assert lit("spark") >= lit("shade")


def picture(words: str, shape: str) -> str:
    kind = finish_kind(words)
    assert kind is not None, words
    recorder = Recorder()
    draw_beads(recorder, [bead(shape)], {"A": kind})
    return finish(recorder, "", "", 0.0, Palette({"A": "#2f6f8f"})).svg("x")


@pytest.mark.parametrize("shape", SHAPES)
def test_each_finish_is_a_picture_of_its_own(shape: str) -> None:
    drawn = {words: picture(words, shape) for words in finish_words() if words not in ("glossy", "opal")}
    alike = [pair for pair in combinations(drawn, 2) if drawn[pair[0]] == drawn[pair[1]]]
    alone = {("matte", "frosted")}  # a word on its own, opaque: frosted says the same, of clear glass
    assert {pair for pair in alike if set(pair) not in map(set, alone)} == set()


def test_finishes_join() -> None:
    assert picture("transparent AB", "round") not in (picture("transparent", "round"), picture("AB", "round"))
    assert picture("frosted transparent", "round") != picture("transparent", "round")
    assert picture("matte metallic", "round") != picture("metallic", "round")


def test_the_same_beads_are_drawn_alike() -> None:
    assert picture("AB", "faceted") == picture("AB", "faceted")


def test_the_colour_of_the_design_is_never_literal() -> None:
    """Ink-saver shows no colour but the light, the ink and the metal in a hole."""
    recorder = Recorder()
    kinds = {words: kind for words in finish_words() if (kind := finish_kind(words))}
    for kind in kinds.values():
        draw_beads(recorder, [bead("round")], {"A": kind})
    paints = [values[1] for name, values in recorder.calls if name == "shapes"]
    bodies = [paint for paint in paints if paint.stroke]
    assert bodies
    assert all(isinstance(paint.fill, Dye) and isinstance(paint.stroke, Dye) for paint in bodies)


@pytest.mark.parametrize("fill", [WHITE, "#f7f5ef", "#ffffe0"])
def test_a_pale_bead_keeps_its_edge(fill: str) -> None:
    assert contrast(Palette({"A": fill}).of(Dye("A", INK, EDGE)), WHITE) >= 3.0


def test_few_paths_whatever_the_number_of_beads() -> None:
    def paths(count: int) -> int:
        recorder = Recorder()
        draw_beads(recorder, [bead("round")] * count, {"A": PLAIN})
        return sum(name == "shapes" for name, _ in recorder.calls)

    assert paths(1) == paths(500) == 1 + len(coats("A", PLAIN))


@pytest.mark.parametrize("shape", SHAPES)
def test_the_light_on_a_bead_from_the_hole_stays_on_it(shape: str) -> None:
    for words in finish_words():
        kind = finish_kind(words)
        assert kind is not None
        recorder = Recorder()
        draw_end(recorder, bead(shape), 0.8, {"A": kind})
        drawn = [values[0] for name, values in recorder.calls if name == "shapes"]
        contour = along(drawn[0][0])
        assert all(
            within(spot, contour, 0.005) for parts in drawn[1:] for part in parts for spot in along(part)
        )
