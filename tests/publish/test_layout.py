"""How the sheets of the demo's free patterns are laid out: nothing torn apart, nothing nearly empty.

What is near empty: ink that ends in the first third of the room, on a page that is not the last of its part.
A part ends where the next page begins with a chapter.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from weasyprint import HTML

from tests.publish.laid_out import Laid, laid_out, overlapping, pages_of_steps
from tests.shared import Once, built_demo

PATTERNS = Path(__file__).parents[2] / "content" / "patterns"
FREE = sorted(
    path.stem
    for path in PATTERNS.glob("*.md")
    if "." not in path.stem and "\nprice: free\n" in path.read_text(encoding="utf-8")
)
CHAPTER, SECTION = 1, 2
"""Levels of bookmarks: a chapter, and what is within one."""
LEAST_BELOW = {0: 0.0, CHAPTER: 14.0, SECTION: 9.0}
"""Ink so far below the upper edge of a heading is more than its own height and rule, mm."""
TOP_MM = 6.0
"""A heading no further down begins its page."""
OVER = 0.08
"""Two letters may share so much of the smaller one: slanted and curved ones have room in the corners."""


GERMAN = [name for name in FREE if name in ("evening-fern", "hazel-catkins", "hedge-berry-bracelet")]
"""Longer words than the English ones; a pair with fringe, twisted strands, and most facts on the cover."""


@pytest.fixture(
    scope="module",
    params=[
        *(f"patterns/{name}/{name}-a4.pdf" for name in FREE),
        *(f"de/patterns/{name}/{name}-de-a4.pdf" for name in GERMAN),
    ],
)
def sheets(request: pytest.FixtureRequest, once: Once) -> Path:
    """The A4 sheets of a pattern, in colour."""
    return once("demo", built_demo) / str(request.param)


@pytest.fixture(scope="module")
def pages(sheets: Path) -> list[Laid]:
    return laid_out(sheets)


def ends_a_part(after: Laid | None) -> bool:
    """Whether the page after begins something new, or there is none."""
    return after is None or any(one.level <= CHAPTER and one.down < TOP_MM for one in after.headings)


def test_the_cover_is_one_page(pages: list[Laid]) -> None:
    """The next page begins with the contents."""
    first = pages[1].headings[0]
    assert (first.level, first.down < TOP_MM) == (CHAPTER, True)
    assert [one.level for one in pages[0].headings] == [0]


def test_no_page_is_emptier_than_a_third_but_the_last_of_a_part(pages: list[Laid]) -> None:
    after = [*pages[1:], None]
    empty = [
        (page.number, round(page.filled, 2))
        for page, following in zip(pages, after, strict=True)
        if page.filled < 1 / 3 and not ends_a_part(following)
    ]
    assert empty == []


def test_no_heading_stands_alone_at_the_foot(pages: list[Laid]) -> None:
    alone = [
        (page.number, one.title)
        for page in pages
        for one in page.headings
        if page.below(one) < LEAST_BELOW.get(one.level, LEAST_BELOW[SECTION])
    ]
    assert alone == []


def test_no_labels_lie_over_each_other(pages: list[Laid]) -> None:
    assert all(page.letters for page in pages)
    assert [(page.number, found) for page in pages if (found := overlapping(page.letters, OVER))] == []


def test_no_step_is_parted_from_its_drawing(sheets: Path) -> None:
    steps = list(pages_of_steps(sheets))
    assert len(steps) > 5
    assert [told for told, on in steps if len(on) != 1] == []


def test_the_last_page_has_the_code_of_the_patterns_page(sheets: Path, pages: list[Laid]) -> None:
    told = "".join(letter for letter, _ in pages[-1].letters)
    place = "/".join(sheets.parts[sheets.parts.index("site") + 1 : -1])
    assert f"https://quillow.example/{place}/" in told
    assert pages[-1].filled > 1 / 4


FAULTY = """<style>@page {{ size: 210mm 297mm; margin: 34mm 20mm 33mm }} h2, p {{ margin: 0 }}</style>
<h1>T</h1><p>One line.</p><p style="break-before: page; height: {down}mm">Much.</p><h2>Heading</h2>{below}
<p style="break-before: page">The next<span style="margin-left: -3mm">X</span></p>"""


@pytest.mark.parametrize(
    ("down", "below", "alone"), [(218, "", True), (100, "", True), (100, "<p>One.</p><p>Two.</p>", False)]
)
def test_planted_faults_are_seen(down: int, below: str, alone: bool, tmp_path: Path) -> None:
    """A page of one line, a heading with nothing below it, a letter over others."""
    path = tmp_path / "faulty.pdf"
    path.write_bytes(HTML(string=FAULTY.format(down=down, below=below)).write_pdf())
    first, second, third = laid_out(path)
    assert first.filled < 1 / 3
    assert not ends_a_part(second)
    assert [second.below(one) < LEAST_BELOW[CHAPTER] for one in second.headings] == [alone]
    assert overlapping(third.letters, OVER)
    assert not overlapping(first.letters, OVER)
