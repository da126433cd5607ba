"""A site in two languages: the same pages in both, each naming the other, all texts with their language."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any
from urllib.parse import unquote

import pikepdf
import pytest
from lxml import etree, html
from playwright.sync_api import Browser

from sitegen.build import build
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.glossary import GLOSSARY, glossary_view
from sitegen.publish.pages import site_page
from sitegen.publish.tags import elements
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words, language_name
from sitegen.weave import weave
from tests.publish.sample_shop import SHOP, write_shop

HOME = "https://beads.example/shop/"
ATOM = "{http://www.w3.org/2005/Atom}"
MAP, XHTML = "{http://www.sitemaps.org/schemas/sitemap/0.9}", "{http://www.w3.org/1999/xhtml}"
XML_LANG = "{http://www.w3.org/XML/1998/namespace}lang"
LANGUAGES = "languages: [en, de]\ntranslations: {de: {tagline: 'Kleine Perlen, klare Worte.'}}\n"
GERMAN = """\
---
title: Schilfpaar
summary: Ein kleiner Fächer mit drei Strängen.
colours:
  G: {name: Schilfgrün}
parts: [{name: Fächer}, {name: Fransen}]
revisions:
  - {number: 2, note: Klarere Fransen.}
---
Eine erste Zeile mit *Nachdruck*.

::: steps Fächer

