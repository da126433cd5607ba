"""Pen calls -> a record, a bounding box, or SVG text: one drawing, several pens.

Coordinates are millimetres of the finished piece, y downward. Colours are literal `#rrggbb`, so that a
browser and a PDF engine read the same file alike.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from html import escape
from importlib import resources
from json import loads
from typing import Protocol

from sitegen.draw.colour import Dye, Palette, Tint
from sitegen.model.numbers import plain

FONT_FAMILY = "Atkinson Hyperlegible Next"
"""The family every letter in a drawing is set in; the theme bundles it."""
CAP_HEIGHT = 0.668
"""Height of its capitals in ems; a test reads it off the bundled font."""

NO_DYES = Palette()
"""For a drawing in literal colours alone."""

WHOLE = frozenset({"beads", "piece", "beads-there", "beads-cut"})
"""Groups of beads that no script takes apart."""

HAIR_MM = 0.005
"""Less than this is not written: coordinates have two digits after the point."""

Segment = tuple[float, ...]
"""Two numbers are a straight line's end; six are a cubic curve's two control points and end."""


@dataclass(frozen=True, slots=True)
class Outline:
    """One contour: where it starts, and its segments."""

    start: tuple[float, float]
    segments: tuple[Segment, ...]
    closed: bool = True

    def points(self) -> Iterable[tuple[float, float]]:
        """The corners and control points: their box holds the contour."""
        yield self.start
        for segment in self.segments:
            for index in range(0, len(segment), 2):
                yield segment[index], segment[index + 1]


@dataclass(frozen=True, slots=True)
class Paint:
    """How a set of contours is filled and stroked."""

    fill: Tint | None = None
    stroke: Tint | None = None
    width: float = 0.0
    """Stroke width, mm."""
    opacity: float = 1.0
    """Of the fill."""
    veil: float = 1.0
    """Opacity of the stroke."""


@dataclass(frozen=True, slots=True)
class Text:
    """A word or number beside the beads."""

    x: float
    y: float
    """The middle of its capitals' height."""
    text: str
    size: float
    ink: str
    anchor: str = "middle"
    """`start`, `middle` or `end`."""
    bold: bool = False


class Pen(Protocol):
    """What draws: four calls are all a drawing is made of."""

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        """Open a group of a kind (`beads`, `thread` ...), with data about what it shows."""

    def end(self) -> None:
        """Close the group."""

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        """Draw contours that share a paint; later ones do not cover earlier ones' strokes."""

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        """Set single bold letters of beads, each centred on its (x, y); all share one y.

        Each is set in what reads best on the colour of its bead.
        """

    def text(self, label: Text) -> None:
        """Set a label."""


@dataclass(slots=True)
class Recorder:
    """A pen that writes down the calls."""

    calls: list[tuple[str, tuple[object, ...]]] = field(default_factory=list)

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        self.calls.append(("begin", (kind, dict(data))))

    def end(self) -> None:
        self.calls.append(("end", ()))

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        if outlines:
            self.calls.append(("shapes", (tuple(outlines), paint)))

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        if marks:
            self.calls.append(("letters", (tuple(marks), size)))

    def text(self, label: Text) -> None:
        self.calls.append(("text", (label,)))


@dataclass(slots=True)
class BoundsPen:
    """A pen that measures: the box around everything drawn, strokes and letters included."""

    left: float = float("inf")
    top: float = float("inf")
    right: float = float("-inf")
    bottom: float = float("-inf")

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        """Groups have no size."""

    def end(self) -> None:
        """Groups have no size."""

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        half = paint.width / 2 if paint.stroke else 0.0
        for outline in outlines:
            for x, y in outline.points():
                self._take(x - half, y - half, x + half, y + half)

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        for x, y, letter in marks:
            half = text_width(letter, size) / 2
            self._take(x - half, y - size * CAP_HEIGHT / 2, x + half, y + size * CAP_HEIGHT / 2)

    def text(self, label: Text) -> None:
        width = text_width(label.text, label.size)
        left = label.x - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[label.anchor]
        self._take(left, label.y - label.size * 0.5, left + width, label.y + label.size * 0.5)

    def _take(self, left: float, top: float, right: float, bottom: float) -> None:
        self.left, self.top = min(self.left, left), min(self.top, top)
        self.right, self.bottom = max(self.right, right), max(self.bottom, bottom)


