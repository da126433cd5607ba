"""Pattern and shop -> problems: every check there is, in order."""

from __future__ import annotations

from collections.abc import Callable

from sitegen.check.across_rows import across_rows
from sitegen.check.bead_kinds import bead_kinds
from sitegen.check.bead_limit import bead_limit
from sitegen.check.begin import begin
from sitegen.check.chart_shape import chart_shape
from sitegen.check.colours_apart import colours_apart
from sitegen.check.colourways import colourways
from sitegen.check.edge_taken import edge_taken
from sitegen.check.finding_hung import finding_hung
from sitegen.check.findings import findings
from sitegen.check.finishes import finishes
from sitegen.check.gauge import gauge
from sitegen.check.hang import hang
from sitegen.check.hung_forms import hung_forms
from sitegen.check.letters_defined import letters_defined
from sitegen.check.letters_used import letters_used
from sitegen.check.lone_beads import lone_beads
from sitegen.check.mirror_bead import mirror_bead
from sitegen.check.needle_and_thread import needle_and_thread
from sitegen.check.no_beads import no_beads
from sitegen.check.openwork import openwork
from sitegen.check.over import over
from sitegen.check.own_beads import own_beads
from sitegen.check.own_keys import own_keys
from sitegen.check.part_names import part_names
from sitegen.check.part_needs import part_needs
from sitegen.check.peyote import peyote
from sitegen.check.photos import photos
from sitegen.check.repeats import repeats
from sitegen.check.revisions import revisions
from sitegen.check.rounds import rounds
from sitegen.check.stitch import stitch
from sitegen.check.strand_count import strand_count
from sitegen.check.strand_length import strand_length
from sitegen.check.strung import strung
from sitegen.check.turn_beads import turn_beads
from sitegen.check.uneven_beads import uneven_beads
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern

Check = Callable[[Pattern, Shop], list[Problem]]

CHECKS: tuple[Check, ...] = (
    own_beads,
    bead_kinds,
    finishes,
    needle_and_thread,
    findings,
    finding_hung,
    revisions,
    colourways,
    colours_apart,
    photos,
    part_names,
    stitch,
    no_beads,
    gauge,
    part_needs,
    letters_defined,
    letters_used,
    chart_shape,
    openwork,
    across_rows,
    rounds,
    peyote,
    repeats,
    lone_beads,
    begin,
    hang,
    edge_taken,
    strand_count,
    strand_length,
    uneven_beads,
    hung_forms,
    strung,
    over,
    own_keys,
    turn_beads,
    mirror_bead,
    bead_limit,
)
"""One check a file; each takes a pattern and the shop and returns what it found."""


def check_pattern(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Run every check. A pattern that was read with problems may be checked as well: the checks are silent
    about values that could not be read."""
    return [problem for check in CHECKS for problem in check(pattern, shop)]
