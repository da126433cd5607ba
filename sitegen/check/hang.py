"""Pattern -> problems: what a part hangs from is there, and made before it."""

from __future__ import annotations

from sitegen.check.spots import half_read, place
from sitegen.check.stitch import shape
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Part, Pattern
from sitegen.read.faults import hint


def hang(pattern: Pattern, shop: Shop) -> list[Problem]:
    """Unknown parts, later parts, and parts without a row of beads."""
    del shop
    problems: list[Problem] = []
    for number, part in enumerate(pattern.parts):
        if part.hang is not None and part.hang.part is not None:
            where = place(pattern, part.hang.at, "part")
            found = _fault(pattern, number, part.hang.part)
            if found is not None:
                code, values = found
                problems.append(Problem(code, where, values))
    return problems


def _fault(pattern: Pattern, number: int, name: str) -> tuple[str, dict[str, object]] | None:
    earlier = [part.name for part in pattern.parts[:number]]
    if name in earlier:
        return ("hang-no-edge", {"name": name}) if _edgeless(pattern.parts[earlier.index(name)]) else None
    if pattern.part(name) is not None:
        return "hang-later", {"name": name}
    return "hang-unknown", {"name": name, "hint": hint(name, earlier)}


def _edgeless(part: Part) -> bool:
    form = shape(part)
    return form is not None and not form.charted and not half_read(part)
