"""A pattern or bundle, a language and an edition -> what the PDF is called, but for its paper."""

from __future__ import annotations

from sitegen.model.shop import COLOUR


def print_name(name: str, language: str, edition: str) -> str:
    """`fern`, `fern-ink`, `fern-de`, `fern-de-ink`; `language` is empty for the first one of the shop."""
    return "-".join(filter(None, (name, language, "" if edition == COLOUR else edition)))
