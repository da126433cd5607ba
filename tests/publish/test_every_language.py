"""Every language of the theme says what English says: the same messages, fields, words of the trade, plan."""

from __future__ import annotations

import re
import string
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

import pytest
import yaml
from babel import Locale

from sitegen.check.stitch import STITCHES
from sitegen.model.thread import Phrase
from sitegen.publish.lessons import NAMES
from sitegen.publish.planned import planned_rows
from sitegen.publish.words import Words
from sitegen.trade.beads import bead_kind_names
from sitegen.trade.findings import finding_names
from sitegen.trade.finishes import finish_words
from sitegen.trade.needles import needle_names
from sitegen.trade.threads import thread_materials
from tests.publish.test_table import SOURCES, as_text, table_of

THEME = Path(__file__).parents[2] / "themes" / "linen"
GOLDENS = Path(__file__).parent / "goldens"
OTHERS = sorted(path.name for path in (THEME / "strings").iterdir() if path.name != "en")
TRADE: Mapping[str, Iterable[str]] = {
    "bead": bead_kind_names(),
    "finding": finding_names(),
    "finish": finish_words(),
    "kind": finding_names(),
    "needle": needle_names(),
    "stitch": [name for name in STITCHES if name != "none"],
    "thread": thread_materials(),
}
"""A field -> the words of the trade's tables that may stand in it."""
TOLD = [file for file in SOURCES if file.stem in ("evening-fern", "tidemark-fob", "wren-wing")]
"""Brick and fringe, loom, herringbone."""


@cache
def files(language: str) -> Mapping[str, Mapping[str, Mapping[str, str]]]:
    """Message file -> its messages, each by plural category."""
    found = {}
    for file in sorted((THEME / "strings" / language).glob("*.yaml")):
        messages = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
        found[file.name] = {
            key: {"other": text} if isinstance(text, str) else text for key, text in messages.items()
        }
    return found


def messages(language: str) -> dict[str, Mapping[str, str]]:
    """Every message of a language."""
    return {key: texts for own in files(language).values() for key, texts in own.items()}


def fields(text: str) -> list[tuple[str, str]]:
    """The fields of a text with the forms they are asked in, in order."""
    return [(name, spec or "") for _, name, spec, _ in string.Formatter().parse(text) if name]


def named(text: str) -> set[str]:
    return {name for name, _ in fields(text)}


def asked_forms(language: str) -> set[tuple[str, str]]:
    """Every field with the form it is asked in."""
    return {one for texts in messages(language).values() for text in texts.values() for one in fields(text)}


def known(words: Words, form: str, value: str) -> bool:
    """Whether a language has a word of the trade in this form, apart from the size that may follow it."""
    return words.has(f"{form}.{value}") or words.has(f"{form}.{re.sub(r' [0-9.].*', '', value)}")


def unknown(value: object, words: Words, own: Mapping[str, Mapping[str, str]]) -> list[tuple[str, str]]:
    """The words of a phrase, and of those within it, that the language lacks in the form it asks for."""
    if isinstance(value, tuple):
        return [lacking for one in value for lacking in unknown(one, words, own)]
    if not isinstance(value, Phrase):
        return []
    asked = {one for text in own[value.key].values() for one in fields(text)}
    return [
        *(
            (form, said)
            for name, form in asked
            if form and isinstance(said := value.values[name], str) and not known(words, form, said)
        ),
        *(lacking for within in value.values.values() for lacking in unknown(within, words, own)),
    ]


@pytest.mark.parametrize("language", OTHERS)
def test_every_message_is_there_in_its_file_and_no_other(language: str) -> None:
    for name, english in files("en").items():
        assert english.keys() - files(language)[name].keys() == set(), name
    forms = {form for _, form in asked_forms(language)} | {NAMES}
    more = messages(language).keys() - messages("en").keys()
    assert {key for key in more if key.partition(".")[0] not in forms} == set()


@pytest.mark.parametrize("language", OTHERS)
def test_messages_have_the_fields_of_the_english_ones(language: str) -> None:
    own = messages(language)
    for key, english in messages("en").items():
        assert named(own[key]["other"]) == named(english["other"]), key
        filled = (
            {"count", *named(" ".join(english.values()))} if len(english) > 1 else named(english["other"])
        )
        for text in own[key].values():
            assert named(text) <= filled, key


@pytest.mark.parametrize("language", OTHERS)
def test_plurals_are_those_of_the_language(language: str) -> None:
    categories = Locale.parse(messages(language)["locale"]["other"]).plural_form.tags | {"other"}
    for key, english in messages("en").items():
        texts = messages(language)[key]
        assert set(texts) == (categories if len(english) > 1 else {"other"}), key


@pytest.mark.parametrize("language", OTHERS)
def test_every_word_of_the_trade_has_the_forms_it_is_asked_in(language: str) -> None:
    words = Words(THEME, language)
    for field, form in asked_forms(language):
        if form and form != "ordinal":
            for value in TRADE.get(field, ()):
                assert known(words, form, value), (field, form, value)


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("file", TOLD, ids=lambda file: file.stem)
def test_steps_are_told_and_planned_alike(file: Path, language: str, golden) -> None:
    """The same rows in the same order, so that ticks of one language are those of the other."""
    _, path, _ = table_of(file)
    words = Words(THEME, language)
    assert planned_rows(path, words) == planned_rows(path, Words(THEME, "en"))
    for step in path.steps:
        for phrase in step.phrases:
            assert unknown(phrase, words, messages(language)) == [], phrase
    golden(GOLDENS / f"{file.stem}-table.{language}.txt", as_text(table_of(file, language)[2]))


@pytest.mark.parametrize("language", OTHERS)
def test_no_sentence_is_left_in_english(language: str) -> None:
    own = messages(language)
    for key, english in messages("en").items():
        for category, text in english.items():
            plain_words = re.findall(r"[A-Za-z]{2,}", re.sub(r"\{[^}]*\}", "", text))
            assert len(plain_words) < 3 or own[key].get(category) != text, key
