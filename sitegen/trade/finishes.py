"""A finish in trade words, `transparent AB` -> what light does on the bead, and in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from sitegen.trade.figures import table, tidy


@dataclass(frozen=True, slots=True)
class Finish:
    """How a bead meets the light."""

    glass: str = "opaque"
    """`opaque`, `cloudy`, `clear`, `metal`, or `lined`: clear glass with a coat inside its hole."""
    surface: str = "gloss"
    """`gloss`, `soft` or `matte`."""
    sheen: str = "plain"
    """`plain`, `lustre` or `rainbow`."""
    core: str = "own"
    """What coats the hole of lined glass: its `own` colour, `silver`, `gold` or `copper`."""


PLAIN = Finish()
"""Opaque and glossy: what is not said."""


def finish_kind(text: str) -> Finish | None:
    """The finish that the words describe together (case, commas and order do not matter), or None."""
    found = PLAIN
    for word in tidy(text).replace(" lined", "-lined").replace(",", " ").split():
        entry = _words().get(word)
        if entry is None:
            return None
        found = replace(found, **entry)
    return found


def finish_words() -> tuple[str, ...]:
    """The words for a finish, one for each, in the table's order."""
    return tuple(word for word, entry in table("finishes").items() if "as" not in entry)


@cache
def _words() -> Mapping[str, Mapping[str, str]]:
    """Every spelling, in lower case, and what it sets."""
    known = table("finishes")
    return {tidy(word): known[entry.get("as", word)] for word, entry in known.items()}
