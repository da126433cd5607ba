"""ThreadPath -> grams of beads in one piece, and for an earring how it wears."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from sitegen.measure.tools import findings_used, kind_of
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.trade.beads import NO_OWN, BeadSize
from sitegen.trade.rules import band, rules


def weight(path: ThreadPath, own: Mapping[str, BeadSize] = NO_OWN) -> float:
    """Beads only, g; `own` holds the author's bead kinds."""
    counts = Counter(bead.kind for bead in path.beads)
    return sum(count / kind_of(kind, own).per_gram for kind, count in counts.items())


def comfort(grams: float, path: ThreadPath, pattern: Pattern) -> str | None:
    """The comfort band of an earring of this weight; None for what no ear wears."""
    if not any(kind.worn == "ear" for kind in findings_used(path, pattern)):
        return None
    return band(rules().comfort, round(grams, 2))
