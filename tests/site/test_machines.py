"""What machines read: feed, list of pages and data blocks, each before its published grammar."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any
from urllib.robotparser import RobotFileParser

import pytest
from lxml import etree

from tests.site.outside import MODULES, OURS, node, relax_ng
from tests.site.places import Page, Site
from tests.site.vocabulary import faults

SCHEMAS = Path(__file__).parent / "schemas"
ATOM = "{http://www.w3.org/2005/Atom}"
MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
XSD = "{http://www.w3.org/2001/XMLSchema}"
GOOD_FEED = """\
<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en"><id>tag:a.example,2026:f</id><title>T</title>
<updated>2026-05-02T00:00:00Z</updated><author><name>O</name></author>
<entry><id>tag:a.example,2026:e</id><title>E</title><updated>2026-05-02T00:00:00Z</updated>
<link rel="alternate" href="https://a.example/e/"/><summary>S</summary></entry></feed>
"""
FEED_FAULTS = {
    "<author><name>O</name></author>": "",
    "<id>tag:a.example,2026:e</id>": "",
    '2026-05-02T00:00:00Z</updated>\n<link rel="alternate"': '2026-05-02</updated>\n<link rel="alternate"',
    ' href="https://a.example/e/"': "",
    "<summary>S</summary>": "<summary><b>S</b></summary>",
}


def site_map_schema() -> etree.XMLSchema:
    """The published schema of 2008, except that elements of other namespaces need no schema of their own.

    Strictly it refuses the links between languages that its own users ask for.
    """
    tree = etree.parse(MODULES / "sitemap" / "schema" / "sitemap.xsd")
    for any_element in tree.iter(f"{XSD}any"):
        any_element.set("processContents", "lax")
    return etree.XMLSchema(tree)


def blocks(page: Page) -> list[Any]:
    """The data blocks of a page, read as JSON."""
    return [json.loads(one) for one in page.tree.xpath("//script[@type='application/ld+json']/text()")]


def indexed(site: Site) -> set[str]:
    """The addresses that pages name as their own, without the page that stands in for missing ones."""
    return {
        address
        for page in site.pages
        for address in page.tree.xpath("//link[@rel='canonical']/@href")
        if not page.tree.xpath("//meta[@name='robots' and contains(@content, 'noindex')]")
    }


def test_feeds_follow_their_grammar(site: Site) -> None:
    """RFC 4287."""
    feeds = site.files(".xml")
    feeds = [path for path in feeds if etree.parse(path).getroot().tag == f"{ATOM}feed"]
    assert feeds
    for path in feeds:
        assert relax_ng(SCHEMAS / "atom.rnc", path) == []
        root = etree.parse(path).getroot()
        ids = [one.text for one in root.iter(f"{ATOM}id")]
        assert len(ids) == len(set(ids))
        dates = [one.text for one in root.iterfind(f"{ATOM}entry/{ATOM}updated")]
        assert dates
        assert root.findtext(f"{ATOM}updated") == max(dates)
        for link in root.iter(f"{ATOM}link"):
            at = str(link.get("href"))
            if at.startswith(site.address):
                file = site.root / at.removeprefix(site.address)
                file = file / "index.html" if at.endswith("/") else file
                assert file.is_file(), at
                assert int(link.get("length", file.stat().st_size)) == file.stat().st_size, at


def test_the_list_of_pages_follows_its_schema_and_is_whole(site: Site) -> None:
    """sitemaps.org."""
    tree = etree.parse(site.root / "sitemap.xml")
    schema = site_map_schema()
    schema.validate(tree)
    assert [str(one) for one in schema.error_log] == []
    assert {str(one.text) for one in tree.iter(f"{MAP}loc")} == indexed(site)


def test_robots_are_welcome_and_find_the_list(site: Site) -> None:
    robots = RobotFileParser()
    robots.parse((site.root / "robots.txt").read_text(encoding="utf-8").splitlines())
    assert robots.site_maps() == [f"{site.address}sitemap.xml"]
    assert all(robots.can_fetch("*", address) for address in indexed(site))


def test_data_blocks_use_the_published_vocabulary(site: Site) -> None:
    """schema.org, types, properties and the types of values."""
    told = {page.name: blocks(page) for page in site.pages}
    assert sum(map(len, told.values())) > len(site.pattern_pages) // 2
    assert [f"{name}: {fault}" for name, data in told.items() for fault in faults(data)] == []


def test_data_blocks_hold_what_search_engines_ask_for(site: Site) -> None:
    told = {page.name: blocks(page) for page in site.pages}
    assert [one for one in judged(told) if one[1] == "ERROR"] == []


def judged(told: dict[str, list[Any]]) -> list[list[str]]:
    """[page, severity, message] of the validator of structured data."""
    return list(json.loads(node(OURS / "structured-data.mjs", MODULES, given=json.dumps(told))))


@pytest.mark.parametrize("fault", FEED_FAULTS)
def test_a_wrong_feed_is_seen(tmp_path: Path, fault: str) -> None:
    file = tmp_path / "feed.xml"
    file.write_text(GOOD_FEED, encoding="utf-8")
    assert relax_ng(SCHEMAS / "atom.rnc", file) == []
    assert fault in GOOD_FEED
    file.write_text(GOOD_FEED.replace(fault, FEED_FAULTS[fault]), encoding="utf-8")
    assert relax_ng(SCHEMAS / "atom.rnc", file) != []


GOOD_BLOCK = {
    "@context": "https://schema.org",
    "@type": "Product",
    "name": "Fob",
    "image": "https://a.example/fob.png",
    "offers": {
        "@type": "Offer",
        "price": 4.5,
        "priceCurrency": "EUR",
        "availability": "https://schema.org/InStock",
    },
}


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("prize", "4.50"),
        ("@type", "Prodct"),
        ("offers", "4.50"),
        ("offers", {"@type": "Person", "name": "Oona"}),
        ("offers", {"@type": "Offer", "availability": "Plenty"}),
    ],
)
def test_a_wrong_data_block_is_seen(key: str, value: Any) -> None:
    assert list(faults(GOOD_BLOCK)) == []
    assert list(faults({**copy.deepcopy(GOOD_BLOCK), key: value})) != []


def test_a_missing_price_is_seen() -> None:
    without = copy.deepcopy(GOOD_BLOCK)
    del without["offers"]["price"]  # type: ignore[attr-defined]
    assert "ERROR" in {severity for _, severity, _ in judged({"page": [without]})}
    assert "ERROR" not in {severity for _, severity, _ in judged({"page": [GOOD_BLOCK]})}


def test_a_wrong_list_of_pages_is_seen() -> None:
    text = (
        f'<urlset xmlns="{MAP[1:-1]}"><url><loc>https://a.example/</loc><priority>2</priority></url></urlset>'
    )
    assert not site_map_schema().validate(etree.fromstring(text))
    assert site_map_schema().validate(etree.fromstring(text.replace("<priority>2</priority>", "")))
