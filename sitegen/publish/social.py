"""A piece, or a shop's pieces -> the picture that stands for it where its address is passed on: a book cover.

The left edge is bound in a band of beads in the pattern's own colours; the finished piece lies beside it,
upright with the title at its side, or lying with the title beneath.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.draw.colour import Palette
from sitegen.draw.light import draw_beads, finishes_of
from sitegen.draw.pens import Drawing, Outline, Paint, Recorder, Segment, Text
from sitegen.draw.shapes import polygon
from sitegen.model.shop import Shop
from sitegen.model.thread import Bead
from sitegen.publish.lettering import Face, face, outlined
from sitegen.publish.picture import PictureLook, picture_look, png, trimmed
from sitegen.publish.piece import Piece

WIDTH, HEIGHT = 1200, 630
"""Pixels: what sites that show such pictures ask for, common practice, no source."""
BAND, BEADS_ACROSS, REPEAT = 150.0, 6, 12
"""The band's width in pixels and in beads, and after how many rows its colours begin anew."""
EDGE = 56.0
"""Nothing but the band and a bled piece comes nearer to the edge."""
LEFT = BAND + EDGE
ROOM = WIDTH - LEFT - EDGE
"""Where words begin, and how wide they may run."""
SLIM = 0.2
"""A piece slimmer than this is not shown whole: it runs off the top and the foot."""
IN_A_ROW = 2.3
"""How wide the pictures on a shop's cover are together, as a share of their height."""
SIZES = (92.0, 84.0, 76.0, 68.0, 60.0, 52.0, 44.0)
"""Of the title: the largest at which it fits."""
LEADING = 1.08
"""From line to line, in font sizes."""
SMALL, CAPITALS, APART = 26.0, 20.0, 0.14
"""Font sizes of the words below and of the shop's capitals; how far apart these are set, ems."""
DASH, GAP, STITCHES = 18.0, 10.0, 6
"""The theme's running stitch."""

Box = tuple[float, float, float, float]
"""Left, top, width and height in pixels."""


@dataclass(frozen=True, slots=True)
class CoverWords:
    """What is written on a cover."""

    above: str
    title: str
    below: str


def pattern_cover(piece: Piece, theme: Path) -> bytes:
    """The cover of one pattern as a PNG. Raises FileNotFoundError where the theme lacks a typeface."""
    say = piece.words.text
    level = say(f"level.{piece.measures.difficulty.level}")
    below = say("cover.below", level=level, makes=say(f"makes.{piece.pattern.makes.value}"))
    words = CoverWords(piece.shop.title, piece.pattern.title, below)
    drawing = cover((piece.picture,), band(piece), words, theme)
    return png(drawing, picture_look(theme).paper, (WIDTH, HEIGHT))[0]


def shop_cover(pieces: Sequence[Piece], shop: Shop, theme: Path) -> bytes:
    """The cover of a shop with at least one pattern. Raises as `pattern_cover`."""
    words = CoverWords("", shop.title, shop.tagline)
    drawing = cover(_row([piece.picture for piece in pieces]), band(pieces[0]), words, theme)
    return png(drawing, picture_look(theme).paper, (WIDTH, HEIGHT))[0]


def _row(pictures: Sequence[Drawing]) -> list[Drawing]:
    """The first pictures that together fill a row; slim ones are left out."""
    row: list[Drawing] = []
    for picture in pictures:
        shapes = [one.width_mm / one.height_mm for one in (*row, picture)]
        if shapes[-1] > SLIM and sum(shapes) <= IN_A_ROW:
            row.append(picture)
    return row or [pictures[0]]


def band(piece: Piece) -> Drawing:
    """A strip of chevrons in the piece's colours and its commonest bead, as wide as the cover's band is."""
    beads = [bead for bead in piece.path.beads if bead.shape != "drop"] or list(piece.path.beads)
    sizes = [(bead.width, bead.length, bead.shape, bead.kind) for bead in beads]
    width, length, shape, kind = max(sorted(set(sizes)), key=sizes.count)
    scale = BAND / BEADS_ACROSS / width
    letters = _repeat(piece)
    recorder = Recorder()
    laid = []
    for row in range(int(HEIGHT / scale / length) + 2):
        for place in range(BEADS_ACROSS):
            x = (place + (row % 2) / 2) * width
            letter = letters[int(row + 2 * abs(x / width - BEADS_ACROSS / 2)) % len(letters)]
            laid.append(
                Bead(letter, 0, row + 1, place + 1, x, (row + 0.5) * length, 0.0, width, length, shape, kind)
            )
    draw_beads(recorder, laid, finishes_of(piece.pattern))
    tall = HEIGHT / scale
    return Drawing("", "", 0.0, 0.0, BEADS_ACROSS * width, tall, tuple(recorder.calls), piece.picture.palette)


