"""The site's pages: facts, order, links, and nothing of what a buyer pays for."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest

from sitegen.measure import measure
from sitegen.publish.table import step_table
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import load_shop
from sitegen.weave import weave
from tests.publish.sample_shop import Built, Outline

PAGES = ("index.html", "patterns/reed-pair/index.html", "patterns/pebble-charm/index.html")


@pytest.fixture(scope="module")
def outlines(built: Built) -> dict[str, Outline]:
    return {name: Outline((built.site / name).read_text(encoding="utf-8")) for name in PAGES}


def sentences(built: Built, name: str) -> set[str]:
    """Every sentence and note of a pattern's step table."""
    sources = load_shop(built.root)
    pattern = next(one for one in sources.patterns if one.name == name)
    path, _ = weave(pattern, sources.shop)
    assert path is not None
    words = Words(theme_folder("linen", built.root), "en")
    table = step_table(path, pattern, sources.shop, measure(path, pattern, sources.shop), words)
    return {text for section in table for row in section.rows for text in (*row.sentences, *row.notes)}


@pytest.mark.parametrize("name", PAGES)
def test_tags_are_closed_and_no_attribute_stands_twice(outlines: dict[str, Outline], name: str) -> None:
    assert outlines[name].faults == []
    assert len(outlines[name].ids) == len(set(outlines[name].ids))


@pytest.mark.parametrize("name", PAGES)
def test_one_first_heading_and_no_level_skipped(outlines: dict[str, Outline], name: str) -> None:
    levels = outlines[name].headings
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels)), levels


@pytest.mark.parametrize("name", PAGES)
def test_every_address_leads_to_a_file_of_the_site(
    built: Built, outlines: dict[str, Outline], name: str
) -> None:
    page = built.site / name
    for address in outlines[name].addresses:
        if address.startswith("https://"):
            assert address in (
                "https://example.org/",
                "https://beads.example/shop/" + name.removesuffix("index.html"),
            )
        elif address.startswith("#"):
            assert address[1:] in outlines[name].ids
        else:
            target = (page.parent / address.partition("#")[0]).resolve()
            assert target.is_file(), address
            assert target.is_relative_to(built.site.resolve())


def test_addresses_in_the_style_sheet_lead_to_files(built: Built) -> None:
    style = (built.site / "look" / "site.css").read_text(encoding="utf-8")
    addresses = re.findall(r'url\("([^"]+)"\)', style)
    fonts = (built.site / "look" / "fonts").glob("*.woff2")
    assert sorted(addresses) == sorted(f"fonts/{font.name}" for font in fonts)
    assert len(addresses) >= 4


@pytest.mark.parametrize("name", PAGES)
def test_pages_keep_to_their_own_security_policy(
    built: Built, outlines: dict[str, Outline], name: str
) -> None:
    """No inline script or style, no handler: the policy in the page's head forbids them all."""
    names = {attribute for _, attribute in outlines[name].attributes}
    assert not {one for one in names if one == "style" or one.startswith("on")}
    tags = [tag for tag, _ in outlines[name].attributes]
    assert "style" not in tags
    text = (built.site / name).read_text(encoding="utf-8")
    told = re.findall(r"<script\b([^>]*)>(.*?)</script>", text, re.S)
    assert told
    for attributes, inside in told:
        assert ('src="' in attributes and not inside) or 'type="application/' in attributes


@pytest.mark.parametrize(
    "fact",
    [
        "Reed pair",
        "A small fan with three strands.",
        "Makes a pair",
        "Free",
        "Edition 2, 2 May 2026",
        "8 × 21 mm (5/16 × 13/16 in)",
        "reed green",
        "round 11/0, matte",
        "braided 0.15 mm",
        "2 × ear wire",
        "38 in all 19 in each piece",
        "PDF for A4",
        "PDF for US Letter",
        "Make it, wear it, give it away.",
        "A clearer fringe.",
        "Cutting braided thread",
        "Metals on the skin",
        "children under three",
        'A workroom over the "old" <ferry> office.',
        "<b>no markup</b>",
        "Dusk",
        "G plum 30",
    ],
)
def test_a_free_page_tells(outlines: dict[str, Outline], fact: str) -> None:
    assert fact in outlines["patterns/reed-pair/index.html"].text


def test_the_beads_add_up(outlines: dict[str, Outline]) -> None:
    """Fan 2 + 3 beads, strands 4, 6 and 4 twice over: counted by hand from the source."""
    assert "All beads 19 38" in outlines["patterns/reed-pair/index.html"].text


