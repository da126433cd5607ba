"""A shop in one language, printed -> every file of the site in it; and the pictures all languages share."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.build.bound import Bundles
from sitegen.build.machines import feed_address, feed_files
from sitegen.build.shelves import Shelves
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.bundle_links import bundle_links
from sitegen.publish.cards import card_files
from sitegen.publish.chart_files import chart_files
from sitegen.publish.chips import inks, style_sheet
from sitegen.publish.compose import canonical, card, page_address, page_view
from sitegen.publish.lesson_pages import (
    COLOURS,
    LIST,
    lesson_address,
    lesson_links,
    lesson_view,
    lessons_view,
    sample_inks,
)
from sitegen.publish.lessons import lessons
from sitegen.publish.linked_data import (
    FRONT,
    Place,
    list_data,
    page_data,
    pattern_data,
    pattern_trail,
)
from sitegen.publish.pages import lesson_page, lessons_page, pattern_page
from sitegen.publish.papers import Sheets
from sitegen.publish.picture import picture_look, png
from sitegen.publish.piece import Piece
from sitegen.publish.sharing import COVER, page_sharing, pattern_sharing
from sitegen.publish.social import pattern_cover, shop_cover
from sitegen.publish.view import ForMachines, Link
from sitegen.publish.ways import PICTURE, Pixels
from sitegen.publish.words import Words

SITE, FOR_SALE = "site", "for-sale"
"""What is uploaded; the PDFs of priced patterns."""


CHIPS = "colours.css"
"""The colours of a page's chips, beside it in the first language."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes of one pattern's pictures, in pixels."""

    pages: Pixels
    card: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Tree:
    """A shop in one of its languages."""

    shop: Shop
    theme: Path
    words: Words
    pieces: Sequence[Piece]
    sheets: Sequence[Sequence[Sheets]] = ()
    """The editions of each piece, once they are printed."""
    bound: Sequence[Sheets] = ()
    """One for each of the shop's bundles, once they are printed."""

    @property
    def patterns(self) -> list[Pattern]:
        """Those of the pieces, in their order."""
        return [piece.pattern for piece in self.pieces]

    @property
    def bundles(self) -> Bundles:
        """What makes the shop's bundles."""
        return Bundles(self.pieces, self.shop, self.theme, self.words, self.feed)

    @property
    def feed(self) -> str:
        """Where its feed stands; empty where there is none."""
        return feed_address(self.shop, self.patterns)


def shared_files(first: Tree) -> tuple[dict[str, bytes], dict[str, Sizes]]:
    """Pictures and colours of all patterns, which hold no words: path in the output -> contents; their sizes.

    They lie beside the pages of the first language, and those of other languages lead there.
    """
    files: dict[str, bytes] = {}
    sizes = {}
    ground = picture_look(first.theme).plate
    for piece in first.pieces:
        pixels: dict[str, tuple[int, int]] = {}
        for shown in (piece, *piece.ways):
            folder = _folder(shown)
            files[f"{folder}/{PICTURE}"], pixels[shown.folder] = png(shown.picture, ground)
            files[f"{folder}/{CHIPS}"] = style_sheet(inks(shown.pattern)).encode()
        cards, size = card_files(piece, first.theme)
        files |= {f"{_folder(piece)}/{name}": data for name, data in cards.items()}
        sizes[piece.pattern.name] = Sizes(pixels, size)
    samples = lessons(first.theme, first.shop.language)
    files[f"{SITE}/{COLOURS}"] = style_sheet(sample_inks(samples)).encode()
    return files, sizes


