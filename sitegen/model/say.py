"""A message key and its values -> words: what a stage that knows no language is given."""

from __future__ import annotations

from typing import Protocol


class Say(Protocol):
    """Looks up a message of the reader's language and fills it in."""

    def __call__(self, key: str, /, **values: object) -> str:
        """The words. KeyError if the language lacks the message or a value is missing."""
