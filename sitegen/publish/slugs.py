"""Names that people give -> names of files: small letters, figures and hyphens, no two alike."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence


def slugs(names: Sequence[str], otherwise: str) -> tuple[str, ...]:
    """A slug for each name, in order; the same names always give the same slugs.

    A name without Latin letters or figures is called `otherwise`; what would stand twice gets a number.
    """
    made: list[str] = []
    for name in names:
        plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
        slug = re.sub("[^a-z0-9]+", "-", plain.replace("'", "")).strip("-") or otherwise
        tries = (slug if number == 1 else f"{slug}-{number}" for number in range(1, len(names) + 1))
        made.append(next(one for one in tries if one not in made))
    return tuple(made)
