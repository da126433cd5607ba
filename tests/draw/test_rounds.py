"""Round work drawn: tubes unrolled without a cut at the seam, the finished tube from its front."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.draw.rolled import as_seen
from sitegen.draw.step import StepArtist
from sitegen.draw.unrolled import unroll
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece, rounds, staggered

TUBE = piece("stitch: tubular peyote", staggered(["ABCAB", "BBCAA", "ABCCB", "CABAB"]))
ROPE = piece("stitch: spiral rope\nrope: {core: 4A, outer: 1B 1C 1B, stitches: 20}")
RING = rounds("circular brick", ["20A", "24B"], "around: {ring: 12 mm}")


def test_a_strip_never_jumps_over_the_seam():
    path = path_of(TUBE)
    for step in path.steps:
        strip = unroll(
            path, [step], {move.bead for move in path.moves[step.first_move : step.past_move]}, set()
        )
        xs = [strip.beads[move.bead].x for move in strip.path.moves if move.bead >= 0]
        assert all(abs(one - other) < 2 * 1.5 + 1e-6 for one, other in pairwise(xs))


def test_a_strip_shows_the_first_bead_again_at_its_other_end():
    path = path_of(TUBE)
    ring = path.steps[0]
    strip = unroll(path, [ring], set(ring.picks), set())
    assert max(strip.beads) >= len(path.beads)
    whole = max(bead.x for bead in strip.beads.values()) - min(bead.x for bead in strip.beads.values())
    assert whole > path.parts[0].around_mm


def test_a_finished_tube_is_as_wide_as_it_is_thick():
    path = path_of(TUBE)
    seen = as_seen(path)
    assert len(seen.beads) < len(path.beads)
    radius = path.parts[0].around_mm / (2 * math.pi)
    assert all(abs(bead.x) <= radius for bead in seen.beads)


def test_outer_beads_of_a_rope_lie_on_both_sides():
    seen = as_seen(path_of(ROPE))
    assert len(seen.beads) == len(path_of(ROPE).beads)
    assert min(bead.x for bead in seen.beads) < -1
    assert max(bead.x for bead in seen.beads) > 1


def test_flat_work_is_seen_as_it_lies():
    path = path_of(RING)
    assert as_seen(path) is path


@pytest.mark.parametrize("pattern", [TUBE, ROPE, RING], ids=["tube", "rope", "ring"])
def test_everything_can_be_drawn(pattern):
    path = path_of(pattern)
    artist = StepArtist(path, pattern, SAY)
    drawings = [artist.draw(step.number, step.number, "x") for step in path.steps]
    drawings += [finished(path, pattern, SAY), chart(path, pattern, 0, SAY)]
    assert all(drawing.width_mm > 0 and math.isfinite(drawing.width_mm) for drawing in drawings)
    said = [drawing.svg("u", 1.0) for drawing in drawings]
    assert not any("nan" in svg or "inf" in svg.replace("infinite", "") for svg in said)


def test_a_rope_is_told_by_its_stitches():
    """Twenty stitches, though the rope winds round fewer times; alike from the second on: four are drawn."""
    drawing = chart(path_of(ROPE), ROPE, 0, SAY)
    assert "20 stitches" in drawing.description
    texts = [values[0].text for name, values in drawing.calls if name == "text"]
    assert texts == ["1", "(7)", "2", "(4)", "3", "(4)", "4–20", "(4)"]


def test_a_circle_has_a_scale_of_its_rounds():
    path = path_of(RING)
    drawing = chart(path, RING, 0, SAY)
    texts = [values[0] for name, values in drawing.calls if name == "text"]
    assert [text.text for text in texts] == ["1", "(20)", "2", "(24)"]
    for number, text in zip((1, 2), texts[::2], strict=True):
        rounds = [math.hypot(bead.x, bead.y) for bead in path.beads if bead.row == number]
        assert -text.y == pytest.approx(sum(rounds) / len(rounds))
