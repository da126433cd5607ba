"""Advice on the design: each kind given by one change to a piece that is well, and silent without it."""

from __future__ import annotations

from dataclasses import replace

from sitegen.measure.design import design
from sitegen.model.codes import CODES
from sitegen.model.problem import Severity
from sitegen.model.shop import Shop
from sitegen.model.source import Colour, OwnBead, Pattern
from tests.measure.pieces import made, pattern, triangle

FAN = triangle(7, 4)
STRANDS = ("AAAAAB",) * 7


def advice(source: Pattern) -> dict[str, dict[str, object]]:
    """Code -> what fills its sentences."""
    piece = made(source)
    problems = design(piece.path, source, Shop(), piece.measures)
    for problem in problems:
        code = CODES[problem.code]
        assert code.severity is Severity.ADVICE
        assert "{" not in code.message.format_map(problem.values) + code.remedy.format_map(problem.values)
    return {problem.code: dict(problem.values) for problem in problems}


def beaded(source: Pattern, letter: str, bead: str) -> Pattern:
    """One letter in another bead."""
    colours = [replace(one, bead=bead) if one.letter == letter else one for one in source.colours]
    return replace(source, colours=tuple(colours))


def test_a_sound_piece_is_left_alone() -> None:
    assert advice(pattern(*FAN, strands=STRANDS)) == {}


def test_a_heavy_earring() -> None:
    heavy = beaded(pattern(*FAN, strands=("A" * 20 + "B",) * 7), "A", "round 6/0")
    heavy = replace(beaded(heavy, "B", "round 6/0"), thread="nylon 0.30 mm")
    values = advice(heavy)["design-ear-weight"]
    assert float(str(values["grams"])) > float(str(values["most"])) == 8
    assert "design-ear-weight" not in advice(replace(heavy, finding=None, parts=_unhung(heavy)))


def _unhung(source: Pattern):
    return tuple(replace(part, hang=None) if part.stitch == "brick" else part for part in source.parts)


def test_a_strand_that_tangles() -> None:
    body = 7 * 2.1
    fits = int(4 * body / 1.5)
    assert advice(pattern(*FAN, strands=("A" * fits,) * 7)) == {}
    values = advice(pattern(*FAN, strands=("AAAA",) * 6 + ("A" * (fits + 1),)))["design-strand-tangles"]
    assert values["times"] == "4.1"
    assert values["length"] == "6"


def test_tight_holes_name_the_first_bead_the_count_and_the_remedy() -> None:
    tight = replace(pattern(*FAN), thread="nylon 0.30 mm")
    found = advice(tight)
    ((code, values),) = [(code, values) for code, values in found.items() if code.startswith("design-holes")]
    piece = made(tight)
    first = piece.measures.passes.tight[0]
    assert code == f"design-{piece.measures.passes.remedy.key}"  # type: ignore[union-attr]
    assert (values["passes"], values["allowed"], values["count"]) == (
        *(first.passes, first.allowed, len(piece.measures.passes.tight)),
    )
    bead = piece.path.beads[first.bead]
    assert (values["row"], values["place"], values["letter"]) == (f"row {bead.row}", bead.place, bead.letter)


def test_thread_beside_a_narrower_bead_lies_bare() -> None:
    lines = ("  A A A", " A B B A", "A B B B A")
    kinds = {
        name: OwnBead(name, "round", width, 1.5, 0.8, 110) for name, width in (("wide", 2.6), ("slim", 2.0))
    }
    colours = (Colour("A", "slim", "a", "#112233"), Colour("B", "wide", "b", "#aabbcc"))
    mixed = replace(pattern(*lines), colours=colours, bead_kinds=kinds)
    assert "design-bare-thread" in advice(mixed)
    even = replace(mixed, colours=(replace(colours[0], bead="wide"), colours[1]))
    assert "design-bare-thread" not in advice(even)


def test_thin_thread_in_wide_holes_is_loose() -> None:
    thin = replace(pattern(*FAN, bead="round 6/0"), thread="braided 0.10 mm")
    values = advice(thin)["design-loose-beads"]
    assert (values["kind"], values["thread"]) == ("round 6/0", "braided 0.1 mm")
    assert "design-loose-beads" not in advice(replace(thin, thread="nylon 0.30 mm"))
