"""The shop file, read: who sells, in which money, with which habits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from sitegen.model.location import Places
from sitegen.model.source import OwnBead


@dataclass(frozen=True, slots=True)
class StockBead:
    """A bead the shop defines once for all its patterns."""

    key: str
    bead: str
    name: str
    hex: str
    finish: str = "opaque"
    pack_grams: float | None = None
    """Grams in the pack as sold; None takes the shop's usual pack."""
    price: Decimal | None = None
    """Of one pack, in the shop's currency."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Shop:
    """What all patterns of a shop share."""

    title: str = "Unnamed shop"
    tagline: str = ""
    maker: str = ""
    """Whose name stands on the patterns."""
    contact: str = ""
    """Where buyers reach the maker, in words."""
    language: str = "en"
    currency: str = "EUR"
    """ISO 4217 code."""
    address: str = ""
    """Where the site will live, such as `https://example.org/`; may be empty."""
    licence: str = ""
    """What a buyer may do with the pattern and with pieces made from it."""
    about: str = ""
    """A paragraph for the front page's foot."""
    theme: str = "linen"
    needle: str = "beading 12"
    thread: str = "nylon 0.25 mm"
    working_length_mm: float = 1600.0
    """The longest thread a maker is asked to handle at once."""
    tail_mm: float = 150.0
    """Left over at each end of every length."""
    slack: float = 1.2
    """Thread used over thread computed, for hands that are not machines."""
    pack_grams: float = 5.0
    """The usual pack; grams to buy round up to whole packs."""
    spare: float = 0.10
    """Share of beads bought on top of the count."""
    finding_passes: int = 3
    """Times the thread goes through a finding's loop."""
    loom_allowance_mm: float = 600.0
    """How much longer a warp is cut than the loom strip: to tie on, and to finish."""
    stock: Mapping[str, StockBead] = field(default_factory=dict)
    bead_kinds: Mapping[str, OwnBead] = field(default_factory=dict)
    """Bead kinds that the shop has measured itself, by name."""
    at: Places = field(default_factory=dict, compare=False, repr=False)
