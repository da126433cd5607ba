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
    SQUARES = "squares"
    """A chart of squares whose sides are beads; shared sides stand once."""
    NET = "net"
    """A drawn net: a letter for each bead, the legs aslant."""
    STRANDS = "strands"
    """Word charts, one a strand."""
    STRING = "string"
    """One word chart from clasp to clasp."""
    OVER = "over"
    """Word charts, one for each row whose gaps get beads."""
    ROUNDS = "rounds"
    """Word charts, one a round from the middle outward."""
    ROPE = "rope"
    """The core and the outer beads of a rope in words."""
    NONE = "none"
    """Nothing: the part is not stitched."""

    @property
    def charted(self) -> bool:
        """Whether the stitch has a chart."""
        return self in (
            StitchShape.STAGGERED,
            StitchShape.RECTANGULAR,
            StitchShape.SQUARES,
            StitchShape.NET,
        )


STITCHES: Mapping[str, StitchShape] = MappingProxyType(
    {
        "ladder": StitchShape.RECTANGULAR,
        "brick": StitchShape.STAGGERED,
        "peyote": StitchShape.STAGGERED,
        "fringe": StitchShape.STRANDS,
        "branched fringe": StitchShape.STRANDS,
        "twisted fringe": StitchShape.STRANDS,
        "looped fringe": StitchShape.STRANDS,
        "swags": StitchShape.STRANDS,
        "picot edge": StitchShape.STRANDS,
        "whipped edge": StitchShape.STRANDS,
        "strung": StitchShape.STRING,
        "ditch": StitchShape.OVER,
        "square": StitchShape.RECTANGULAR,
        "loom": StitchShape.RECTANGULAR,
        "circular brick": StitchShape.ROUNDS,
        "circular peyote": StitchShape.ROUNDS,
        "tubular peyote": StitchShape.STAGGERED,
        "tubular brick": StitchShape.STAGGERED,
        "tubular herringbone": StitchShape.RECTANGULAR,
        "spiral rope": StitchShape.ROPE,
        "herringbone": StitchShape.RECTANGULAR,
        "right-angle weave": StitchShape.SQUARES,
        "netting": StitchShape.NET,
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
