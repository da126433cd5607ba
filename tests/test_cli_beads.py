"""`sitegen measure --bead`: the whole piece in other beads, as text and as JSON, and what it refuses."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from sitegen import cli

KELP = str(Path(__file__).parent / "examples" / "kelp-lantern.md")


def measured(capsys: pytest.CaptureFixture[str], *words: str):
    assert cli.main(["measure", KELP, "--json", *words]) == cli.DONE
    return json.loads(capsys.readouterr().out)


def test_size_grams_and_thread_follow_the_bead(capsys: pytest.CaptureFixture[str]) -> None:
    before = measured(capsys)
    after = measured(capsys, "--bead", "round 11/0=cylinder 11/0")
    assert after["bead_swap"] == {"round 11/0": "cylinder 11/0"}
    assert {line["bead"] for line in after["beads"]} == {"cylinder 11/0"}
    assert after["bead_count"] == before["bead_count"]
    # The widest row has 11 beads; cylinders are 1.6 mm across.
    assert after["parts"][0]["width_mm"] == pytest.approx(11 * 1.6)
    assert after["weight_g"] == pytest.approx(before["weight_g"] * 110 / 200, abs=0.01)
    assert after["thread"]["path_mm"] < before["thread"]["path_mm"]
    assert "bead_swap" not in before


def test_the_text_says_what_was_swapped(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["measure", KELP, "--bead", "round 11/0=round 8/0"]) == cli.DONE
    out = capsys.readouterr().out
    assert out.startswith("With round 8/0 in place of round 11/0")
    assert "  round 8/0  3 (2.5 to 3.2)" in out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("round 11/0", "is no swap"),
        ("round 15/0=round 11/0", "it has round 11/0"),
        ("round 11/0=pebble", "known are round 15/0"),
    ],
)
def test_wrong_words_are_wrong_use(words: str, said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["measure", KELP, "--bead", words]) == cli.WRONG_USE
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
