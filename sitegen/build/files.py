"""Pieces and their printed sheets -> every file of the output folder, as path and contents."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace

from sitegen.build.look import Look
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.cards import card_files
from sitegen.publish.chart_files import chart_files
from sitegen.publish.chips import style_sheet
from sitegen.publish.compose import canonical, card, front_view, page_address, page_view
from sitegen.publish.favicon import icon_files
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
from sitegen.publish.pages import front_page, lesson_page, lessons_page, look_files, pattern_page
from sitegen.publish.papers import Sheets
from sitegen.publish.picture import picture_look, png
from sitegen.publish.piece import Piece
from sitegen.publish.report import measures_json, measures_text
from sitegen.publish.sharing import COVER, pattern_sharing
from sitegen.publish.social import pattern_cover, shop_cover
from sitegen.publish.view import Card
from sitegen.publish.ways import PICTURE

SITE, FOR_SALE, DESK = "site", "for-sale", "desk"
"""What is uploaded; the PDFs of priced patterns; what only the author reads."""


def output_files(
    pieces: Sequence[Piece], sheets: Sequence[Sheets], shop: Shop, look: Look, notes: str
) -> dict[str, bytes]:
    """The whole output; `notes` is the text of the problems, for the author's desk."""
    files = {f"{SITE}/{name}": data for name, data in look_files(look.theme)}
    cards = []
    for piece, made in zip(pieces, sheets, strict=True):
        cards.append(_pattern(files, piece, made, look))
        _reports(files, piece)
    front = front_view(shop, tuple(cards), look.words)
    files[f"{SITE}/index.html"] = front_page(front, look.words, look.theme).encode()
    files |= {f"{SITE}/{icon}": data for icon, data in icon_files(pieces, shop, look.words, look.theme)}
    if pieces:
        files[f"{SITE}/{COVER}"] = shop_cover(pieces, shop, look.theme)
    files |= _lessons([piece.pattern for piece in pieces], shop, look)
    files[f"{DESK}/problems.txt"] = notes.encode()
    return files


def _pattern(files: dict[str, bytes], piece: Piece, sheets: Sheets, look: Look) -> Card:
    """One pattern's pages, each with its picture and colours, and its PDFs; its card."""
    name = piece.pattern.name
    pixels: dict[str, tuple[int, int]] = {}
    ground = picture_look(look.theme).plate
    for shown in (piece, *piece.ways):
        folder = f"{SITE}/{page_address(name, shown.folder)}".rpartition("/")[0]
        files[f"{folder}/{PICTURE}"], pixels[shown.folder] = png(shown.picture, ground)
    for shown in (piece, *piece.ways):
        view = page_view(shown, sheets, pixels, piece if shown.folder else None)
        home = canonical(piece.shop, page_address(name))
        view = replace(
            view,
            lessons=lesson_links(piece.pattern, look.theme, look.words),
            sharing=pattern_sharing(shown, view.canonical, home),
        )
        page = f"{SITE}/{view.address}"
        files[page] = pattern_page(view, look.words, look.theme).encode()
        beside = page.rpartition("/")[0]
        files[f"{beside}/colours.css"] = style_sheet(view.inks).encode()
        files |= {f"{beside}/{photo}": data for photo, data in view.photo_files}
        if piece.pattern.price is None:
            files |= {f"{beside}/{chart}": data for chart, data in chart_files(shown, look.theme)}
    folder = f"{SITE}/{page_address(name)}".rpartition("/")[0]
    shelf = folder if piece.pattern.price is None else FOR_SALE
    for paper, data in sheets.files:
        files[f"{shelf}/{sheets.file_name(name, paper)}"] = data
    cards, size = card_files(piece, look.theme)
    files |= {f"{folder}/{picture}": data for picture, data in cards.items()}
    files[f"{folder}/{COVER}"] = pattern_cover(piece, look.theme)
    return card(piece, size)


def _lessons(patterns: Sequence[Pattern], shop: Shop, look: Look) -> dict[str, bytes]:
    """The pages of the lessons and the colours of their letters."""
    made = lessons(look.theme, shop.language)
    index = lessons_page(lessons_view(made, shop, look.words), look.words, look.theme)
    files = {f"{SITE}/{LIST}": index.encode()}
    for place, lesson in enumerate(made):
        view = lesson_view(made, place, patterns, shop, look.words)
        page = lesson_page(view, look.words, look.theme)
        files[f"{SITE}/{lesson_address(lesson.plan.name)}"] = page.encode()
    files[f"{SITE}/{COLOURS}"] = style_sheet(sample_inks(made)).encode()
    return files


def _reports(files: dict[str, bytes], piece: Piece) -> None:
    """One pattern's measures for the author's desk."""
    pattern, words = piece.pattern, piece.words
    data = measures_json(pattern, piece.path, piece.measures, words)
    files[f"{DESK}/{pattern.name}.json"] = (json.dumps(data, indent=2, ensure_ascii=False) + "\n").encode()
    files[f"{DESK}/{pattern.name}.txt"] = measures_text(pattern, piece.measures, words, piece.row_of).encode()
