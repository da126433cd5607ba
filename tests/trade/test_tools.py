"""Each tool is listed with what it is for alone, and every word of the table is one of the trade."""

from __future__ import annotations

import pytest
import yaml

from sitegen.publish.theme import BUNDLED
from sitegen.trade.cautions import ANY, Uses
from sitegen.trade.figures import table
from sitegen.trade.tools import tools_for
from tests.trade.test_cautions import KNOWN

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
ALWAYS = ("mat", "ruler", "lamp")
LISTED = [
    (Uses(), ()),
    (Uses(threads=frozenset({"nylon"})), ("scissors",)),
    (Uses(threads=frozenset({"polyester"})), ("scissors",)),
    (Uses(threads=frozenset({"braided"})), ("braid-scissors",)),
    (Uses(threads=frozenset({"wire"})), ("cutters", "glasses")),
    (Uses(findings=frozenset({"crimp tube"})), ("crimping", "glasses")),
    (Uses(findings=frozenset({"ear wire"})), ("pliers", "glasses")),
    (Uses(findings=frozenset({"toggle clasp"})), ("glasses",)),
    (Uses(stitches=frozenset({"brick", "loom"})), ("loom",)),
    (Uses(stitches=frozenset({"brick", "fringe"}), shapes=frozenset({"round"})), ()),
]


@pytest.mark.parametrize(("uses", "listed"), LISTED, ids=lambda value: str(value)[:60])
def test_a_tool_is_listed_with_what_it_is_for_alone(uses: Uses, listed: tuple[str, ...]) -> None:
    assert tools_for(uses) == (*listed, *ALWAYS)


def test_every_tool_is_among_the_examples() -> None:
    assert {name for _, listed in LISTED for name in listed} | set(ALWAYS) == set(table("tools")["tools"])


def test_every_trigger_is_a_word_of_the_trade() -> None:
    for name, entry in table("tools")["tools"].items():
        for kind, words in entry.get("when", {}).items():
            assert words == ANY or set(words) <= KNOWN[kind], (name, kind)


def test_a_tool_has_a_name_and_a_purpose_and_no_words_lie_idle() -> None:
    messages = yaml.safe_load((LINEN / "strings" / "en" / "book.yaml").read_text(encoding="utf-8"))
    told = {key for key in messages if key.startswith("tool.")}
    assert told == {f"tool.{name}.{part}" for name in table("tools")["tools"] for part in ("label", "text")}
