"""Message files of a theme + a phrase -> the sentence a reader gets."""

from __future__ import annotations

import re
import string
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import yaml
from babel import Locale
from babel.dates import format_date
from babel.numbers import format_currency, format_decimal
from markupsafe import Markup, escape

from sitegen.model.numbers import Plain
from sitegen.model.thread import Phrase
from sitegen.publish.units import InBoth

Message = str | Mapping[str, str]
_MEASURE = re.compile(r"(?P<head>.*?)(?P<tail> [\d.].*)?", re.DOTALL)
"""Words of the trade and the size that may follow them: `round` and ` 11/0`, `nylon` and ` 0.25 mm`."""
_JOINED = re.compile(r"[^\s,]+")
"""One of several words that stand together."""
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


def language_name(language: str) -> str:
    """A language's name in itself, as a line of its own begins: `Deutsch`, `Français`."""
    name = str(Locale.parse(language, sep="-").get_display_name())
    return name[:1].upper() + name[1:]


class Words:
    """All words of one language, from every file of the theme's `strings/LANGUAGE/`.

    A message is a text with {fields}, or a mapping of the language's plural categories (CLDR: one, few, many,
    other) to such texts, chosen by the value `count`. `{n:ordinal}` says a number as first, second, ...;
    `{value:form}` says a word of the trade as the message `form.VALUE` has it, and as it stands where there
    is none; phrases as values, one or a tuple of them, are said. The message `locale` names the customs of
    number, date and money.
    """

    def __init__(self, theme: Path, language: str) -> None:
        self.language = language
        self._messages: dict[str, Message] = {}
        files = sorted((theme / "strings" / language).glob("*.yaml"))
        if not files:
            raise FileNotFoundError(f"no strings for the language {language} in {theme / 'strings'}")
        for file in files:
            found: dict[str, Message] = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
            self._messages.update(found)
        self._locale = Locale.parse(str(self._messages["locale"]))
        self._formatter = _Formatter(self)
        self._page_formatter = _PageFormatter(self)

    def say(self, phrase: Phrase) -> str:
        """The sentence for a phrase. KeyError if the language lacks it or a value is missing."""
        return self.text(phrase.key, **phrase.values)

    def text(self, key: str, /, **values: object) -> str:
        """The message called `key`, filled in. KeyError if the language lacks it or a value is missing.

        Filled with a quantity in both systems, it is itself such a text.
        """
        message = self._messages[key]
        if not isinstance(message, str):
            kind = self._locale.plural_form(Decimal(str(values.get("count", 0))))
            message = message.get(kind, message["other"])
        text = self._formatter.vformat(message, (), values)
        if not any(isinstance(value, InBoth) for value in values.values()):
            return text
        return InBoth(text, Markup(self._page_formatter.vformat(escape(message), (), values)))

    def has(self, key: str) -> bool:
        """Whether the language has this message."""
        return key in self._messages

    def number(self, text: str) -> str:
        """A number such as `1.50`, digit for digit, with the language's decimal sign."""
        places = len(text.partition(".")[2])
        pattern = "0" + ("." + "0" * places if places else "")
        return format_decimal(Decimal(text), format=pattern, locale=self._locale)

    def date(self, day: date) -> str:
        """A day: `14 September 2026`."""
        return format_date(day, "long", locale=self._locale)

    def money(self, amount: Decimal, currency: str) -> str:
        """A price: `€6.50`."""
        return format_currency(amount, currency, locale=self._locale)

    def term(self, form: str, value: str) -> str:
        """A word of the trade in one of its forms, or several that are all known, such as `transparent AB`.

        What has no message stands as it is.
        """
        if self.has(f"{form}.{value}"):
            return self.text(f"{form}.{value}")
        found = _MEASURE.fullmatch(value)
        head, tail = (found["head"], found["tail"] or "") if found else (value, "")
        if self.has(f"{form}.{head}"):
            return self.text(f"{form}.{head}") + _POINT.sub(self.number("0.0")[1], tail)
        if all(self.has(f"{form}.{word}") for word in _JOINED.findall(value)):
            return _JOINED.sub(lambda word: self.text(f"{form}.{word[0]}"), value)
        return value


class _Formatter(string.Formatter):
    """`str.format` with `ordinal` and forms of words, with the language's numbers, and phrases as values."""

    def __init__(self, words: Words) -> None:
        self._words = words

    def format_field(self, value: Any, format_spec: str) -> str:
        if isinstance(value, Phrase):
            return self._words.say(value)
        if isinstance(value, tuple):
            return self._words.text("then").join(self._words.say(phrase) for phrase in value)
        if isinstance(value, Plain):
            return self._words.number(value)
        if isinstance(value, str) and format_spec:
            return self._words.term(format_spec, value)
        if format_spec != "ordinal":
            return str(super().format_field(value, format_spec))
        names = self._words.text("ordinals").split()
        return names[value] if 0 <= value < len(names) else self._words.text("ordinal-beyond", number=value)

    def get_value(self, key: int | str, args: Sequence[Any], kwargs: Mapping[str, Any]) -> Any:
        del args
        return kwargs[str(key)]


class _PageFormatter(_Formatter):
    """The same for HTML: what is filled in is escaped, unless it is HTML already."""

    def format_field(self, value: Any, format_spec: str) -> str:
        return escape(value if isinstance(value, InBoth) else super().format_field(value, format_spec))
