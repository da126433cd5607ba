"""The body: prose, charts, steps and asides in their order."""

from __future__ import annotations

import pytest

from sitegen.model.source import Aside, ChartHere, Prose, StepsHere
from sitegen.read.body import Body, note_html, read_body
from sitegen.read.faults import Faults
from tests.read.samples import codes

PARTS = ("Fan", "Long Fringe")


def body(text: str, parts: tuple[str, ...] | None = PARTS) -> tuple[Body, list[tuple[str, int, int]]]:
    faults = Faults()
    made = read_body(text, "f", 1, parts, faults)
    return made, codes(faults.problems)


def test_blocks_in_order() -> None:
    made, problems = body(
        "One.\n\nTwo.\n\n```chart Fan\n A\n```\n## Head\n::: steps Fan\n"
        "::: tip\nMind *this*.\n\nAnd that.\n:::\n::: chart Long Fringe\nLast.\n"
    )
    assert problems == []
    assert made.blocks == (
        Prose("One.\n\nTwo."),
        ChartHere("Fan"),
        Prose("## Head"),
        StepsHere("Fan"),
        Aside("tip", "Mind *this*.\n\nAnd that."),
        ChartHere("Long Fringe"),
        Prose("Last."),
    )
    assert [block.where.line for block in made.blocks] == [1, 5, 8, 9, 10, 15, 16]
    assert [(chart.name, chart.lines) for chart in made.charts] == [("Fan", ((6, " A"),))]


@pytest.mark.parametrize(
    "text",
    [
        "```\n::: steps Nobody\n:::\n```\n",
        "~~~text\n::: note\n~~~\n",
        "Text:\n\n    ::: note\n",
        "> ::: note\n",
        "A colon ::: within a line.\n",
    ],
)
def test_marks_inside_code_are_text(text: str) -> None:
    made, problems = body(text)
    assert problems == []
    assert [type(block) for block in made.blocks] == [Prose]


def test_code_inside_an_aside_is_text() -> None:
    made, problems = body("::: note\n```\n:::\n```\n:::\n")
    assert problems == []
    assert made.blocks == (Aside("note", "```\n:::\n```"),)


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        (":::\n", ("mark-stray", 1, 1)),
        ("::: steps Fan\n:::\n", ("mark-stray", 2, 1)),
        ("::: note\nText\n", ("mark-unclosed", 1, 5)),
        ("::: note\nText\n::: steps Fan\n", ("mark-unclosed", 1, 5)),
        ("::: note\nText\n::: tip\nText\n:::\n", ("mark-unclosed", 1, 5)),
        ("::: hint\n", ("mark-unknown", 1, 5)),
        (":::: note\n", ("mark-unknown", 1, 1)),
        ("::: steps\n", ("mark-part", 1, 5)),
        ("::: steps Fann\n", ("part-unknown", 1, 11)),
        ("::: chart Fann\n", ("part-unknown", 1, 11)),
        ("::: steps Fan\n\n::: steps Fan\n", ("placed-twice", 3, 11)),
        ("::: chart Fan\n\n```chart Fan\nA\n```\n", ("placed-twice", 3, 10)),
        ("::: note Look\nText\n:::\n", ("mark-extra", 1, 10)),
        ("::: note\n\n:::\n", ("mark-empty", 1, 5)),
        ("```chart Fan\nA\n", ("fence-unclosed", 1, 1)),
        ("```\n::: steps Fan\n", ("fence-unclosed", 1, 1)),
        ("```chart\nA\n```\n", ("chart-nameless", 1, 1)),
        ("- item\n\n  ```chart Fan\n  A\n  ```\n", ("chart-inside", 3, 1)),
        ("::: note\n```chart Fan\nA\n```\n:::\n", ("chart-inside", 2, 1)),
    ],
)
def test_refuses(text: str, problem: tuple[str, int, int]) -> None:
    assert body(text)[1] == [problem]


def test_without_a_header_names_are_not_judged() -> None:
    assert body("::: steps Anything\n", parts=None)[1] == []


def test_html_is_told_not_refused() -> None:
    faults = Faults()
    note_html("Fine <https://example.org/> and `<b>`.\n\n<div>\nx\n</div>\n\nA <b>b</b>\n", "f", 1, faults)
    assert codes(faults.problems) == [("html-shown", 3, 1), ("html-shown", 7, 3)]