def _repeat(piece: Piece) -> list[str]:
    """The letters of the band's rows: each in proportion to its beads, at least once."""
    counts = {bead.letter: bead.each for bead in piece.measures.beads}
    most = sorted(counts, key=lambda letter: -counts[letter])[:REPEAT]
    total = sum(counts[letter] for letter in most)
    return [letter for letter in most for _ in range(max(1, round(REPEAT * counts[letter] / total)))]


def cover(pictures: Sequence[Drawing], band_of: Drawing, words: CoverWords, theme: Path) -> Drawing:
    """A cover as a drawing without letters, in pixels."""
    look, recorder = picture_look(theme), Recorder()
    pictures = [trimmed(picture) for picture in pictures]
    recorder.shapes([_rectangle((0, 0, WIDTH, HEIGHT))], Paint(fill=look.paper))
    writer = _Writer(recorder, look, theme)
    foot = writer.title_top(words)
    above: Box = (LEFT, 40.0, WIDTH - LEFT - EDGE, foot - 72.0)
    beside: Box = (WIDTH - 536.0, 36.0, 536.0 - EDGE, HEIGHT - 72.0)
    shape = pictures[0].width_mm / pictures[0].height_mm
    if shape < SLIM and len(pictures) == 1:
        beside = (WIDTH - 340.0, HEIGHT / 2 - 75.0 / shape, 150.0, 150.0 / shape)
    if len(pictures) > 1 or _scale(pictures, above) > _scale(pictures, beside):
        writer.beneath(words, foot)
        _lay(recorder, pictures, above, theme)
    else:
        writer.beside(words, beside[0] - LEFT - 24.0)
        _lay(recorder, pictures, beside, theme)
    _place(recorder, band_of, BAND / band_of.width_mm, (0.0, 0.0))
    return Drawing(words.title, words.below, 0.0, 0.0, WIDTH, HEIGHT, tuple(recorder.calls), Palette())


class _Writer:
    """Sets the words of a cover."""

    def __init__(self, recorder: Recorder, look: PictureLook, theme: Path) -> None:
        self.recorder, self.look = recorder, look
        self.title, self.small = face(theme, look.title), face(theme, look.text)

    def beside(self, words: CoverWords, room: float) -> None:
        """The shop at the head, the title in the middle, the rest at the foot; `room` pixels wide."""
        self._shop(words.above, (LEFT, EDGE + 20.0), room)
        size, lines = fitted(self.title, words.title, room, 3)
        foot = self._title(lines, size, (HEIGHT - LEADING * size * len(lines)) / 2)
        self._stitches(foot + 44.0)
        self._lines(_wrapped(self.small, words.below, SMALL, room), HEIGHT - EDGE)

    def title_top(self, words: CoverWords) -> float:
        """Where the title and the rest begin if they stand at the foot."""
        size, lines = fitted(self.title, words.title, ROOM, 1)
        below = self._below(words)
        return HEIGHT - EDGE - LEADING * (SMALL * len(below) + size * len(lines)) - 46.0

    def beneath(self, words: CoverWords, top: float) -> None:
        """Title and the rest at the foot, the shop at the right."""
        self._stitches(top)
        size, lines = fitted(self.title, words.title, ROOM, 1)
        self._title(lines, size, top + 20.0)
        self._lines(self._below(words), HEIGHT - EDGE)
        width = min(self._shop_width(words.above), ROOM / 2)
        self._shop(words.above, (LEFT + ROOM - width, HEIGHT - EDGE), ROOM / 2)

    def _below(self, words: CoverWords) -> list[str]:
        width = min(self._shop_width(words.above), ROOM / 2)
        return _wrapped(self.small, words.below, SMALL, ROOM - width - (EDGE if width else 0.0))

    def _shop_width(self, name: str) -> float:
        return self.small.width(name.upper(), CAPITALS, APART)

    def _shop(self, name: str, at: tuple[float, float], room: float) -> None:
        """The shop's name in spaced capitals, smaller where it is longer than the room."""
        size = CAPITALS * min(1.0, room / max(1.0, self._shop_width(name)))
        shapes = self.small.outlines(name.upper(), size, at, APART)
        self.recorder.shapes(shapes, Paint(fill=self.look.soft))

    def _title(self, lines: Sequence[str], size: float, top: float) -> float:
        """Set it line by line; the last baseline."""
        baseline = top
        for line in lines:
            baseline += size * LEADING
            shapes = self.title.outlines(line, size, (LEFT - size * 0.03, baseline - size * 0.2))
            self.recorder.shapes(shapes, Paint(fill=self.look.ink))
        return baseline - size * 0.2

    def _lines(self, lines: Sequence[str], last: float) -> None:
        for back, line in enumerate(reversed(lines)):
            shapes = self.small.outlines(line, SMALL, (LEFT, last - LEADING * SMALL * back))
            self.recorder.shapes(shapes, Paint(fill=self.look.soft))

    def _stitches(self, y: float) -> None:
        """A running stitch in the theme's colour, as under the titles of its pages."""
        runs = [_rectangle((LEFT + index * (DASH + GAP), y, DASH, 4.0)) for index in range(STITCHES)]
        self.recorder.shapes(runs, Paint(fill=self.look.accent))


