"""A thread path, its measures and other names of parts -> the same path and measures by those names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from sitegen.model.measures import Measures
from sitegen.model.thread import Phrase, Step, ThreadPath

PART = "part"
"""What phrases call the name of a part."""


def renamed(path: ThreadPath, measures: Measures, names: Mapping[str, str]) -> tuple[ThreadPath, Measures]:
    """Both with every part called by its other name; places, moves and numbers are the same."""
    if all(name == other for name, other in names.items()):
        return path, measures
    return (
        replace(
            path,
            parts=tuple(replace(part, name=names[part.name]) for part in path.parts),
            steps=tuple(_step(step, names) for step in path.steps),
        ),
        replace(
            measures,
            parts=tuple(replace(part, name=names[part.name]) for part in measures.parts),
            warps=tuple(replace(line, part=names[line.part]) for line in measures.warps),
        ),
    )


def _step(step: Step, names: Mapping[str, str]) -> Step:
    return replace(step, phrases=tuple(_phrase(phrase, names) for phrase in step.phrases))


def _phrase(phrase: Phrase, names: Mapping[str, str]) -> Phrase:
    return Phrase(phrase.key, {name: _value(name, value, names) for name, value in phrase.values.items()})


def _value(name: str, value: object, names: Mapping[str, str]) -> object:
    """A value of a phrase; phrases within it are renamed as well."""
    if isinstance(value, Phrase):
        return _phrase(value, names)
    if isinstance(value, tuple):
        return tuple(_value("", one, names) for one in value)
    return names.get(value, value) if name == PART and isinstance(value, str) else value
