"""Message files of a theme + a phrase -> the sentence a reader gets."""

from __future__ import annotations

import string
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import yaml

from sitegen.model.thread import Phrase

Message = str | Mapping[str, str]


class Words:
    """All words of one language, from every file of the theme's `strings/LANGUAGE/`.

    A message is a text with {fields}, or a mapping one/other of such texts, chosen by the value `count`.
    `{n:ordinal}` says a number as first, second, ...; phrases as values, one or a tuple of them, are said.
    """

    def __init__(self, theme: Path, language: str) -> None:
        self._messages: dict[str, Message] = {}
        files = sorted((theme / "strings" / language).glob("*.yaml"))
        if not files:
            raise FileNotFoundError(f"no strings for the language {language} in {theme / 'strings'}")
        for file in files:
            found: dict[str, Message] = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
            self._messages.update(found)
        self._formatter = _Formatter(self)

    def say(self, phrase: Phrase) -> str:
        """The sentence for a phrase. KeyError if the language lacks it or a value is missing."""
        return self.text(phrase.key, **phrase.values)

    def text(self, key: str, /, **values: object) -> str:
        """The message called `key`, filled in. KeyError if the language lacks it or a value is missing."""
        message = self._messages[key]
        if not isinstance(message, str):
            message = message["one" if str(values.get("count")) == "1" else "other"]
        return self._formatter.vformat(message, (), values)

    def has(self, key: str) -> bool:
        """Whether the language has this message."""
        return key in self._messages


class _Formatter(string.Formatter):
    """`str.format` with one more way to show a number, `ordinal`, and with phrases as values."""

    def __init__(self, words: Words) -> None:
        self._words = words

    def format_field(self, value: Any, format_spec: str) -> str:
        if isinstance(value, Phrase):
            return self._words.say(value)
        if isinstance(value, tuple):
            return self._words.text("then").join(self._words.say(phrase) for phrase in value)
        if format_spec != "ordinal":
            return str(super().format_field(value, format_spec))
        names = self._words.text("ordinals").split()
        return names[value] if 0 <= value < len(names) else self._words.text("ordinal-beyond", number=value)

    def get_value(self, key: int | str, args: Sequence[Any], kwargs: Mapping[str, Any]) -> Any:
        del args
        return kwargs[str(key)]
