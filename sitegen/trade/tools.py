"""What a piece is made of -> the names of the tools that lie ready for it."""

from __future__ import annotations

from sitegen.trade.cautions import Uses, told_with
from sitegen.trade.figures import table


def tools_for(uses: Uses) -> tuple[str, ...]:
    """The tools of a piece beside needle and thread, in the table's order."""
    return told_with(table("tools")["tools"], uses)
