"""Tight beads + a run of steps -> the note beside the step where the first bead gets tight."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.model.measures import HoleFit
from sitegen.model.thread import Step
from sitegen.publish.words import Words


def tight_notes(steps: Sequence[Step], holes: HoleFit, words: Words) -> list[str]:
    """One note where these steps hold the first pass too many of the whole piece; else none."""
    if not holes.tight or holes.remedy is None:
        return []
    first = holes.tight[0]
    if not steps[0].number <= first.step <= steps[-1].number:
        return []
    return [words.text(f"note.tight-{holes.remedy.key}", spot=words.say(first.spot), **holes.remedy.values)]
