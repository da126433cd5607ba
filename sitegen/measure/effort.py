"""ThreadPath -> the amounts that make a piece hard and slow, counted once for both."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from sitegen.measure.tools import findings_used
from sitegen.model.measures import HoleFit, ThreadUse
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import ThreadPath
from sitegen.trade.rules import rules

STRANDS = ("strand", "twist", "loop", "swag")
"""Motions that make one strand each."""


@dataclass(frozen=True, slots=True)
class Effort:
    """What one piece asks of its maker."""

    beads: int
    colours: int
    """Letters used."""
    colour_changes: int
    """Beads picked up right after one of another letter."""
    bead_width_mm: float
    """Mean diameter; 0 without beads."""
    stitches: tuple[str, ...]
    """The different stitches."""
    findings: int
    """Different kinds of finding."""
    findings_sewn: int
    """Findings sewn on."""
    increases: int
    """Increases and stitches beyond the edge."""
    increase_weight: float
    """The same, the harder ones counting more."""
    travels: int
    """Ways through finished work."""
    strands: int
    longest_strand: int
    """Beads; 0 without strands."""
    thread_changes: int
    """New threads after the first."""
    excess_passes: int
    """Passes more than the holes allow."""
    pieces: int
    mirrored: bool


def effort(path: ThreadPath, pattern: Pattern, thread: ThreadUse, holes: HoleFit) -> Effort:
    """The amounts, each found in the path alone; motions it does not know count only their beads."""
    weights = rules().motion_weights
    motions = [step.motion for step in path.steps]
    letters = [path.beads[bead].letter for step in path.steps for bead in step.picks]
    strands = [len(step.picks) for step in path.steps if step.motion in STRANDS]
    widths = [bead.width for bead in path.beads]
    return Effort(
        beads=len(path.beads),
        colours=len(set(letters)),
        colour_changes=sum(one != other for one, other in pairwise(letters)),
        bead_width_mm=sum(widths) / len(widths) if widths else 0.0,
        stitches=tuple(dict.fromkeys(part.stitch for part in path.parts)),
        findings=len(findings_used(path, pattern)),
        findings_sewn=len(path.findings),
        increases=sum(motion in weights for motion in motions),
        increase_weight=sum(weights.get(motion, 0.0) for motion in motions),
        travels=motions.count("travel"),
        strands=len(strands),
        longest_strand=max(strands, default=0),
        thread_changes=max(0, len(thread.lengths) - 1),
        excess_passes=sum(tight.passes - tight.allowed for tight in holes.tight),
        pieces=pattern.makes.pieces,
        mirrored=pattern.makes is Makes.MIRRORED_PAIR,
    )


def smallness(width_mm: float) -> float:
    """The amount of the factor `bead-size`: grows as beads shrink; 0 without beads."""
    return 1 / width_mm**2 if width_mm else 0.0
