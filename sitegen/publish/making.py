"""A pattern's body, charts and step table -> the blocks of its making, in the order they are read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from operator import itemgetter

from markupsafe import Markup

from sitegen.draw.legend import LOOM_SIGNS, SIGNS, sign
from sitegen.draw.pens import Drawing
from sitegen.model.source import Aside, ChartHere, Prose, StepsHere
from sitegen.model.thread import Bead
from sitegen.publish.chips import chip, runs
from sitegen.publish.markdown import Author
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.table import TableRow, TableSection
from sitegen.publish.view import (
    AsideBlock,
    Block,
    ChartBlock,
    Figure,
    LegendBlock,
    Medium,
    ProseBlock,
    StepRow,
    StepsBlock,
    WordRow,
)

LINE_NAMES = {"strands": "strand", "loops": "strand", "rounds": "round", "edging": "line", "string": "line"}
"""What the lines of a part are -> what its chart calls each; any other is a row."""
LARGEST_CHART = 3.2
"""A chart is drawn this many times its true size where there is room, so that its letters can be read."""


def fitted(drawing: Drawing, uid: str, room: tuple[float, float], largest: float) -> tuple[Markup, float]:
    """A drawing as large as its room (width, height in mm) allows, at most `largest` times; and the scale."""
    scale = min(largest, _fit(drawing, room))
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
    first = next((place for place, block in enumerate(made) if isinstance(block, StepsBlock)), len(made))
    made[first:first] = _before_steps(piece, medium)
    if piece.second is not None:
        say = piece.words.text
        text = Markup("<h3>{}</h3><p>{}</p>").format(say("second.heading"), say("second.about"))
        made.append(ProseBlock(text))
        other = _Making(piece.second, medium, "second-")
        made += [block for part in other.parts for block in (*other.chart(part), *other.rows(part))]
    return tuple(made)


def _before_steps(piece: Piece, medium: Medium) -> list[Block]:
    """What a maker must know before the first step: how many pieces, and the signs in the drawings."""
    say = piece.words.text
    before: list[Block] = []
    if piece.pattern.makes.pieces > 1:
        key = "pair.mirrored" if piece.second is not None else "pair.twice"
        before.append(ProseBlock(Markup("<p>{}</p>").format(say(key))))
    signs = tuple(
        (
            Markup(sign(name, say(f"legend.{name}")).svg(f"sign-{name}", medium.step_scale)),
            say(f"legend.{name}"),
        )
        for name in _signs(piece)
    )
    return [*before, LegendBlock(say("legend.heading"), signs)]


def _signs(piece: Piece) -> list[str]:
    """The signs that occur in the piece's drawings."""
    signs = LOOM_SIGNS if piece.path.warps else SIGNS
    bridged = any(move.bridge is not None for move in piece.path.moves)
    return [name for name in signs if bridged or name != "bridge"]


class _Making:
    """Places each chart and each step table exactly once."""

    def __init__(self, piece: Piece, medium: Medium, prefix: str = "") -> None:
        self.piece = piece
        self.prefix = prefix
        self.medium = medium
        self.author = Author()
        self.parts = [part.name for part in piece.path.parts]
        self.sections = {section.part: section for section in piece.table}
        body = piece.pattern.body
        self.charted = {block.part for block in body if isinstance(block, ChartHere)}
        self.stepped = {block.part for block in body if isinstance(block, StepsHere)}

    def blocks(self) -> Iterator[Block]:
        """Every block in reading order."""
        for block in self.piece.pattern.body:
            if isinstance(block, Prose):
                yield ProseBlock(self.author.html(block.text))
            elif isinstance(block, Aside):
                label = self.piece.words.text(f"aside.{block.kind}")
                yield AsideBlock(label, self.author.html(block.text))
            elif isinstance(block, ChartHere):
                yield from self.chart(block.part)
            else:
                yield from self.steps(block.part)
        for part in self.parts:
            if part not in self.stepped:
                yield from self.steps(part)

    def chart(self, part: str) -> Iterator[Block]:
        """A part's chart, if it is woven and so has one."""
        if part not in self.parts:
            return
        index = self.parts.index(part)
        drawing = self.piece.charts[index]
        if drawing is not None:
            self.author.restart()
            yield chart_block(self.piece, index, drawing, self.medium, self.prefix)

    def steps(self, part: str) -> Iterator[Block]:
        """A part's step table, with its chart before it unless the text places that elsewhere."""
        if part not in self.charted:
            yield from self.chart(part)
        yield from self.rows(part)

    def rows(self, part: str) -> Iterator[Block]:
        """A part's step table alone."""
        if part in self.sections:
            self.author.restart()
            place = f"{self.prefix}steps-{self.parts.index(part) + 1}"
            yield steps_block(self.piece, self.sections[part], place, self.medium)


def chart_block(piece: Piece, index: int, drawing: Drawing, medium: Medium, prefix: str = "") -> ChartBlock:
    """A part's drawn chart and the same rows as word charts."""
    say, part = piece.words.text, piece.path.parts[index]
    kind = LINE_NAMES.get(part.lines, "row")
    svg, _ = fitted(drawing, f"{prefix}chart-{index}", medium.chart, LARGEST_CHART)
    return ChartBlock(
        part=part.name,
        heading=say("chart.heading", part=part.name),
        about=say(f"chart.about-{kind}s"),
        figure=Figure(svg, drawing.title),
        row_label=say(f"chart.{kind}"),
        rows=word_rows(piece, index),
    )


def word_rows(piece: Piece, index: int) -> tuple[WordRow, ...]:
    """A part's rows or strands in order of working, the beads of each in order of picking up.

    Rows that follow each other and are alike stand once: `3–16`.
    """
    rows: dict[int, list[Bead]] = {}
    for step in piece.path.steps:
        for bead in step.picks:
            if piece.path.beads[bead].part == index:
                rows.setdefault(piece.path.beads[bead].row, []).append(piece.path.beads[bead])
    across = piece.path.parts[index].lines == "rows"
    if across:
        rows = {number: _in_line(row) for number, row in rows.items()}
    written = [
        ("".join(bead.letter for bead in row), _side(piece, row) if across else "", number)
        for number, row in sorted(rows.items())
    ]
    return tuple(
        WordRow(
            _span([number for *_, number in alike]), runs(piece.pattern, letters), str(len(letters)), side
        )
        for (letters, side), alike in groupby(written, key=itemgetter(0, 1))
    )


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
    """A part's step table; its drawings share one scale: a bead stays the same size from step to step."""
    scale = min([medium.step_scale, *(_fit(row.drawing, medium.step) for row in section.rows)])
    return StepsBlock(
        part=section.part,
        heading=piece.words.text("steps.heading", part=section.part),
        anchor=anchor,
        rows=tuple(_step(piece, row, scale, anchor) for row in section.rows),
    )


def _step(piece: Piece, row: TableRow, scale: float, anchor: str) -> StepRow:
    return StepRow(
        number=str(row.number),
        label=row.label,
        tick=piece.words.text("steps.tick", number=row.number),
        pick_up=tuple(chip(piece.pattern, count, letter) for count, letter in row.pick_up),
        figure=Figure(Markup(row.drawing.svg(f"{anchor}-{row.number}", scale)), ""),
        sentences=row.sentences,
        notes=row.notes,
        beads=str(row.beads_so_far),
        thread=Quantities(piece.words).metres(row.thread_mm),
    )