@dataclass(slots=True)
class SvgPen:
    """A pen that writes SVG elements: one `<path>` a paint, one `<text>` for each letter of a row of them.

    Where a colour follows a letter, `data-fill`, `data-stroke` and `data-ink` say which, so that a page can
    show other colours; `data-ink` is the ink that reads best on the colour of its letter.
    """

    palette: Palette = NO_DYES
    parts: list[str] = field(default_factory=list)
    kinds: list[str] = field(default_factory=list)
    """Of the groups that are open."""

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        self.kinds.append(kind)
        extra = "".join(f' data-{key}="{escape(value)}"' for key, value in data.items())
        self.parts.append(f'<g data-kind="{kind}"{extra}>')

    def end(self) -> None:
        self.kinds.pop()
        self.parts.append("</g>")

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        look = self._tint("fill", paint.fill or "none")
        if paint.opacity < 1:
            look += f' fill-opacity="{plain(paint.opacity)}"'
        if paint.stroke:
            look += self._tint("stroke", paint.stroke)
            look += f' stroke-width="{plain(paint.width, 3)}"'
            if paint.veil < 1:
                look += f' stroke-opacity="{plain(paint.veil)}"'
            look += ' stroke-linecap="round" stroke-linejoin="round"'
        whole = bool(self.kinds) and self.kinds[-1] in WHOLE
        self.parts.append(f'<path{look} d="{_chain(outlines) if whole else "".join(map(_path, outlines))}"/>')

    def _tint(self, name: str, tint: Tint) -> str:
        """An attribute with its literal colour, and what the colour is made of where it follows a letter."""
        look = f' {name}="{self.palette.of(tint)}"'
        if isinstance(tint, Dye):
            mixed = f" {tint.toward} {plain(tint.share)}" if tint.share else ""
            look += f' data-{name}="{escape(tint.letter)}{mixed}"'
        return look

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        places: dict[str, list[float]] = {}
        for x, _, letter in marks:
            places.setdefault(letter, []).append(x - text_width(letter, size) / 2)
        y = plain(marks[0][1] + size * CAP_HEIGHT / 2)
        for letter, lefts in places.items():
            self.parts.append(
                f'<text x="{" ".join(map(plain, lefts))}" y="{y}" font-family="{FONT_FAMILY}"'
                f' font-weight="700" font-size="{plain(size)}" fill="{self.palette.ink(letter)}"'
                f' data-ink="{escape(letter)}">{escape(letter * len(lefts))}</text>'
            )

    def text(self, label: Text) -> None:
        weight = ' font-weight="700"' if label.bold else ""
        anchor = "" if label.anchor == "start" else f' text-anchor="{label.anchor}"'
        self.parts.append(
            f'<text x="{plain(label.x)}" y="{plain(label.y + label.size * CAP_HEIGHT / 2)}"'
            f' font-family="{FONT_FAMILY}"{weight} font-size="{plain(label.size)}"{anchor}'
            f' fill="{label.ink}">{escape(label.text)}</text>'
        )


def _chain(outlines: Sequence[Outline]) -> str:
    """Path data in which a contour at the height of the last one begins so much further than that began.

    In a row of beads all but the first then read equal, which is sent as next to nothing. No further than
    along a row, because some renderers round every step of the way.
    """
    words: list[str] = []
    last: list[float] = []
    for outline in outlines:
        here = [float(plain(value)) for value in outline.start]
        beside = here[1:] == last[1:]
        words.append("m" + _numbers([here[0] - last[0], 0.0]) if beside else "M" + _numbers(here))
        words.append(_segments(outline))
        last = here if outline.closed else []
    return "".join(words)


def _path(outline: Outline) -> str:
    """Path data of one contour: an absolute start, so that a script can take it out of its path."""
    return "M" + _numbers(outline.start) + _segments(outline)


def _segments(outline: Outline) -> str:
    """Segments relative to their start, so that equal beads read equal."""
    x, y = outline.start
    words = []
    for segment in outline.segments:
        steps = [value - (x, y)[index % 2] for index, value in enumerate(segment)]
        x, y = segment[-2], segment[-1]
        if len(segment) == 6:
            words.append("c" + _numbers(steps))
        elif abs(steps[1]) < HAIR_MM:
            words.append("h" + _numbers(steps[:1]))
        elif abs(steps[0]) < HAIR_MM:
            words.append("v" + _numbers(steps[1:]))
        else:
            words.append("l" + _numbers(steps))
    return "".join(words) + ("z" if outline.closed else "")


def _numbers(values: Sequence[float]) -> str:
    """Numbers as path data, as short as the SVG grammar allows: `0.5 -0.25` is `.5-.25`."""
    text = ""
    for value in values:
        word: str = plain(value)
        word = word.replace("0.", ".", 1) if word.startswith(("0.", "-0.")) else word
        text += word if not text or word.startswith("-") else f" {word}"
    return text


@cache
def _advances() -> Mapping[str, float]:
    data = resources.files("sitegen.draw").joinpath("advances.json").read_text(encoding="utf-8")
    widths: dict[str, float] = loads(data)
    return widths


def text_width(text: str, size: float) -> float:
    """How far a text runs in the bold face at a font size, in the size's unit."""
    widths = _advances()
    return size * sum(widths.get(letter, 0.62) for letter in text)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished drawing: what it shows in words, its box in mm, and the pen calls."""

    title: str
    description: str
    left: float
    top: float
    width_mm: float
    height_mm: float
    calls: tuple[tuple[str, tuple[object, ...]], ...]
    palette: Palette
    """The colours it is shown in."""

    def dyed(self, palette: Palette) -> Drawing:
        """The same drawing in other colours."""
        return replace(self, palette=palette)

    def play(self, pen: Pen) -> None:
        """Draw it all with another pen."""
        for name, values in self.calls:
            getattr(pen, name)(*values)

    def svg(self, uid: str, scale: float = 1.0) -> str:
        """Inline SVG, `scale` times the true size; `uid` makes its ids unique on a page."""
        pen = SvgPen(self.palette)
        self.play(pen)
        box = " ".join(plain(value) for value in (self.left, self.top, self.width_mm, self.height_mm))
        width, height = plain(self.width_mm * scale), plain(self.height_mm * scale)
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="{uid}-t {uid}-d"'
            f' width="{width}mm" height="{height}mm" viewBox="{box}">'
            f'<title id="{uid}-t">{escape(self.title)}</title>'
            f'<desc id="{uid}-d">{escape(self.description)}</desc>'
            f"{''.join(pen.parts)}</svg>"
        )


def finish(
    recorder: Recorder, title: str, description: str, margin: float, palette: Palette = NO_DYES
) -> Drawing:
    """Close a recording: its box is what was drawn, plus a margin in mm on all sides."""
    bounds = BoundsPen()
    drawing = Drawing(title, description, 0.0, 0.0, 0.0, 0.0, tuple(recorder.calls), palette)
    drawing.play(bounds)
    return Drawing(
        title,
        description,
        bounds.left - margin,
        bounds.top - margin,
        bounds.right - bounds.left + 2 * margin,
        bounds.bottom - bounds.top + 2 * margin,
        drawing.calls,
        palette,
    )
