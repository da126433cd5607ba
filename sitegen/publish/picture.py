"""A drawing -> a PNG: for the front page, and for a sales page, where a drawing would tell every bead."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from PIL import Image, ImageDraw

from sitegen.draw.pens import Drawing, Outline, Paint, Text

ROOM = (720, 900)
"""Largest width and height, pixels."""
FINER = 3
"""Drawn this many times larger and then made smaller, so that edges are smooth."""
CURVE_PARTS = 6
"""Straight pieces a curve is drawn with."""

Pixel = tuple[float, float]


@dataclass(slots=True)
class PixelPen:
    """A pen that paints on pixels. Pictures of finished pieces have no letters, so it knows none."""

    left: float
    top: float
    scale: float
    """Pixels a millimetre."""
    size: tuple[int, int]
    image: Image.Image = field(init=False)

    def __post_init__(self) -> None:
        self.image = Image.new("RGBA", self.size, (0, 0, 0, 0))

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        """Groups leave no mark."""

    def end(self) -> None:
        """Groups leave no mark."""

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float, ink: str) -> None:
        """There are none in a picture."""

    def text(self, label: Text) -> None:
        """There is none in a picture."""

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        """Fill all contours, then draw their edges."""
        lines = [list(self._line(outline)) for outline in outlines]
        width = round(paint.width * self.scale)
        box = self._box(lines, width)
        if box is None:
            return
        moved = [[(x - box[0], y - box[1]) for x, y in line] for line in lines]
        if paint.fill:
            mask = Image.new("L", (box[2] - box[0], box[3] - box[1]), 0)
            brush = ImageDraw.Draw(mask)
            for line in moved:
                brush.polygon(line, fill=255)
            self._lay(mask, paint.fill, paint.opacity, box)
        if paint.stroke and width:
            mask = Image.new("L", (box[2] - box[0], box[3] - box[1]), 0)
            brush = ImageDraw.Draw(mask)
            for line, outline in zip(moved, outlines, strict=True):
                whole = [*line, line[0], line[1]] if outline.closed else line
                brush.line(whole, fill=255, width=width, joint="curve")
                if not outline.closed:
                    self._round_ends(brush, line, width)
            self._lay(mask, paint.stroke, 1.0, box)

    def _round_ends(self, brush: ImageDraw.ImageDraw, line: Sequence[Pixel], width: int) -> None:
        for x, y in (line[0], line[-1]):
            brush.ellipse((x - width / 2, y - width / 2, x + width / 2, y + width / 2), fill=255)

    def _lay(self, mask: Image.Image, colour: str, opacity: float, box: tuple[int, int, int, int]) -> None:
        layer = Image.new("RGBA", mask.size, colour)
        layer.putalpha(mask.point([round(level * opacity) for level in range(256)]))
        self.image.alpha_composite(layer, box[:2])

    def _box(self, lines: Sequence[Sequence[Pixel]], width: int) -> tuple[int, int, int, int] | None:
        """The pixels that the contours touch, or None where they touch none."""
        xs = [x for line in lines for x, _ in line]
        ys = [y for line in lines for _, y in line]
        left, top = max(0, int(min(xs)) - width - 1), max(0, int(min(ys)) - width - 1)
        right = min(self.size[0], int(max(xs)) + width + 2)
        foot = min(self.size[1], int(max(ys)) + width + 2)
        return (left, top, right, foot) if right > left and foot > top else None

    def _line(self, outline: Outline) -> Iterator[Pixel]:
        """The contour as corners, in pixels."""
        here = outline.start
        yield self._pixel(here)
        for segment in outline.segments:
            if len(segment) == 2:
                here = (segment[0], segment[1])
                yield self._pixel(here)
                continue
            ends = (here, (segment[0], segment[1]), (segment[2], segment[3]), (segment[4], segment[5]))
            for part in range(1, CURVE_PARTS + 1):
                yield self._pixel(_bezier(ends, part / CURVE_PARTS))
            here = ends[3]

    def _pixel(self, point: Pixel) -> Pixel:
        return (point[0] - self.left) * self.scale, (point[1] - self.top) * self.scale


def _bezier(ends: tuple[Pixel, Pixel, Pixel, Pixel], at: float) -> Pixel:
    """The point of a cubic curve, `at` from 0 to 1."""
    back = 1 - at
    shares = (back**3, 3 * back * back * at, 3 * back * at * at, at**3)
    pairs = list(zip(shares, ends, strict=True))
    return sum(share * end[0] for share, end in pairs), sum(share * end[1] for share, end in pairs)


def png(drawing: Drawing, room: tuple[int, int] = ROOM) -> tuple[bytes, tuple[int, int]]:
    """The drawing as large as the room allows, on a clear ground; the PNG and its size in pixels."""
    scale = min(room[0] / drawing.width_mm, room[1] / drawing.height_mm)
    size = max(1, round(drawing.width_mm * scale)), max(1, round(drawing.height_mm * scale))
    pen = PixelPen(drawing.left, drawing.top, scale * FINER, (size[0] * FINER, size[1] * FINER))
    drawing.play(pen)
    out = io.BytesIO()
    pen.image.reduce(FINER).save(out, "PNG", optimize=True)
    return out.getvalue(), size
