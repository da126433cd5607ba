"""The text of `NAME.de.md` and the pattern it translates -> the same pattern in other words, or problems.

A translation has the keys of a pattern's header that hold words for readers, and a body of its own. Charts,
stitches, counts and colours stay with the pattern: what else is stated is an unknown key.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from sitegen.model.location import Location
from sitegen.model.source import Colour, Colourway, Part, Pattern, Revision
from sitegen.read.body import note_html, read_body
from sitegen.read.faults import Faults
from sitegen.read.pattern import split_source
from sitegen.read.text import clean
from sitegen.read.translation_fields import TRANSLATION
from sitegen.read.walk import Got, walk_record
from sitegen.read.yaml_nodes import read_yaml


def read_translation(text: str, file: str, pattern: Pattern, faults: Faults) -> Pattern | None:
    """The pattern in another language; photos are not yet looked up. None without a readable header."""
    halves = split_source(clean(text, file, faults), file, faults)
    if halves is None:
        return None
    node = read_yaml(halves.header or "", file, halves.header_line, faults)
    got = node and walk_record(node, TRANSLATION, "the pattern's words, one `key: value` a line", faults)
    if not got:
        return None
    said = _Said(got, faults)
    made = said.pattern(pattern)
    names = tuple(part.name for part in made.parts)
    body = read_body(halves.body, file, halves.body_line, names, faults)
    note_html(halves.body, file, halves.body_line, faults)
    for chart in body.charts:
        faults.add("translation-chart", chart.where, name=chart.name)
    return replace(made, body=body.blocks, file=file, at=got.at)


class _Said:
    """What a translation says, put in the place of the pattern's own words."""

    def __init__(self, got: Got, faults: Faults) -> None:
        self.got, self.faults = got, faults

    def pattern(self, pattern: Pattern) -> Pattern:
        """The pattern with these words; what is not said keeps the author's."""
        values = self.got.values
        renamed = self._part_names(pattern.parts)
        photo = pattern.photo
        if photo is not None and "photo" in values:
            photo = replace(photo, **values["photo"].picked("alt", "caption"))
        ways = self._list("colourways", len(pattern.colourways))
        return replace(
            pattern,
            **self.got.picked("title", "summary"),
            colours=self._colours(pattern.colours, values.get("colours")),
            colourways=tuple(self._way(way, got) for way, got in zip(pattern.colourways, ways, strict=False))
            or pattern.colourways,
            parts=tuple(part_called(part, renamed) for part in pattern.parts),
            revisions=self._revisions(pattern.revisions),
            photo=photo,
        )

    def _part_names(self, parts: tuple[Part, ...]) -> dict[str, str]:
        """The pattern's name of a part -> its name here; no two are called the same."""
        named: dict[str, str] = {}
        lines: dict[str, int] = {}
        for part, got in zip(parts, self._list("parts", len(parts)), strict=False):
            name: str = got.values.get("name", part.name)
            where = got.at.get("name", got.at[""])
            if name in lines:
                self.faults.add("part-twice", where, name=name, line=lines[name])
            lines.setdefault(name, where.line)
            named[part.name] = name
        return named

    def _list(self, key: str, count: int) -> Sequence[Got]:
        """A list that says something of each of the pattern's, in their order."""
        found: Sequence[Got] = self.got.values.get(key, ())
        if found and len(found) != count:
            self.faults.add("translation-count", self.got.at[key], what=key, here=len(found), count=count)
            return ()
        return found

    def _known(self, what: str, given: Mapping[str, Got], known: Sequence[str]) -> None:
        for name, got in given.items():
            if name not in known:
                values = {"what": what, "name": name, "known": ", ".join(known) or "none"}
                self.faults.add("translation-unknown", got.at[""], **values)

    def _colours(self, colours: tuple[Colour, ...], got: Got | None) -> tuple[Colour, ...]:
        named = got.named if got else {}
        self._known("colour of the pattern", named, [colour.letter for colour in colours])
        return tuple(_named(colour, named.get(colour.letter)) for colour in colours)

    def _way(self, way: Colourway, got: Got) -> Colourway:
        self._known("colour that this colourway changes", got.named, list(way.swaps))
        swaps = {letter: _named(swap, got.named.get(letter)) for letter, swap in way.swaps.items()}
        return replace(way, **got.picked("name"), swaps=swaps)

    def _revisions(self, revisions: tuple[Revision, ...]) -> tuple[Revision, ...]:
        said: dict[int, dict[str, Any]] = {}
        known = [one.number for one in revisions]
        for got in self.got.values.get("revisions", ()):
            number: int = got.values.get("number", 0)
            said[number] = got.picked("note", "corrects")
            if number not in known:
                where: Location = got.at.get("number", got.at[""])
                values = {"what": "revision that the pattern lists", "name": number}
                values["known"] = ", ".join(map(str, known)) or "none"
                self.faults.add("translation-unknown", where, **values)
        return tuple(replace(one, **said.get(one.number, {})) for one in revisions)


def _named(record: Any, got: Got | None) -> Any:
    """A colour or a swap by its other name."""
    return record if got is None else replace(record, **got.picked("name"))


def part_called(part: Part, names: Mapping[str, str]) -> Part:
    """A part by its other name, and with it every part that is named in it; who has none keeps its own."""
    hang = part.hang and replace(part.hang, part=names.get(part.hang.part or "", part.hang.part))
    over = part.over and replace(part.over, part=names.get(part.over.part, part.over.part))
    return replace(part, name=names.get(part.name, part.name), hang=hang, over=over)
