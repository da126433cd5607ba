"""Front page, catalogue, materials, glossary and own pages of the sample shop, and what makes them."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from sitegen.build.look import Look, shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.model.shop import Shop
from sitegen.publish.catalogue import ORDERS, PRICES, CatalogueView, catalogue_view, colour_families
from sitegen.publish.compose import card
from sitegen.publish.front import newest
from sitegen.publish.glossary import TERMS, Term, by_letter, glossary_view
from sitegen.publish.markdown import Author
from sitegen.publish.pages import lost_page
from sitegen.publish.piece import Piece
from sitegen.publish.shop_pages import lost_view
from sitegen.publish.stock_page import stock_view
from sitegen.read.sources import load_shop
from sitegen.trade.families import families, size_bands
from sitegen.trade.pieces import PIECE_KINDS
from tests.publish.sample_shop import Built, Outline

PAGES = (
    "index.html",
    "catalogue/index.html",
    "materials/index.html",
    "glossary/index.html",
    "pages/help/index.html",
    "pages/terms/index.html",
)


@pytest.fixture(scope="module")
def look(built: Built) -> Look:
    found, problems = shop_look(load_shop(built.root))
    assert found is not None, problems
    return found


@pytest.fixture(scope="module")
def pieces(built: Built, look: Look) -> list[Piece]:
    sources = load_shop(built.root)
    woven, _ = weave_all(sources, lambda line: None)
    return make_pieces(woven, sources.shop, look.words, lambda line: None)


def gathered(pieces: list[Piece]) -> CatalogueView:
    cards = [card(piece, (10, 10)) for piece in pieces]
    return catalogue_view(pieces, cards, pieces[0].shop, pieces[0].words)


@pytest.fixture(scope="module")
def catalogue(pieces: list[Piece]) -> CatalogueView:
    return gathered(pieces)


def outline(built: Built, name: str) -> Outline:
    return Outline((built.site / name).read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", PAGES)
def test_pages_are_whole_and_lead_somewhere(built: Built, name: str) -> None:
    page = outline(built, name)
    assert page.faults == []
    assert len(page.ids) == len(set(page.ids))
    assert page.headings.count(1) == 1
    for address in page.addresses:
        path, _, spot = address.partition("#")
        if address.startswith("https://"):
            continue
        target = (built.site / name).parent / path if path else built.site / name
        assert target.is_file(), address
        if spot and "=" not in spot:
            assert spot in Outline(target.read_text(encoding="utf-8")).ids, address


def test_each_pattern_stands_once_under_its_kind(catalogue: CatalogueView) -> None:
    assert [(shelf.name, [entry.card.title for entry in shelf.entries]) for shelf in catalogue.shelves] == [
        ("earrings", ["Reed pair"]),
        ("other", ["Pebble charm"]),
    ]


def test_traits_of_a_pattern(catalogue: CatalogueView) -> None:
    """By hand: the sample's green and white beads, its two stitches, its computed 8 x 21 mm."""
    traits = dict(catalogue.shelves[0].entries[0].traits)
    assert traits["stitch"] == "brick fringe"
    assert traits["colour"].split() == ["white", "green"]
    assert (traits["piece"], traits["size"], traits["price"]) == ("earrings", "tiny", "free")
    assert dict(catalogue.shelves[1].entries[0].traits)["price"] == "priced"


def test_counts_of_choices_are_those_of_the_entries(catalogue: CatalogueView) -> None:
    entries = [entry for shelf in catalogue.shelves for entry in shelf.entries]
    assert len(catalogue.groups) == 6
    for group in catalogue.groups:
        for choice in group.choices:
            having = [entry for entry in entries if choice.value in dict(entry.traits)[group.name].split()]
            assert choice.count == str(len(having)) != "0"


def test_a_search_finds_titles_summaries_beads_and_stitches(catalogue: CatalogueView) -> None:
    find = catalogue.shelves[0].entries[0].find
    for words in (
        "Reed pair",
        "three strands",
        "reed green",
        "round 11/0",
        "matte",
        "Brick stitch",
        "ear wire",
    ):
        assert words in find


def test_a_search_finds_the_families_of_the_colours(catalogue: CatalogueView) -> None:
    labels = {
        choice.value: choice.label
        for group in catalogue.groups
        if group.name == "colour"
        for choice in group.choices
    }
    for shelf in catalogue.shelves:
        for entry in shelf.entries:
            families = dict(entry.traits)["colour"].split()
            assert families
            for family in families:
                assert labels[family] in entry.find


def test_an_accent_is_no_colour_of_the_piece(pieces: list[Piece]) -> None:
    piece = pieces[1]
    beads = piece.measures.beads
    few = (replace(beads[0], hex="#c02020", total=1), replace(beads[0], hex="#2040c0", total=99))
    assert colour_families(replace(piece, measures=replace(piece.measures, beads=few))) == ("blue",)


def test_newest_first_and_undated_last(catalogue: CatalogueView) -> None:
    assert [one.title for one in newest(catalogue)] == ["Reed pair", "Pebble charm"]


