"""The text of a pattern source -> Pattern, and the problems met on the way."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import PurePath

from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, Pattern
from sitegen.read.body import note_html, read_body
from sitegen.read.chart import ChartBlock, read_chart
from sitegen.read.faults import Faults
from sitegen.read.fields import HEADER
from sitegen.read.hanging import with_rules
from sitegen.read.header import make_pattern
from sitegen.read.text import clean
from sitegen.read.walk import Got, walk_record
from sitegen.read.yaml_nodes import Entries, read_yaml

_DASHES = re.compile(r"---[ \t]*")


@dataclass(frozen=True, slots=True)
class Halves:
    """Header and body of a source, told apart."""

    header: str | None
    header_file: str
    header_line: int
    """Number of the header's first line in its file."""
    opening: Location
    """The place that stands for the header as a whole."""
    body: str
    body_line: int


def read_pattern(
    text: str, file: str, shop: Shop, header_text: str | None = None, header_file: str | None = None
) -> tuple[Pattern | None, list[Problem]]:
    """Read one pattern source.

    `text` is the Markdown file with its header; with `header_text` the header is a file of its own and
    `text` the body alone. Every problem is listed; the pattern is None only if its header cannot be
    understood. With problems the pattern holds what could be read, fit for being checked, not for weaving.
    """
    faults = Faults()
    text = clean(text, file, faults)
    if header_text is None:
        halves = split_source(text, file, faults)
    else:
        halves = _joined(
            text, file, clean(header_text, header_file or file, faults), header_file or file, faults
        )
    if halves is None:
        return None, faults.problems
    got = _header(halves, faults)
    pattern = None if got is None else make_pattern(got, PurePath(file).stem, file, shop, faults)
    names = None
    if pattern is not None and pattern.parts and all(part.name for part in pattern.parts):
        names = tuple(part.name for part in pattern.parts)
    body = read_body(halves.body, file, halves.body_line, names, faults)
    note_html(halves.body, file, halves.body_line, faults)
    if pattern is not None:
        pattern = replace(_with_charts(pattern, body.charts, faults), body=body.blocks)
        pattern = with_rules(pattern, faults)
    return pattern, faults.problems


def split_source(text: str, file: str, faults: Faults) -> Halves | None:
    """Cut a file with a header between two lines of dashes."""
    lines = text.split("\n")
    opening = Location(file, 1, 1, max(1, len(lines[0])))
    if not _DASHES.fullmatch(lines[0]):
        faults.add("header-missing", opening)
        return None
    end = next((n for n, line in enumerate(lines[1:], start=1) if _DASHES.fullmatch(line)), None)
    if end is None:
        faults.add("header-unclosed", opening)
        return None
    return Halves("\n".join(lines[1:end]), file, 2, opening, "\n".join(lines[end + 1 :]), end + 2)


def _joined(text: str, file: str, header: str, header_file: str, faults: Faults) -> Halves:
    """Put a body and the header from the file beside it together."""
    opening = Location(header_file, 1, 1)
    lines = text.split("\n")
    if _DASHES.fullmatch(lines[0]):
        faults.add("header-double", Location(file, 1, 1, len(lines[0])), other=header_file)
        end = next((n for n, line in enumerate(lines[1:], start=1) if _DASHES.fullmatch(line)), 0)
        return Halves(header, header_file, 1, opening, "\n".join(lines[end + 1 :]), end + 2)
    return Halves(header, header_file, 1, opening, text, 1)


def _header(halves: Halves, faults: Faults) -> Got | None:
    before = len(faults.problems)
    node = read_yaml(halves.header or "", halves.header_file, halves.header_line, faults)
    if node is None:
        if len(faults.problems) == before:
            required = ", ".join(field.name for field in HEADER.fields if field.required)
            faults.add("header-empty", halves.opening, keys=required)
        return None
    if isinstance(node, Entries):
        node = replace(node, where=halves.opening)
    return walk_record(node, HEADER, "what the pattern is, one `key: value` a line", faults)


def _with_charts(pattern: Pattern, blocks: Iterable[ChartBlock], faults: Faults) -> Pattern:
    """Give each part the chart drawn under its name."""
    charts: dict[str, Chart] = {}
    in_rows = {part.name for part in pattern.parts if part.at.keys() & {"rows", "rounds", "rope"}}
    for block in blocks:
        if block.name in in_rows:
            faults.add("chart-and-rows", block.where, name=block.name)
        elif block.name in charts:
            faults.add("chart-twice", block.where, name=block.name, line=charts[block.name].where.line)
        else:
            charts[block.name] = read_chart(block, faults)
    parts = tuple(replace(part, chart=charts.pop(part.name, part.chart)) for part in pattern.parts)
    return replace(pattern, parts=parts)
