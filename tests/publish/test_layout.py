"""How the demo's sheets are laid out, all editions, bundles and copies: nothing torn, nothing nearly empty.

What is near empty: ink that ends in the first third of the room, on a page that is not the last of its part.
A part ends where the next page begins with a chapter. Letter has the pages of A4.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from weasyprint import HTML

from sitegen.build.copies import Printed
from sitegen.model.shop import EDITIONS
from tests.publish.every_print import COPIES, PATTERNS, SHOP, WORKS, grouped, works_of
from tests.publish.laid_out import MM, SUMMARY, USUAL, Box, Laid, laid_out, overlapping, steps_in
from tests.shared import ROOT, Once

CHAPTER, SECTION = 1, 2
"""Levels of bookmarks: a chapter, and what is within one."""
LEAST_BELOW = {0: 0.0, CHAPTER: 14.0, SECTION: 9.0}
"""Ink so far below the upper edge of a heading is more than its own height and rule, mm."""
TOP_MM = 6.0
"""A heading no further down begins its page."""
OVER = 0.08
"""Two letters may share so much of the smaller one: slanted and curved ones have room in the corners."""
A4_MM = (210.0, 297.0)
SIDE_MM, END_MM = 12.0, 20.8
"""What stays free on every side: at head and foot A4 is 17.6 mm higher than US Letter, half of it each."""
LINE_MM = 12.0
"""How far the line of a personal copy keeps from the foot of either paper."""
ONE_PAGE = EDITIONS[-1]

Work = list[tuple[Printed, list[Laid]]]
"""Each file on A4, and its pages."""


@pytest.fixture(scope="module", params=grouped(WORKS))
def work(request: pytest.FixtureRequest, once: Once) -> Work:
    """All sheets of a pattern or bundle, or all copies."""
    return [
        (one, laid_out(one.path, SUMMARY if one.edition == ONE_PAGE else USUAL))
        for one in works_of(str(request.param), once)
        if one.paper == "a4"
    ]


def ends_a_part(after: Laid | None) -> bool:
    """Whether the page after begins a chapter or is the cover of a pattern, or there is none."""
    return after is None or any(
        one.level < CHAPTER or (one.level == CHAPTER and one.down < TOP_MM) for one in after.headings
    )


def test_the_cover_is_one_page(work: Work) -> None:
    """The next page begins with the contents; large print goes on after the cover, a summary has none."""
    for one, pages in work:
        if one.edition in ("colour", "ink") and one.pattern in PATTERNS:
            first = pages[1].headings[0]
            assert (first.level, first.down < TOP_MM) == (CHAPTER, True), one.path.name
            assert [heading.level for heading in pages[0].headings] == [0]


def test_no_page_is_emptier_than_a_third_but_the_last_of_a_part(work: Work) -> None:
    assert [(one.path.name, found) for one, pages in work if (found := near_empty(pages))] == []


def near_empty(pages: list[Laid]) -> list[tuple[int, float]]:
    """Numbers of pages, and how far each is filled."""
    return [
        (page.number, round(page.filled, 2))
        for page, following in zip(pages, [*pages[1:], None], strict=True)
        if page.filled < 1 / 3 and not ends_a_part(following)
    ]


def test_no_heading_stands_alone_at_the_foot(work: Work) -> None:
    assert [(one.path.name, found) for one, pages in work if (found := left_alone(pages))] == []


def left_alone(pages: list[Laid]) -> list[tuple[int, str]]:
    """Headings with nothing below them, and the pages they stand on."""
    return [
        (page.number, one.title)
        for page in pages
        for one in page.headings
        if page.below(one) < LEAST_BELOW.get(one.level, LEAST_BELOW[SECTION])
    ]


def test_no_labels_lie_over_each_other(work: Work) -> None:
    for one, pages in work:
        assert all(page.letters for page in pages)
        assert [(page.number, found) for page in pages if (found := overlapping(page.letters, OVER))] == [], (
            one.path.name
        )


def test_nothing_stands_beyond_the_room_that_both_papers_share(work: Work) -> None:
    """A word too long for its line would, since none is torn. The line of a copy is set for each paper."""
    for one, pages in work:
        assert beyond(pages, LINE_MM if one.path.parent.name.startswith(COPIES) else END_MM) == [], one.path


def beyond(pages: list[Laid], foot_mm: float = END_MM) -> list[tuple[int, Box]]:
    """Pages with marks in the margins, and their edges in mm; a dot of the rendering is allowed for."""
    width, height = A4_MM
    least = (SIDE_MM, foot_mm, SIDE_MM, END_MM)
    found = []
    for page in pages:
        left, foot, right, head = (edge / MM for edge in page.edges)
        free = (left, foot, width - right, height - head)
        if any(one < wanted - 1 / MM for one, wanted in zip(free, least, strict=True)):
            found.append((page.number, free))
    return found


def unbroken(text: str) -> str:
    """Without hyphens, which PDFium gives as another letter where a line ends after one."""
    return re.sub(r"[^\w./:]", "", text)


TORN = re.compile(r"\b(overflow-wrap|word-break|word-wrap|hyphens|line-break)\s*:")


def test_no_word_is_torn() -> None:
    """The print engine breaks lines between words alone, unless a style sheet tells it otherwise."""
    sheets = list(ROOT.glob("themes/*/styles/print*.css"))
    assert len(sheets) >= 3
    assert [one.name for one in sheets if TORN.search(one.read_text(encoding="utf-8"))] == []
    assert TORN.search("td { overflow-wrap: anywhere; }")


def test_no_step_is_parted_from_its_drawing(work: Work) -> None:
    """Large print may part a step that has more than a page; its drawings stand beside its words."""
    for one, _ in work:
        if one.edition in ("colour", "ink"):
            steps, parted = steps_in(one.path)
            assert len(steps) > 5
            assert parted == [], one.path.name


def test_the_last_page_has_the_code_of_the_patterns_page(work: Work) -> None:
    for one, pages in work:
        if one.edition != ONE_PAGE and one.pattern in PATTERNS:
            told = unbroken("".join(letter for letter, _ in pages[-1].letters))
            address = f"quillow.example/{SHOP.folder_of(one.language)}patterns/{one.pattern}/"
            assert unbroken(address) in told, one.path.name
            assert pages[-1].filled > 1 / 4, one.path.name


ROOM = "<style>@page { size: 210mm 297mm; margin: 34mm 20mm 33mm } h2, p { margin: 0 }</style>"
FAULTY = """<h1>T</h1><p>One line.</p><p style="break-before: page; height: {down}mm">Much.</p>
<h2>Heading</h2>{below}<p style="break-before: page">The next<span style="margin-left: -3mm">X</span></p>"""
PICTURE = "data:image/svg+xml,<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'></svg>"
STEP = """<html lang="en"><title>T</title><h1>T</h1><table><tr><th scope="row">1</th>
<td><img alt="Step 1." src="{picture}"></td><td>{first}<p>Words.</p></td></tr></table></html>"""
HIGH = "<p style='height: 150mm'>Much.</p>"


@pytest.mark.parametrize(
    ("down", "below", "alone"), [(218, "", True), (100, "", True), (100, "<p>One.</p><p>Two.</p>", False)]
)
def test_planted_faults_are_seen(down: int, below: str, alone: bool, tmp_path: Path) -> None:
    """A page of one line, a heading with nothing below it, a letter over others."""
    path = tmp_path / "faulty.pdf"
    path.write_bytes(HTML(string=ROOM + FAULTY.format(down=down, below=below)).write_pdf())
    pages = laid_out(path)
    assert [number for number, _ in near_empty(pages)] == [1]
    assert left_alone(pages) == ([(2, "Heading")] if alone else [])
    assert [bool(overlapping(page.letters, OVER)) for page in pages] == [False, False, True]
    assert beyond(pages) == []


@pytest.mark.parametrize("where", ["margin-left: -12mm", "text-indent: 40em", "margin-top: -18mm"])
def test_planted_marks_beyond_the_room_are_seen(where: str, tmp_path: Path) -> None:
    """On the left, where a word is too long for its line, and above."""
    path = tmp_path / "faulty.pdf"
    style = f"white-space: nowrap; font-size: 12pt; {where}"
    path.write_bytes(HTML(string=f"{ROOM}<p style='{style}'>Words that run on</p>").write_pdf())
    assert [number for number, _ in beyond(laid_out(path))] == [1]


@pytest.mark.parametrize(("first", "parted"), [(HIGH, []), (2 * HIGH, ["Step 1."])])
def test_a_planted_parted_step_is_seen(first: str, parted: list[str], tmp_path: Path) -> None:
    path = tmp_path / "faulty.pdf"
    html = ROOM + STEP.format(first=first, picture=PICTURE)
    path.write_bytes(HTML(string=html).write_pdf(pdf_variant="pdf/ua-1"))
    assert steps_in(path) == (["Step 1."], parted)
