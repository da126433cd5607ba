"""The printed sheets of a pattern -> what leads to each file from its page, edition by edition."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.model.shop import COLOUR
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.words import Words


@dataclass(frozen=True, slots=True)
class Download:
    """A PDF that lies beside the page."""

    href: str
    label: str
    size: str
    """Pages and kilobytes."""


@dataclass(frozen=True, slots=True)
class DownloadGroup:
    """The PDFs of one edition, for each paper."""

    label: str
    about: str
    """What is particular to it."""
    files: tuple[Download, ...]


def sheets_label(edition: Sheets, paper: str, words: Words) -> str:
    """What a link to a PDF says: `PDF for A4`, `Large print for A4`."""
    named = words.text(f"paper.{paper}")
    if edition.edition == COLOUR:
        return words.text("pdf.download", paper=named)
    return words.text("pdf.download-edition", edition=words.text(f"edition.{edition.edition}"), paper=named)


def download_groups(piece: Piece, sheets: Sequence[Sheets]) -> tuple[DownloadGroup, ...]:
    """The PDFs beside a pattern's page; the page of a colourway stands one folder lower."""
    return tuple(_group(piece, edition) for edition in sheets)


def _group(piece: Piece, edition: Sheets) -> DownloadGroup:
    say = piece.words.text
    files = downloads(piece.pattern.name, edition, piece.words, "../" if piece.folder else "")
    return DownloadGroup(say(f"edition.{edition.edition}"), say(f"edition.{edition.edition}-about"), files)


def downloads(name: str, edition: Sheets, words: Words, up: str = "") -> tuple[Download, ...]:
    """The PDFs of one edition; `up` leads from the page to them."""
    tell = Quantities(words)
    return tuple(
        Download(
            href=up + edition.file_name(name, paper),
            label=sheets_label(edition, paper, words),
            size=words.text("pdf.size", count=edition.pages, size=tell.kilobytes(len(data))),
        )
        for paper, data in edition.files
    )
