"""A pattern's body, charts and step table -> the blocks of its making, in the order they are read."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import groupby
from operator import attrgetter, itemgetter

from markupsafe import Markup

from sitegen.draw.legend import FILLED_SIGNS, sign, signs_in
from sitegen.draw.legible import MOST_GROWTH, legible, smallest_text
from sitegen.draw.pens import Drawing
from sitegen.model.photo import Photo
from sitegen.model.say import Say
from sitegen.model.source import Aside, ChartHere, Prose, StepsHere
from sitegen.model.thread import Bead, ThreadPath
from sitegen.publish.blocks import (
    LARGE,
    LEAST_TEXT,
    PRINT,
    SCREEN,
    AsideBlock,
    Block,
    ChartBlock,
    Figure,
    LegendBlock,
    Medium,
    ProseBlock,
    SharedLine,
    StepRow,
    StepsBlock,
    WordRow,
)
from sitegen.publish.chart_files import chart_links
from sitegen.publish.chart_sheets import OPENING_MM, chart_sheets
from sitegen.publish.chips import chip, runs
from sitegen.publish.markdown import Author
from sitegen.publish.photo import PhotoBlock, in_print, on_page
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.shared import SharedWords, shared_words
from sitegen.publish.table import TableRow, TableSection

LINE_NAMES = {
    "strands": "strand",
    "loops": "strand",
    "rounds": "round",
    "edging": "line",
    "string": "line",
    "turns": "turn",
}
"""What the lines of a part are -> what its chart calls each; any other is a row."""
LEAST_SHARE = 0.7
"""A step drawn at less than this share of the usual scale has a scale of its own."""
WHOLE_MM = 137.0
"""Up to this height a row of large print stays whole: two thirds of what a page leaves for rows. A higher one
that moved to the next page could leave this one nearly empty."""
LINE_LETTERS, LINE_RUNS = 46, 8
"""Letters, and runs of beads, that a line of a row has room for there."""
LINE_MM, GAP_MM, HEAD_MM = 8.3, 2.0, 30.0
"""Height of such a line, the gap after a paragraph, and the lines above the first sentence."""
ROUNDED = 1.01
"""Sizes of letters are written with two digits: a scale that just does is so much larger."""
BODY = attrgetter("body")
MANY = 3
"""A row with more sentences is set across the width of the table."""
STRIP_SHARE = 0.75
"""A strip's scale, as a share of the usual scale of a step."""


def fitted(
    drawing: Drawing, uid: str, room: tuple[float, float], largest: float, least: float = 0.0
) -> tuple[Markup, float]:
    """A drawing as large as its room (width, height in mm) allows, at most `largest` times; and the scale.

    `least` is the smallest font size that it may be shown with, mm.
    """
    scale = min(largest, _fit(drawing, room))
    if least:
        drawing = legible(drawing, least / scale)
    return Markup(drawing.svg(uid, scale)), scale


def _fit(drawing: Drawing, room: tuple[float, float]) -> float:
    """The scale at which a drawing just fits its room."""
    return min(room[0] / drawing.width_mm, room[1] / drawing.height_mm)


def blocks(piece: Piece, medium: Medium) -> tuple[Block, ...]:
    """The author's text with the charts and step tables where it places them.

    A step table that the text does not place comes after it, in the order of the parts; a chart that the
    text does not place comes right before its part's steps.
    """
    made = list(_Making(piece, medium).blocks())
    first = next((place for place, block in enumerate(made) if _needs_key(block, medium)), len(made))
    made[first:first] = _before_steps(piece, medium)
    if piece.second is not None:
        say = piece.words.text
        text = Markup("<h3>{}</h3><p>{}</p>").format(say("second.heading"), say("second.about"))
        made.append(ProseBlock(text))
        other = _Making(piece.second, medium, "second-")
        made += [block for part in other.parts for block in (*other.chart(part), *other.rows(part))]
    return tuple(made)


def _needs_key(block: Block, medium: Medium) -> bool:
    """Whether the key stands before a block: steps, or in print a chart that goes to a page of its own."""
    if isinstance(block, ChartBlock):
        return medium is not SCREEN and block.sheets[0].height_mm > OPENING_MM
    return isinstance(block, StepsBlock)


