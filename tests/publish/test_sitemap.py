"""The list of pages, robots.txt, and what the author's desk says of them."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from urllib.robotparser import RobotFileParser

import pytest
from lxml import etree

from sitegen.build.machines import feed_address, feed_files, listed, report, site_files
from sitegen.model.bundle import Bundle
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.sitemap import Listed, sitemap
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import Built

HOME = "https://beads.example/shop/"
MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
XHTML = "{http://www.w3.org/1999/xhtml}"


@pytest.fixture(scope="module")
def told(built: Built) -> dict[str, str | None]:
    """Address -> when it changed."""
    tree = etree.parse(built.site / "sitemap.xml")
    return {str(url.findtext(f"{MAP}loc")): url.findtext(f"{MAP}lastmod") for url in tree.getroot()}


@pytest.fixture(scope="module")
def words(built: Built) -> Words:
    return Words(theme_folder("linen", built.root), "en")


@pytest.fixture(scope="module")
def patterns(built: Built) -> list[Pattern]:
    return list(load_shop(built.root).patterns)


def test_every_page_is_listed_by_the_address_it_names_itself(
    built: Built, told: dict[str, str | None]
) -> None:
    own = {}
    for page in built.site.rglob("index.html"):
        named = re.findall('<link rel="canonical" href="([^"]*)">', page.read_text(encoding="utf-8"))
        own[HOME + page.relative_to(built.site).as_posix().removesuffix("index.html")] = named
    assert own == {address: [address] for address in told}
    assert f"{HOME}patterns/reed-pair/in-dusk/" in told


def test_dates_are_those_of_the_sources(told: dict[str, str | None]) -> None:
    assert told[HOME] == told[f"{HOME}catalogue/"] == told[f"{HOME}materials/"] == "2026-05-02"
    assert told[f"{HOME}patterns/reed-pair/"] == "2026-05-02"
    assert told[f"{HOME}patterns/reed-pair/in-dusk/"] == "2026-05-02"
    assert told[f"{HOME}patterns/pebble-charm/"] is None
    assert told[f"{HOME}techniques/"] is None


def test_a_bundle_is_as_new_as_its_newest_pattern_or_itself(patterns: list[Pattern]) -> None:
    old = Bundle("set", "Set", "Both.", ("reed-pair", "pebble-charm"), day=date(2026, 4, 1))
    new, undated = replace(old, day=date(2026, 6, 1)), replace(old, patterns=("pebble-charm",), day=None)
    days = []
    for bundle in (old, new, undated):
        shop = Shop(address="https://a.example/", languages=("en", "de"), bundles=(bundle,))
        days.append(listed("de/bundles/set/index.html", patterns, shop).changed)
    assert days == [date(2026, 5, 2), date(2026, 6, 1), None]


def test_a_page_in_several_languages_names_each_of_them() -> None:
    both = (("en", "https://a.example/"), ("de", "https://a.example/de/"))
    pages = [Listed(address, date(2026, 5, 2), both) for _, address in both]
    root = etree.fromstring(sitemap(pages))
    for url in root:
        links = [(link.get("hreflang"), link.get("href")) for link in url.iter(f"{XHTML}link")]
        assert links == list(both)
        assert {link.get("rel") for link in url.iter(f"{XHTML}link")} == {"alternate"}


def test_languages_of_a_page_are_those_it_is_made_in(patterns: list[Pattern]) -> None:
    shop = Shop(address="https://a.example/", languages=("en", "de"))
    paths = ["index.html", "de/index.html", "patterns/reed-pair/index.html", "cover.png", "about/index.html"]
    root = etree.fromstring(site_files(paths, patterns, shop)["sitemap.xml"])
    links = {
        url.findtext(f"{MAP}loc"): {
            link.get("hreflang"): link.get("href") for link in url.iter(f"{XHTML}link")
        }
        for url in root
    }
    both = {
        "en": "https://a.example/",
        "de": "https://a.example/de/",
        "x-default": "https://a.example/",
    }
    assert links == {
        "https://a.example/": both,
        "https://a.example/about/": {},
        "https://a.example/de/": both,
        "https://a.example/patterns/reed-pair/": {},
    }
    assert listed("de/patterns/reed-pair/index.html", patterns, shop).changed == date(2026, 5, 2)


def test_signs_of_markup_in_an_address_stay_in_it() -> None:
    address = "https://a.example/b&c/"
    assert etree.fromstring(sitemap([Listed(address, None)])).findtext(f"{MAP}url/{MAP}loc") == address


def test_robots_may_read_everything_and_find_the_list(built: Built, told: dict[str, str | None]) -> None:
    robots = RobotFileParser()
    robots.parse((built.site / "robots.txt").read_text(encoding="utf-8").splitlines())
    assert robots.site_maps() == [f"{HOME}sitemap.xml"]
    assert all(robots.can_fetch("*", address) for address in told)


def test_the_front_page_changes_with_the_newest_pattern(patterns: list[Pattern]) -> None:
    shop = Shop(address="https://a.example/")
    assert listed("index.html", patterns, shop).changed == date(2026, 5, 2)
    assert listed("index.html", [], shop).changed is None
    assert listed("patterns/gone/index.html", patterns, shop).changed is None


def test_the_desk_tells_what_is_listed_and_what_is_not(built: Built, told: dict[str, str | None]) -> None:
    lines = (built.output / "desk" / "machines.txt").read_text(encoding="utf-8").splitlines()
    assert lines[0] == f"{len(told)} pages stand in the list of pages, sitemap.xml."
    assert f"Sitemap: {HOME}sitemap.xml" in lines[1]
    assert lines[2] == "2 entries stand in the feed, feed.xml."
    assert [line.partition(":")[0] for line in lines[3:]] == ["Pebble charm (pebble-charm)"]


def test_without_an_address_nothing_is_made_and_the_desk_says_so(
    patterns: list[Pattern], words: Words
) -> None:
    shop = Shop()
    assert site_files(["index.html"], patterns, shop) == {}
    assert feed_files([], [], [], shop, words) == {}
    assert feed_address(shop, patterns) == ""
    assert report({}, patterns, shop, words) == words.text("machines.no-address") + "\n"


def test_without_a_dated_edition_there_is_no_feed(patterns: list[Pattern], words: Words) -> None:
    shop = Shop(address="https://a.example/")
    undated = [replace(pattern, revisions=()) for pattern in patterns]
    assert feed_address(shop, patterns) == "feed.xml"
    assert feed_address(shop, undated) == ""
    assert feed_files([], [], [], shop, words) == {}
    dated = replace(shop, bundles=(Bundle("set", "Set", "Both.", (), day=date(2026, 6, 1)),))
    assert feed_address(dated, undated) == "feed.xml"
    files = site_files(["index.html"], undated, shop)
    assert set(files) == {"sitemap.xml", "robots.txt"}
    assert words.text("machines.no-feed") in report(files, undated, shop, words)