def fitted(font: Face, title: str, room: float, most: int) -> tuple[float, list[str]]:
    """The largest size at which the title takes at most so many lines, and its lines."""
    for size in SIZES:
        lines = _wrapped(font, title, size, room)
        if len(lines) <= most and all(font.width(line, size) <= room for line in lines):
            return size, lines
    widest = max(font.width(word, SIZES[-1]) for word in title.split())
    size = SIZES[-1] * min(1.0, room / widest)
    return size, _wrapped(font, title, size, room)


def _wrapped(font: Face, words: str, size: float, room: float) -> list[str]:
    """The words in lines that the room holds; a word wider than the room stands alone."""
    lines: list[str] = []
    for word in words.split():
        if lines and font.width(f"{lines[-1]} {word}", size) <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def _scale(pictures: Sequence[Drawing], box: Box) -> float:
    """The scale of the first picture where all stand side by side, equally high, as large as they may."""
    wide = sum(picture.width_mm / picture.height_mm for picture in pictures)
    height = min(box[3], (box[2] - EDGE * (len(pictures) - 1)) / wide)
    return height / pictures[0].height_mm


def _lay(recorder: Recorder, pictures: Sequence[Drawing], box: Box, theme: Path) -> None:
    """Pictures side by side, equally high, in the middle of the box."""
    left, top, width, height = box
    high = _scale(pictures, box) * pictures[0].height_mm
    wide = [picture.width_mm * high / picture.height_mm for picture in pictures]
    x = left + (width - sum(wide) - EDGE * (len(wide) - 1)) / 2
    for picture, own in zip(pictures, wide, strict=True):
        _place(recorder, outlined(picture, theme), high / picture.height_mm, (x, top + (height - high) / 2))
        x += own + EDGE


def _place(recorder: Recorder, drawing: Drawing, scale: float, at: tuple[float, float]) -> None:
    """A drawing without letters, its top left corner at a point."""

    def moved(values: Sequence[float]) -> Segment:
        return tuple(
            (value - (drawing.top if index % 2 else drawing.left)) * scale + at[index % 2]
            for index, value in enumerate(values)
        )

    drawing.play(_MovedPen(recorder, moved, drawing.palette, scale))


@dataclass(frozen=True, slots=True)
class _MovedPen:
    """A pen that draws shapes elsewhere, in the literal colours of a palette."""

    to: Recorder
    moved: Callable[[Sequence[float]], Segment]
    palette: Palette
    scale: float

    def begin(self, kind: str, data: Mapping[str, str]) -> None:
        self.to.begin(kind, data)

    def end(self) -> None:
        self.to.end()

    def shapes(self, outlines: Sequence[Outline], paint: Paint) -> None:
        fill = paint.fill and self.palette.of(paint.fill)
        stroke = paint.stroke and self.palette.of(paint.stroke)
        looks = replace(paint, fill=fill, stroke=stroke, width=paint.width * self.scale)
        self.to.shapes([self._outline(one) for one in outlines], looks)

    def letters(self, marks: Sequence[tuple[float, float, str]], size: float) -> None:
        raise TypeError("letters are outlined before a drawing is moved")

    def text(self, label: Text) -> None:
        raise TypeError("labels are outlined before a drawing is moved")

    def _outline(self, one: Outline) -> Outline:
        start = self.moved(one.start)
        return replace(one, start=(start[0], start[1]), segments=tuple(map(self.moved, one.segments)))


def _rectangle(box: Box) -> Outline:
    left, top, width, height = box
    right, foot = left + width, top + height
    return polygon([(left, top), (right, top), (right, foot), (left, foot)])