def test_a_free_page_reads_in_the_order_of_the_source(outlines: dict[str, Outline]) -> None:
    text = outlines["patterns/reed-pair/index.html"].text
    order = ["A first line", "Fan: chart", "Before you begin", "Count the bottom row.", "Fan: steps"]
    order += ["At the end", "Done.", "Fringe: chart", "Fringe: steps", "Work safely", "Licence", "Editions"]
    text = text[text.index("Materials Beads for all pieces") :]  # after the list of contents
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    assert all(text.count(words) == 1 for words in order)


def test_a_free_page_has_word_charts_and_all_steps(built: Built, outlines: dict[str, Outline]) -> None:
    text = (
        outlines["patterns/reed-pair/index.html"]
        .text.replace(" from the left", "")
        .replace(" from the right", "")
    )
    rows = ("1 1G 1W 1G 3", "2 2G 2", "1 3G 1W 4", "2 5G 1W 6", "3 3G 1W 4")
    for row in rows:
        assert row in text
    assert all(sentence in text for sentence in sentences(built, "reed-pair"))
    ticks = built.page("reed-pair").count('type="checkbox"')
    assert ticks == text.count("Pick up") + len(rows) > 10


def test_a_priced_page_helps_to_choose(outlines: dict[str, Outline]) -> None:
    text = outlines["patterns/pebble-charm/index.html"].text
    for fact in (
        "€4.50",
        "for sale from Oona Ferry",
        "slate",
        "All beads 10",
        "How hard it is",
        "Cutting nylon",
    ):
        assert fact in text


def test_nothing_that_is_paid_for_is_in_the_site(built: Built) -> None:
    rows = ("1Z2Q", "1Q2Z", "1Q1Z1Q1Z", "2Z1Q", "2Q1Z", "QZZ", "QZQZ", "ZQQ")
    prose = ("secret of this charm", "without paying", "Pebble: chart", "Pebble: steps")
    steps = sentences(built, "pebble-charm")
    assert len(steps) > 3
    for file in sorted(built.site.rglob("*")):
        if file.suffix in (".html", ".css", ".txt"):
            text = file.read_text(encoding="utf-8")
            plain = Outline(text).text if file.suffix == ".html" else text
            assert not [row for row in rows if row in plain.replace(" ", "")], file
            assert not [words for words in prose if words in text], file
            if not {"reed-pair", "techniques"} & set(file.parts):  # lessons teach the stitches, for all
                assert not [sentence for sentence in steps if sentence in plain], file
    page = built.page("pebble-charm")
    assert page.count("<svg") == page.count('<span class="key"><svg') == 2, "drawings of single beads alone"
    assert page.count('class="chip') == 2
    kept = {path.name for path in (built.site / "patterns" / "pebble-charm").iterdir()}
    pictures = {"picture.png", "card.png", "card-2.png", "cover.png"}
    assert kept == {"index.html", "colours.css", *pictures}


def worded(text: str) -> str:
    """Words alone: letters and numbers of a drawing stand between the lines of the text beside it."""
    return "".join(re.sub(r"\b(\w|\d+)\b", "", text).split())


def test_what_is_paid_for_is_in_the_sheets(built: Built, sheet_text: dict[str, str]) -> None:
    """The search above looks for the right things: they all stand in the PDF."""
    text = "".join(sheet_text["pebble-charm-a4.pdf"].split())
    for words in ("1Z2Q", "1Q1Z1Q1Z", "2Z1Q", "secretofthischarm", "withoutpaying", "Pebble:chart"):
        assert words in text
    said = worded(sheet_text["pebble-charm-a4.pdf"])
    assert all(worded(sentence) in said for sentence in sentences(built, "pebble-charm"))


def test_cards_of_the_front_page(outlines: dict[str, Outline]) -> None:
    text = outlines["index.html"].text
    for words in (
        "Ferry & Daughters",
        "Small beads, plain words.",
        "2 patterns",
        "Reed pair",
        "Pebble charm",
    ):
        assert words in text
    assert "Price Free" in text
    assert "Price €4.50" in text


def test_pages_say_who_and_what_they_are(built: Built) -> None:
    page = built.page("reed-pair")
    assert '<html lang="en">' in page
    assert '<meta name="description" content="A small fan with three strands.">' in page
    assert '<link rel="canonical" href="https://beads.example/shop/patterns/reed-pair/">' in page


def test_no_mention_of_this_machine(built: Built) -> None:
    for file in built.output.rglob("*"):
        if file.is_file():
            assert str(built.root).encode() not in file.read_bytes(), file


def test_theme_of_a_shop_goes_before_the_bundled_one(tmp_path: Path) -> None:
    assert theme_folder("linen", tmp_path).name == "linen"
    own = tmp_path / "themes" / "linen"
    own.mkdir(parents=True)
    (own / "theme.yaml").write_text("base: linen\n", encoding="utf-8")
    assert theme_folder("linen", tmp_path) == own
