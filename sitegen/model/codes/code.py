"""The sentences of one kind of problem -> its entry in the table of messages."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.model.problem import Severity


@dataclass(frozen=True, slots=True)
class Code:
    """One kind of problem."""

    severity: Severity
    message: str
    """What is wrong."""
    remedy: str
    """What to do about it."""


def fault(message: str, remedy: str) -> Code:
    """What keeps a pattern from being published."""
    return Code(Severity.FAULT, message, remedy)


def advice(message: str, remedy: str) -> Code:
    """What is worth a look."""
    return Code(Severity.ADVICE, message, remedy)
