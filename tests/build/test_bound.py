"""Bundles as they are built: one file with the sheets of several patterns, its page, and the ways to it."""

from __future__ import annotations

import json
import re
from collections import Counter
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
  - {name: gifts, title: Two gifts, summary: Free and quick., patterns: [moss-charm, shell-charm]}
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


@pytest.mark.parametrize("name", PARTS)
def test_links_stay_within_their_pattern(bound: Built, name: str) -> None:
    path = pdf_of(bound, name, "-a4.pdf")
    starts = [page for _, _, page in outline(path)]
    with pikepdf.open(path) as pdf:
        pages = {one.obj.objgen: number for number, one in enumerate(pdf.pages, 1)}
        named = pikepdf.NameTree(pdf.Root.Names.Dests)
        found = 0
        for number, one in enumerate(pdf.pages, 1):
            for note in one.obj.get("/Annots", []):
                if "/Dest" not in note:
                    continue
                found += 1
                target = pages[named[str(note.Dest)][0].objgen]
                home = max(start for start in starts if start <= number)
                assert number == 1 or max(start for start in starts if start <= target) == home
        assert found >= len(PARTS[name])


@pytest.mark.parametrize("name", PARTS)
def test_every_step_of_its_patterns_is_in_it(bound: Built, name: str) -> None:
    whole = "\n".join(texts(pdf_of(bound, name, "-a4.pdf")))
    for title in PARTS[name]:
        slug = title.lower().replace(" ", "-")
        alone = "\n".join(texts(pdf_of(bound, slug, "-a4.pdf")))
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
