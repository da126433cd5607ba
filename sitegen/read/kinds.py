"""What a key of the header may hold, as plain records: the vocabulary of the tables in `fields`."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Text:
    """Words for people; line ends and runs of blanks become one blank."""

    most: int = 120
    """Characters."""


@dataclass(frozen=True, slots=True)
class Whole:
    """A whole number."""

    least: int
    most: int


@dataclass(frozen=True, slots=True)
class Decimals:
    """A number with or without decimals."""

    least: float
    most: float


@dataclass(frozen=True, slots=True)
class Length:
    """`43 mm`, `4.3 cm` or `1.6 m`; read as mm."""

    least: float = 0.1
    most: float = 10_000.0
    """Both in mm."""


@dataclass(frozen=True, slots=True)
class Mass:
    """`5 g`; read as g."""

    least: float = 0.1
    most: float = 10_000.0


@dataclass(frozen=True, slots=True)
class Percent:
    """`10 %`; read as a share, 0.1."""

    most: float
    """In percent."""


@dataclass(frozen=True, slots=True)
class Price:
    """`free`, or an amount with at most two decimals."""


@dataclass(frozen=True, slots=True)
class Day:
    """A date: year-month-day."""


@dataclass(frozen=True, slots=True)
class Hex:
    """`#rrggbb`; read in lower case."""


@dataclass(frozen=True, slots=True)
class Flag:
    """`true` or `false`."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One of some words."""

    options: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Form:
    """Text of one form."""

    pattern: str
    """Regular expression for the whole text, in the common subset of Python and JSON Schema."""
    wanted: str
    """The form in words, with an example."""


@dataclass(frozen=True, slots=True)
class WordChart:
    """Beads in order: `6D 2L 3(D A)`."""

    branched: bool = False
    """Whether side branches in square brackets may stand in it."""


Single = (
    Text | Whole | Decimals | Length | Mass | Percent | Price | Day | Hex | Flag | Choice | Form | WordChart
)
"""Kinds that are written as one value."""


@dataclass(frozen=True, slots=True)
class ListOf:
    """A list of one kind, with at least one entry."""

    item: Kind
    most: int
    once: bool = False
    """Whether no entry may be there twice."""


@dataclass(frozen=True, slots=True)
class Named:
    """The further keys of a record, chosen by the author: bead letters, or keys of the stock."""

    pattern: str
    """Regular expression for the whole key."""
    code: str
    """The problem of a key that is none."""
    kind: Record | Either
    doc: str


@dataclass(frozen=True, slots=True)
class Record:
    """Keys with their values."""

    fields: tuple[Field, ...]
    named: Named | None = None


@dataclass(frozen=True, slots=True)
class Either:
    """One of two records, told apart by whether a key is there."""

    key: str
    having: Record
    lacking: Record


@dataclass(frozen=True, slots=True)
class Strands:
    """A list of word charts, or one rule for all strands: `from 10D, each 2D longer to the centre`."""

    most: int


Kind = Single | ListOf | Strands | Record | Either


@dataclass(frozen=True, slots=True)
class Field:
    """One key."""

    name: str
    kind: Kind
    doc: str
    """One sentence for the author: shown by editors and in messages."""
    required: bool = False
