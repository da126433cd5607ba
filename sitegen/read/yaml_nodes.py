"""YAML text -> a tree of nodes that know their place, or problems.

The C parser's events are put together here, not by the library's own composer: so aliases, tags and
duplicate keys are seen where they stand, and no value is turned into a type behind the author's back.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from sitegen.model.location import Location
from sitegen.read.faults import Faults
from sitegen.read.text import hidden

DEEPEST = 20
"""Levels of records and lists inside each other."""


@dataclass(frozen=True, slots=True)
class Scalar:
    """A single value, as raw text."""

    text: str
    plain: bool
    """Written without quotes."""
    where: Location
    """The text without its quotes."""
    exact: bool
    """The characters at `where` are the text, one for one."""

    @property
    def empty(self) -> bool:
        """Whether nothing at all was written, or one of YAML's words for nothing."""
        return self.plain and self.text in ("", "~", "null", "Null", "NULL")


@dataclass(frozen=True, slots=True)
class Items:
    """A list."""

    nodes: tuple[Node, ...]
    where: Location


@dataclass(frozen=True, slots=True)
class Entries:
    """A record: keys with their values, in order."""

    pairs: tuple[tuple[Scalar, Node], ...]
    where: Location


@dataclass(frozen=True, slots=True)
class Damaged:
    """What stands for a value whose problem is noted already."""

    where: Location


Node = Scalar | Items | Entries | Damaged

_KEYED = re.compile(r"\s*(- )?[A-Za-z]\w*:\s")
_WHOLE = re.compile(r"[-+]?[0-9]+")
_DECIMAL = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")


def core_value(scalar: Scalar) -> bool | int | float | str | None:
    """The value by the core schema of YAML 1.2 (section 10.3.2 of the specification), without its
    octal, hexadecimal, infinite and not-a-number forms, which stay text here."""
    text = scalar.text
    if not scalar.plain:
        return text
    if scalar.empty:
        return None
    if text in ("true", "True", "TRUE"):
        return True
    if text in ("false", "False", "FALSE"):
        return False
    if _WHOLE.fullmatch(text) and len(text) < 300:
        return int(text)
    if _DECIMAL.fullmatch(text):
        return float(text)
    return text


def read_yaml(text: str, file: str, first_line: int, faults: Faults) -> Node | None:
    """Compose one YAML document.

    `text` has LF line ends and no hidden characters; `first_line` is the number its first line has in
    `file`. Returns None for an empty document, and after a problem that leaves no tree to go on with.
    """
    composer = _Composer(text, file, first_line, faults)
    if composer.tabs():
        return None
    return composer.compose()


@dataclass(slots=True)
class _Open:
    """A record or list whose end has not been met."""

    start: Any
    record: bool
    nodes: list[Node] = field(default_factory=list)
    """For a record: key, value, key, value ..."""


