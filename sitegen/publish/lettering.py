"""Letters, a theme's own font files -> outlines: what they look like is up to no machine's fonts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from fontTools.pens.basePen import BasePen
from fontTools.ttLib import TTFont

from sitegen.draw.colour import Palette
from sitegen.draw.pens import CAP_HEIGHT, FONT_FAMILY, Drawing, Outline, Paint, Recorder, Segment, Text

ITALIC = 1
"""Bit of `OS/2.fsSelection`. Source: OpenType specification, OS/2 table."""
SHARES = {"start": 0.0, "middle": 0.5, "end": 1.0}
"""How much of a label's width stands before its place."""


@dataclass(frozen=True, slots=True)
class Face:
    """One font: outlines and advances in units of the font, `units` to the em."""

    units: int
    names: Mapping[int, str]
    """Code point -> glyph."""
    advances: Mapping[str, int]
    kerning: Mapping[tuple[str, str], int]
    contours: Mapping[str, tuple[Outline, ...]]
    """Glyph -> contours, y upward."""

    def width(self, words: str, size: float, apart: float = 0.0) -> float:
        """How far the words run at a font size, in the size's unit; each letter takes `apart` ems more."""
        *_, (_, end) = self._places(words, apart)
        return end * size / self.units

    def outlines(self, words: str, size: float, at: tuple[float, float], apart: float = 0.0) -> list[Outline]:
        """The words set from a point on their baseline, y downward."""
        scale = size / self.units
        return [
            _placed(contour, scale, at[0] + place * scale, at[1])
            for glyph, place in self._places(words, apart)
            for contour in self.contours.get(glyph, ())
        ]

    def _places(self, words: str, apart: float) -> Iterator[tuple[str, float]]:
        """Each glyph with its place in font units; last an empty name with the place where the words end."""
        at, before = 0.0, ""
        for letter in words:
            glyph = self.names.get(ord(letter), ".notdef")
            at += self.kerning.get((before, glyph), 0)
            yield glyph, at
            at += self.advances[glyph] + apart * self.units
            before = glyph
        yield "", at


def _placed(contour: Outline, scale: float, x: float, baseline: float) -> Outline:
    def moved(values: Sequence[float]) -> Segment:
        return tuple(
            (baseline - value * scale) if index % 2 else (x + value * scale)
            for index, value in enumerate(values)
        )

    start = moved(contour.start)
    return Outline((start[0], start[1]), tuple(map(moved, contour.segments)))


@lru_cache(maxsize=16)
def face(theme: Path, family: str, weight: int = 400) -> Face:
    """The upright font of a family in a theme. Raises FileNotFoundError where the theme has none."""
    for path in sorted((theme / "fonts").glob("*.ttf")):
        font = TTFont(path)
        about = font["OS/2"]
        named = font["name"].getDebugName(16) or font["name"].getDebugName(1)
        if (named, about.usWeightClass, about.fsSelection & ITALIC) == (family, weight, 0):
            return _face(font)
    raise FileNotFoundError(f"The theme in {theme} has no font file of {family} in weight {weight}.")


def _face(font: TTFont) -> Face:
    glyphs, contours = font.getGlyphSet(), {}
    for name in font.getGlyphOrder():
        pen = _ContourPen(glyphs)
        glyphs[name].draw(pen)
        contours[name] = tuple(pen.done)
    return Face(
        units=font["head"].unitsPerEm,
        names=font.getBestCmap(),
        advances={name: advance for name, (advance, _) in font["hmtx"].metrics.items()},
        kerning=_kerning(font),
        contours=contours,
    )


