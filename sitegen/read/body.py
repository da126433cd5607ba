"""The Markdown body -> its blocks in order and the charts drawn in it, or problems.

A photo is an image alone in its paragraph. Lines that begin with three colons are ours: `::: steps PART`
and `::: chart PART` place something and stand alone; `::: note`, `::: tip` and `::: caution` set off the
lines up to a closing `:::`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from markdown_it import MarkdownIt
from markdown_it.token import Token

from sitegen.model.location import Location
from sitegen.model.source import Aside, Block, ChartHere, Prose, StepsHere
from sitegen.read.chart import ChartBlock
from sitegen.read.faults import Faults, hint
from sitegen.read.photo_marks import PlacedPhoto, photos_in

ASIDES = ("note", "tip", "caution")
"""What may be set off from the text."""
PLACED = ("steps", "chart")
"""What may be placed in the text."""

_MARK = re.compile(r" {0,3}:::(?!:) *(?P<name>\S*)(?: +(?P<rest>.*\S))? *")
_FENCE = re.compile(r" {0,3}(?P<fence>`{3,}|~{3,}) *chart(?:\s+(?P<name>\S.*?))?\s*")
_ANY_FENCE = re.compile(r"\s*(?:>\s*)*(?P<fence>`{3,}|~{3,})")


@dataclass(frozen=True, slots=True)
class Body:
    """The body, read."""

    blocks: tuple[Block, ...]
    charts: tuple[ChartBlock, ...]


def read_body(text: str, file: str, first_line: int, parts: tuple[str, ...] | None, faults: Faults) -> Body:
    """Split a body into blocks.

    `first_line` is the number its first line has in `file`; `parts` are the names of the parts, None if
    they are not known because the header could not be read: then names are not checked.
    """
    reader = _Reader(text, file, first_line, parts, faults)
    reader.read()
    return Body(tuple(reader.blocks), tuple(reader.charts))


@dataclass(slots=True)
class _OpenAside:
    kind: str
    where: Location
    first: int


class _Reader:
    def __init__(
        self, text: str, file: str, first_line: int, parts: tuple[str, ...] | None, faults: Faults
    ) -> None:
        self.lines, self.file, self.first_line = text.split("\n"), file, first_line
        self.parts, self.faults = parts, faults
        self.blocks: list[Block] = []
        self.charts: list[ChartBlock] = []
        self.placed: dict[tuple[str, str], int] = {}
        self.aside: _OpenAside | None = None
        self.prose_from = 0
        self.fences, self.code = self.scan(text)
        self.photos = self.scan_photos()

    def scan(self, text: str) -> tuple[dict[int, Token], set[int]]:
        """The fences at the left edge by their first line, and all lines that are code."""
        fences: dict[int, Token] = {}
        code: set[int] = set()
        for token in MarkdownIt("commonmark", {"html": False}).parse(text):
            if token.type not in ("fence", "code_block") or token.map is None:
                continue
            first, past = token.map
            code.update(range(first, past))
            if token.type != "fence":
                continue
            if token.level == 0:
                fences[first] = token
            elif token.info.split()[:1] == ["chart"]:
                self.faults.add("chart-inside", self.place(first), inside="a list or a quotation")
        return fences, code

    def scan_photos(self) -> Mapping[int, PlacedPhoto]:
        """The photos by their first line; a line of colons ends a paragraph as a blank one does."""
        marked = (number not in self.code and _MARK.fullmatch(line) for number, line in enumerate(self.lines))
        lines = ["" if mark else line for mark, line in zip(marked, self.lines, strict=True)]
        return photos_in(lines, self.file, self.first_line, self.faults)

    def place(self, line: int, column: int = 0, length: int | None = None) -> Location:
        """A place by line and column from 0; without a length, the rest of the line."""
        rest = len(self.lines[line].rstrip()) - column
        return Location(
            self.file, self.first_line + line, column + 1, max(1, rest if length is None else length)
        )

    def read(self) -> None:
        for number, line in enumerate(self.lines):
            if number in self.fences:
                self.take_fence(number, self.fences[number])
            elif number in self.photos:
                self.take_photo(number, self.photos[number])
            elif number not in self.code and (mark := _MARK.fullmatch(line)):
                self.take_mark(number, mark)
            elif number not in self.code and line.lstrip().startswith("::::"):
                self.fault_unknown(self.place(number, len(line) - len(line.lstrip())), line.strip())
        if self.aside is not None:
            self.faults.add("mark-unclosed", self.aside.where, name=self.aside.kind)
        self.end_prose(len(self.lines))

    def take_fence(self, number: int, token: Token) -> None:
        assert token.map is not None
        past = token.map[1]
        closed = self.closed(token, past)
        chart = _FENCE.fullmatch(self.lines[number])
        if not closed:
            fence = _ANY_FENCE.match(self.lines[number])
            length = len(fence[0]) if fence else 3
            self.faults.add("fence-unclosed", self.place(number, 0, length), fence=token.markup)
        if chart is None:
            return
        if self.aside is not None:
            self.faults.add("chart-inside", self.place(number), inside=f"`::: {self.aside.kind}`")
        else:
            self.end_prose(number)
            self.prose_from = past
        if not chart["name"]:
            example = self.parts[0] if self.parts else "Fan"
            self.faults.add("chart-nameless", self.place(number), example=example)
            return
        where = self.place(number, chart.start("name"), len(chart["name"]))
        inner = range(number + 1, past - 1 if closed else past)
        lines = tuple((self.first_line + n, self.lines[n]) for n in inner)
        self.charts.append(ChartBlock(chart["name"], lines, where, closed))
        if self.known(chart["name"], where, "chart-part-unknown"):
            drawn = any(block.name == chart["name"] for block in self.charts[:-1])
            self.put("chart", chart["name"], where, noting=not drawn)

    def take_photo(self, number: int, placed: PlacedPhoto) -> None:
        if self.aside is not None:
            self.faults.add("photo-place", placed.photo.at[""])
            return
        self.end_prose(number)
        self.prose_from = placed.past
        self.blocks.append(placed.photo)

    def closed(self, token: Token, past: int) -> bool:
        assert token.map is not None
        if past - token.map[0] < 2:
            return False
        last = self.lines[past - 1].strip()
        return len(last) >= len(token.markup) and set(last) == {token.markup[0]}

    def take_mark(self, number: int, mark: re.Match[str]) -> None:
        name, rest = mark["name"], mark["rest"] or ""
        if not name:
            self.close(number, mark)
            return
        where = self.place(number, mark.start("name"), len(name))
        if name in PLACED:
            self.interrupt(number)
            self.prose_from = number + 1
            if not rest:
                self.faults.add("mark-part", where, name=name, hint=hint("", self.parts or ()))
                return
            spot = self.place(number, mark.start("rest"), len(rest))
            if self.known(rest, spot, "part-unknown"):
                self.put(name, rest, spot)
        elif name in ASIDES:
            self.interrupt(number)
            if rest:
                spot = self.place(number, mark.start("rest"), len(rest))
                self.faults.add("mark-extra", spot, name=name, extra=rest)
            self.aside = _OpenAside(name, where, number + 1)
        else:
            self.fault_unknown(where, name)

    def fault_unknown(self, where: Location, name: str) -> None:
        self.faults.add("mark-unknown", where, name=name, hint=hint(name, ASIDES + PLACED))

    def interrupt(self, number: int) -> None:
        """Something new begins: prose ends, and an aside should have ended."""
        if self.aside is not None:
            self.faults.add("mark-unclosed", self.aside.where, name=self.aside.kind)
            self.aside = None
        else:
            self.end_prose(number)

    def close(self, number: int, mark: re.Match[str]) -> None:
        if self.aside is None:
            kinds = ", ".join(f"`{kind}`" for kind in ASIDES)
            self.faults.add("mark-stray", self.place(number, mark[0].index(":")), kinds=kinds)
            return
        text = _trimmed(self.lines[self.aside.first : number])
        if not text:
            self.faults.add("mark-empty", self.aside.where, name=self.aside.kind)
        self.blocks.append(Aside(self.aside.kind, text, self.aside.where))
        self.aside = None
        self.prose_from = number + 1

    def known(self, name: str, where: Location, code: str) -> bool:
        if self.parts is None or name in self.parts:
            return True
        self.faults.add(code, where, name=name, hint=hint(name, self.parts))
        return False

    def put(self, what: str, name: str, where: Location, *, noting: bool = True) -> None:
        """Place a chart or steps; a second time is noted (two drawn charts are noted as such elsewhere)."""
        before = self.placed.setdefault((what, name), where.line)
        if before != where.line:
            if noting:
                self.faults.add("placed-twice", where, what=what, name=name, line=before)
            return
        self.blocks.append(StepsHere(name, where) if what == "steps" else ChartHere(name, where))

    def end_prose(self, past: int) -> None:
        lines = self.lines[self.prose_from : past]
        first = next((n for n, line in enumerate(lines, self.prose_from) if line.strip()), None)
        self.prose_from = past
        if first is not None and self.aside is None:
            self.blocks.append(Prose(_trimmed(lines), self.place(first)))


def _trimmed(lines: Iterable[str]) -> str:
    """The lines as text, without blank lines at either end."""
    return re.sub(r"\A(?:[ \t]*\n)+|\s+\Z", "", "\n".join(lines))


def note_html(text: str, file: str, first_line: int, faults: Faults) -> None:
    """Tell the author about raw HTML in a body, which is shown and not carried out."""
    lines = text.split("\n")
    for (first, past), content in _html(text):
        tag = content.strip().split("\n")[0]
        for number, line in enumerate(lines[first:past], start=first):
            if (column := line.find(tag)) >= 0:
                faults.add("html-shown", Location(file, first_line + number, column + 1, len(tag)), tag=tag)
                break


def _html(text: str) -> Iterator[tuple[list[int], str]]:
    """The lines and the text of each piece of HTML."""
    for token in MarkdownIt("commonmark", {"html": True}).parse(text):
        if token.map is None:
            continue
        if token.type == "html_block":
            yield token.map, token.content
        for child in token.children or ():
            if child.type == "html_inline" and not child.content.startswith("</"):
                yield token.map, child.content
