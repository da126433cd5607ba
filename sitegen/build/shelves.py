"""Pieces, cards and the shop -> the pages one looks around by: front, catalogue, materials,
list, glossary, own.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from markupsafe import Markup

from sitegen.model.shop import Shop
from sitegen.publish.catalogue import CATALOGUE, catalogue_view
from sitegen.publish.compose import own_page_address
from sitegen.publish.front import front_view
from sitegen.publish.glossary import GLOSSARY, GlossaryView, glossary_view
from sitegen.publish.linked_data import FRONT, Place, list_data, page_data, shop_data
from sitegen.publish.pages import front_page, lost_page, site_page
from sitegen.publish.piece import Piece
from sitegen.publish.sharing import page_sharing
from sitegen.publish.shop_pages import LOST, OwnPageView, lost_view, own_page
from sitegen.publish.shopping import SHOPPING, ListView, list_view
from sitegen.publish.stock_page import MATERIALS, StockView, stock_view
from sitegen.publish.view import Card, ForMachines, Link
from sitegen.publish.words import Words

Inner = StockView | GlossaryView | ListView | OwnPageView


@dataclass(frozen=True, slots=True)
class Shelves:
    """Makes these pages for one language of a shop."""

    pieces: Sequence[Piece]
    cards: Sequence[Card]
    """One for each piece."""
    shop: Shop
    theme: Path
    words: Words
    feed: str
    """Where the feed of the language stands; empty where there is none."""

    def files(self) -> dict[str, bytes]:
        """Path below the top of the site -> contents."""
        say = self.words.text
        made = self._lists()
        stock = stock_view(self.pieces, self.shop, self.words)
        made[MATERIALS] = self._inner("materials.html", stock, MATERIALS, say("nav.materials"), stock.lead)
        wanted = list_view(self.pieces, self.shop, self.words)
        made[SHOPPING] = self._inner("list.html", wanted, SHOPPING, say("nav.list"), say("list.lead"))
        terms = glossary_view(self.shop, self.theme, self.words)
        lead = say("glossary.lead")
        made[GLOSSARY] = self._inner("glossary.html", terms, GLOSSARY, say("nav.glossary"), lead)
        for page in self.shop.pages:
            view, path = own_page(page, self.shop, self.words), own_page_address(page.name)
            made[path] = self._inner("prose-page.html", view, path, view.title, view.summary)
        made[LOST] = lost_page(lost_view(self.shop), self.words, self.theme).encode()
        return made

    def _lists(self) -> dict[str, bytes]:
        """The catalogue and the front page."""
        catalogue = catalogue_view(self.pieces, self.cards, self.shop, self.words)
        front = front_view(self.shop, catalogue, self.theme, self.words)
        front = replace(front, machines=self._machines(shop_data(Place(self.shop, FRONT))))
        title, about = self.words.text("nav.catalogue"), self.words.text("catalogue.lead")
        links = [
            Link(entry.card.href, entry.card.title) for shelf in catalogue.shelves for entry in shelf.entries
        ]
        catalogue = replace(
            catalogue,
            sharing=page_sharing(self.shop, title, "website", catalogue.canonical, self.words),
            machines=self._machines(list_data(self._place(CATALOGUE, title), title, about, links)),
        )
        page = site_page("catalogue.html", catalogue, self.words, self.theme, CATALOGUE)
        return {FRONT: front_page(front, self.words, self.theme).encode(), CATALOGUE: page.encode()}

    def _inner(self, template: str, view: Inner, path: str, title: str, about: str) -> bytes:
        told = self._machines(page_data(self._place(path, title), title, about))
        sharing = page_sharing(self.shop, title, "website", view.canonical, self.words)
        view = replace(view, sharing=sharing, machines=told)
        return site_page(template, view, self.words, self.theme, path).encode()

    def _place(self, path: str, title: str) -> Place:
        return Place(self.shop, path, (Link(FRONT, self.shop.title), Link(path, title)))

    def _machines(self, data: Markup) -> ForMachines:
        return ForMachines(data, self.feed)
