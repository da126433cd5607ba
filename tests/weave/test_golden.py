"""The whole thread path of an example, move by move, as a text a person can follow with a needle."""

from __future__ import annotations

from pathlib import Path

from sitegen.check.stitch import STITCHES as KNOWN
from sitegen.model.shop import Shop
from sitegen.model.thread import Move, MoveKind, ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.weave import STITCHES, weave

GOLDENS = Path(__file__).parent / "goldens"


def name(path: ThreadPath, bead: int) -> str:
    """Such as `Fan 2.3D`: part, row, place from the left (or down the strand), letter."""
    this = path.beads[bead]
    return f"{path.parts[this.part].name} {this.row}.{this.place}{this.letter}"


def words(path: ThreadPath, move: Move) -> str:
    if move.kind is MoveKind.UNDER and move.bridge is not None:
        left, right = name(path, move.bridge.left), name(path, move.bridge.right)
        return f"under {left} - {right} {move.bridge.end.name.lower()}"
    if move.kind is MoveKind.LOOP:
        return f"loop of {path.findings[move.finding].kind}"
    return f"{move.kind.value} {name(path, move.bead)} in at {move.enter.name.lower()}"


def as_text(path: ThreadPath) -> str:
    lines = []
    for step in path.steps:
        said = "; ".join(f"{phrase.key} {dict(phrase.values) or ''}".strip() for phrase in step.phrases)
        marks = ("  (turned)" if step.turned else "") + ("  (rest)" if step.rest else "")
        lines.append(
            f"{step.number}. {path.parts[step.part].name}, row {step.row}, {step.motion}{marks}: {said}"
        )
        lines += [f"     {words(path, move)}" for move in path.moves[step.first_move : step.past_move]]
    return "\n".join(lines) + "\n"


def test_every_stitch_that_check_knows_can_be_woven():
    assert set(STITCHES) == set(KNOWN)


def test_kelp_lantern(examples, golden):
    pattern, _ = read_pattern((examples / "kelp-lantern.md").read_text(), "kelp-lantern.md", Shop())
    assert pattern is not None
    path, _ = weave(pattern, Shop())
    assert path is not None
    golden(GOLDENS / "kelp-lantern.txt", as_text(path))
