"""A bundle: several patterns in one file, with one shopping list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from sitegen.model.location import Places


@dataclass(frozen=True, slots=True)
class Bundle:
    """Patterns that are printed, and sold or given away, together."""

    name: str
    """Names its page and its files."""
    title: str
    summary: str
    patterns: tuple[str, ...]
    """Names of the patterns, in the order they are printed."""
    price: Decimal | None = None
    """In the shop's currency; None is free."""
    day: date | None = None
    """Since when there is this bundle, if its author says so."""
    buy: str = ""
    """Address where it is bought, `{name}` for its name; empty takes the shop's."""
    translations: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Language -> title and summary in it, by their names here; what is not there stays as it is."""
    at: Places = field(default_factory=dict, compare=False, repr=False)
    """Also `patterns=NAME` -> the place of each name in the list."""
