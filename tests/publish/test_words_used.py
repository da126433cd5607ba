"""Only the words of the glossary that occur in sheets are explained in them."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.publish.glossary import TERMS
from sitegen.publish.words import Words
from sitegen.publish.words_used import words_used

THEME = Path(__file__).parents[2] / "themes" / "linen"
ENGLISH, GERMAN = Words(THEME, "en"), Words(THEME, "de")


def names(html: str, words: Words = ENGLISH, stitches: tuple[str, ...] = ()) -> list[str]:
    return [term.anchor for term in words_used(html, stitches, words)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Go under the bridge.", ["bridge"]),
        ("<p>Two\n <b>half</b> hitches.</p>", ["half-hitch"]),
        ("BRIDGES", ["bridge"]),
        ("Abridged, bridgehead", []),
        ("<svg><title>A bridge</title></svg><p class='row'>Nothing</p>", []),
        ("cylinder 11/0", ["cylinder", "size"]),
        ("111/0 and 11/05", []),
        ("Go round the bead in a round 11/0", ["round-bead", "size"]),
        ("Round 2 begins", ["round"]),
        ("a drop of 3 cm", []),
        ("drop 3.4 mm", ["drop"]),
    ],
)
def test_a_word_is_found_in_its_forms_and_not_within_others(text: str, found: list[str]) -> None:
    assert names(text) == found


def test_german_words_are_found_in_their_forms() -> None:
    assert names("Fädle unter den Stegen der Reihen durch.", GERMAN) == ["row", "bridge"]
    assert names("Stegreif, Reihenhaus", GERMAN) == []


def test_stitches_are_explained_whether_or_not_they_are_named() -> None:
    [term] = words_used("", ("circular-peyote",), ENGLISH)
    assert term.name == ENGLISH.text("lesson.circular-peyote.title")
    assert term.meaning == ENGLISH.text("lesson.circular-peyote.is")


def test_words_come_in_the_order_of_their_letters() -> None:
    assert names("row, bridge, tail", stitches=("brick",)) == ["brick", "bridge", "row", "tail"]


@pytest.mark.parametrize("words", [ENGLISH, GERMAN], ids=["en", "de"])
def test_every_word_is_found_in_each_of_its_forms(words: Words) -> None:
    for term in TERMS:
        for form in words.text(f"glossary.{term}.as").split(", "):
            assert term in names(f"({form}.)", words), (term, form)
