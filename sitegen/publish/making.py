"""A pattern's body, charts and step table -> the blocks of its making, in the order they are read."""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup

from sitegen.draw.pens import Drawing
from sitegen.model.source import Aside, ChartHere, Prose, StepsHere
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
    Medium,
    ProseBlock,
    StepRow,
    StepsBlock,
    WordRow,
)

STRANDS = "fringe"
"""The stitch whose rows are strands."""
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
    return tuple(_Making(piece, medium).blocks())


class _Making:
    """Places each chart and each step table exactly once."""

    def __init__(self, piece: Piece, medium: Medium) -> None:
        self.piece = piece
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
            yield chart_block(self.piece, index, drawing, self.medium)

    def steps(self, part: str) -> Iterator[Block]:
        """A part's step table, with its chart before it unless the text places that elsewhere."""
        if part not in self.charted:
            yield from self.chart(part)
        if part in self.sections:
            self.author.restart()
            yield steps_block(self.piece, self.sections[part], self.parts.index(part), self.medium)


def chart_block(piece: Piece, index: int, drawing: Drawing, medium: Medium) -> ChartBlock:
    """A part's drawn chart and the same rows as word charts."""
    say, part = piece.words.text, piece.path.parts[index]
    kind = "strand" if part.stitch == STRANDS else "row"
    svg, _ = fitted(drawing, f"chart-{index}", medium.chart, LARGEST_CHART)
    return ChartBlock(
        part=part.name,
        heading=say("chart.heading", part=part.name),
        about=say(f"chart.about-{kind}s"),
        figure=Figure(svg, drawing.title),
        row_label=say(f"chart.{kind}"),
        rows=word_rows(piece, index),
    )


def word_rows(piece: Piece, index: int) -> tuple[WordRow, ...]:
    """A part's rows or strands in order of working; beads from the left, or from the top of a strand."""
    rows: dict[int, list[tuple[int, str]]] = {}
    for bead in piece.path.beads:
        if bead.part == index:
            rows.setdefault(bead.row, []).append((bead.place, bead.letter))
    return tuple(
        WordRow(
            str(number),
            runs(piece.pattern, (letter for _, letter in sorted(rows[number]))),
            str(len(rows[number])),
        )
        for number in sorted(rows)
    )


def steps_block(piece: Piece, section: TableSection, index: int, medium: Medium) -> StepsBlock:
    """A part's step table; its drawings share one scale: a bead stays the same size from step to step."""
    scale = min([medium.step_scale, *(_fit(row.drawing, medium.step) for row in section.rows)])
    return StepsBlock(
        part=section.part,
        heading=piece.words.text("steps.heading", part=section.part),
        anchor=f"steps-{index + 1}",
        rows=tuple(_step(piece, row, scale) for row in section.rows),
    )


def _step(piece: Piece, row: TableRow, scale: float) -> StepRow:
    return StepRow(
        number=str(row.number),
        label=row.label,
        tick=piece.words.text("steps.tick", number=row.number),
        pick_up=tuple(chip(piece.pattern, count, letter) for count, letter in row.pick_up),
        figure=Figure(Markup(row.drawing.svg(f"step-{row.number}", scale)), ""),
        sentences=row.sentences,
        notes=row.notes,
        beads=str(row.beads_so_far),
        thread=Quantities(piece.words).metres(row.thread_mm),
    )
