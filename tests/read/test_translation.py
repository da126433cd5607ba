"""Translations: a shop whose languages are all wrong, and the whole message that its author gets."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.check.tell import tell
from sitegen.model.codes.languages import LANGUAGES
from sitegen.model.source import Pattern, Prose
from sitegen.read.sources import Sources, load_shop
from tests.conftest import Golden

BROKEN = Path(__file__).parents[1] / "broken" / "languages"


@pytest.fixture(scope="module")
def broken() -> Sources:
    return load_shop(BROKEN)


def test_the_message(broken: Sources, golden: Golden) -> None:
    golden(BROKEN / "told.txt", tell(list(broken.problems), broken.texts))


def test_every_code_of_languages_is_given(broken: Sources) -> None:
    assert {problem.code for problem in broken.problems} >= set(LANGUAGES)


def test_parts_keep_apart_in_every_language(broken: Sources) -> None:
    """Two parts that are called the same could not be told apart in `::: steps`."""
    assert ("part-twice", "patterns/reed.fr.md") in {
        (problem.code, problem.where.file) for problem in broken.problems
    }


def test_what_is_wrong_keeps_the_authors_words(broken: Sources) -> None:
    """A list that does not fit says nothing, and the rest is read all the same."""
    (pattern,) = broken.patterns
    german = pattern.translations["de"]
    assert german.title == "Schilftropfen"
    assert [part.name for part in german.parts] == ["Wedge", "Drops"]
    assert [part.stitch for part in german.parts] == ["brick", "fringe"]
    assert [colour.name for colour in german.colours] == ["Schilf", "foam"]
    assert [colour.hex for colour in german.colours] == ["#77864a", "#e8efe6"]


def test_the_demo_is_whole_in_german() -> None:
    """Whatever a pattern or page of the demo says in English, it says in German."""
    demo = load_shop(Path(__file__).parents[2])
    for pattern in demo.patterns:
        german = pattern.translations["de"]
        for own, other in (
            ([pattern.title, pattern.summary], [german.title, german.summary]),
            ([colour.name for colour in pattern.colours], [colour.name for colour in german.colours]),
            ([part.name for part in pattern.parts], [part.name for part in german.parts]),
            ([one.note for one in pattern.revisions], [one.note for one in german.revisions]),
            (_ways(pattern), _ways(german)),
        ):
            assert all(one != said for one, said in zip(own, other, strict=True)), pattern.name
        assert [type(block) for block in german.body if not isinstance(block, Prose)] == [
            type(block) for block in pattern.body if not isinstance(block, Prose)
        ], pattern.name
    assert all("de" in page.translations for page in demo.shop.pages)
    assert {"tagline", "about", "licence"} <= demo.shop.translations["de"].keys()


def _ways(pattern: Pattern) -> list[str]:
    """The names of its colourways and of the colours in them."""
    return [
        name for way in pattern.colourways for name in (way.name, *(swap.name for swap in way.swaps.values()))
    ]