def test_equal_dates_stay_in_the_order_of_the_catalogue(pieces: list[Piece]) -> None:
    """As they do in the page itself, where a browser's sorting keeps equal ones in their order."""
    reed, pebble = pieces
    undated = [replace(one, pattern=replace(one.pattern, revisions=())) for one in (pebble, reed)]
    catalogue = gathered(undated)
    shown = [entry.card.title for shelf in catalogue.shelves for entry in shelf.entries]
    assert [one.title for one in newest(catalogue)] == shown == ["Reed pair", "Pebble charm"]


def test_materials_tell_where_each_bead_is_used(pieces: list[Piece], look: Look) -> None:
    """38 beads in the reed pair and 10 in the charm, as the pages of the patterns say."""
    view = stock_view(pieces, pieces[0].shop, look.words)
    uses = [use for shelf in view.shelves for line in shelf.lines for use in line.used]
    counts = {"Reed pair": 0, "Pebble charm": 0}
    for use in uses:
        counts[use.text] += int(use.also.split()[0])
    assert counts == {"Reed pair": 38, "Pebble charm": 10}
    assert [anchor for anchor, _, _ in view.supplies] == ["threads", "needles", "findings"]
    assert [line.used[0].also for line in view.supplies[2][2]] == ["2 ×"]


def test_a_bead_of_two_patterns_stands_once(pieces: list[Piece], look: Look) -> None:
    view = stock_view([pieces[0], pieces[0]], pieces[0].shop, look.words)
    assert all(len(line.used) == 2 for shelf in view.shelves for line in shelf.lines)


def test_the_glossary_has_every_term_and_every_lesson(look: Look) -> None:
    view = glossary_view(Shop(), look.theme, look.words)
    terms = [term for _, some in view.letters for term in some]
    assert {term.anchor for term in terms} >= set(TERMS)
    assert sum(term.lesson is not None for term in terms) > 15
    assert all(term.meaning.endswith(".") for term in terms)
    written = (look.theme / "strings" / "en" / "glossary.yaml").read_text(encoding="utf-8")
    keys = set(re.findall(r"^glossary\.([a-z-]+)\.is:", written, re.M))
    assert keys == set(TERMS)


def test_marks_on_letters_do_not_change_their_order() -> None:
    terms = [Term(name, name, "", None) for name in ("Zange", "Öse", "Ohrhaken", "Perle")]
    assert [(letter, [term.name for term in some]) for letter, some in by_letter(terms)] == [
        ("O", ["Ohrhaken", "Öse"]),
        ("P", ["Perle"]),
        ("Z", ["Zange"]),
    ]


def test_an_own_page(built: Built) -> None:
    page = outline(built, "pages/help/index.html")
    assert "<b>no markup</b>" in page.text
    assert page.headings == [1, 2, 3]
    assert "../../glossary/index.html#warp" in page.addresses
    assert "../../patterns/reed-pair/index.html" in page.addresses
    assert page.addresses.count("../../pages/terms/index.html") == 2, "its own link and the foot's"


def test_shop_links_are_for_pages_of_the_shop_alone() -> None:
    assert "<a" not in Author().html("[words](shop:glossary)")
    assert '<a href="../glossary/index.html">' in Author(up="../").html("[words](shop:glossary)")
    assert "<a" not in Author(up="../").html("[bad](shop:../../etc) [worse](javascript:alert)")


def test_every_page_leads_to_all_others(built: Built) -> None:
    for page in built.site.rglob("index.html"):
        up = "../" * (len(page.relative_to(built.site).parts) - 1)
        addresses = Outline(page.read_text(encoding="utf-8")).addresses
        for place in ("catalogue", "techniques", "materials", "glossary", "pages/help", "pages/terms"):
            assert f"{up}{place}/index.html" in addresses, page


def test_not_found_leads_home_from_any_depth(look: Look) -> None:
    for address, base in (("https://beads.example/", "/"), ("https://beads.example/shop/", "/shop/")):
        page = Outline(lost_page(lost_view(Shop(address=address)), look.words, look.theme))
        assert f"{base}catalogue/index.html" in page.addresses
        assert all(one.startswith(base) for one in page.addresses if not one.startswith("#"))


def test_not_found_without_an_address_has_no_link_that_breaks(look: Look) -> None:
    page = Outline(lost_page(lost_view(Shop()), look.words, look.theme))
    assert page.addresses == []
    assert page.faults == []
    assert "front page" in page.text


def test_every_value_that_can_be_chosen_has_a_name(look: Look) -> None:
    keys = {f"piece.{kind}" for kind in (*PIECE_KINDS, "other")}
    keys |= {f"colour.{family}" for family in families()} | {f"size.{name}" for name, _, _ in size_bands()}
    keys |= {f"catalogue.by-{order}" for order in ORDERS} | {f"catalogue.{price}" for price in PRICES}
    assert {key for key in keys if not look.words.has(key)} == set()
