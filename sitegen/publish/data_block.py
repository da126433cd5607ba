"""Values -> JSON for a script element of a page that holds data."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from markupsafe import Markup


def as_data(values: Mapping[str, Any]) -> Markup:
    """The values in few bytes; `<` is written as its number, so that nothing in them can end the element."""
    return Markup(json.dumps(values, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c"))
