"""A script as it is read -> the same script as it is sent: without remarks, blank lines and indents."""

from __future__ import annotations

import re

_REMARK = re.compile(r"^[ \t]*/\*(?:[^*]|\*(?!/))*\*/[ \t]*$", re.MULTILINE)
"""A remark that has its lines for itself."""
_QUOTES = "\"'`"


def lean_script(script: str) -> str:
    """The script, statement by statement on lines of its own as before.

    A script with a text that runs over several lines stays as it is: there, blanks and marks may be meant.
    """
    lines = [_bare(line) for line in _REMARK.sub("", script).splitlines()]
    if any(line.count("`") % 2 or line.endswith("\\") for line in lines):
        return script
    return "".join(f"{line}\n" for line in lines if line)


def _bare(line: str) -> str:
    """A line without its indent and the remark at its end."""
    code, _, _ = f" {line.strip()}".partition(" // ")
    within_quotes = any(code.count(quote) % 2 for quote in _QUOTES)
    return line.strip() if within_quotes else code.strip()
