"""A drawing -> the same drawing in outlines and letters alone, to save ink."""

from __future__ import annotations

from dataclasses import replace

from sitegen.draw.colour import INK_SAVER
from sitegen.draw.pens import Drawing, Paint


def spared(drawing: Drawing) -> Drawing:
    """The drawing without fills, and without what is only light or shade: paint that lets others through."""
    calls = tuple(call for call in drawing.calls if not _is_veil(call))
    return replace(drawing, calls=calls, palette=INK_SAVER)


def _is_veil(call: tuple[str, tuple[object, ...]]) -> bool:
    paint = call[1][1] if call[0] == "shapes" else None
    return isinstance(paint, Paint) and (paint.opacity < 1 or paint.veil < 1)
