"""Findings: each is drawn as itself, stands on its loop and reaches as high as the table says."""

from __future__ import annotations

import pytest

from sitegen.draw.finding import draw_finding
from sitegen.draw.metal import SHAPES, Spot, metal
from sitegen.draw.pens import Recorder, finish
from sitegen.model.thread import PlacedFinding
from sitegen.trade.findings import finding_kind, finding_names
from tests.draw.outlines import box


def drawn(name: str, mirrored: bool = False) -> str:
    recorder = Recorder()
    ring = 20.0 if name == "closed ring" else 0.0
    draw_finding(recorder, PlacedFinding(name, 0, 3.0, 4.0, "top", ring), (0.0, 0.0), mirrored)
    return finish(recorder, "", "", 0.0).svg("x")


def test_each_finding_looks_like_itself() -> None:
    looks = {name: drawn(name).replace(f'data-name="{name}"', "") for name in finding_names()}
    assert all("<path" in look for look in looks.values())
    assert len(set(looks.values())) == len(looks)


def test_only_findings_of_the_trade_have_a_shape() -> None:
    assert set(SHAPES) <= set(finding_names())


@pytest.mark.parametrize("name", [name for name in SHAPES if finding_kind(name).drop_mm])
@pytest.mark.parametrize("up", [-1.0, 1.0])
def test_a_finding_is_as_high_as_its_drop(name: str, up: float) -> None:
    kind = finding_kind(name)
    seen = metal(kind, Spot((3.0, 4.0), 1.0, up))
    boxes = [box(outline) for outline in (*seen.behind, *seen.plates, *seen.lights, *seen.wires)]
    high = max((4.0 - top) if up < 0 else (bottom - 4.0) for _, top, _, bottom in boxes)
    low = min((4.0 - bottom) if up < 0 else (top - 4.0) for _, top, _, bottom in boxes)
    assert high == pytest.approx(kind.drop_mm, abs=1.0)
    assert -1.0 <= low <= 0.0, "it holds the loop the thread goes through"


def test_the_hooks_of_a_pair_face_each_other() -> None:
    assert drawn("ear wire") != drawn("ear wire", mirrored=True)
