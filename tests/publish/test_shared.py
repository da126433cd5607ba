"""Words that strips share: said once before each block of them."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from sitegen.publish.shared import BLOCK, REST, shared_words


def strips(count, first=1):
    return [
        SimpleNamespace(number=first + place, sentences=("Go on.",), see="Step 1.") for place in range(count)
    ]


@pytest.mark.parametrize(
    ("count", "blocks"),
    [
        (2, []),
        (BLOCK, [BLOCK]),
        (BLOCK + REST, [BLOCK + REST]),
        (BLOCK + REST + 1, [BLOCK, REST + 1]),
        (2 * BLOCK + 3, [BLOCK, BLOCK + 3]),
    ],
)
def test_a_short_rest_joins_the_block_before_it(count, blocks):
    shared = shared_words(strips(count))
    assert [len(words.rows) for several in shared.values() for words in several] == blocks
    assert list(shared) == [1, BLOCK + 1][: len(blocks)]


def test_a_drawn_step_ends_a_block():
    drawn = SimpleNamespace(number=6, sentences=("Turn.",), see="")
    shared = shared_words([*strips(5), drawn, *strips(5, first=7)])
    assert list(shared) == [1, 7]
