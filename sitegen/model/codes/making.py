"""Codes of what keeps pages and printed sheets from being made -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

LOOK = {
    "letter-not-in-fonts": fault(
        "The theme's fonts have no `{letter}` ({code}): it could not be printed.",
        "Write it in words, or with another sign.",
    ),
    "theme-unknown": fault(
        "There is no theme called `{name}`.", "Use `linen`, or put your own into the shop's folder `themes`."
    ),
    "language-unknown": fault("The theme has no words in `{name}`.", "It has: {known}."),
}

OUTPUT = {
    "former-left": advice(
        "The output is new, but the former one could not be deleted whole: {reason}.",
        "Delete this folder yourself before the next build.",
    ),
}