def _before_steps(piece: Piece, medium: Medium) -> list[Block]:
    """What a maker must know before the first step: how many pieces, and the signs in the drawings."""
    say = piece.words.text
    before: list[Block] = []
    if piece.pattern.makes.pieces > 1:
        key = "pair.mirrored" if piece.second is not None else "pair.twice"
        before.append(ProseBlock(Markup("<p>{}</p>").format(say(key))))
    strips = medium is not LARGE and any(row.strip for section in piece.table for row in section.rows)
    return [*before, legend(piece.path, say, medium, strips=strips, filled=not piece.unfilled)]


def legend(
    path: ThreadPath, say: Say, medium: Medium, *, strips: bool = False, filled: bool = True
) -> LegendBlock:
    """The key to a path's step drawings; `strips` tells whether some rows are shown as strips.

    `filled` tells whether beads have their colours.
    """
    least, scale = LEAST_TEXT.get(medium.name, 0.0), medium.step_scale
    signs = []
    for name in signs_in(path, strips=strips):
        words = say(f"legend.{name}" if filled or name not in FILLED_SIGNS else f"legend.{name}-unfilled")
        drawn = sign(name, words, filled)
        drawn = legible(drawn, least / scale) if least else drawn
        signs.append((Markup(drawn.svg(f"sign-{name}", scale)), words))
    return LegendBlock(say("legend.heading"), tuple(signs))


class _Making:
    """Places each chart and each step table exactly once."""

    def __init__(self, piece: Piece, medium: Medium, prefix: str = "") -> None:
        self.piece = piece
        self.prefix = prefix
        self.medium = medium
        self.author = Author()
        self.parts = [part.name for part in piece.path.parts]
        self.sections = {section.part: section for section in piece.table}
        self.language = piece.language_of(BODY)
        body = piece.pattern.body
        self.charted = {block.part for block in body if isinstance(block, ChartHere)}
        self.stepped = {block.part for block in body if isinstance(block, StepsHere)}
        self.opening = not prefix
        """Nothing but words has come yet."""

    def blocks(self) -> Iterator[Block]:
        """Every block in reading order."""
        for block in self.piece.pattern.body:
            if isinstance(block, Prose):
                yield ProseBlock(self.author.html(block.text), self.language)
            elif isinstance(block, Aside):
                label = self.piece.words.text(f"aside.{block.kind}")
                yield AsideBlock(label, self.author.html(block.text), self.language)
            elif isinstance(block, Photo):
                yield self.photo(block)
            elif isinstance(block, ChartHere):
                yield from self.chart(block.part)
            else:
                yield from self.steps(block.part)
        for part in self.parts:
            if part not in self.stepped:
                yield from self.steps(part)

    def photo(self, photo: Photo) -> PhotoBlock:
        """A photo in its place; all pages of a pattern share the files beside the first."""
        made = self.piece.photos[photo]
        self.opening = False
        if self.medium is not SCREEN:
            return PhotoBlock(in_print(made, self.language))
        folder = self.piece.beside + ("../" if self.piece.folder else "")
        return PhotoBlock(on_page(made, folder, self.language))

    def chart(self, part: str) -> Iterator[Block]:
        """A part's chart, if it is woven and so has one."""
        if part not in self.parts:
            return
        index = self.parts.index(part)
        drawing = self.piece.charts[index]
        if drawing is not None:
            self.author.restart()
            yield chart_block(self.piece, index, drawing, self.medium, self.prefix, self.opening)
            self.opening = False

    def steps(self, part: str) -> Iterator[Block]:
        """A part's step table, with its chart before it unless the text places that elsewhere."""
        if part not in self.charted:
            yield from self.chart(part)
        yield from self.rows(part)

    def rows(self, part: str) -> Iterator[Block]:
        """A part's step table alone."""
        if part in self.sections:
            self.author.restart()
            self.opening = False
            place = f"{self.prefix}steps-{self.parts.index(part) + 1}"
            yield steps_block(self.piece, self.sections[part], place, self.medium)


