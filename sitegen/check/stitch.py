"""Pattern -> problems: every stitch is known; and what each stitch asks of a chart."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType

from sitegen.check.spots import place
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.read.faults import hint


class StitchShape(Enum):
    """What a stitch is charted by."""

    STAGGERED = "staggered"
    """A chart whose rows each stand half a bead beside the next; one text column is half a bead."""
    RECTANGULAR = "rectangular"
    """A chart whose beads lie in columns; all rows have the same number of places."""
    STRANDS = "strands"
    """Word charts, one a strand."""
    NONE = "none"
    """Nothing: the part is not stitched."""

    @property
    def charted(self) -> bool:
        """Whether the stitch has a chart."""
        return self in (StitchShape.STAGGERED, StitchShape.RECTANGULAR)


STITCHES: Mapping[str, StitchShape] = MappingProxyType(
    {
        "ladder": StitchShape.RECTANGULAR,
        "brick": StitchShape.STAGGERED,
        "fringe": StitchShape.STRANDS,
        "none": StitchShape.NONE,
    }
)
"""Every stitch there is."""


def shape(part: Part) -> StitchShape | None:
    """What the part's stitch is charted by; None for an unknown stitch."""
    return STITCHES.get(part.stitch)


def stitch(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Parts in a stitch that is not in the table."""
    del shop
    return [
        Problem(
            "stitch-unknown",
            place(pattern, part.at, "stitch"),
            {"name": part.stitch, "hint": hint(part.stitch, STITCHES)},
        )
        for part in pattern.parts
        if part.stitch and shape(part) is None
    ]
