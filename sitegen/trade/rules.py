"""The rules of thumb of `rules.yaml` -> named constants, loaded once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from math import inf
from typing import Any

from sitegen.trade.figures import figure, table


@dataclass(frozen=True, slots=True)
class Band:
    """One of several names along a scale."""

    name: str
    up_to: float
    """The highest value of the band, itself included; infinite for the last."""
    source: str


@dataclass(frozen=True, slots=True)
class Factor:
    """How an amount turns into points of difficulty."""

    most: float
    """Points it nears but never reaches."""
    half: float
    """The amount that earns half of them."""
    source: str

    def share(self, amount: float) -> float:
        """0 for nothing, 0.5 for `half`, nearing 1; always more for more."""
        return amount / (amount + self.half)


@dataclass(frozen=True, slots=True)
class Pace:
    """The same figure for two makers."""

    practised: float
    novice: float


@dataclass(frozen=True, slots=True)
class Rules:
    """All rules of thumb."""

    spare: float
    """Share of beads bought on top of the count."""
    slack: float
    """Thread used over thread computed."""
    tail_mm: float
    working_length_mm: float
    loom_allowance_mm: float
    """How much longer a warp is cut than the loom strip."""
    packing_share: float
    """Share of a hole's section that threads and needle may take."""
    colours_apart: Mapping[str, float]
    """Kind of colour vision -> the least CIEDE2000 between two colours."""
    advice: Mapping[str, float]
    """Limits beyond which a design is remarked upon."""
    comfort: tuple[Band, ...]
    """Weight of one earring, g."""
    levels: tuple[Band, ...]
    """Difficulty, 0 to 100."""
    difficulty: Mapping[str, Factor]
    mirrored_piece: float
    """What a mirrored second piece counts as."""
    lay: Mapping[str, float]
    """How the beads of herringbone and openwork lie, where no gauge is published."""
    stitch_weights: Mapping[str, float]
    motion_weights: Mapping[str, float]
    beads_per_hour: Pace
    allowances: Mapping[str, Pace]
    """Minutes added each time."""
    small_beads: float
    """How much the time of a bead follows its size."""
    usual_width_mm: float
    """The bead whose time is neither lengthened nor shortened."""


def band(bands: Sequence[Band], value: float) -> str:
    """The name of the band a value falls in."""
    return next(entry.name for entry in bands if value <= entry.up_to)


def _bands(entries: Sequence[Mapping[str, Any]]) -> tuple[Band, ...]:
    return tuple(Band(entry["name"], float(entry.get("up_to", inf)), entry["source"]) for entry in entries)


def _pace(entry: Mapping[str, Any]) -> Pace:
    return Pace(figure(entry["practised"]).value, figure(entry["novice"]).value)


def _values(entries: Mapping[str, Any]) -> dict[str, float]:
    return {name: figure(entry).value for name, entry in entries.items()}


@cache
def rules() -> Rules:
    """The rules of thumb."""
    content = table("rules")
    pace = content["pace"]
    return Rules(
        **_values(content["habits"]),
        colours_apart=_values(content["colours_apart"]),
        advice=_values(content["advice"]),
        comfort=_bands(content["comfort"]),
        levels=_bands(content["levels"]),
        difficulty={
            name: Factor(float(entry["most"]), float(entry["half"]), entry["source"])
            for name, entry in content["difficulty"].items()
        },
        mirrored_piece=figure(content["mirrored_piece"]).value,
        lay=_values(content["lay"]),
        stitch_weights=_values(content["stitch_weights"]),
        motion_weights=_values(content["motion_weights"]),
        beads_per_hour=_pace(pace["beads_per_hour"]),
        allowances={
            name: _pace(entry)
            for name, entry in pace.items()
            if name != "beads_per_hour" and "practised" in entry
        },
        small_beads=figure(pace["small_beads"]).value,
        usual_width_mm=figure(pace["usual_width_mm"]).value,
    )
