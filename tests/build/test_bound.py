"""Bundles as they are built: one file with the sheets of several patterns, its page, and the ways to it."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest

from sitegen.build import build
from tests.publish.sample_shop import PRICED, SHOP, Built, Outline
from tests.shared import Once

BUNDLES = """\
buy: https://seller.example/{name}
bundles:
  - name: gifts
    title: Two gifts
    summary: Free and quick.
    patterns: [moss-charm, shell-charm]
    date: 2026-06-01
  - name: shore
    title: The whole shore
    summary: Stone and moss.
    patterns: [pebble-charm, moss-charm]
    price: 6.50
"""
FREE_CHARM = PRICED.replace("Pebble charm", "Shell charm").replace("price: 4.50", "price: free")
MOSS_CHARM = (
    FREE_CHARM.replace("Shell", "Moss").replace("name: slate", "name: moss").replace("#42505c", "#4e6b2f")
)
ATOM = "{http://www.w3.org/2005/Atom}"
PARTS = {"gifts": ("Moss charm", "Shell charm"), "shore": ("Pebble charm", "Moss charm")}


def make(folder: Path) -> Built:
    root = folder / "shop"
    (root / "content" / "patterns").mkdir(parents=True)
    for name, text in (("pebble", PRICED), ("shell", FREE_CHARM), ("moss", MOSS_CHARM)):
        (root / "content" / "patterns" / f"{name}-charm.md").write_text(text, encoding="utf-8")
    (root / "content" / "shop.yaml").write_text(SHOP + BUNDLES, encoding="utf-8")
    result = build(root)
    assert result.files, [str(problem) for problem in result.problems]
    return Built(root, result)


@pytest.fixture(scope="module")
def bound(once: Once) -> Built:
    return once("bundles", make)


def pdf_of(bound: Built, name: str, file: str) -> Path:
    return next(path for path in bound.pdfs() if path.name == f"{name}{file}")


def texts(path: Path) -> list[str]:
    with pdfplumber.open(path) as pdf:
        return [one.extract_text() for one in pdf.pages]


def _page(item: pikepdf.OutlineItem) -> tuple[int, int]:
    assert isinstance(item.destination, pikepdf.Array)
    return item.destination[0].objgen


def outline(path: Path) -> list[tuple[str, list[str], int]]:
    """Bookmarks of the first rank: title, those below, and the page (from 1) each leads to."""
    with pikepdf.open(path) as pdf:
        pages = {one.obj.objgen: number for number, one in enumerate(pdf.pages, 1)}
        with pdf.open_outline() as found:
            return [
                (one.title, [below.title for below in one.children], pages[_page(one)]) for one in found.root
            ]


Mark = tuple[str, int, list["Mark"]]


def tree(path: Path) -> list[Mark]:
    """All bookmarks: title, page (from 1), those below."""
    with pikepdf.open(path) as pdf:
        pages = {one.obj.objgen: number for number, one in enumerate(pdf.pages, 1)}

        def below(items: Iterable[pikepdf.OutlineItem]) -> list[Mark]:
            return [(one.title, pages[_page(one)], below(one.children)) for one in items]

        with pdf.open_outline() as found:
            return below(found.root)


def moved(mark: Mark, pages: int) -> Mark:
    """A bookmark and those below it, so many pages further on."""
    return mark[0], mark[1] + pages, [moved(one, pages) for one in mark[2]]


def slug(title: str) -> str:
    return title.lower().replace(" ", "-")


def measures(bound: Built, name: str) -> dict[str, list[dict[str, object]]]:
    text = (bound.output / "desk" / f"{name}.json").read_text(encoding="utf-8")
    found: dict[str, list[dict[str, object]]] = json.loads(text)
    return found


def test_where_they_lie(bound: Built) -> None:
    places = [path.relative_to(bound.output).as_posix() for path in bound.pdfs()]
    own = [place for place in places if "gifts" in place or "shore" in place]
    assert own == [
        *(f"for-sale/shore-{paper}.pdf" for paper in ("a4", "letter")),
        *(f"site/bundles/gifts/gifts-{paper}.pdf" for paper in ("a4", "letter")),
    ]


@pytest.mark.parametrize("file", ["-a4.pdf", "-letter.pdf"])
@pytest.mark.parametrize("name", PARTS)
@pytest.mark.parametrize("profile", ["ua1", "2a"])
def test_they_follow_the_standards(bound: Built, name: str, file: str, profile: str) -> None:
    """ISO 14289-1 and ISO 19005-2 by the checker page-validation."""
    report = validation.validate_pdf(pdf_of(bound, name, file), profile=profile)
    assert report.is_compliant, report


@pytest.mark.parametrize("name", PARTS)
def test_pages_are_counted_through(bound: Built, name: str) -> None:
    pages = texts(pdf_of(bound, name, "-a4.pdf"))
    for number, text in enumerate(pages, 1):
        assert f"{number} of {len(pages)}" in text


@pytest.mark.parametrize("name", PARTS)
def test_bookmarks_and_contents_lead_to_each_pattern(bound: Built, name: str) -> None:
    path = pdf_of(bound, name, "-a4.pdf")
    (_, own, first), *patterns = outline(path)
    assert own == ["Contents", "One shopping list"]
    assert first == 1
    assert tuple(title for title, _, _ in patterns) == PARTS[name]
    assert all("The making" in below for _, below, _ in patterns)
    said = re.findall(r"from page (\d+)", texts(path)[0])
    assert said == [str(page) for _, _, page in patterns]


Link = tuple[int, int, int, int]


def links(path: Path) -> list[Link]:
    """(page, height on it, page it leads to, height there) of each link within a file; heights in points."""
    with pikepdf.open(path) as pdf:
        pages = {one.obj.objgen: number for number, one in enumerate(pdf.pages, 1)}
        named = pikepdf.NameTree(pdf.Root.Names.Dests)
        return [
            (number, round(float(note.Rect[1])), pages[target[0].objgen], round(float(target[3])))
            for number, one in enumerate(pdf.pages, 1)
            for note in one.obj.get("/Annots", [])
            if "/Dest" in note
            for target in [named[str(note.Dest)]]
        ]


@pytest.mark.parametrize("name", PARTS)
def test_links_lead_where_they_lead_in_each_pattern_alone(bound: Built, name: str) -> None:
    """From every place of a pattern to its own place, all pages counted on from its first one."""
    path = pdf_of(bound, name, "-a4.pdf")
    marks, found = tree(path)[1:], links(path)
    for title, first, _ in marks:
        alone = links(pdf_of(bound, slug(title), "-a4.pdf"))
        assert len(alone) > 5
        last = first + len(texts(pdf_of(bound, slug(title), "-a4.pdf"))) - 1
        own = [one for one in found if first <= one[0] <= last]
        assert own == [(page + first - 1, top, to + first - 1, there) for page, top, to, there in alone]
    contents = {(to, there) for page, _, to, there in found if page < marks[0][1]}
    assert sorted(to for to, _ in contents) == [first for _, first, _ in marks]


@pytest.mark.parametrize("name", PARTS)
def test_bookmarks_of_a_pattern_are_those_of_its_own_file(bound: Built, name: str) -> None:
    """Below its title, as deep, and all pages counted on from its first one."""
    for mark in tree(pdf_of(bound, name, "-a4.pdf"))[1:]:
        (alone,) = tree(pdf_of(bound, slug(mark[0]), "-a4.pdf"))
        assert len(alone[2]) > 5
        assert mark == moved(alone, mark[1] - 1)


@pytest.mark.parametrize("name", PARTS)
def test_every_step_of_its_patterns_is_in_it(bound: Built, name: str) -> None:
    whole = "\n".join(texts(pdf_of(bound, name, "-a4.pdf")))
    for title in PARTS[name]:
        alone = "\n".join(texts(pdf_of(bound, slug(title), "-a4.pdf")))
        lines = [line for line in alone.splitlines() if re.search(r"so far: |Pick up|^Strand|^Row", line)]
        assert len(lines) > 3
        assert Counter(lines) - Counter(whole.splitlines()) == Counter()


def test_one_shopping_list_for_all(bound: Built) -> None:
    """The page and the file say the same sum, and it is that of the patterns."""
    page = Outline((bound.site / "bundles" / "gifts" / "index.html").read_text(encoding="utf-8")).text
    names = ("moss-charm", "shell-charm")
    total = sum(int(str(bead["total"])) for name in names for bead in measures(bound, name)["beads"])
    assert f"All beads {total}" in page
    assert f"All beads {total}" in "\n".join(texts(pdf_of(bound, "gifts", "-a4.pdf"))[:3])


def test_the_pages_say_what_it_costs(bound: Built) -> None:
    free = (bound.site / "bundles" / "gifts" / "index.html").read_text(encoding="utf-8")
    sold = (bound.site / "bundles" / "shore" / "index.html").read_text(encoding="utf-8")
    assert 'href="gifts-a4.pdf"' in free
    assert "seller.example" not in free
    assert ".pdf" not in sold
    assert "€6.50" in sold
    assert 'href="https://seller.example/shore"' in sold
    for text in (free, sold):
        assert Outline(text).faults == []
        assert len(set(Outline(text).ids)) == len(Outline(text).ids)


def test_the_feed_tells_of_a_bundle_with_a_date(bound: Built) -> None:
    """With its files where it is free; the other bundle says no date, and the charms have none either."""
    home = "https://beads.example/shop/bundles/gifts/"
    (entry,) = ET.parse(bound.site / "feed.xml").getroot().iterfind(f"{ATOM}entry")
    assert entry.findtext(f"{ATOM}title") == "Two gifts"
    assert entry.findtext(f"{ATOM}summary") == "Free and quick."
    assert entry.findtext(f"{ATOM}id") == "tag:beads.example,2026-06-01:shop/bundles/gifts"
    assert entry.findtext(f"{ATOM}updated") == "2026-06-01T00:00:00Z"
    ways = {one.get("href"): one.get("length") for one in entry.iterfind(f"{ATOM}link")}
    assert ways == {home: None} | {
        home + path.name: str(path.stat().st_size) for path in bound.pdfs() if path.name.startswith("gifts-")
    }
    assert len(ways) == 3


def test_the_ways_to_it(bound: Built) -> None:
    front = (bound.site / "index.html").read_text(encoding="utf-8")
    assert 'href="bundles/gifts/index.html"' in front
    assert 'href="../bundles/shore/index.html"' in (bound.site / "catalogue" / "index.html").read_text(
        "utf-8"
    )
    assert 'href="../../bundles/gifts/index.html"' in bound.page("moss-charm")
    assert 'href="../../bundles/shore/index.html"' in bound.page("moss-charm")
    assert "bundles/gifts" not in bound.page("pebble-charm")
    assert "/bundles/gifts/" in (bound.site / "sitemap.xml").read_text(encoding="utf-8")
