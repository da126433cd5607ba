"""Pattern -> ThreadPath: each part worked in its stitch, then the whole replayed by the virtual needle."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from sitegen.model.location import NOWHERE
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.model.thread import ThreadPath
from sitegen.weave.brick import brick_part
from sitegen.weave.fringe import fringe_part
from sitegen.weave.ladder import ladder_part
from sitegen.weave.needle import replay
from sitegen.weave.work import Work


def _nothing(work: Work, part: Part) -> None:
    """A part that is not woven, such as a clasp."""


STITCHES: Mapping[str, Callable[[Work, Part], None]] = {
    "ladder": ladder_part,
    "brick": brick_part,
    "fringe": fringe_part,
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
