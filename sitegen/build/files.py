"""Pieces and their printed sheets -> every file of the output folder, as path and contents."""

from __future__ import annotations

import json
from collections.abc import Sequence

from sitegen.build.look import Look
from sitegen.model.shop import Shop
from sitegen.publish.chips import style_sheet
from sitegen.publish.compose import PICTURE, card, front_view, page_address, page_view
from sitegen.publish.pages import front_page, look_files, pattern_page
from sitegen.publish.papers import Sheets
from sitegen.publish.picture import png
from sitegen.publish.piece import Piece
from sitegen.publish.report import measures_json, measures_text
from sitegen.publish.view import Card

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
    files[f"{DESK}/problems.txt"] = notes.encode()
    return files


def _pattern(files: dict[str, bytes], piece: Piece, sheets: Sheets, look: Look) -> Card:
    """One pattern's page, picture, colours and PDFs; its card."""
    name = piece.pattern.name
    page = f"{SITE}/{page_address(name)}"
    folder = page.rpartition("/")[0]
    picture, pixels = png(piece.picture)
    view = page_view(piece, sheets, pixels)
    files[page] = pattern_page(view, look.words, look.theme).encode()
    files[f"{folder}/{PICTURE}"] = picture
    files[f"{folder}/colours.css"] = style_sheet(view.inks).encode()
    shelf = folder if piece.pattern.price is None else FOR_SALE
    for paper, data in sheets.files:
        files[f"{shelf}/{sheets.file_name(name, paper)}"] = data
    return card(piece, pixels)


def _reports(files: dict[str, bytes], piece: Piece) -> None:
    """One pattern's measures for the author's desk."""
    pattern, words = piece.pattern, piece.words
    data = measures_json(pattern, piece.path, piece.measures, words)
    files[f"{DESK}/{pattern.name}.json"] = (json.dumps(data, indent=2, ensure_ascii=False) + "\n").encode()
    files[f"{DESK}/{pattern.name}.txt"] = measures_text(pattern, piece.measures, words, piece.row_of).encode()
