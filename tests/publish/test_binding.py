"""Several sheets in one document: what each calls its own stays its own."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from weasyprint import HTML

from sitegen.publish.binding import bind

STYLES = Path(__file__).parents[2] / "themes" / "linen" / "styles"

PART = """\
<!doctype html><html lang="en"><head><title>P</title><style>.bead-A { color: #111111; }
.bead-1-A { color: #222222; }
</style></head><body data-title="Part" data-of=" of "><div class="papers">paper</div>
<h1 id="top">Part</h1><p><a href="#top">up</a> <a href="https://example.org/#top">out</a></p>
<table aria-labelledby="top"><tr><th id="c">x</th><td headers="c top">y</td></tr></table>
<svg aria-labelledby="t d" fill="url(#f)"><title id="t">x</title></svg>
<form><input type="checkbox" name="row-1"></form></body></html>
"""


def root(html: str) -> ET.Element:
    found: ET.Element = HTML(string=html).etree_element
    return found


@pytest.fixture(scope="module")
def bound() -> ET.Element:
    front = root(
        '<html><head></head><body><div class="papers">paper</div><h1 id="top">All</h1></body></html>'
    )
    bind(front, [root(PART), root(PART)])
    return front


def test_the_parts_follow_the_front_in_order(bound: ET.Element) -> None:
    body = bound.find("body")
    assert body is not None
    assert [child.get("id") for child in body] == [None, "top", "bound-1", "bound-2"]
    assert [child.get("data-title") for child in body][2:] == ["Part", "Part"]
    assert sum(one.get("class") == "papers" for one in bound.iter()) == 1


def test_ids_stand_once_and_are_led_to_from_their_own_part(bound: ET.Element) -> None:
    ids = [one.get("id") for one in bound.iter() if one.get("id")]
    assert len(ids) == len(set(ids)) == 9
    for number in (1, 2):
        part = next(one for one in bound.iter() if one.get("id") == f"bound-{number}")
        pre = f"bound-{number}-"
        assert [one.get("href") for one in part.iter("a")] == [f"#{pre}top", "https://example.org/#top"]
        assert next(part.iter("td")).get("headers") == f"{pre}c {pre}top"
        assert next(part.iter("table")).get("aria-labelledby") == f"{pre}top"
        assert next(part.iter("input")).get("name") == f"{pre}row-1"
        drawing = next(one for one in part.iter() if str(one.tag).endswith("svg"))
        assert (drawing.get("fill"), drawing.get("aria-labelledby")) == (f"url(#{pre}f)", f"{pre}t {pre}d")


@pytest.mark.parametrize("style", sorted(STYLES.glob("print*.css")), ids=lambda path: path.stem)
def test_print_styles_name_no_id(style: Path) -> None:
    """A part's ids are its own: a rule for one would be lost in a bundle."""
    text = re.sub(r"(?s)/\*.*?\*/", "", style.read_text(encoding="utf-8"))
    assert re.findall(r"#[\w-]+[^{};]*\{", text) == []


def test_each_part_has_its_own_colours(bound: ET.Element) -> None:
    styles = [one.text for one in bound.iter("style")]
    for number, style in enumerate(styles, 1):
        own = f"#bound-{number} .bead"
        assert style == f"{own}-A {{ color: #111111; }}\n{own}-1-A {{ color: #222222; }}\n"
    assert len(styles) == 2
