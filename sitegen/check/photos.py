"""Pattern -> problems: a photo described by its file's name, and one with too few pixels for print."""

from __future__ import annotations

import math
import re

from sitegen.model.numbers import MM_PER_INCH, plain
from sitegen.model.photo import PRINT_DPI
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern

_FILE_NAME = re.compile(r"\S+\.(jpe?g|png|webp|heic)|(img|dsc|dscn|pxl)[_-]?\d+", re.IGNORECASE)


def photos(pattern: Pattern, _shop: Shop) -> list[Problem]:
    """Every photo has words that say what is seen (WCAG 2.2, failure F30) and is large enough to print."""
    found: list[Problem] = []
    for photo in pattern.photos:
        if _FILE_NAME.fullmatch(photo.alt):
            found.append(Problem("photo-alt-name", photo.at.get("alt", photo.at[""]), {"alt": photo.alt}))
        if photo.width and photo.printed_mm < photo.widest_mm:
            values = {
                "file": photo.file,
                "width": photo.width,
                "printed": plain(photo.printed_mm, 0),
                "widest": plain(photo.widest_mm, 0),
                "wanted": math.ceil(photo.widest_mm / MM_PER_INCH * PRINT_DPI),
            }
            found.append(Problem("photo-coarse", photo.at.get("file", photo.at[""]), values))
    return found