class _ContourPen(BasePen):  # type: ignore[misc]  # fontTools has no type information
    """Collects contours; the base class turns quadratic curves into cubic ones."""

    def __init__(self, glyphs: Any) -> None:
        super().__init__(glyphs)
        self.done: list[Outline] = []

    def _moveTo(self, point: tuple[float, float]) -> None:
        self._start: tuple[float, float] = point
        self._segments: list[Segment] = []

    def _lineTo(self, point: tuple[float, float]) -> None:
        self._segments.append(point)

    def _curveToOne(self, *points: tuple[float, float]) -> None:
        self._segments.append(tuple(value for point in points for value in point))

    def _closePath(self) -> None:
        self.done.append(Outline(self._start, tuple(self._segments)))


def _kerning(font: TTFont) -> dict[tuple[str, str], int]:
    """Every pair of glyphs that the font sets closer or wider; the first rule for a pair counts."""
    pairs: dict[tuple[str, str], int] = {}
    if "GPOS" not in font:
        return pairs
    table = font["GPOS"].table
    wanted = {
        index
        for record in table.FeatureList.FeatureRecord
        if record.FeatureTag == "kern"
        for index in record.Feature.LookupListIndex
    }
    for index in sorted(wanted):
        for rules in table.LookupList.Lookup[index].SubTable:
            rules = getattr(rules, "ExtSubTable", rules)
            for pair, value in _pairs(rules):
                pairs.setdefault(pair, value)
    return {pair: value for pair, value in pairs.items() if value}


def _pairs(rules: Any) -> Iterator[tuple[tuple[str, str], int]]:
    """The pairs of one GPOS subtable: named singly, or by classes of glyphs."""
    if getattr(rules, "PairSet", None) is not None:
        for first, those in zip(rules.Coverage.glyphs, rules.PairSet, strict=True):
            for one in those.PairValueRecord:
                yield (first, one.SecondGlyph), getattr(one.Value1, "XAdvance", 0)
    elif getattr(rules, "Class1Record", None) is not None:
        seconds: dict[int, list[str]] = {}
        for glyph, number in rules.ClassDef2.classDefs.items():
            seconds.setdefault(number, []).append(glyph)
        for first in rules.Coverage.glyphs:
            records = rules.Class1Record[rules.ClassDef1.classDefs.get(first, 0)].Class2Record
            for number, glyphs in seconds.items():
                value = getattr(records[number].Value1, "XAdvance", 0)
                for second in glyphs:
                    yield (first, second), value


@dataclass(slots=True)
class _LetteringPen:
    """A pen that draws letters and labels as outlines with another pen, in the colours of one palette."""

    to: Recorder
    theme: Path
    palette: Palette
    family: str = FONT_FAMILY
    _bold: Face = field(init=False)
    _regular: Face = field(init=False)

    def __post_init__(self) -> None:
        self._bold, self._regular = face(self.theme, self.family, 700), face(self.theme, self.family)

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        self.to.begin(kind, data)

    def end(self) -> None:
        self.to.end()

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        self.to.shapes(outlines, paint)

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        inks: dict[str, list[Outline]] = {}
        for x, y, letter in marks:
            start = x - self._bold.width(letter, size) / 2
            drawn = self._bold.outlines(letter, size, (start, y + size * CAP_HEIGHT / 2))
            inks.setdefault(self.palette.ink(letter), []).extend(drawn)
        for ink, outlines in inks.items():
            self.to.shapes(outlines, Paint(fill=ink))

    def text(self, label: Text) -> None:
        font = self._bold if label.bold else self._regular
        start = label.x - font.width(label.text, label.size) * SHARES[label.anchor]
        at = (start, label.y + label.size * CAP_HEIGHT / 2)
        self.to.shapes(font.outlines(label.text, label.size, at), Paint(fill=label.ink))


def outlined(drawing: Drawing, theme: Path) -> Drawing:
    """The drawing with outlines for letters, in its palette: dye it first, not afterwards.

    Raises FileNotFoundError where the theme lacks the drawings' typeface.
    """
    recorder = Recorder()
    drawing.play(_LetteringPen(recorder, theme, drawing.palette))
    return replace(drawing, calls=tuple(recorder.calls))
