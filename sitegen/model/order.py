"""An order: whom a personal copy of which printed pattern is for."""

from __future__ import annotations

from dataclasses import dataclass, field

from sitegen.model.location import Places


@dataclass(frozen=True, slots=True)
class Order:
    """Copies of one pattern or bundle for one person; an empty choice takes all there are."""

    pattern: str
    """Its name, as its file is called."""
    name: str
    """A name or an order number, as it stands on the copy."""
    paper: str = ""
    edition: str = ""
    language: str = ""
    at: Places = field(default_factory=dict, compare=False, repr=False)
    """Column -> its place."""
