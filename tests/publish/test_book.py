"""What the printed sheets have beyond the page: contents, tools, and whose the pattern is."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from sitegen.build.woven import make_pieces, weave_all
from sitegen.publish.compose import print_view
from sitegen.publish.piece import Piece
from sitegen.publish.printing import print_job
from sitegen.publish.view import Book
from sitegen.publish.words import Words
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import write_shop

THEME = Path(__file__).parents[2] / "themes" / "linen"
WORDS = Words(THEME, "en")


@pytest.fixture(scope="module")
def piece(tmp_path_factory: pytest.TempPathFactory) -> Piece:
    """The free sample: a pair with a fringe, in two colourways."""
    sources = load_shop(write_shop(tmp_path_factory.mktemp("book")))
    made = make_pieces(weave_all(sources, print)[0], sources.shop, WORDS, print)
    return next(one for one in made if one.pattern.name == "reed-pair")


def book_of(piece: Piece) -> Book:
    made = print_view(piece).book
    assert made is not None
    return made


def test_the_contents_lead_to_every_chapter_in_order(piece: Piece) -> None:
    html = print_job(print_view(piece), WORDS, THEME).html
    places = [spot.href[1:] for spot in book_of(piece).contents]
    stand = [html.index(f'id="{place}"') for place in places]
    assert stand == sorted(stand)
    chapters = re.findall(r'<section class="(?:chapter|template)[^"]*" id="([^"]+)"', html)
    assert [place for place in places if place in chapters] == chapters
    assert len(chapters) == len(
        re.findall(r'<section class="chapter[ "]', html)
    )  # less contents, and template


def test_every_link_within_the_sheets_leads_somewhere(piece: Piece) -> None:
    html = print_job(print_view(piece), WORDS, THEME).html
    ids = re.findall(r'\bid="([^"]+)"', html)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r'href="#([^"]+)"', html)) <= set(ids)


def test_tools_follow_from_thread_and_findings(piece: Piece) -> None:
    listed = [fact.label for fact in book_of(piece).tools]
    assert listed[:3] == ["Scissors for braided thread", "Two pairs of flat pliers", "Safety glasses"]


def test_the_last_page_says_whose_it_is_and_leads_to_its_page(piece: Piece) -> None:
    told = {fact.label: fact.value for fact in book_of(piece).colophon}
    assert told == {
        "Pattern by": "Oona Ferry",
        "From": "Ferry & Daughters",
        "Edition": "Edition 2, 2 May 2026",
        "Its page": "https://beads.example/shop/patterns/reed-pair/",
        "Licence": "Make it, wear it, give it away.",
    }
    code = book_of(piece).code
    assert code is not None
    assert "https://beads.example/shop/patterns/reed-pair/" in code.svg


def test_a_shop_without_an_address_has_no_code_and_one_with_a_contact_names_it(piece: Piece) -> None:
    plain = book_of(replace(piece, shop=replace(piece.shop, address="", contact="oona@beads.example")))
    assert plain.code is None
    assert [fact.label for fact in plain.colophon] == [
        "Pattern by",
        "From",
        "Questions",
        "Edition",
        "Licence",
    ]


def test_the_words_that_occur_are_explained_before_the_cautions(piece: Piece) -> None:
    html = print_job(print_view(piece), WORDS, THEME).html
    glossary = html[html.index('id="glossary"') : html.index('id="safety"')]
    words = re.findall(r"<dt>([^<]+)</dt>", glossary)
    assert {"Brick stitch", "Bridge", "Strand", "Half hitch", "Word chart"} <= set(words)
    assert not {"Warp", "Bicone", "Zip", "Toggle clasp"} & set(words)
