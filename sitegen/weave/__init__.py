"""Pattern -> ThreadPath: each part worked in its stitch, then the whole replayed by the virtual needle."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from sitegen.model.location import NOWHERE
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.model.thread import ThreadPath
from sitegen.weave.brick import brick_part
from sitegen.weave.circle import circular_brick_part, circular_peyote_part
from sitegen.weave.ditch import ditch_part
from sitegen.weave.edging import picot_part, whipped_part
from sitegen.weave.fringe import fringe_part
from sitegen.weave.herringbone import herringbone_part
from sitegen.weave.ladder import ladder_part
from sitegen.weave.loom import loom_part
from sitegen.weave.loops import loops_part
from sitegen.weave.needle import replay
from sitegen.weave.net import net_part
from sitegen.weave.peyote import peyote_part
from sitegen.weave.spiral_rope import spiral_rope_part
from sitegen.weave.square import square_part
from sitegen.weave.strung import strung_part
from sitegen.weave.tails import with_tails
from sitegen.weave.tube import tubular_brick_part, tubular_herringbone_part, tubular_peyote_part
from sitegen.weave.twisted import twisted_part
from sitegen.weave.unit import unit_part
from sitegen.weave.work import Work


def _nothing(work: Work, part: Part) -> None:
    """A part that is not woven, such as a clasp."""


STITCHES: Mapping[str, Callable[[Work, Part], None]] = {
    "ladder": ladder_part,
    "brick": brick_part,
    "fringe": fringe_part,
    "branched fringe": fringe_part,
    "twisted fringe": twisted_part,
    "looped fringe": loops_part,
    "swags": loops_part,
    "picot edge": picot_part,
    "whipped edge": whipped_part,
    "strung": strung_part,
    "ditch": ditch_part,
    "peyote": peyote_part,
    "square": square_part,
    "loom": loom_part,
    "circular brick": circular_brick_part,
    "circular peyote": circular_peyote_part,
    "tubular peyote": tubular_peyote_part,
    "tubular brick": tubular_brick_part,
    "tubular herringbone": tubular_herringbone_part,
    "spiral rope": spiral_rope_part,
    "herringbone": herringbone_part,
    "right-angle weave": unit_part,
    "netting": net_part,
    "none": _nothing,
}
"""Every stitch by its trade name. A stitch lays the part's beads, threads them and closes its steps."""


def weave(pattern: Pattern, shop: Shop) -> tuple[ThreadPath | None, list[Problem]]:
    """The thread path of one piece, with what went wrong; None where there is no whole path.

    Takes a pattern without faults in its check stage.
    """
    work = Work(pattern, shop)
    for part in pattern.parts:
        before = len(work.parts)
        if part.chart and before:
            values = {"part": part.name, "first": work.parts[0].name}
            return None, [Problem("weave-part-apart", part.at.get("name", NOWHERE), values)]
        STITCHES[part.stitch](work, part)
        if work.problems:
            return None, work.problems
    path = work.path()
    objections = replay(path, pattern)
    return (None if objections else path), objections


def weave_in_tails(
    path: ThreadPath, pattern: Pattern, changes: Sequence[int]
) -> tuple[ThreadPath | None, list[Problem]]:
    """The same piece with every end of thread woven in, proved anew; None where the needle objects.

    `changes` are the numbers of the steps after which a new thread begins.
    """
    finished = with_tails(path, pattern, changes)
    objections = replay(finished, pattern)
    return (None if objections else finished), objections
