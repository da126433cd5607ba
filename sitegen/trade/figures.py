"""A YAML table of the trade -> figures, each with the source it came from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

import yaml


@dataclass(frozen=True, slots=True)
class Figure:
    """One number of the trade."""

    value: float
    """What this program reckons with."""
    source: str
    """Where it comes from; `[key mark]` names an entry of `sources.yaml`."""
    low: float
    """The lowest figure met; the value itself where the sources agree."""
    high: float
    """The highest figure met."""


def figure(entry: Mapping[str, Any]) -> Figure:
    """The figure written as `{value, source, low?, high?}`; KeyError when value or source is missing."""
    value = float(entry["value"])
    return Figure(
        value=value,
        source=str(entry["source"]),
        low=float(entry.get("low", value)),
        high=float(entry.get("high", value)),
    )


@cache
def table(name: str) -> Mapping[str, Any]:
    """The data file `NAME.yaml` beside this module, read once."""
    text = files(__package__).joinpath(f"{name}.yaml").read_text(encoding="utf-8")
    content: Mapping[str, Any] = yaml.load(text, Loader=yaml.CSafeLoader)
    return content


def tidy(name: str) -> str:
    """Trade words as the tables spell them: lower case, single blanks."""
    return " ".join(name.split()).casefold()
