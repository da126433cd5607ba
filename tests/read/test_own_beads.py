"""Bead kinds of the author's own: read from header and shop, used by colours, and carried to the measures."""

from __future__ import annotations

import pytest

from sitegen.check import check_pattern
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.read.shop_file import read_shop_file
from sitegen.weave import weave
from tests.read.samples import changed, codes, read, sound

LENTIL = "{shape: round, width: 2.4 mm, length: 2 mm, hole: 0.9 mm, per_gram: 45}"
IN_HEADER = ("parts:\n", f"bead_kinds:\n  flat lentil: {LENTIL}\nparts:\n")
USED = ("{bead: round 11/0, name: foam", "{bead: Flat  lentil, name: foam")


def shop() -> Shop:
    text = f"title: S\nbead_kinds:\n  flat lentil: {LENTIL.replace('45', '50')}\n"
    made, problems = read_shop_file(text, "shop.yaml")
    assert problems == []
    return made


def test_a_header_has_its_own_kinds() -> None:
    kind = sound(changed(IN_HEADER, USED)).bead_kinds["flat lentil"]
    assert (kind.name, kind.shape, kind.width_mm, kind.length_mm, kind.hole_mm, kind.per_gram) == (
        *("flat lentil", "round", 2.4, 2.0, 0.9, 45.0),
    )
    assert (kind.at["width_mm"].line, kind.at["width_mm"].column) == (14, 38)


def test_the_shops_kinds_are_there_too_and_the_patterns_go_over_them() -> None:
    assert sound(changed(USED), shop()).bead_kinds["flat lentil"].per_gram == 50
    assert sound(changed(IN_HEADER, USED), shop()).bead_kinds["flat lentil"].per_gram == 45
    assert check_pattern(sound(changed(USED), shop()), shop()) == []


def test_weave_and_measures_reckon_with_them() -> None:
    pattern = sound(changed(IN_HEADER, USED))
    assert check_pattern(pattern, Shop()) == []
    path, problems = weave(pattern, Shop())
    assert (problems, path is not None) == ([], True)
    assert path is not None
    foam = [bead for bead in path.beads if bead.letter == "W"]
    assert {(bead.width, bead.length, bead.kind) for bead in foam} == {(2.4, 2.0, "flat lentil")}
    (line,) = [line for line in measure(path, pattern, Shop()).beads if line.letter == "W"]
    assert line.grams == pytest.approx(line.total / 45)


def test_of_a_kind_that_could_not_be_read_nothing_more_is_said() -> None:
    pattern, problems = read(changed((IN_HEADER[0], IN_HEADER[1].replace("2.4 mm", "2.4")), USED))
    assert [code for code, _, _ in codes(problems)] == ["length"]
    assert pattern is not None
    assert check_pattern(pattern, Shop()) == []
