"""Pattern -> problems: every part has what its stitch needs, and nothing it cannot use."""

from __future__ import annotations

from sitegen.check.spots import place
from sitegen.check.stitch import StitchShape, shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern


def part_needs(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Charts, strands and what strands hang from."""
    del shop
    return [problem for part in pattern.parts for problem in _needs(pattern, part)]


def _needs(pattern: Pattern, part: Part) -> list[Problem]:
    form = shape(part)
    if form is None:
        return []
    values = {"name": part.name, "stitch": part.stitch}
    here = place(pattern, part.at, "name")
    problems: list[Problem] = []
    worded = bool(part.at.keys() & {"rows", "rounds", "rope"})
    if form.charted and part.chart is None and not worded:
        problems.append(Problem("chart-needed", here, values))
    if not form.charted and part.chart is not None and not part.at.keys() & {"rounds", "rope"}:
        problems.append(Problem("chart-needless", part.chart.where, values))
    strands = bool(part.strands) or "strands" in part.at
    if form is StitchShape.STRANDS:
        if not strands:
            problems.append(Problem("strands-needed", here, values))
        if "hang" not in part.at and part.hang is None:
            problems.append(Problem("hang-needed", here, values))
        elif part.hang is not None and part.hang.part is None:
            problems.append(Problem("hang-needed", place(pattern, part.at, "hang"), values))
    elif form in (StitchShape.STRING, StitchShape.OVER):
        problems += _along(pattern, part, form, strands=strands)
    elif strands:
        problems.append(Problem("strands-needless", place(pattern, part.at, "strands"), values))
    if part.mirror and part.rule is not None:
        problems.append(Problem("mirror-rule", place(pattern, part.at, "mirror"), values))
    if part.mirror and not strands and form is not StitchShape.STRANDS:
        problems.append(Problem("mirror-needless", place(pattern, part.at, "mirror"), values))
    return problems


def _along(pattern: Pattern, part: Part, form: StitchShape, *, strands: bool) -> list[Problem]:
    """What a string and beads sewn on top ask for."""
    values = {"name": part.name, "stitch": part.stitch}
    here = place(pattern, part.at, "name")
    problems: list[Problem] = []
    if not strands:
        problems.append(Problem("strands-needed", here, values))
    if part.rule is not None:
        problems.append(Problem("rule-needless", place(pattern, part.at, "strands"), values))
    if form is StitchShape.OVER and "over" not in part.at and part.over is None:
        problems.append(Problem("over-needed", here, values))
    if form is StitchShape.STRING and "clasp" not in part.at and part.clasp is None:
        problems.append(Problem("clasp-needed", here, values))
    return problems
