"""Pattern and shop -> problems: every check there is, in order."""

from __future__ import annotations

from collections.abc import Callable

from sitegen.check.bead_kinds import bead_kinds
from sitegen.check.bead_limit import bead_limit
from sitegen.check.begin import begin
from sitegen.check.chart_shape import chart_shape
from sitegen.check.colourways import colourways
from sitegen.check.findings import findings
from sitegen.check.hang import hang
from sitegen.check.letters_defined import letters_defined
from sitegen.check.letters_used import letters_used
from sitegen.check.lone_beads import lone_beads
from sitegen.check.needle_and_thread import needle_and_thread
from sitegen.check.part_names import part_names
from sitegen.check.part_needs import part_needs
from sitegen.check.repeats import repeats
from sitegen.check.revisions import revisions
from sitegen.check.stitch import stitch
from sitegen.check.strand_count import strand_count
from sitegen.check.strand_length import strand_length
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern

Check = Callable[[Pattern, Shop], list[Problem]]

CHECKS: tuple[Check, ...] = (
    bead_kinds,
    needle_and_thread,
    findings,
    revisions,
    colourways,
    part_names,
    stitch,
    part_needs,
    letters_defined,
    letters_used,
    chart_shape,
    repeats,
    lone_beads,
    begin,
    hang,
    strand_count,
    strand_length,
    bead_limit,
)
"""One check a file; each takes a pattern and the shop and returns what it found."""


def check_pattern(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Run every check. A pattern that was read with problems may be checked as well: the checks are silent
    about values that could not be read."""
    return [problem for check in CHECKS for problem in check(pattern, shop)]
