"""Messages: fields, ordinals, one and other, and nothing missing."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.model.thread import Phrase
from sitegen.publish.words import Words

THEME = Path(__file__).parents[2] / "themes" / "linen"


@pytest.fixture(scope="module")
def words():
    return Words(THEME, "en")


def test_ordinals_are_words_then_numbers(words):
    said = [words.say(Phrase("brick-single", {"bridge": number})) for number in (1, 2, 12, 13)]
    assert [text.split()[3] for text in said] == ["first", "second", "twelfth", "13th"]


def test_one_and_other_are_chosen_by_count(words):
    one = words.say(Phrase("strand", {"count": 1, "back": 5, "number": 1}))
    other = words.say(Phrase("strand", {"count": 3, "back": 5, "number": 1}))
    assert "the last bead:" in one
    assert "the last 3 beads:" in other


def test_a_missing_message_or_value_is_an_error_not_a_gap(words):
    with pytest.raises(KeyError):
        words.text("no-such-message")
    with pytest.raises(KeyError):
        words.text("label.row")


def test_no_message_is_given_twice():
    keys = [
        line.split(":")[0]
        for file in (THEME / "strings" / "en").glob("*.yaml")
        for line in file.read_text(encoding="utf-8").splitlines()
        if line and line[0] not in " #"
    ]
    assert len(keys) == len(set(keys))


def test_a_language_without_strings_is_an_error():
    with pytest.raises(FileNotFoundError):
        Words(THEME, "xx")