class _Composer:
    def __init__(self, text: str, file: str, first_line: int, faults: Faults) -> None:
        self.text, self.file, self.first_line, self.faults = text, file, first_line, faults
        self.lines = text.split("\n")
        self.stack: list[_Open] = []
        self.root: Node | None = None
        self.doubtful: Location | None = None
        """The latest quote behind which whole lines with keys were swallowed."""

    def place(self, line: int, column: int, length: int = 1) -> Location:
        return Location(self.file, self.first_line + line, column + 1, max(1, length))

    def tabs(self) -> bool:
        found = False
        for number, line in enumerate(self.lines):
            if line.strip() and (match := re.match(r" *(\t+)", line)):
                self.faults.add("yaml-tab", self.place(number, match.start(1), len(match[1])))
                found = True
        return found

    def compose(self) -> Node | None:
        documents = 0
        try:
            for event in yaml.parse(self.text, Loader=yaml.CSafeLoader):
                if isinstance(event, yaml.DocumentStartEvent):
                    documents += 1
                    if documents == 2:
                        self.faults.add("yaml-second", self.span(event))
                        return self.root
                if len(self.stack) >= DEEPEST:
                    self.faults.add("yaml-deep", self.stack_place())
                    return None
                self.take(event)
        except yaml.YAMLError as error:
            self.explain(error)
            return None
        return self.root

    def stack_place(self) -> Location:
        mark = self.stack[-1].start
        return self.place(mark.line, mark.column)

    def take(self, event: Any) -> None:
        if isinstance(event, yaml.AliasEvent):
            where = self.span(event)
            self.faults.add("yaml-alias", where)
            self.put(Damaged(where))
        elif isinstance(event, yaml.ScalarEvent):
            self.put(self.marked(event) or self.visible(self.scalar(event)))
        elif isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent)):
            self.marked(event)
            self.stack.append(_Open(event.start_mark, isinstance(event, yaml.MappingStartEvent)))
        elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
            done = self.stack.pop()
            self.put(self.record(done, event.end_mark) if done.record else self.items(done, event.end_mark))

    def put(self, node: Node) -> None:
        if self.stack:
            self.stack[-1].nodes.append(node)
        else:
            self.root = node

    def span(self, event: Any) -> Location:
        start, end = event.start_mark, event.end_mark
        length = end.column - start.column if end.line == start.line else 1
        return self.place(start.line, start.column, length)

    def marked(self, event: Any) -> Damaged | None:
        """Refuse the marks `&name` and `!type` in front of a value."""
        if event.anchor is None and event.tag is None:
            return None
        start = event.start_mark
        sign = self.lines[start.line][start.column : start.column + 1]
        length = len(self.lines[start.line][start.column :].split(" ")[0])
        where = self.place(start.line, start.column, length)
        self.faults.add("yaml-tag" if sign == "!" else "yaml-alias", where)
        return Damaged(where)

    def scalar(self, event: Any) -> Node:
        start, end, text = event.start_mark, event.end_mark, event.value
        line = self.lines[start.line] if start.line < len(self.lines) else ""
        quoted = event.style in ("'", '"')
        plain = not quoted and event.style not in ("|", ">")
        if plain and not text and (eaten := re.match(r"\s*(#\S+)", line[start.column :])):
            where = self.place(start.line, start.column + eaten.start(1), len(eaten[1]))
            self.faults.add("value-comment", where, eaten=_hex_of(eaten[1]))
            return Damaged(where)
        if start.line != end.line:
            if quoted and any(_KEYED.match(below) for below in self.lines[start.line + 1 : end.line + 1]):
                self.doubtful = self.place(start.line, start.column)
            length = len(line) - start.column if quoted or plain else 1
            return Scalar(text, plain, self.place(start.line, start.column, length), False)
        first, past = (start.column + 1, end.column - 1) if quoted else (start.column, end.column)
        if first == past:
            return Scalar(text, plain, self.place(start.line, start.column, end.column - start.column), False)
        return Scalar(text, plain, self.place(start.line, first, past - first), line[first:past] == text)

    def visible(self, node: Node) -> Node:
        """Refuse a hidden character that was written as an escape, such as `\\0`."""
        found = hidden(node.text) if isinstance(node, Scalar) else None
        if found is None:
            return node
        self.faults.add("hidden-character", node.where, name=found[1])
        return Damaged(node.where)

    def record(self, done: _Open, end: Any) -> Entries:
        pairs: list[tuple[Scalar, Node]] = []
        seen: dict[str, int] = {}
        for key, value in zip(done.nodes[::2], done.nodes[1::2], strict=True):
            if isinstance(key, Damaged):
                continue
            if not isinstance(key, Scalar) or key.empty:
                self.faults.add("yaml-key", key.where)
            elif key.plain and key.text == "<<":
                self.faults.add("yaml-merge", key.where)
            elif key.text in seen:
                self.faults.add("yaml-twice", key.where, key=key.text, line=seen[key.text])
            else:
                seen[key.text] = key.where.line
                pairs.append((key, value))
        return Entries(tuple(pairs), self.whole(done, end))

    def items(self, done: _Open, end: Any) -> Items:
        return Items(tuple(done.nodes), self.whole(done, end))

    def whole(self, done: _Open, end: Any) -> Location:
        """All of a bracketed value that stands on one line; else its first key or dash."""
        start = done.start
        line = self.lines[start.line]
        if line[start.column : start.column + 1] in ("{", "[") and start.line == end.line:
            return self.place(start.line, start.column, end.column - start.column)
        if done.record and done.nodes and done.nodes[0].where.line == self.first_line + start.line:
            return done.nodes[0].where
        return self.place(start.line, start.column)

    def explain(self, error: yaml.YAMLError) -> None:
        """Turn the parser's complaint into one of ours."""
        eaten = False
        for number, line in enumerate(self.lines):
            match = re.search(r"^[^#]*\bhex:\s+(#\S*)", line)
            if match:
                where = self.place(number, match.start(1), len(_hex_of(match[1])))
                self.faults.add("value-comment", where, eaten=_hex_of(match[1]))
                eaten = True
        if not eaten:
            self.faults.problems.append(self.complaint(error))

    def complaint(self, error: yaml.YAMLError) -> Any:
        noted = Faults()
        mark = getattr(error, "problem_mark", None)
        began = getattr(error, "context_mark", None) or mark
        said = f"{getattr(error, 'context', '')} {getattr(error, 'problem', '')}"
        here = self.clamped(mark)
        if "quoted scalar" in said and "unexpected end" in said:
            noted.add("yaml-quote", self.clamped(began))
        elif self.doubtful is not None:
            noted.add("yaml-quote", self.doubtful)
        elif "nesting depth" in said:
            noted.add("yaml-deep", here)
        elif "<document start>" in said:
            noted.add("yaml-second", here)
        elif "unknown escape" in said or "escape code" in said:
            noted.add("yaml-escape", here)
        elif "flow mapping" in said or "flow sequence" in said:
            noted.add("yaml-bracket", self.clamped(began), closing="}" if "mapping" in said else "]")
        elif "mapping values are not allowed" in said:
            noted.add("yaml-colon", here)
        elif "cannot start any token" in said:
            noted.add(
                "yaml-character", here, sign=self.lines[here.line - self.first_line][here.column - 1 :][:1]
            )
        elif "block mapping" in said or "block collection" in said or "not allowed in this context" in said:
            noted.add("yaml-indent", here)
        elif "simple key" in said or "could not find expected ':'" in said:
            noted.add("yaml-indent", self.clamped(began))
        else:
            noted.add("yaml-other", here)
        return noted.problems[0]

    def clamped(self, mark: Any) -> Location:
        """The mark's place, or the end of the last line with text if the mark lies behind it."""
        if mark is None:
            return self.place(0, 0)
        if mark.line < len(self.lines) and self.lines[mark.line].strip():
            return self.place(mark.line, mark.column)
        last = max((n for n, line in enumerate(self.lines[: mark.line + 1]) if line.strip()), default=0)
        return self.place(last, len(self.lines[last]))


def _hex_of(eaten: str) -> str:
    """The colour at the start of a comment, or the comment's first word."""
    match = re.match(r"#[0-9A-Fa-f]+", eaten)
    return match[0] if match else eaten
