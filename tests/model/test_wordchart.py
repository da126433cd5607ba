"""Word charts written from beads: short, and read back as the same beads."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.wordchart import compress
from sitegen.read.words import parse_words


@pytest.mark.parametrize(
    ("letters", "words"), [("DDDDDDLLA", "6D 2L 1A"), ("aA", "1a 1A"), ("111A", "3(1) 1A"), ("", "")]
)
def test_runs_are_counted(letters: str, words: str) -> None:
    assert compress(letters) == words


@given(st.text("ABb12", min_size=1, max_size=40))
def test_what_is_written_reads_back_as_the_same_beads(letters: str) -> None:
    words = parse_words(compress(letters))
    assert words is not None
    assert "".join(words.letters) == letters
