"""Texts that are refused with a clear fault: what cannot be seen, and what is no word of the trade."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from PIL import Image

from sitegen.build.woven import is_fault
from sitegen.check import check_pattern
from sitegen.check.tell import tell
from sitegen.read.pattern import read_pattern
from sitegen.read.shop_file import read_shop_file
from sitegen.read.sources import load_shop
from tests.site import hostile
from tests.site.hostile import FIELDS, STRINGS, UNSEEN, marks, quoted

PLAIN = "zppatternz"
"""Key of the bead in the stock."""
PLACES = {name: marks(FIELDS, "p")[name] for name in FIELDS if name != "stock"}
CLOSED = {
    "makes": "makes: one piece",
    "price": "price: free",
    "piece": "piece: charm",
    "revision": "revision: 2",
    "number": "{number: 2",
    "date": "date: 2026-05-02",
    "bead": "{bead: round 11/0",
    "hex": 'hex: "#3c6b45"',
    "stock": f"stock: {PLAIN}",
    "stitch": "stitch: ladder",
    "rows": "rows: [1G 1S]",
}
"""Fields that take words of the trade or a form alone, as the plain pattern has them."""
SHOP = read_shop_file(hostile.shop({"title": "Shop"}, {PLAIN: "chalk"}), "shop.yaml")[0]


def codes(source: str) -> list[str]:
    """The faults of a pattern's source, which can all be told."""
    pattern, problems = read_pattern(source, "p.md", SHOP)
    if pattern is not None and not any(map(is_fault, problems)):
        problems = [*problems, *check_pattern(pattern, SHOP)]
    told = tell(problems, {"p.md": source})
    assert all(sign.isprintable() or sign == "\n" for sign in told), told
    return [problem.code for problem in problems if is_fault(problem)]


@pytest.mark.parametrize("field", PLACES)
@pytest.mark.parametrize("text", UNSEEN, ids=ascii)
def test_what_cannot_be_seen_is_refused(field: str, text: str) -> None:
    """Typed as it is and as an escape."""
    source = hostile.pattern(marks(FIELDS, "p"), PLAIN)
    escaped = "".join(f"\\U{ord(sign):08x}" for sign in text)
    for written in (text, escaped):
        assert "hidden-character" in codes(source.replace(PLACES[field], written))


@pytest.mark.parametrize("field", CLOSED)
def test_fields_of_the_trade_take_no_other_text(field: str) -> None:
    source = hostile.pattern(marks(FIELDS, "p"), PLAIN)
    assert codes(source) == []
    assert CLOSED[field] in source
    begin = re.match(r"[^:]*: ", CLOSED[field])
    assert begin is not None
    for text in STRINGS:
        value = f"[{quoted(text)}]" if field == "rows" else quoted(text)
        assert codes(source.replace(CLOSED[field], begin[0] + value)), text


def test_files_are_called_by_plain_names_alone(tmp_path: Path) -> None:
    patterns = tmp_path / "content" / "patterns"
    patterns.mkdir(parents=True)
    (tmp_path / "content" / "shop.yaml").write_text(
        hostile.shop({"title": "Shop"}, {PLAIN: "chalk"}), encoding="utf-8"
    )
    Image.new("RGB", (40, 30), "#abcdef").save(patterns / "dot.png")
    names = {text.replace("/", "|")[:80] for text in STRINGS if not re.fullmatch("[a-z0-9-]+", text)}
    names |= {text.replace("\0", "") for text in UNSEEN if "\0" not in text}
    for name in names:
        (patterns / f"{name}.md").write_text(hostile.pattern(marks(FIELDS, "p"), PLAIN), encoding="utf-8")
    sources = load_shop(tmp_path)
    refused = [problem for problem in sources.problems if problem.code == "file-name"]
    assert len(refused) == len(names) > 100
    assert all(sign.isprintable() or sign == "\n" for sign in tell(sources.problems, sources.texts))
