"""The Atom feed. What it must hold: RFC 4287 (sections named beside the checks); names: RFC 4151."""

from __future__ import annotations

import re
from datetime import date

import pytest
from lxml import etree

from sitegen.model.shop import Shop
from sitegen.publish.feed import tag_uri
from tests.publish.sample_shop import Built

HOME = "https://beads.example/shop/"
PAGE = f"{HOME}patterns/reed-pair/"
ATOM = "{http://www.w3.org/2005/Atom}"
MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ")
TAG = re.compile(r"tag:[a-z0-9.-]+,\d{4}(-\d\d(-\d\d)?)?:[A-Za-z0-9._~!$&'()*+,;=:@/?%-]+")
"""RFC 4151 section 2.1, with a host as authority."""


@pytest.fixture(scope="module")
def feed(built: Built) -> etree._Element:
    return etree.parse(built.site / "feed.xml").getroot()


def link(element: etree._Element, rel: str) -> list[etree._Element]:
    return [one for one in element.iterfind(f"{ATOM}link") if one.get("rel") == rel]


def test_the_feed_says_whose_it_is_and_where_it_stands(feed: etree._Element) -> None:
    """Sections 4.1.1 and 4.2.7.2."""
    assert feed.findtext(f"{ATOM}title") == "Ferry & Daughters"
    assert feed.findtext(f"{ATOM}author/{ATOM}name") == "Oona Ferry"
    assert feed.findtext(f"{ATOM}id") == HOME
    assert [one.get("href") for one in link(feed, "self")] == [f"{HOME}feed.xml"]
    assert [one.get("href") for one in link(feed, "alternate")] == [HOME]


def test_every_dated_edition_is_an_entry_the_newest_first(feed: etree._Element) -> None:
    entries = feed.findall(f"{ATOM}entry")
    assert [entry.findtext(f"{ATOM}title") for entry in entries] == ["Reed pair, edition 2", "Reed pair"]
    summaries = [entry.findtext(f"{ATOM}summary") for entry in entries]
    assert summaries == ["A clearer fringe.", "A small fan with three strands."]
    for entry in entries:
        assert [one.get("href") for one in link(entry, "alternate")] == [PAGE]


def test_dates_are_full_moments_and_the_feed_is_as_new_as_its_newest_entry(feed: etree._Element) -> None:
    """Section 3.3."""
    dates = [str(one.text) for one in feed.iterfind(f"{ATOM}entry/{ATOM}updated")]
    assert dates == ["2026-05-02T00:00:00Z", "2026-03-14T00:00:00Z"]
    assert feed.findtext(f"{ATOM}updated") == dates[0]
    assert all(MOMENT.fullmatch(day) for day in dates)


def test_names_of_entries_are_tags_and_no_two_alike(feed: etree._Element) -> None:
    names = [str(one.text) for one in feed.iterfind(f"{ATOM}entry/{ATOM}id")]
    assert names == [
        "tag:beads.example,2026-05-02:shop/patterns/reed-pair/2",
        "tag:beads.example,2026-03-14:shop/patterns/reed-pair/1",
    ]
    assert all(TAG.fullmatch(name) for name in names)


def test_free_sheets_come_with_the_newest_edition_alone(built: Built, feed: etree._Element) -> None:
    """Section 4.2.7.6: the length is in octets."""
    newest, first = feed.findall(f"{ATOM}entry")
    assert link(first, "enclosure") == []
    files = {one.get("href"): int(str(one.get("length"))) for one in link(newest, "enclosure")}
    names = ("reed-pair-a4.pdf", "reed-pair-letter.pdf")
    folder = built.site / "patterns" / "reed-pair"
    assert files == {PAGE + name: (folder / name).stat().st_size for name in names}
    assert {one.get("type") for one in link(newest, "enclosure")} == {"application/pdf"}


def test_the_pages_lead_to_the_feed(built: Built) -> None:
    words = 'type="application/atom+xml" title="Ferry &amp; Daughters">'
    for page, up in (
        ("index.html", ""),
        ("techniques/index.html", "../"),
        ("patterns/reed-pair/index.html", "../../"),
        ("patterns/pebble-charm/index.html", "../../"),
    ):
        text = (built.site / page).read_text(encoding="utf-8")
        assert f'<link rel="alternate" href="{up}feed.xml" {words}' in text


@pytest.mark.parametrize(
    ("address", "name"),
    [
        ("https://a.example/", "tag:a.example,2026-05-02:x/1"),
        ("http://A.example:8080/one/two/", "tag:a.example,2026-05-02:one/two/x/1"),
        ("https://perlen-grün.example/", "tag:xn--perlen-grn-ieb.example,2026-05-02:x/1"),
        ("https://a.example/grün & gut/", "tag:a.example,2026-05-02:gr%C3%BCn%20%26%20gut/x/1"),
    ],
)
def test_a_name_is_made_of_the_host_as_the_dns_knows_it(address: str, name: str) -> None:
    found = tag_uri(Shop(address=address), date(2026, 5, 2), "x/1")
    assert found == name
    assert TAG.fullmatch(found)