Fertig.
"""
PAIR, CHARM = "patterns/reed-pair/index.html", "patterns/pebble-charm/index.html"


@dataclass(frozen=True)
class Site:
    """The sample shop in English and German; the pair is translated but for one colour, the charm is not."""

    root: Path
    woven: list[str]
    """Patterns that were woven, once for each time."""
    measured: list[str]

    @property
    def folder(self) -> Path:
        return self.root / "output" / "site"

    def page(self, path: str) -> html.HtmlElement:
        return html.parse(str(self.folder / path)).getroot()

    def pages(self) -> list[str]:
        """Paths of all pages in the first language."""
        every = (path.relative_to(self.folder).as_posix() for path in self.folder.rglob("*.html"))
        return sorted(path for path in every if not path.startswith("de/"))

    def data(self, path: str) -> list[dict[str, Any]]:
        """The linked data of a page."""
        (script,) = self.page(path).iterfind(".//script[@type='application/ld+json']")
        graph: list[dict[str, Any]] = json.loads(script.text or "")["@graph"]
        return graph


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    root = write_shop(tmp_path_factory.mktemp("tongues"))
    (root / "content" / "shop.yaml").write_text(SHOP + LANGUAGES, encoding="utf-8")
    (root / "content" / "patterns" / "reed-pair.de.md").write_text(GERMAN, encoding="utf-8")
    made = Site(root, [], [])

    def counted(work: Callable[..., Any], names: list[str]) -> Callable[..., Any]:
        def called(*given: Any) -> Any:
            names.append(next(one.name for one in given if isinstance(one, Pattern)))
            return work(*given)

        return called

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr("sitegen.build.woven.weave", counted(weave, made.woven))
        patched.setattr("sitegen.build.woven.measure", counted(measure, made.measured))
        result = build(root, processes=1)
    assert result.files, result.problems
    yield made


def alternates(page: html.HtmlElement) -> list[tuple[str, str]]:
    links = page.iterfind("head/link[@rel='alternate'][@hreflang]")
    return [(link.get("hreflang") or "", link.get("href") or "") for link in links]


def languages(page: html.HtmlElement) -> dict[str, str]:
    """Text of each element that names its language -> that language."""
    found = page.iterfind("body//*[@lang]")
    return {" ".join(one.text_content().split()): one.get("lang") or "" for one in found}


def test_every_page_is_there_in_both_languages(site: Site) -> None:
    assert "404.html" in site.pages()
    german = sorted(
        path.relative_to(site.folder / "de").as_posix() for path in site.folder.rglob("de/**/*.html")
    )
    assert german == site.pages()
    for path in site.pages():
        assert (site.page(path).get("lang"), site.page(f"de/{path}").get("lang")) == ("en", "de"), path


def test_nothing_is_woven_or_measured_twice(site: Site) -> None:
    assert sorted(site.woven) == sorted(site.measured) == ["pebble-charm", "reed-pair"]


def test_what_has_no_words_is_there_once(site: Site) -> None:
    """No file of the second language is a copy, and none is a picture, a style, a script or a font."""
    files = {path: path.read_bytes() for path in site.folder.rglob("*") if path.is_file()}
    below = {path: data for path, data in files.items() if path.is_relative_to(site.folder / "de")}
    first = {data for path, data in files.items() if path not in below}
    assert [path for path, data in below.items() if data in first] == []
    assert {path.name if path.suffix in (".png", ".xml") else path.suffix for path in below} == {
        *(".html", ".pdf", ".svg", "cover.png", "feed.xml")
    }


def test_every_address_leads_somewhere(site: Site) -> None:
    for path in [*site.pages(), *(f"de/{one}" for one in site.pages())]:
        if path.endswith("404.html"):
            continue  # its links begin at the top of a host
        for element in site.page(path).iter():
            found = [element.get(name) for name in ("href", "src", "data-worker")]
            found += [one.split()[0] for one in (element.get("srcset") or "").split(",") if one.strip()]
            for address in filter(None, found):
                local = unquote(address.partition("#")[0])
                if local and "://" not in local and not local.startswith("mailto:"):
                    assert ((site.folder / path).parent / local).is_file(), f"{path}: {address}"


def test_pages_name_each_other_and_themselves(site: Site) -> None:
    """As search engines ask: each page of a set names the whole set, by full addresses, itself included."""
    for path in site.pages():
        if path == "404.html":
            assert alternates(site.page(path)) == []
            continue
        place = path.removesuffix("index.html")
        whole = [("en", HOME + place), ("de", f"{HOME}de/{place}"), ("x-default", HOME + place)]
        for folder in ("", "de/"):
            page = site.page(folder + path)
            (own,) = page.iterfind("head/link[@rel='canonical']")
            assert alternates(page) == whole, folder + path
            assert own.get("href") == HOME + folder + place


def test_the_list_of_pages_says_the_same(site: Site) -> None:
    listed = {}
    for url in etree.parse(site.folder / "sitemap.xml").getroot():
        links = [(link.get("hreflang"), link.get("href")) for link in url.iter(f"{XHTML}link")]
        listed[url.findtext(f"{MAP}loc")] = links
    heads = {}
    for path in (one for one in site.pages() if one != "404.html"):
        for folder in ("", "de/"):
            heads[HOME + folder + path.removesuffix("index.html")] = alternates(site.page(folder + path))
    assert listed == heads


def test_the_switch_leads_to_the_same_page_by_the_name_the_language_has_for_itself(site: Site) -> None:
    for path in site.pages():
        for folder, other, name in (("", "de", "Deutsch"), ("de/", "en", "English")):
            (link,) = site.page(folder + path).iterfind("body/header//a[@hreflang]")
            there = "de/" if other == "de" else ""
            assert (link.get("lang"), link.get("hreflang"), link.text) == (other, other, name)
            if path == "404.html":
                assert link.get("href") == f"/shop/{there}index.html"
            else:
                leads = (site.folder / folder / path).parent / (link.get("href") or "")
                assert leads.resolve() == (site.folder / there / path).resolve()


def test_names_of_languages_are_their_own() -> None:
    assert [language_name(one) for one in ("en", "fr", "pl")] == ["English", "Français", "Polski"]


def test_a_text_that_is_not_translated_names_its_language(site: Site) -> None:
    charm, pair = languages(site.page(f"de/{CHARM}")), languages(site.page(f"de/{PAIR}"))
    for text in ("Pebble charm", "Three rows, quickly done.", "slate", "Make it, wear it, give it away."):
        assert charm[text] == "en", text
    assert (pair["milk"], pair["First edition."], pair["Dusk"]) == ("en", "en", "en")
    for text in ("Schilfpaar", "Schilfgrün", "Eine erste Zeile mit Nachdruck.", "Klarere Fransen."):
        assert text not in pair
    assert "Eine erste Zeile mit Nachdruck." in site.page(f"de/{PAIR}").text_content()
    catalogue = languages(site.page("de/catalogue/index.html"))
    assert catalogue["Pebble charm"] == catalogue["Help"] == "en"
    assert "Schilfpaar" not in catalogue
    help_page = site.page("de/pages/help/index.html")
    assert [one.get("lang") for one in help_page.iterfind(".//main/*")] == ["en", "en", None]
    assert set(languages(site.page(PAIR)).values()) == {"de"}, "the switch alone"


def test_numbers_and_dates_are_those_of_the_language(site: Site) -> None:
    english, german = (site.page(folder + PAIR).text_content() for folder in ("", "de/"))
    assert "2 May 2026" in english
    assert "2. Mai 2026" in german
    assert "6.3 × 12.6 mm" in english
    assert "6,3 × 12,6 mm" in german
    assert "4,50\N{NO-BREAK SPACE}€" in site.page(f"de/{CHARM}").text_content()


def test_each_language_has_a_feed_of_its_own(site: Site) -> None:
    feeds = {
        one: etree.parse(site.folder / folder / "feed.xml").getroot()
        for one, folder in (("en", ""), ("de", "de"))
    }
    names: dict[str, set[str]] = {}
    for language, feed in feeds.items():
        assert feed.get(XML_LANG) == language
        names[language] = {str(one.text) for one in feed.iter(f"{ATOM}id")}
        folder = "" if language == "en" else "de/"
        (own,) = [link for link in feed.iterfind(f"{ATOM}link") if link.get("rel") == "self"]
        assert own.get("href") == f"{HOME}{folder}feed.xml"
    assert not names["en"] & names["de"]
    said = {str(one.text): one.get(XML_LANG) for one in feeds["de"].iter() if one.text and one.text.strip()}
    assert (said["Schilfpaar"], said["Klarere Fransen."], said["Kleine Perlen, klare Worte."]) == (None,) * 3
    assert said["Make it, wear it, give it away."] == "en"
    desk = (site.root / "output" / "desk" / "machines.txt").read_text(encoding="utf-8")
    assert "in the feed, feed.xml" in desk
    assert "in the feed, de/feed.xml" in desk


def test_linked_data_is_in_the_language_and_of_one_shop(site: Site) -> None:
    page, work, trail = site.data(f"de/{PAIR}")
    assert (page["inLanguage"], work["inLanguage"], work["name"]) == ("de", "de", "Schilfpaar")
    words = Words(theme_folder("linen", site.root), "de")
    steps = [(one["name"], one["item"]["@id"]) for one in trail["itemListElement"]]
    assert steps == [
        ("Ferry & Daughters", f"{HOME}de/"),
        (words.text("nav.catalogue"), f"{HOME}de/catalogue/"),
        ("Schilfpaar", f"{HOME}de/patterns/reed-pair/"),
    ]
    files = [
        *work["image"],
        page["primaryImageOfPage"]["url"],
        *(one["contentUrl"] for one in work["encoding"]),
    ]
    for address in files:
        assert (site.folder / PurePosixPath(address.removeprefix(HOME))).is_file(), address
    shops = [
        node["@id"]
        for folder in ("", "de/")
        for node in site.data(f"{folder}index.html")
        if node["@type"] == "Organization"
    ]
    assert shops == [f"{HOME}#shop"] * 2


def test_ticks_and_what_is_kept_offline_are_the_same_in_both(site: Site) -> None:
    english, german = site.page(PAIR), site.page(f"de/{PAIR}")
    scripts = [next(page.iterfind("head/script[@data-pattern]")) for page in (english, german)]
    assert len({(one.get("data-pattern"), one.get("data-revision")) for one in scripts}) == 1
    ticks = [
        [one.get("data-tick") for one in page.iter("input") if one.get("data-tick")]
        for page in (english, german)
    ]
    assert ticks[0] == ticks[1] != []
    assert [path.name for path in site.folder.rglob("offline.js")] == ["offline.js"]


def test_sheets_are_in_the_language_and_name_what_is_not(site: Site) -> None:
    free = site.folder / "de" / "patterns" / "reed-pair"
    assert sorted(path.name for path in free.glob("*.pdf")) == [
        "reed-pair-de-a4.pdf",
        "reed-pair-de-letter.pdf",
    ]
    sold = site.root / "output" / "for-sale"
    endings = sorted(path.name.removeprefix("pebble-charm-") for path in sold.iterdir())
    assert endings == ["a4.pdf", "de-a4.pdf", "de-letter.pdf", "letter.pdf"]
    with pikepdf.open(sold / "pebble-charm-de-a4.pdf") as pdf:
        assert str(pdf.Root.Lang) == "de"
        named = [str(one.P.S) for one in elements(pdf) if str(one.get("/Lang", "")) == "en"]
        assert {"/H1", "/P"} <= set(named), "its title and its words are as the author wrote them"
    with pikepdf.open(sold / "pebble-charm-a4.pdf") as pdf:
        assert str(pdf.Root.Lang) == "en"
        assert not [one for one in elements(pdf) if "/Lang" in one]


def test_without_an_address_the_switch_is_all_there_is(site: Site) -> None:
    shop = Shop(title="T", languages=("en", "de")).in_language("de")
    theme = theme_folder("linen", site.root)
    words = Words(theme, "de")
    page = html.fromstring(
        site_page("glossary.html", glossary_view(shop, theme, words), words, theme, GLOSSARY)
    )
    assert alternates(page) == []
    (link,) = page.iterfind("body/header//a[@hreflang]")
    assert link.get("href") == "../../glossary/index.html"


def test_the_german_pages_work_in_a_browser(site: Site, browser: Browser) -> None:
    """Words are found with their marks and without; what is ticked in one language is ticked in the other."""
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto((site.folder / "de" / "catalogue" / "index.html").as_uri())
    for word in ("schilfgrün", "SCHILFGRUN", "fächer"):
        page.locator("#find").fill(word)
        assert page.locator(".plate:visible h3").all_inner_texts() == ["Schilfpaar"], word
    page.goto((site.folder / "de" / PAIR).as_uri())
    page.locator("[data-tick]").nth(2).check()
    page.get_by_role("link", name="English", exact=True).click()
    assert page.locator("h1").inner_text() == "Reed pair"
    assert [box.is_checked() for box in page.locator("[data-tick]").all()[:4]] == [False, False, True, False]
    page.close()
    assert said == []
