"""The bundles of a shop in one language -> their print jobs, and once these are printed, pages and PDFs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from sitegen.model.shop import COLOUR, Shop
from sitegen.publish.bundle_links import bundle_address
from sitegen.publish.bundle_print import bundle_job
from sitegen.publish.bundles import bundle_page, bundle_sheets, pieces_of
from sitegen.publish.catalogue import CATALOGUE
from sitegen.publish.compose import print_view
from sitegen.publish.linked_data import FRONT, Place, page_data
from sitegen.publish.pages import site_page
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.printing import PrintJob, print_job
from sitegen.publish.sharing import page_sharing
from sitegen.publish.view import Card, ForMachines, Link
from sitegen.publish.words import Words


@dataclass(frozen=True, slots=True)
class Bundles:
    """Makes them for one language of a shop."""

    pieces: Sequence[Piece]
    shop: Shop
    theme: Path
    words: Words
    feed: str
    """Where the feed of the language stands; empty where there is none."""

    def jobs(self, made: Sequence[PrintJob]) -> list[PrintJob]:
        """A job for each bundle, in the first edition; the patterns' sheets come from the jobs `made`."""
        known = {job.name: job for job in made if job.edition == COLOUR}
        return [
            bundle_job(
                bundle_sheets(bundle, pieces, self.shop, self.words),
                [known.get(piece.label) or self._job(piece) for piece in pieces],
                self.words,
                self.theme,
            )
            for bundle in self.shop.bundles
            for pieces in [pieces_of(bundle, self.pieces)]
        ]

    def _job(self, piece: Piece) -> PrintJob:
        """For a pattern that is not printed in the first edition by itself."""
        return print_job(print_view(piece), self.words, self.theme)

    def pages(self, cards: Sequence[Card], sheets: Sequence[Sheets]) -> dict[str, bytes]:
        """Path below the top of the language -> the pages; `cards` is one for each piece, `sheets` for each
        bundle."""
        files = {}
        carded = {piece.pattern.name: card for piece, card in zip(self.pieces, cards, strict=True)}
        for bundle, printed in zip(self.shop.bundles, sheets, strict=True):
            own = [carded[name] for name in bundle.patterns]
            view = bundle_page(bundle, pieces_of(bundle, self.pieces), own, printed, self.words)
            path = bundle_address(bundle.name)
            trail = (
                Link(FRONT, self.shop.title),
                Link(CATALOGUE, self.words.text("nav.catalogue")),
                Link(path, view.title),
            )
            view = replace(
                view,
                sharing=page_sharing(self.shop, view.title, "website", view.canonical, self.words),
                machines=ForMachines(
                    page_data(Place(self.shop, path, trail), view.title, view.summary), self.feed
                ),
            )
            files[path] = site_page("bundle.html", view, self.words, self.theme, path).encode()
        return files

    def pdfs(self, sheets: Sequence[Sheets], site: str, for_sale: str) -> dict[str, bytes]:
        """Path in the output -> the PDFs: beside the page of a free bundle, among what is for sale otherwise.

        `site` is the top of the language's pages.
        """
        files = {}
        for bundle, printed in zip(self.shop.bundles, sheets, strict=True):
            free = f"{site}{bundle_address(bundle.name)}".rpartition("/")[0]
            shelf = free if bundle.price is None else for_sale
            for paper, data in printed.files:
                files[f"{shelf}/{printed.file_name(bundle.name, paper)}"] = data
        return files
