"""Texts that try to be more than text, in every field: they show as text, or their source gets a clear fault.

The shop is built as always, except that what knows no words is left out to save time: pictures, and all
sheets but those of one pattern that holds every text.
"""

from __future__ import annotations

import csv
import html
import json
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from PIL import Image
from playwright.sync_api import Browser, Page

import sitegen.build
from sitegen.build import BuildResult, build, files, tree
from sitegen.build.look import shop_look
from sitegen.build.tree import Tree, shared_files, tree_files
from sitegen.build.woven import is_fault, make_pieces, weave_all
from sitegen.check.tell import tell
from sitegen.publish.markdown import Author
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.printing import print_sheets
from sitegen.read.sources import load_shop
from tests.site import hostile
from tests.site.hostile import FIELDS, PAGE_FIELDS, SHOP_FIELDS, STRINGS, fitted, marks
from tests.site.places import Site

pytestmark = [pytest.mark.xdist_group("hostile"), pytest.mark.slow]

PLAIN, ALL = "zppatternz", "every-text"
"""The pattern that the others are held against, and the one whose body holds every text."""
NO_SHEETS = Sheets(1, (("a4", b"-"), ("letter", b"-")))
Element = tuple[str, dict[str, str], str]
OUTLINE = """(text) => {
  const texts = (one) => [...one.childNodes].filter((node) => node.nodeType === 3);
  const own = (one) => texts(one).map((node) => node.data).join("|");
  const all = (root) => [...root.querySelectorAll("*")].flatMap((one) => [
    [one.localName, Object.fromEntries([...one.attributes].map((at) => [at.name, at.value])), own(one)],
    ...(one.localName === "template" ? all(one.content) : []),
  ]);
  return JSON.stringify(all(new DOMParser().parseFromString(text, "text/html")));
}"""
TRAP = """
window.caught = [];
window.trap = window.alert = (...how) => window.caught.push(`called ${how} ${new Error().stack}`);
addEventListener("securitypolicyviolation", (event) => {
  window.caught.push(`${event.violatedDirective} ${event.blockedURI}`);
});
"""


def outline(tab: Page, text: str) -> list[Element]:
    """Every element of a page as a browser reads it: name, attributes, own text."""
    return [(name, attributes, own) for name, attributes, own in json.loads(tab.evaluate(OUTLINE, text))]


@pytest.fixture(scope="module")
def light() -> Iterator[None]:
    """Nothing is drawn as pixels, and one pattern alone is printed."""

    def some(jobs: list[Any], *_: object) -> list[Sheets]:
        return [print_sheets(job) if job.name == ALL else NO_SHEETS for job in jobs]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sitegen.build, "print_all", some)
        patch.setattr(files, "icon_files", lambda *_: [])
        patch.setattr(tree, "png", lambda *_: (b"", (10, 10)))
        patch.setattr(tree, "card_files", lambda *_: ({}, (10, 10)))
        patch.setattr(tree, "pattern_cover", lambda *_: b"")
        patch.setattr(tree, "shop_cover", lambda *_: b"")
        yield


TEXTS = hostile.batches(min(FIELDS.values()) - 2)
STOCK = {fitted(FIELDS, text)["stock"] for text in TEXTS} | {marks(FIELDS, "p")["stock"], "every text"}
MARKDOWN = [text for text in STRINGS if len(text) < 400]
BODY = "\n\n".join(f"{hostile.code(text)}\n\na {text.replace('![', '[')} b" for text in MARKDOWN)
PROSE_HAS = {"a": {"href", "rel", "title"}, "code": {"class"}, "th": {"scope"}, "ol": {"start"}}
PROSE = {"html", "head", "body", "p", "ul", "li", "blockquote", "em", "strong", "pre", "hr", "br"}
PROSE |= {"h2", "h3", "h4", "h5", "h6", "table", "thead", "tbody", "tr", "td"}
"""What Markdown can make: elements with their attributes, and elements that have none."""


