"""A large pattern in print: small enough to be sent by mail, and without a fault."""

from __future__ import annotations

from pathlib import Path

import page as validation
import pytest

from benchmarks.drawings import MANY_STEPS, large_piece
from sitegen.publish.compose import print_view
from sitegen.publish.printing import print_job, print_sheets

MOST_BYTES = 2_000_000
BEADS, STEPS = 3000, 400


@pytest.mark.slow
def test_3000_beads_in_400_steps_stay_below_2_mb(tmp_path: Path) -> None:
    piece, look = large_piece(*MANY_STEPS)
    assert len(piece.path.beads) >= BEADS
    assert sum(len(section.rows) for section in piece.table) >= STEPS
    for paper, data in print_sheets(print_job(print_view(piece), look.words, look.theme)).files:
        assert len(data) < MOST_BYTES
        file = tmp_path / f"{paper}.pdf"
        file.write_bytes(data)
        assert all(validation.validate_pdf(file, profile=profile).is_compliant for profile in ("ua1", "2a"))
