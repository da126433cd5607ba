"""The table of fields -> JSON Schemas (draft 2020-12), for editors that complete while you type."""

from __future__ import annotations

from typing import Any

from sitegen.read.fields import HEADER, PAGE, SHOP
from sitegen.read.kinds import (
    Choice,
    Day,
    Decimals,
    Either,
    Flag,
    Form,
    Hex,
    Kind,
    Length,
    ListOf,
    Mass,
    Percent,
    Price,
    Record,
    Single,
    Strands,
    Text,
    Whole,
    WordChart,
)

DRAFT = "https://json-schema.org/draft/2020-12/schema"
_NUMBER = r"[0-9]{1,9}(\.[0-9]{1,6})?"


def header_schema() -> dict[str, Any]:
    """The schema of a pattern's header."""
    return _document(HEADER, "Header of a bead pattern")


def shop_schema() -> dict[str, Any]:
    """The schema of the shop file."""
    return _document(SHOP, "Shop file")


def page_schema() -> dict[str, Any]:
    """The schema of the header of a page of the shop's own."""
    return _document(PAGE, "Header of a page of the shop")


def _document(record: Record, title: str) -> dict[str, Any]:
    return {"$schema": DRAFT, "title": title, **_schema(record)}


def _schema(kind: Kind) -> dict[str, Any]:
    if isinstance(kind, Record):
        return _record(kind)
    if isinstance(kind, Strands):
        rule = {"type": "string", "pattern": r"^\s*(?:each|from)\s.*"}
        return {"anyOf": [_schema(ListOf(WordChart(branched=True), kind.most)), rule]}
    if isinstance(kind, ListOf):
        once = {"uniqueItems": True} if kind.once else {}
        return {"type": "array", "items": _schema(kind.item), "minItems": 1, "maxItems": kind.most, **once}
    if isinstance(kind, Either):
        return {
            "type": "object",
            "if": {"required": [kind.key]},
            "then": _schema(kind.having),
            "else": _schema(kind.lacking),
        }
    return _single(kind)


def _record(record: Record) -> dict[str, Any]:
    schema: dict[str, Any] = {"type": "object", "additionalProperties": False}
    if record.fields:
        schema["properties"] = {
            field.name: {"description": field.doc, **_schema(field.kind)} for field in record.fields
        }
    if record.named is not None:
        named = {"description": record.named.doc, **_schema(record.named.kind)}
        schema["patternProperties"] = {_whole(record.named.pattern): named}
    if record.named is not None and not record.fields:
        schema["minProperties"] = 1
    required = [field.name for field in record.fields if field.required]
    if required:
        schema["required"] = required
    return schema


def _whole(pattern: str) -> str:
    """A pattern that must fit the whole text."""
    return f"^(?:{pattern})$"


def _text(pattern: str) -> dict[str, Any]:
    return {"type": "string", "pattern": _whole(pattern)}


def _single(kind: Single) -> dict[str, Any]:
    match kind:
        case Text():  # a title such as 1912 is a number to an editor
            return {"type": ["string", "number", "boolean"], "minLength": 1, "maxLength": kind.most}
        case WordChart():  # and so is a single bead called 1
            signs = r"()\[\]" if kind.branched else "()"
            return {"type": ["string", "integer"], "pattern": rf"^[\sA-Za-z0-9{signs}]+$"}
        case Whole():
            return {"type": "integer", "minimum": kind.least, "maximum": kind.most}
        case Decimals():
            return {"type": "number", "minimum": kind.least, "maximum": kind.most}
        case Length():
            return _text(f"{_NUMBER} ?(mm|cm|m)")
        case Mass():
            return _text(f"{_NUMBER} ?g")
        case Percent():
            return _text(f"{_NUMBER} ?%")
        case Price():
            return {"anyOf": [{"const": "free"}, {"type": "number", "minimum": 0, "maximum": 9_999_999.99}]}
        case Day():
            return _text("[0-9]{4}-[0-9]{2}-[0-9]{2}")
        case Hex():
            return _text("#[0-9A-Fa-f]{6}")
        case Flag():
            return {"type": "boolean"}
        case Choice():
            return {"enum": list(kind.options)}
        case Form():
            return _text(kind.pattern)