def chart_block(
    piece: Piece, index: int, drawing: Drawing, medium: Medium, prefix: str = "", opens: bool = False
) -> ChartBlock:
    """A part's drawn chart and the same rows as word charts; `opens` tells that only words come before."""
    say, part = piece.words.text, piece.path.parts[index]
    kind = LINE_NAMES.get(part.lines, "row")
    return ChartBlock(
        part=part.name,
        heading=say("chart.heading", part=part.name),
        anchor=f"{prefix}chart-of-{index + 1}",
        about=say(f"chart.about-{kind}s"),
        sheets=chart_sheets(drawing, f"{prefix}chart-{index}", medium, say, opens),
        row_label=say(f"chart.{kind}"),
        rows=word_rows(piece, index, f"{prefix}row-{index + 1}", kind if medium is SCREEN else ""),
        files=chart_links(piece, index, prefix) if medium is SCREEN else (),
        apart=f"{prefix}words-of-{index + 1}" if medium in (PRINT, LARGE) else "",
    )


def word_rows(piece: Piece, index: int, mark: str = "row", kind: str = "") -> tuple[WordRow, ...]:
    """A part's rows or strands in order of working, the beads of each in order of picking up.

    Of a rope, its stitches. Rows that follow each other and are alike stand once: `3–16`. Boxes to tick are
    called `MARK-NUMBER`; `kind` is what a line is called in their labels, empty where none is wanted.
    """
    lines = piece.path.parts[index].lines
    rows: dict[int, list[Bead]] = {}
    stitches = 0
    for step in piece.path.steps:
        added = [piece.path.beads[bead] for bead in step.picks if piece.path.beads[bead].part == index]
        stitches += bool(added)
        for bead in added:
            rows.setdefault(stitches if lines == "turns" else bead.row, []).append(bead)
    across = lines == "rows"
    if across:
        rows = {number: _in_line(row) for number, row in rows.items()}
    written = [
        ("".join(bead.letter for bead in row), _side(piece, row) if across else "", number)
        for number, row in sorted(rows.items())
    ]
    made = []
    for (letters, side), alike in groupby(written, key=itemgetter(0, 1)):
        numbers = [number for *_, number in alike]
        span, beads = _span(numbers), runs(piece.pattern, letters)
        tick = piece.words.text(f"chart.tick-{kind}", number=span) if kind else ""
        made.append(WordRow(span, beads, str(len(letters)), side, f"{mark}-{numbers[0]}", tick))
    return tuple(made)


def _span(numbers: Sequence[int]) -> str:
    return str(numbers[0]) if len(numbers) == 1 else f"{numbers[0]}–{numbers[-1]}"


def _in_line(row: list[Bead]) -> list[Bead]:
    """A straight row from the side it is begun at; beads beyond that edge may be picked up last."""
    if len(row) < 2 or row[0].x == row[1].x or len({bead.angle for bead in row}) > 1:
        return row
    return sorted(row, key=lambda bead: bead.x, reverse=row[1].x < row[0].x)


def _side(piece: Piece, row: Sequence[Bead]) -> str:
    """Which side a straight row begins at, as the piece hangs; empty where it has none."""
    if row[0].x == row[-1].x or len({bead.angle for bead in row}) > 1:
        return ""
    return piece.words.text("chart.from-left" if row[0].x < row[-1].x else "chart.from-right")


def steps_block(piece: Piece, section: TableSection, anchor: str, medium: Medium) -> StepsBlock:
    """A part's step table; its drawings share one scale: a bead stays the same size from step to step.

    A drawing that is far too large for that is shown smaller by itself, and does not shrink the others.
    """
    scale = _step_scale([drawing for row in section.rows for drawing in row.drawings], medium)
    shared = shared_words(section.rows)
    told = {number for words in shared.values() for one in words for number in one.rows}
    see_at = {row.number: f"{anchor}-{row.drawn_at[-1]}" for row in section.rows if row.drawn_at}
    if medium is SCREEN:
        see_at = {}
    return StepsBlock(
        part=section.part,
        heading=piece.words.text("steps.heading", part=section.part),
        anchor=anchor,
        rows=tuple(
            replace(
                _step(piece, said, f"{anchor}-{row.number}", scale, medium),
                before=tuple(_shared(piece, words, see_at) for words in shared.get(row.number, ())),
                see="" if row.number in told else row.see,
                see_at=see_at.get(row.number, ""),
            )
            for row in section.rows
            for said in [replace(row, sentences=()) if row.number in told else row]
        ),
    )