def write(folder: Path) -> Path:
    """A shop whose patterns hold the texts in their fields, and a photo called by each."""
    patterns = folder / "content" / "patterns"
    patterns.mkdir(parents=True)
    given = {f"p-{number}": fitted(FIELDS, text) for number, text in enumerate(TEXTS)}
    given |= {PLAIN: marks(FIELDS, "p"), ALL: dict.fromkeys(FIELDS, "every text")}
    for name, words in given.items():
        photo = re.sub(r"[/\\:]", "-", words["colour"]) + ".png"
        Image.new("RGB", (40, 30), "#abcdef").save(patterns / photo)
        body = BODY if name == ALL else "Plainly."
        source = hostile.pattern(words, name, photo, body)
        (patterns / f"{name}.md").write_text(source, encoding="utf-8")
    stock = {name: words["stock"] for name, words in given.items()}
    shop = hostile.shop(marks(SHOP_FIELDS, "s"), stock)
    (folder / "content" / "shop.yaml").write_text(shop, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def built(light: None, tmp_path_factory: pytest.TempPathFactory) -> tuple[Site, BuildResult]:
    root = write(tmp_path_factory.mktemp("hostile"))
    result = build(root, processes=1)
    faults = [str(problem) for problem in result.problems if is_fault(problem)]
    assert faults == []
    return Site(root / "output" / "site"), result


@pytest.fixture(scope="module")
def tab(browser: Browser) -> Iterator[Page]:
    with browser.new_context() as context:
        yield context.new_page()


def swaps(fields: Mapping[str, int], kind: str, text: str) -> dict[str, str]:
    """The mark of each field -> what stands in its place."""
    given = fitted(fields, text)
    return {mark: given[name] for name, mark in marks(fields, kind).items()}


def said(text: str, words: Mapping[str, str], name: str) -> str:
    """What a text of the plain page says on a page with these words."""
    made = re.sub("Z[psa][a-z]+z", lambda found: words.get(found[0], found[0]), text)
    return made.replace(PLAIN, name)


def same(plain: Any, tried: Any, words: Mapping[str, str], name: str) -> bool:
    """Whether data hold the words in the places of the plain ones, and nothing else is different.

    Addresses made of names are left to the test of links.
    """
    if isinstance(plain, dict):
        return plain.keys() == tried.keys() and all(
            same(plain[key], tried[key], words, name) for key in plain
        )
    if isinstance(plain, list):
        return len(plain) == len(tried) and all(
            same(one, other, words, name) for one, other in zip(plain, tried, strict=True)
        )
    if not isinstance(plain, str):
        return bool(plain == tried)
    wanted = said(plain, words, name)
    return bool(wanted == tried) or re.search("z[psa][a-z]+z", wanted) is not None  # a name in an address


def differing(plain: list[Element], tried: list[Element], words: Mapping[str, str], name: str) -> list[str]:
    """Elements of a page that are not those of the plain page with these words in them."""
    if [one[0] for one in plain] != [one[0] for one in tried]:
        return [f"{len(plain)} elements are now {len(tried)}"]
    faults = []
    for (tag, at, own), (_, at_now, own_now) in zip(plain, tried, strict=True):
        # every page offers all other beads of the shop to try
        stock = {re.sub("^Bead [GS]: ", "", text) for text in (own, own_now)} <= STOCK
        if tag == "script" and at.get("type") == "application/ld+json":
            own, own_now = json.loads(own), json.loads(own_now)
        if not same(at, at_now, words, name) or not (stock or same(own, own_now, words, name)):
            faults.append(f"<{tag}> {at_now} {own_now} instead of {at} {own}")
    return faults


def test_there_are_enough_of_them() -> None:
    assert len(set(STRINGS)) >= 100
    assert {text for batch in TEXTS for text in STRINGS if text in batch} == set(STRINGS)


@pytest.mark.parametrize("place", ["", "in-"])
def test_fields_of_a_pattern_show_as_text(built: tuple[Site, BuildResult], tab: Page, place: str) -> None:
    """Each page, and each page in other colours, is the plain page with other words in the same places."""
    site, _ = built
    found = {}
    for page in site.pattern_pages:
        parts = page.name.split("/")
        if (parts[2].startswith("in-")) == bool(place) and parts[1] != ALL:
            found[parts[1]] = outline(tab, page.text)
    plain = found.pop(PLAIN)
    assert len(found) == len(TEXTS)
    faults = []
    for number, text in enumerate(TEXTS):
        name = f"p-{number}"
        words = swaps(FIELDS, "p", text)
        faults += [f"{text!r}: {fault}" for fault in differing(plain, found[name], words, name)[:1]]
    assert faults == []


def test_fields_of_the_shop_and_of_its_pages_show_as_text(light: None, tmp_path: Path, tab: Page) -> None:
    """With a priced pattern, whose page names the contact; it is woven once, and the lessons are left out."""
    own = tmp_path / "content"
    (own / "patterns").mkdir(parents=True)
    (own / "pages").mkdir()
    words = marks(FIELDS, "p")
    (own / "patterns" / f"{PLAIN}.md").write_text(
        hostile.pattern(words, PLAIN, price="4.50"), encoding="utf-8"
    )
    Image.new("RGB", (40, 30), "#abcdef").save(own / "patterns" / "dot.png")
    pieces: list[Piece] = []

    def made(shop: Mapping[str, str], page: Mapping[str, str]) -> dict[str, bytes]:
        """The files of a site with these words."""
        stock = {PLAIN: words["stock"]}
        (own / "shop.yaml").write_text(hostile.shop(shop, stock), encoding="utf-8")
        (own / "pages" / "own.md").write_text(hostile.page(page), encoding="utf-8")
        sources = load_shop(tmp_path)
        look, found = shop_look(sources)
        assert look is not None
        assert [problem for problem in (*sources.problems, *found) if is_fault(problem)] == []
        if not pieces:
            pieces.extend(
                make_pieces(weave_all(sources, lambda _: None)[0], sources.shop, look.words, lambda _: None)
            )
        with_shop = [replace(piece, shop=sources.shop) for piece in pieces]
        all_of_it = Tree(sources.shop, look.theme, look.words, with_shop, [(NO_SHEETS,)])
        return tree_files(all_of_it, shared_files(all_of_it)[1])

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(tree, "_lessons", lambda _: {})
        plain = made(marks(SHOP_FIELDS, "s"), marks(PAGE_FIELDS, "a"))
        pages = ["index.html", "404.html", "pages/own/index.html", f"patterns/{PLAIN}/index.html"]
        outlines = {page: outline(tab, plain[f"site/{page}"].decode()) for page in pages}
        faults = []
        for text in hostile.batches(min(PAGE_FIELDS.values()) - 2):
            tried = made(fitted(SHOP_FIELDS, text), fitted(PAGE_FIELDS, text))
            swap = swaps(SHOP_FIELDS, "s", text) | swaps(PAGE_FIELDS, "a", text)
            for page in pages:
                found = differing(outlines[page], outline(tab, tried[f"site/{page}"].decode()), swap, PLAIN)
                faults += [f"{page}, {text!r}: {fault}" for fault in found[:1]]
            feeds = [
                [[one.tag, one.attrib, one.text] for one in ET.fromstring(some["site/feed.xml"]).iter()]
                for some in (plain, tried)
            ]
            assert same(feeds[0], feeds[1], swap, PLAIN), text
    assert faults == []


def test_markdown_makes_prose_and_safe_links_alone(tab: Page) -> None:
    """Every text in every place that Markdown has, on a pattern's page and on a page of the shop's own."""
    for up in (None, "../../"):
        made = (Author(up).html(block) for text in STRINGS for block in hostile.markdown(text))
        for tag, attributes, _ in outline(tab, "".join(made)):
            assert tag in PROSE or tag in PROSE_HAS, tag
            assert attributes.keys() <= PROSE_HAS.get(tag, set()), (tag, attributes)
            if tag == "a":
                assert re.match(
                    r"https?://|mailto:|\.\./\.\./(pages/)?[a-z0-9/-]+/index\.html", attributes["href"]
                ), attributes


def harm(page: Page) -> list[str]:
    """What a page has that none of ours has: handlers, styles, foreign scripts, addresses that are no way."""
    return [
        f"<{tag} {name}={value!r}>"
        for tag, attributes, _ in outline(page, page.content())
        for name, value in attributes.items()
        if name.startswith("on")
        or name in ("style", "srcdoc")
        or (
            name in ("href", "src", "action", "data")
            and not re.match(r"https?://|mailto:|\.|#|[a-z0-9-]+(/|\.[a-z]+$)|$", value)
        )
        or (tag == "script" and name == "src" and not re.fullmatch(r"(\.\./)*look/[a-z]+\.js", value))
    ]


def test_nothing_comes_to_life(built: tuple[Site, BuildResult], browser: Browser) -> None:
    """In a browser, with the policy of the pages and without it: lists, pages of every text, some of each."""
    site, _ = built
    lists = [page for page in site.pages if page.name.count("/") < 2 and page.name != "404.html"]
    every = [page for page in site.pattern_pages if f"/{ALL}/" in page.name]
    caught: list[str] = []
    for without_policy in (False, True):
        with browser.new_context(bypass_csp=without_policy) as context:
            context.add_init_script(TRAP)
            tab = context.new_page()
            tab.on("dialog", lambda dialog: dialog.dismiss())
            tab.on("pageerror", lambda error: caught.append(str(error)))
            for page in [*lists, *every, *site.pattern_pages[::40]]:
                tab.goto(page.path.resolve().as_uri(), wait_until="load")
                for button in tab.locator("button:visible, summary:visible").all()[:4]:
                    button.click(force=True)
                    tab.keyboard.press("Escape")
                caught.extend(f"{page.name}: {one}" for one in [*tab.evaluate("caught"), *harm(tab)])
    assert caught == []


def test_lists_show_them_as_text(built: tuple[Site, BuildResult], tab: Page) -> None:
    site, _ = built
    wanted = {
        "catalogue": ("title", "summary"),
        "materials": ("colour", "stock"),
    }
    for folder, fields in wanted.items():
        page = (site.root / folder / "index.html").read_text(encoding="utf-8")
        shown = [
            value for _, at, own in outline(tab, page) for value in (*at.values(), own.replace("|", " "))
        ]
        told = "\n".join(" ".join(text.split()) for text in shown).casefold()
        for text in TEXTS:
            for field in fields:
                words = fitted(FIELDS, text)[field].casefold()
                assert words in told or " ".join(words.replace("|", " ").split()) in told, (folder, field)


def test_everything_for_machines_is_sound(built: tuple[Site, BuildResult]) -> None:
    site, result = built
    for path in site.files(".xml", ".svg"):
        ET.parse(path)
    titles = {fitted(FIELDS, text)["title"] for text in TEXTS}
    feed = ET.parse(site.root / "feed.xml")
    told = "\n".join(one.text or "" for one in feed.iter())
    assert [title for title in titles if title not in told] == []
    desk = site.root.parent / "desk"
    assert titles <= {json.loads(path.read_text(encoding="utf-8"))["title"] for path in desk.glob("*.json")}
    assert all(sign.isprintable() or sign == "\n" for sign in tell(result.problems, result.texts))


def test_texts_in_the_body_are_printed_as_they_stand(built: tuple[Site, BuildResult], tab: Page) -> None:
    site, _ = built
    page = next(page for page in site.pattern_pages if page.name == f"patterns/{ALL}/index.html")
    code = {own for tag, _, own in outline(tab, page.text) if tag == "code"}
    assert [text for text in MARKDOWN if text not in code] == []
    with pdfplumber.open(page.path.parent / f"{ALL}-a4.pdf") as pdf:
        printed = re.sub(r"\s", "", "".join(one.extract_text() for one in pdf.pages))
    lost = [text for text in MARKDOWN if re.sub(r"\s", "", text) not in printed]
    assert lost == []


def test_a_saved_list_holds_no_formula(
    built: tuple[Site, BuildResult], browser: Browser, tmp_path: Path
) -> None:
    """Spreadsheets reckon what begins with one of four signs, in quotes too."""
    site, _ = built
    every = "&".join(f"p-{number}=1" for number in range(len(TEXTS)))
    with browser.new_context(accept_downloads=True) as context:
        tab = context.new_page()
        tab.goto(f"{(site.root / 'list' / 'index.html').resolve().as_uri()}#{every}")
        with tab.expect_download() as saved:
            tab.locator("[data-is=csv]").click()
        saved.value.save_as(tmp_path / "list.csv")
        copied = tab.locator("[data-is=text]").input_value()
    with (tmp_path / "list.csv").open(encoding="utf-8", newline="") as file:
        cells = [cell for row in csv.reader(file) for cell in row]
    assert [cell for cell in cells if cell[:1] in tuple("=+-@\t\r") and cell] == []
    for text in TEXTS:
        title = fitted(FIELDS, text)["title"]
        assert title in copied
        assert title in cells or f"'{title}" in cells


def test_a_text_that_comes_to_life_is_seen(tab: Page) -> None:
    """The eyes of these tests, on faults planted for them."""
    plain, words = "<p title='Zptitlez'>Zptitlez</p>", swaps(FIELDS, "p", STRINGS[0])
    good = html.escape(words["Zptitlez"])
    assert differing(outline(tab, plain), outline(tab, f"<p title='{good}'>{good}</p>"), words, "p") == []
    for fault in (
        f"<p title='{good}'>{words['Zptitlez']}</p>",
        f"<p title='x'>{good}</p>",
        "<p title=''></p>",
    ):
        assert differing(outline(tab, plain), outline(tab, fault), words, "p") != []
    for fault in (
        "<img src='x.png' onerror='1'>",
        "<a href='javascript:1'>x</a>",
        "<script src='//a/b.js'></script>",
    ):
        tab.set_content(fault)
        assert harm(tab) != [], fault
