"""YAML nodes and the table of fields -> typed values with their places, or problems."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from sitegen.model.location import Location
from sitegen.model.source import Words
from sitegen.read.faults import Faults, hint
from sitegen.read.kinds import Either, Field, Kind, ListOf, Named, Record, Strands, WordChart
from sitegen.read.scalars import Refused, take_scalar
from sitegen.read.strand_rule import parse_rule
from sitegen.read.words import parse_words
from sitegen.read.yaml_nodes import Damaged, Entries, Items, Node, Scalar


@dataclass(slots=True)
class Got:
    """A record as read."""

    values: dict[str, Any] = field(default_factory=dict)
    """Key -> value, of the keys that are right; a record within is a `Got`, a list a tuple."""
    at: dict[str, Location] = field(default_factory=dict)
    """Key -> place of its value, of every known key that was written, right or wrong; "" is the record, and
    `KEY=TEXT` an entry of a list of texts."""
    named: dict[str, Got] = field(default_factory=dict)
    """The keys chosen by the author."""

    def picked(self, *names: str) -> dict[str, Any]:
        """Those of the named values that are there, ready to be passed on."""
        return {name: self.values[name] for name in names if name in self.values}


class _Nothing:
    """What a value that could not be read leaves behind."""


NOTHING = _Nothing()


def walk_record(node: Node, record: Record, doc: str, faults: Faults) -> Got | None:
    """Read the whole header or shop file. Returns None if it is no record at all."""
    got = _take(node, record, "header", doc, faults)
    return got if isinstance(got, Got) else None


def _take(node: Node, kind: Kind, key: str, doc: str, faults: Faults) -> Any:
    if isinstance(node, Damaged):
        return NOTHING
    if isinstance(node, Scalar) and node.empty:
        faults.add("value-empty", node.where, key=key, doc=doc)
        return NOTHING
    if isinstance(kind, Either):
        return _take(node, _which(node, kind), key, doc, faults)
    if isinstance(kind, Record):
        if isinstance(node, Entries) and not node.pairs and not kind.fields:
            faults.add("value-empty", node.where, key=key, doc=doc)
            return NOTHING
        if isinstance(node, Entries):
            return _take_record(node, kind, faults)
        return _misshapen(node, "a record of keys and values", key, doc, faults)
    if isinstance(kind, Strands):
        if isinstance(node, Scalar):
            return parse_rule(node.text, node.where, exact=node.exact, faults=faults) or NOTHING
        for item in node.nodes if isinstance(node, Items) else ():
            if isinstance(item, Scalar) and item.text.startswith(("each ", "from ")):
                faults.add("rule-listed", item.where)
                return NOTHING
        kind = ListOf(WordChart(branched=True), kind.most)
    if isinstance(kind, ListOf):
        if isinstance(node, Items):
            return _take_list(node, kind, key, doc, faults)
        return _misshapen(node, "a list", key, doc, faults)
    if not isinstance(node, Scalar):
        return _misshapen(node, "a single value", key, doc, faults)
    if not node.text.strip():
        faults.add("value-empty", node.where, key=key, doc=doc)
        return NOTHING
    value = take_scalar(kind, node)
    if isinstance(value, Refused):
        faults.add(value.code, node.where, **value.values)
        return NOTHING
    if isinstance(kind, WordChart):
        words = parse_words(str(value), node.where, exact=node.exact, branched=kind.branched, faults=faults)
        return words or Words(node.text, (), node.where)
    return value


def _misshapen(node: Node, wanted: str, key: str, doc: str, faults: Faults) -> _Nothing:
    found = {Scalar: "a single value", Items: "a list", Entries: "a record"}[type(node)]
    faults.add("value-shape", node.where, key=key, wanted=wanted, found=found, doc=doc)
    return NOTHING


def _which(node: Node, kind: Either) -> Record:
    keys = [key.text for key, _ in node.pairs] if isinstance(node, Entries) else []
    return kind.having if kind.key in keys else kind.lacking


def _take_list(node: Items, kind: ListOf, key: str, doc: str, faults: Faults) -> Any:
    if not node.nodes:
        faults.add("list-empty", node.where, key=key)
        return NOTHING
    if len(node.nodes) > kind.most:
        faults.add("list-long", node.where, key=key, count=len(node.nodes), most=kind.most)
        return NOTHING
    if kind.once:
        _note_twice(node, key, faults)
    taken = [_take(item, kind.item, key, doc, faults) for item in node.nodes]
    if isinstance(
        kind.item, WordChart
    ):  # a list of strands keeps its length: one without beads could not be read
        return tuple(Words("", (), node.where) if value is NOTHING else value for value in taken)
    return tuple(value for value in taken if value is not NOTHING)


def _note_twice(node: Items, key: str, faults: Faults) -> None:
    seen: set[str] = set()
    for item in node.nodes:
        if isinstance(item, Scalar) and item.text in seen:
            faults.add("list-twice", item.where, key=key, text=item.text)
        elif isinstance(item, Scalar):
            seen.add(item.text)


def _take_record(node: Entries, record: Record, faults: Faults) -> Got:
    got = Got(at={"": node.where})
    fields = {field.name: field for field in record.fields}
    for key, value in node.pairs:
        found = fields.get(key.text)
        if found is not None:
            got.at[key.text] = _place_of(value, key)
            _take_field(got, found, key, value, faults)
        elif record.named is not None and re.fullmatch(record.named.pattern, key.text):
            _take_named(got, record.named, key, value, faults)
        elif record.named is not None and (not fields or len(key.text) == 1):
            faults.add(record.named.code, key.where, letter=key.text, key=key.text)
        else:
            faults.add("key-unknown", key.where, key=key.text, hint=hint(key.text, fields))
    for missing in record.fields:
        if missing.required and missing.name not in got.at:
            faults.add("key-missing", node.where, key=missing.name, doc=missing.doc)
    return got


def _take_field(got: Got, found: Field, key: Scalar, node: Node, faults: Faults) -> None:
    value = _take(_place_at_key(node, key), found.kind, found.name, found.doc, faults)
    for item in node.nodes if isinstance(node, Items) else ():
        if isinstance(item, Scalar):
            got.at.setdefault(f"{found.name}={item.text}", item.where)
    if value is not NOTHING:
        got.values[found.name] = value


def _take_named(got: Got, named: Named, key: Scalar, node: Node, faults: Faults) -> None:
    value = _take(_place_at_key(node, key), named.kind, key.text, named.doc, faults)
    record = value if isinstance(value, Got) else Got()
    record.at[""] = key.where
    got.named[key.text] = record


def _place_of(node: Node, key: Scalar) -> Location:
    """The value's place; the key's, for a record or list that begins on a line below."""
    if isinstance(node, Items | Entries) and node.where.line != key.where.line:
        return key.where
    return _place_at_key(node, key).where


def _place_at_key(node: Node, key: Scalar) -> Node:
    """A value that is not there is best looked for at its key."""
    if isinstance(node, Scalar) and node.empty and not node.text:
        return Scalar(node.text, node.plain, key.where, False)
    return node
