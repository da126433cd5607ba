"""Measures -> the author's report, as one JSON object and as text for a terminal."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, Protocol

from sitegen.measure.difficulty import shown_points
from sitegen.model.measures import Measures
from sitegen.model.numbers import inches, plain
from sitegen.model.source import Pattern
from sitegen.model.thread import Phrase, ThreadPath
from sitegen.model.wordchart import compress
from sitegen.publish.bead_report import kind_rows, kinds_json

MOST_TIGHT = 12
"""Tight beads told one by one in the text; the JSON names all."""


class Speaker(Protocol):
    """Whatever turns a phrase into a sentence."""

    def say(self, phrase: Phrase) -> str:
        """The sentence."""
        ...


def measures_json(pattern: Pattern, path: ThreadPath, measures: Measures, words: Speaker) -> dict[str, Any]:
    """The report as plain data; lengths in mm to 0.1, masses in g to 0.01, `_in` as text to 1/16."""
    score, points = shown_points(measures.difficulty)
    reasons = zip(measures.difficulty.reasons, points, strict=True)
    return {
        "pattern": pattern.name,
        "title": pattern.title,
        "revision": pattern.revision,
        "makes": pattern.makes.value,
        "pieces": measures.pieces,
        "beads": _beads(measures),
        "bead_count": {"each": measures.bead_each, "total": measures.bead_total},
        "parts": _parts(measures),
        "size": {
            "width_mm": round(measures.width_mm, 1),
            "height_mm": round(measures.height_mm, 1),
            "width_in": inches(measures.width_mm),
            "height_in": inches(measures.height_mm),
        },
        "weight_g": round(measures.weight_g, 2),
        "thread": {
            "path_mm": round(measures.thread.path_mm, 1),
            "total_mm": round(measures.thread.total_mm, 1),
            "lengths": [
                {"cut_mm": length.cut_mm, "first_step": length.first_step, "last_step": length.last_step}
                for length in measures.thread.lengths
            ],
        },
        "passes": {"most": measures.passes.most, "beads_tight": len(measures.passes.tight)},
        "difficulty": {
            "score": score,
            "level": measures.difficulty.level,
            "reasons": [
                {"factor": reason.factor, "points": shown, "why": words.say(reason.why)}
                for reason, shown in reasons
            ],
        },
        "minutes": {"low": measures.minutes_low, "high": measures.minutes_high},
        "steps": _steps(path, measures),
        "drop_mm": None if measures.drop_mm is None else round(measures.drop_mm, 1),
        "comfort": measures.comfort,
        "remedy": words.say(measures.passes.remedy) if measures.passes.remedy else None,
        "tight_beads": [
            {**tight.spot.values, "passes": tight.passes, "allowed": tight.allowed, "step": tight.step}
            for tight in measures.passes.tight
        ],
        "bead_kinds": kinds_json(pattern, measures),
        "warps": _warps(measures),
    }


def _beads(measures: Measures) -> list[dict[str, Any]]:
    return [
        {
            "letter": line.letter,
            "name": line.name,
            "bead": line.bead,
            "hex": line.hex,
            "each": line.each,
            "total": line.total,
            "grams": round(line.grams, 2),
            "buy_grams": round(line.buy_grams, 2),
        }
        for line in measures.beads
    ]


def _parts(measures: Measures) -> list[dict[str, Any]]:
    return [
        {
            "name": part.name,
            "stitch": part.stitch,
            "beads": part.beads,
            "rows": part.rows,
            "width_mm": round(part.width_mm, 1),
            "height_mm": round(part.height_mm, 1),
            **({"strung_mm": round(part.strung_mm, 1)} if part.strung_mm else {}),
        }
        for part in measures.parts
    ]


def _warps(measures: Measures) -> list[dict[str, Any]]:
    return [
        {
            "part": line.part,
            "count": line.count,
            "each_mm": line.each_mm,
            "total_mm": line.total_mm,
            "edges_doubled": line.doubled,
        }
        for line in measures.warps
    ]


def _steps(path: ThreadPath, measures: Measures) -> list[dict[str, Any]]:
    return [
        {
            "number": step.number,
            "part": path.parts[step.part].name,
            "row": step.row,
            "pick_up": compress(path.beads[bead].letter for bead in step.picks),
            "beads_added": figures.beads_added,
            "thread_mm": round(figures.thread_mm, 1),
        }
        for step, figures in zip(path.steps, measures.steps, strict=True)
    ]


def measures_text(
    pattern: Pattern, measures: Measures, words: Speaker, row_of: Callable[[int], int] | None = None
) -> str:
    """The report as text in columns, without the steps; it ends with a line break.

    `row_of` turns a step of the thread path into its row of the printed step table; without it the steps
    are called stitches, as they are counted one by one.
    """
    sections = [_head(pattern, measures), _materials(measures), _kinds(pattern, measures)]
    sections += [_part_lines(measures)]
    sections += [_thread(measures, row_of), _holes(measures, words, row_of), _difficulty(measures, words)]
    return "\n\n".join(sections) + "\n"


def _head(pattern: Pattern, measures: Measures) -> str:
    title = f"{pattern.title} ({pattern.name}), revision {pattern.revision}"
    beads = f"{measures.bead_each} in one piece"
    if measures.pieces > 1:
        beads += f", {measures.bead_total} in all"
    weight = f"{plain(measures.weight_g)} g of beads in one piece"
    rows = [("Makes", pattern.makes.value), ("Beads", beads), ("Size", _size(measures))]
    if measures.drop_mm is not None:
        rows.append(("Drop", f"{plain(measures.drop_mm, 1)} mm, {inches(measures.drop_mm)} in"))
    rows.append(("Weight", f"{weight}; worn: {measures.comfort}" if measures.comfort else weight))
    time = f"{_clock(measures.minutes_low)} practised, {_clock(measures.minutes_high)} the first time"
    rows.append(("Time", time))
    return "\n".join([title, "=" * len(title), _columns(rows)])


def _size(measures: Measures) -> str:
    metric = f"{plain(measures.width_mm, 1)} x {plain(measures.height_mm, 1)} mm"
    return f"{metric}, {inches(measures.width_mm)} x {inches(measures.height_mm)} in"


def _clock(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest:02} min" if hours else f"{rest} min"


def _materials(measures: Measures) -> str:
    header = ("", "colour", "bead", "each", "in all", "grams", "buy")
    lines = [
        (
            line.letter,
            line.name,
            line.bead,
            str(line.each),
            str(line.total),
            f"{line.grams:.2f}",
            f"{plain(line.buy_grams)} g",
        )
        for line in measures.beads
    ]
    return _section("Materials", _columns([header, *lines], right=range(3, 7)))


def _kinds(pattern: Pattern, measures: Measures) -> str:
    rows = kind_rows(pattern, measures)
    title = "Beads reckoned with; in brackets, how far the sources lie apart"
    return _section(title, _columns(rows, right=range(1, 5)))


def _part_lines(measures: Measures) -> str:
    header = ("", "stitch", "beads", "rows", "width mm", "height mm")
    lines = [
        (
            part.name,
            part.stitch,
            str(part.beads),
            str(part.rows),
            f"{part.width_mm:.1f}",
            f"{part.height_mm:.1f}",
        )
        for part in measures.parts
    ]
    return _section("Parts", _columns([header, *lines], right=range(2, 6)))


def _step(number: int, row_of: Callable[[int], int] | None) -> str:
    return str(row_of(number) if row_of else number)


def _thread(measures: Measures, row_of: Callable[[int], int] | None) -> str:
    thread = measures.thread
    total = f"{thread.path_mm / 1000:.2f} m worked, {thread.total_mm / 1000:.2f} m with tails"
    cuts = [
        (
            f"length {number}",
            f"{length.cut_mm / 1000:.2f} m",
            f"{'steps' if row_of else 'stitches'} {_step(length.first_step, row_of)}"
            f"-{_step(length.last_step, row_of)}",
        )
        for number, length in enumerate(thread.lengths, 1)
    ]
    cuts += [
        (f"warps, {line.part}", f"{line.each_mm / 1000:.2f} m", f"{line.count} of them")
        for line in measures.warps
    ]
    return _section("Thread for one piece", f"  {total}\n{_columns(cuts)}".rstrip())


def _holes(measures: Measures, words: Speaker, row_of: Callable[[int], int] | None) -> str:
    holes = measures.passes
    lines = [f"  at most {holes.most} passes through a bead"]
    if holes.tight:
        first = min(holes.tight, key=lambda tight: tight.step)
        beads = "1 bead has" if len(holes.tight) == 1 else f"{len(holes.tight)} beads have"
        kind, number = "step" if row_of else "stitch", _step(first.step, row_of)
        lines.append(f"  {beads} more passes than fit, first at {kind} {number}, where {first.allowed} fit")
    for tight in holes.tight[:MOST_TIGHT]:
        where = f"from {'step' if row_of else 'stitch'} {_step(tight.step, row_of)}"
        lines.append(f"  - {words.say(tight.spot)}: {tight.passes} passes, {tight.allowed} fit, {where}")
    if len(holes.tight) > MOST_TIGHT:
        lines.append(f"  - and {len(holes.tight) - MOST_TIGHT} more")
    if holes.remedy:
        lines.append(f"  {words.say(holes.remedy)}")
    return _section("Holes", "\n".join(lines))


def _difficulty(measures: Measures, words: Speaker) -> str:
    score, points = shown_points(measures.difficulty)
    rows = [
        (f"{shown:.1f}", words.say(reason.why))
        for reason, shown in zip(measures.difficulty.reasons, points, strict=True)
    ]
    title = f"Difficulty {score:.1f} of 100: {measures.difficulty.level}"
    return _section(title, _columns(rows, right=(0,)))


def _section(title: str, body: str) -> str:
    return "\n".join([title, "-" * len(title), body])


def _columns(rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> str:
    """Rows set in columns two blanks apart; `right` names the columns that end flush."""
    widths = [max(map(len, cells)) for cells in zip(*rows, strict=True)]
    lines = []
    for row in rows:
        cells = (
            cell.rjust(width) if index in right else cell.ljust(width)
            for index, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        lines.append(("  " + "  ".join(cells)).rstrip())
    return "\n".join(lines)
