"""ThreadPath with the thread used after each step -> the running figures of the step table."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from sitegen.model.measures import StepMeasure
from sitegen.model.thread import ThreadPath


def running(path: ThreadPath, ends: Sequence[float]) -> tuple[StepMeasure, ...]:
    """Beads added, beads so far and thread so far, for each step."""
    so_far = accumulate(len(step.picks) for step in path.steps)
    return tuple(
        StepMeasure(step.number, len(step.picks), beads, used)
        for step, beads, used in zip(path.steps, so_far, ends, strict=True)
    )
