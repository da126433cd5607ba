"""Pattern -> problems: keys that only some stitches understand stand in parts of those stitches."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.check.spots import place
from sitegen.check.stitch import shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern

KEYS: Mapping[str, tuple[str, ...]] = {
    "base": ("herringbone",),
    "drop": ("peyote", "square"),
    "edge_warps": ("loom",),
    "loom_allowance": ("loom",),
    "net": ("netting",),
    "span": ("looped fringe", "swags"),
    "twist": ("twisted fringe",),
    "over": ("ditch",),
    "clasp": ("strung",),
    "ends": ("strung",),
}
"""Key -> the stitches it is for."""


def own_keys(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Every such key in a part of another stitch."""
    del shop
    return [
        Problem(
            "key-needless",
            place(pattern, part.at, key),
            {"stitch": part.stitch, "key": key, "use": " and ".join(f"`{name}`" for name in stitches)},
        )
        for part in pattern.parts
        if shape(part) is not None
        for key, stitches in KEYS.items()
        if key in part.at and part.stitch not in stitches
    ]
