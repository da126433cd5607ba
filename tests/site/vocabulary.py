"""The published vocabulary of schema.org, as the package schema-dts carries it -> faults in data blocks."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from tests.site.outside import MODULES

_TYPE = re.compile(
    r"^(?:export )?interface (\w+?)(Base|Leaf)(?:<[^>]*>)? extends ([^{]+)\{(.*?)^\}", re.M | re.S
)
_PROPERTY = re.compile(r'^    "(\w+)"\?: SchemaValue<(.+), "\w+">;$', re.M)
_CHOICE = re.compile(r"^export type (\w+)(?:<[^=]*>)? = (.+);$", re.M)
_NUMBER = re.compile(r"-?\d+(\.\d+)?")


@dataclass(frozen=True)
class Vocabulary:
    """What may stand where."""

    parents: dict[str, frozenset[str]]
    """Type -> the types that it is directly a kind of."""
    properties: dict[str, dict[str, frozenset[str]]]
    """Type -> its own properties -> the types that a value may have."""
    choices: dict[str, frozenset[str]]
    """Type -> what may stand for it without a type of its own: quoted members, `string`, `number`."""

    def ancestors(self, name: str) -> Iterator[str]:
        """The type itself and everything that it is a kind of."""
        yield name
        for parent in self.parents.get(name, ()):
            yield from self.ancestors(parent)

    def values(self, name: str, key: str) -> frozenset[str] | None:
        """What a property of a type may hold; None where the type has no such property."""
        found = (self.properties.get(one, {}).get(key) for one in self.ancestors(name))
        return next((one for one in found if one is not None), None)

    def fits(self, value: Any, allowed: frozenset[str]) -> bool:
        """Whether a value is of one of these types."""
        if isinstance(value, dict):
            return "@type" not in value or not allowed.isdisjoint(self.ancestors(value["@type"]))
        written = {choice for one in allowed for choice in self.choices.get(one, ())}
        if isinstance(value, bool):
            return "boolean" in written
        if isinstance(value, int | float) or _NUMBER.fullmatch(value):
            return not written.isdisjoint({"number", "string"})
        return "string" in written or f'"{value}"' in written


@cache
def vocabulary() -> Vocabulary:
    """Read the declarations."""
    text = (MODULES / "schema-dts" / "dist" / "schema.d.ts").read_text(encoding="utf-8")
    parents: dict[str, frozenset[str]] = {}
    properties: dict[str, dict[str, frozenset[str]]] = {}
    for name, _, above, body in _TYPE.findall(text):
        parents[name] = parents.get(name, frozenset()) | set(re.findall(r"(\w+)Base\b", above)) - {name}
        own = {key: frozenset(re.findall(r"\w+", values)) for key, values in _PROPERTY.findall(body)}
        properties[name] = properties.get(name, {}) | own
    choices = {
        name: frozenset(one.strip() for one in union.split("|")) for name, union in _CHOICE.findall(text)
    }
    return Vocabulary(parents, properties, choices)


def faults(block: Any, where: str = "") -> Iterator[str]:
    """Every unknown type, unknown property, and value of a type that does not belong there."""
    if isinstance(block, list):
        for one in block:
            yield from faults(one, where)
    elif isinstance(block, dict) and "@graph" in block:
        yield from faults(block["@graph"], where)
    elif isinstance(block, dict) and set(block) != {"@id"}:
        yield from _faults_of_one(block, where)


def _faults_of_one(block: dict[str, Any], where: str) -> Iterator[str]:
    name = block.get("@type", "")
    if name not in vocabulary().properties:
        yield f"{where}no type {name!r}"
        return
    for key, values in block.items():
        if key.startswith("@"):
            continue
        allowed = vocabulary().values(name, key)
        if allowed is None:
            yield f"{where}{name}: no property {key!r}"
            continue
        for value in values if isinstance(values, list) else [values]:
            if not vocabulary().fits(value, allowed):
                yield f"{where}{name}.{key}: {str(value)[:80]!r} is none of {sorted(allowed)}"
        yield from faults(values, f"{where}{name}.{key} > ")