def _shared(piece: Piece, words: SharedWords, see_at: Mapping[int, str]) -> SharedLine:
    first, last = words.rows[0], words.rows[-1]
    steps = piece.words.text("steps.range", first=first, last=last)
    if last - first >= len(words.rows):
        *most, last_named = map(str, words.rows)
        steps = piece.words.text("steps.list", most=", ".join(most), last=last_named)
    numbers = " ".join(map(str, words.rows))
    return SharedLine(steps, numbers, words.sentences, words.see, see_at.get(first, ""))


def _step_scale(drawings: Sequence[Drawing], medium: Medium) -> float:
    """The scale that a part's steps share; in large print the one that every letter can be read at."""
    if medium is LARGE:
        smallest = min(filter(None, map(smallest_text, drawings)), default=math.inf)
        return max(medium.step_scale, ROUNDED * LEAST_TEXT[LARGE.name] / (MOST_GROWTH * smallest))
    fits = (_fit(drawing, medium.step) for drawing in drawings)
    return min([medium.step_scale, *(fit for fit in fits if fit >= LEAST_SHARE * medium.step_scale)])


def _step_room(drawing: Drawing, scale: float, medium: Medium) -> tuple[float, float]:
    """The room of a step's drawing: higher than usual where it would go without letters otherwise."""
    text = smallest_text(drawing) * MOST_GROWTH
    least = LEAST_TEXT.get(medium.name, 0.0)
    room = (min(medium.beside_mm, medium.step[0]), medium.tall_step_mm)
    if medium.tall_step_mm and text * min(scale, _fit(drawing, medium.step)) < least:
        return room if text * min(scale, _fit(drawing, room)) >= least else medium.step
    return medium.step


def _loses_letters(drawing: Drawing, scale: float, medium: Medium) -> bool:
    """Whether a step's drawing is shown without some of its letters or numbers."""
    shown = min(scale, _fit(drawing, _step_room(drawing, scale, medium)))
    least = LEAST_TEXT.get(medium.name, 0.0)
    return bool(least) and len(legible(drawing, least / shown).calls) < len(drawing.calls)


def _high(row: TableRow, drawn_mm: float) -> float:
    """About how high a row of large print will be, its drawings being so high."""
    words = [*row.notes, *row.sentences]
    lines = sum(math.ceil(len(one) / LINE_LETTERS) for one in words) + len(row.pick_up) // LINE_RUNS
    return drawn_mm + lines * LINE_MM + len(words) * GAP_MM + HEAD_MM


def _step(piece: Piece, row: TableRow, uid: str, scale: float, medium: Medium) -> StepRow:
    strip = None
    rooms = [_step_room(drawing, scale, medium) for drawing in row.drawings]
    fits = [min(scale, _fit(*fit)) for fit in zip(row.drawings, rooms, strict=True)]
    above = any(one.width_mm * fit > medium.beside_mm for one, fit in zip(row.drawings, fits, strict=True))
    high = [one.height_mm * fit for one, fit in zip(row.drawings, fits, strict=True)]
    unlettered = any(_loses_letters(drawing, scale, medium) for drawing in row.drawings)
    least = LEAST_TEXT.get(medium.name, 0.0)
    if row.strip is not None and medium is not LARGE:
        largest = STRIP_SHARE * medium.step_scale
        strip = Figure(fitted(row.strip, f"{uid}-0", medium.strip, largest)[0], "")
    return StepRow(
        number=str(row.number),
        label=row.label,
        mark=uid,
        tick=piece.words.text("steps.tick", number=row.number),
        pick_up=tuple(chip(piece.pattern, count, letter) for count, letter in row.pick_up),
        figures=tuple(
            Figure(fitted(drawing, f"{uid}-{place}", room, scale, least)[0], "")
            for place, (drawing, room) in enumerate(zip(row.drawings, rooms, strict=True), 1)
        ),
        strip=strip,
        across=medium is LARGE or strip is not None or len(row.sentences) > MANY,
        see=row.see,
        drawn_at=str(row.drawn_at[-1]) if row.drawn_at else "",
        sentences=row.sentences,
        notes=row.notes,
        before=(),
        beads=str(row.beads_so_far),
        thread=Quantities(piece.words).both_threads(row.thread_mm),
        above=above,
        long=medium is LARGE and _high(row, sum(high) if above else 0.0) > WHOLE_MM,
        unlettered=piece.words.text("steps.unlettered") if unlettered else "",
    )
