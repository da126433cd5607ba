"""Problems and the texts they stand in -> the message an author reads."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Mapping

from sitegen.model.codes import CODES
from sitegen.model.location import Location
from sitegen.model.problem import Problem, Severity
from sitegen.read.faults import counted

WIDEST = 100
"""Characters of source shown at most; a longer line is cut around the caret."""
MOST_TOLD = 1_000
"""Problems told in one run."""
LONGEST = 200
"""Characters of one value within a sentence."""
_TAB = 4
_PAINT = {
    "fault": "\x1b[1;31m",
    "advice": "\x1b[1;33m",
    "caret": "\x1b[31m",
    "dim": "\x1b[2m",
    "off": "\x1b[0m",
}


def severity(problem: Problem) -> Severity:
    """How much the problem matters."""
    return CODES[problem.code].severity


def tell(problems: Iterable[Problem], texts: Mapping[str, str], colour: bool = False) -> str:
    """Every problem with its source line, by file, line and column, each once; a count ends it.

    `texts` maps files, as locations name them, to their text with LF line ends. Without problems the
    result is empty. `colour` paints for a terminal.
    """
    lines = {file: text.split("\n") for file, text in texts.items()}
    ordered = sorted(problems, key=lambda problem: (problem.where, problem.code))
    told = {_one(problem, lines, colour): problem for problem in ordered[:MOST_TOLD]}
    if not told:
        return ""
    more = len(ordered) - MOST_TOLD
    rest = [f"{more} more are not shown: mend these first.\n"] if more > 0 else []
    return "\n".join([*told, *rest, _count(list(told.values()))]) + "\n"


def _one(problem: Problem, lines: Mapping[str, list[str]], colour: bool) -> str:
    code, where = CODES[problem.code], problem.where
    kind = code.severity.value
    values = {name: _shown(str(value)) for name, value in problem.values.items()}
    place = _shown(str(where) if where.line else where.file)
    source = lines.get(where.file, [])
    told = [f"{place}: {_painted(kind, kind, colour)} {problem.code}"]
    if 1 <= where.line <= len(source):
        told += _excerpt(source[where.line - 1], where, colour)
    told.append("  " + code.message.format_map(values))
    told.append(f"  {_painted('remedy:', 'dim', colour)} " + code.remedy.format_map(values))
    return "\n".join(told) + "\n"


def _painted(text: str, paint: str, colour: bool) -> str:
    return f"{_PAINT[paint]}{text}{_PAINT['off']}" if colour else text


def _shown(text: str) -> str:
    """A value fit for a sentence: short, on one line, without characters that would steer a terminal."""
    short = text if len(text) <= LONGEST else text[: LONGEST - 1] + "…"
    return "".join(sign if sign.isprintable() else " " if sign.isspace() else "?" for sign in short)


def _excerpt(line: str, where: Location, colour: bool) -> list[str]:
    """The source line behind its number, and carets under the value."""
    start = where.column - 1
    first = max(0, start - WIDEST // 2) if len(line) > WIDEST else 0
    cells = [_cell(sign) for sign in line[first : first + WIDEST]]
    lead, tail = "…" if first else "", "…" if first + WIDEST < len(line) else ""
    before = (
        len(lead) + sum(map(_width, cells[: max(0, start - first)])) + max(0, start - max(first, len(line)))
    )
    under = sum(map(_width, cells[max(0, start - first) :][: where.length]))
    gutter, blank = f"{where.line:>5} | ", " " * 5 + " | "
    shown = (lead + "".join(cells) + tail).rstrip()
    caret = _painted("^" * max(1, under), "caret", colour)
    return [
        f"{_painted(gutter, 'dim', colour)}{shown}".rstrip(),
        f"{_painted(blank, 'dim', colour)}{' ' * before}{caret}",
    ]


def _cell(sign: str) -> str:
    """What is shown for a character of the source."""
    if sign == "\t":
        return " " * _TAB
    if sign.isprintable() or unicodedata.combining(sign):
        return sign
    return " " if sign.isspace() else "?"


def _width(cell: str) -> int:
    """Columns a terminal gives to what is shown."""
    return sum(
        0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1
        for sign in cell
    )


def _count(problems: list[Problem]) -> str:
    """`3 faults and 1 piece of advice in 2 files.`"""
    kinds = [severity(problem) for problem in problems]
    faults, advice = kinds.count(Severity.FAULT), kinds.count(Severity.ADVICE)
    parts = [counted(faults, "fault")] if faults else []
    if advice:
        parts.append(f"{advice} {'piece' if advice == 1 else 'pieces'} of advice")
    files = len({problem.where.file for problem in problems})
    return f"{' and '.join(parts)} in {counted(files, 'file')}."
