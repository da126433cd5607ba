"""A place in a source file -> `file:line:column` text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Location:
    """Where a value stands in its source. Lines and columns count from 1."""

    file: str
    """Path as the author would type it, relative to the shop where possible."""
    line: int
    """Line number, from 1."""
    column: int = 1
    """Column number in characters, from 1."""
    length: int = 1
    """How many characters the value takes on that line; the caret marks are as long."""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


NOWHERE = Location("", 0, 0, 0)
"""Stands in for a location in records made by a program, not read from a file."""

Places = Mapping[str, Location]
"""Field name -> where its value stands; the key "" is the record itself."""