def tree_files(tree: Tree, sizes: Mapping[str, Sizes]) -> dict[str, bytes]:
    """Path in the output -> contents, of everything that is made of words."""
    files: dict[str, bytes] = {}
    cards = []
    for piece, sheets in zip(tree.pieces, tree.sheets, strict=True):
        name, size = piece.pattern.name, sizes[piece.pattern.name]
        for shown in (piece, *piece.ways):
            files |= _pattern(tree, shown, piece, sheets, size.pages)
        shelf = _folder(piece) if piece.pattern.price is None else FOR_SALE
        for edition in sheets:
            files |= {f"{shelf}/{edition.file_name(name, paper)}": data for paper, data in edition.files}
        files[f"{_folder(piece)}/{COVER}"] = pattern_cover(piece, tree.theme)
        cards.append(card(piece, size.card))
    made = Shelves(tree.pieces, cards, tree.shop, tree.theme, tree.words, tree.feed).files() | _lessons(tree)
    made |= tree.bundles.pages(cards, tree.bound)
    files |= tree.bundles.pdfs(tree.bound, f"{SITE}/{tree.shop.folder}", FOR_SALE)
    made |= feed_files(tree.pieces, tree.sheets, tree.bound, tree.shop, tree.words)
    if tree.pieces:
        made[COVER] = shop_cover(tree.pieces, tree.shop, tree.theme)
    return files | {f"{SITE}/{tree.shop.folder}{path}": data for path, data in made.items()}


def _folder(piece: Piece) -> str:
    """Where the page of a piece lies in the output."""
    address = page_address(piece.pattern.name, piece.folder)
    return f"{SITE}/{piece.shop.folder}{address}".rpartition("/")[0]


def _pattern(
    tree: Tree, shown: Piece, author: Piece, sheets: Sequence[Sheets], pixels: Pixels
) -> dict[str, bytes]:
    """A pattern's page, in the author's colours or in others, with its charts and its photos.

    All pages of a pattern share the photos, which lie beside the first one.
    """
    view = page_view(shown, sheets, pixels, author if shown.folder else None)
    home = canonical(tree.shop, page_address(author.pattern.name))
    told = pattern_data(shown, view, sheets, pattern_trail(author, view))
    view = replace(
        view,
        lessons=lesson_links(author.pattern, tree.theme, tree.words),
        bundles=bundle_links(tree.shop, author.pattern.name),
        sharing=pattern_sharing(shown, view.canonical, home),
        machines=ForMachines(told, tree.feed),
    )
    folder, photos = _folder(shown), f"{SITE}/{page_address(author.pattern.name)}".rpartition("/")[0]
    files = {f"{folder}/index.html": pattern_page(view, tree.words, tree.theme).encode()}
    files |= {f"{photos}/{photo}": data for photo, data in view.photo_files}
    if author.pattern.price is None:
        files |= {f"{folder}/{chart}": data for chart, data in chart_files(shown, tree.theme)}
    return files


def _lessons(tree: Tree) -> dict[str, bytes]:
    """The pages of the lessons, by their addresses in the tree."""
    shop, words, theme = tree.shop, tree.words, tree.theme
    made = lessons(theme, shop.language)
    index = lessons_view(made, shop, words)
    about = words.text("lessons.description")
    trail = (Link(FRONT, shop.title), Link(LIST, words.text("lessons.title")))
    links = [Link(card.href, card.title) for group in index.groups for card in group.cards]
    data = list_data(Place(shop, LIST, trail), trail[-1].text, about, links)
    sharing = page_sharing(shop, trail[-1].text, "website", index.canonical, words)
    index = replace(index, sharing=sharing, machines=ForMachines(data, tree.feed))
    files = {LIST: lessons_page(index, words, theme).encode()}
    for place, lesson in enumerate(made):
        view = lesson_view(made, place, tree.pieces, shop, words)
        path = lesson_address(lesson.plan.name)
        data = page_data(Place(shop, path, (*trail, Link(path, view.title))), view.title, view.description)
        sharing = page_sharing(shop, view.title, "article", view.canonical, words)
        view = replace(view, sharing=sharing, machines=ForMachines(data, tree.feed))
        files[path] = lesson_page(view, words, theme, path).encode()
    return files
