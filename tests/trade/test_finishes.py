"""Finishes in trade words: known whatever their spelling, joined in any order, and nothing else passes."""

from __future__ import annotations

import pytest

from sitegen.trade.figures import table
from sitegen.trade.finishes import PLAIN, Finish, finish_kind, finish_words

ALLOWED = {
    "glass": {"opaque", "cloudy", "clear", "metal", "lined"},
    "surface": {"gloss", "soft", "matte"},
    "sheen": {"plain", "lustre", "rainbow"},
    "core": {"own", "silver", "gold", "copper"},
}


def test_every_word_sets_what_there_is() -> None:
    for word, entry in table("finishes").items():
        if "as" in entry:
            assert entry["as"] in finish_words(), word
        else:
            assert entry
            assert all(value in ALLOWED[key] for key, value in entry.items()), word


@pytest.mark.parametrize(
    ("text", "finish"),
    [
        ("", PLAIN),
        ("opaque", PLAIN),
        ("Matte", Finish(surface="matte")),
        ("transparent AB", Finish(glass="clear", sheen="rainbow")),
        ("ab, transparent", Finish(glass="clear", sheen="rainbow")),
        ("Silver  lined", Finish(glass="lined", core="silver")),
        ("matte, metallic", Finish(glass="metal", surface="matte")),
        ("galvanized", Finish(glass="metal")),
        ("luster", Finish(sheen="lustre")),
        ("frosted transparent", Finish(glass="clear", surface="matte")),
    ],
)
def test_words_join(text: str, finish: Finish) -> None:
    assert finish_kind(text) == finish


@pytest.mark.parametrize("text", ["moonlit", "matte moonlit", "mat", "lined-silver"])
def test_other_words_are_not_known(text: str) -> None:
    assert finish_kind(text) is None
