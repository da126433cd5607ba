"""Problem code -> how much it matters, what is wrong and what to do: the one table of all messages.

`{braces}` are filled from `Problem.values`. Codes are stable: scripts and tests may rely on them.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from sitegen.model.codes import (
    bundles,
    checking,
    design,
    hung,
    languages,
    making,
    openwork,
    orders,
    photos,
    reading,
    rounds,
    weaving,
)
from sitegen.model.codes.code import Code

CODES: Mapping[str, Code] = MappingProxyType(
    {
        **reading.FILES,
        **reading.YAML,
        **reading.VALUES,
        **reading.WORDS,
        **reading.CHARTS,
        **reading.BODY,
        **reading.PAGES,
        **photos.PHOTOS,
        **languages.LANGUAGES,
        **checking.CHECKS,
        **design.BEADS,
        **design.DESIGN,
        **hung.HUNG,
        **openwork.OPEN,
        **rounds.ROUNDS,
        **weaving.WEAVE,
        **weaving.PATH,
        **making.LOOK,
        **making.OUTPUT,
        **bundles.BUNDLES,
        **orders.ORDERS,
    }
)
"""Every code there is."""
