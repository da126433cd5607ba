"""The word charts of every PDF of the demo are those of the pattern's page, and what the measure counts.

Read through the tags and fonts of the files alone, by programs that know nothing of this project.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterable
from itertools import groupby
from operator import attrgetter, itemgetter
from pathlib import Path

import lxml.html
import pytest
from weasyprint import HTML

from sitegen.model.shop import EDITIONS
from sitegen.publish.words import Words
from tests.publish.every_print import (
    BUNDLES,
    FIRST,
    PATTERNS,
    SHOP,
    SOURCES,
    grouped,
    shop_look_of_demo,
    works_of,
)
from tests.publish.pdf_readers import ToldRow, rows_told
from tests.shared import Once, built_demo

RUN = re.compile(r"(\d+)(\D)")
ROPES = ("spiral rope",)
"""Stitches whose chart tells each stitch by itself."""


@pytest.fixture(scope="module", params=grouped(PATTERNS))
def pattern(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def heads(language: str) -> tuple[str, str]:
    words = words_of(language)
    return words.text("chart.beads-left"), words.text("chart.count")


def words_of(language: str) -> Words:
    look = shop_look_of_demo()
    return next(words for words in (look.words, *look.others) if words.language == language)


def bare(text: str) -> str:
    return re.sub(r"\s", "", text)


def test_the_word_chart_is_that_of_the_page(pattern: str, once: Once) -> None:
    """In each edition and language, on A4; the page of a priced pattern has none."""
    site = once("demo", built_demo)
    for language in SHOP.languages:
        page = (site / SHOP.folder_of(language) / "patterns" / pattern / "index.html").read_text("utf-8")
        shown = rows_of_page(page)
        assert bool(shown) == ("\nprice: free\n" in SOURCES[pattern].read_text("utf-8"))
        printed = [one for one in works_of(pattern, once) if (one.language, one.paper) == (language, "a4")]
        usual = rows_told(printed[0].path, heads(language))
        assert printed[0].edition == EDITIONS[0]
        assert usual
        if shown:
            assert usual == shown
        for one in printed[1:]:
            told = rows_told(one.path, heads(language))
            assert by_part(told) == by_part(usual), one.path.name


def rows_of_page(page: str) -> list[ToldRow]:
    """The rows of a page's word charts."""
    return [
        ToldRow(*(bare("".join(cell.itertext())) for cell in (table.find("caption"), *row)))
        for table in lxml.html.fromstring(page).iterfind('.//table[@class="words"]')
        for row in table.iterfind("tbody/tr")
    ]


def by_part(rows: Iterable[ToldRow]) -> Counter[tuple[str, str, str]]:
    """Rows without their captions and the case of their words, which editions have their own way with."""
    return Counter((row.number, row.beads.casefold(), row.count) for row in rows)


def test_the_word_chart_is_what_the_measure_counts(pattern: str, once: Once) -> None:
    """Row for row the letters that the steps of `measure --json` pick up."""
    (usual,) = (
        one
        for one in works_of(pattern, once)
        if (one.language, one.edition, one.paper) == (FIRST, EDITIONS[0], "a4")
    )
    desk = once("demo", built_demo).parent / "desk" / f"{pattern}.json"
    measured = json.loads(desk.read_text("utf-8"))
    told = rows_told(usual.path, heads(FIRST))
    captions = {
        bare(words_of(FIRST).text("chart.caption", part=one["name"])): one for one in measured["parts"]
    }
    assert {row.caption for row in told} == set(captions)
    for caption, rows in groupby(told, key=attrgetter("caption")):
        part = captions[caption]
        steps = [step for step in measured["steps"] if step["part"] == part["name"] and step["pick_up"]]
        assert unlike(printed_letters(rows), picked_letters(steps, part["stitch"])) == []


def printed_letters(rows: Iterable[ToldRow]) -> list[str]:
    """The letters of each row; rows that are told once, as `3–16`, stand for each of them."""
    letters = []
    for row in rows:
        first, _, last = row.number.partition("–")
        beads = expanded(row.beads)
        assert len(beads) == int(row.count)
        letters += [beads] * (int(last or first) - int(first) + 1)
    return letters


def picked_letters(steps: Iterable[dict[str, str]], stitch: str) -> list[str]:
    """The letters of each row as they are picked up; a rope is told stitch by stitch."""
    rows = [
        (number if stitch in ROPES else step["row"], step["pick_up"]) for number, step in enumerate(steps)
    ]
    return [
        "".join(expanded(beads) for _, beads in row)
        for _, row in groupby(sorted(rows, key=itemgetter(0)), key=itemgetter(0))
    ]


def expanded(runs: str) -> str:
    return "".join(int(count) * letter for count, letter in RUN.findall(runs))


def unlike(printed: list[str], picked: list[str]) -> list[tuple[str, str]]:
    """Where rows differ. Rows are compared together where a step picks up beads of more than one."""
    found = []
    waiting, printed_so_far, picked_so_far = [iter(printed), iter(picked)], "", ""
    while True:
        shorter = len(printed_so_far) > len(picked_so_far)
        more = next(waiting[shorter], None)
        if more is None:
            break
        if shorter:
            picked_so_far += more
        else:
            printed_so_far += more
        if len(printed_so_far) == len(picked_so_far):
            if Counter(printed_so_far) != Counter(picked_so_far):
                found.append((printed_so_far, picked_so_far))
            printed_so_far = picked_so_far = ""
    rest = (printed_so_far, "".join((picked_so_far, *waiting[1])))
    return found if rest == ("", "") else [*found, rest]


@pytest.mark.parametrize("bundle", BUNDLES)
def test_a_bundle_has_the_word_charts_of_its_patterns(bundle: str, once: Once) -> None:
    (patterns,) = (one.patterns for one in SHOP.bundles if one.name == bundle)
    for language in SHOP.languages:
        told = {
            name: rows_told(one.path, heads(language))
            for name in (bundle, *patterns)
            for one in works_of(name, once)
            if (one.language, one.edition, one.paper) == (language, EDITIONS[0], "a4")
        }
        assert told[bundle] == [row for name in patterns for row in told[name]]


WORD_CHART = """<html lang="en"><title>T</title><h1>T</h1><table class="words"><caption>Fan</caption>
<thead><tr><th scope="col">Row</th><th scope="col">Beads</th><th scope="col">In all</th></tr></thead>
<tbody><tr><th scope="row">1–2</th><td>2<b>A</b> 1<b>{letter}</b></td><td>3</td></tr></tbody></table>"""


def test_planted_changes_of_a_word_chart_are_seen(tmp_path: Path) -> None:
    """On the page, on paper, and against what is picked up."""
    told = {}
    for letter in "BC":
        path = tmp_path / f"{letter}.pdf"
        page = WORD_CHART.format(letter=letter)
        path.write_bytes(HTML(string=page).write_pdf(pdf_variant="pdf/ua-1"))
        told[letter] = rows_told(path, ("Beads", "In all"))
        assert told[letter] == rows_of_page(page) == [ToldRow("Fan", "1–2", f"2A1{letter}", "3")]
    assert told["B"] != told["C"]
    assert printed_letters(told["B"]) == ["AAB", "AAB"]
    steps = [{"row": row, "pick_up": beads} for row, beads in (("1", "2A"), ("2", "1B2A"), ("2", "1B"))]
    assert unlike(printed_letters(told["B"]), picked_letters(steps, "brick")) == []
    assert unlike(printed_letters(told["C"]), picked_letters(steps, "brick"))
    assert unlike(["AAB"], ["AAB", "A"])
    assert unlike(["AAB", "A"], ["AAB"])
