"""Pattern and shop -> the needle and thread in the maker's hand, and the kinds of bead and finding met."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.model.thread import ThreadPath
from sitegen.trade.beads import NO_OWN, BeadSize, bead_kind
from sitegen.trade.findings import FindingKind, finding_kind
from sitegen.trade.needles import Needle, needle
from sitegen.trade.threads import Thread, parse_thread


@dataclass(frozen=True, slots=True)
class Tools:
    """What the piece is sewn with."""

    needle: Needle
    thread: Thread


def tools(pattern: Pattern, shop: Shop) -> Tools:
    """The pattern's needle and thread, or else the shop's; LookupError for words the check stage refuses."""
    needle_words = pattern.needle or shop.needle
    thread_words = pattern.thread or shop.thread
    found_needle, found_thread = needle(needle_words), parse_thread(thread_words)
    if found_needle is None:
        raise LookupError(f"no needle is called {needle_words!r}")
    if found_thread is None:
        raise LookupError(f"no thread is called {thread_words!r}")
    return Tools(found_needle, found_thread)


def kind_of(bead: str, own: Mapping[str, BeadSize] = NO_OWN) -> BeadSize:
    """The bead kind of this name, `own` before the tables; LookupError for one the check stage refuses."""
    kind = bead_kind(bead, own)
    if kind is None:
        raise LookupError(f"no bead is called {bead!r}")
    return kind


def findings_used(path: ThreadPath, pattern: Pattern) -> tuple[FindingKind, ...]:
    """The kinds of finding on the piece, sewn on or named by the pattern, each once."""
    names = [placed.kind for placed in path.findings]
    names += [part.finding.kind for part in pattern.parts if part.finding]
    if pattern.finding:
        names.append(pattern.finding)
    kinds = (finding_kind(name) for name in names)
    return tuple(dict.fromkeys(kind for kind in kinds if kind))
