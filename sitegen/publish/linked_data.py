"""A page and what it is about -> linked data: the same facts once more, for programs that read pages.

Vocabulary: https://schema.org/; form: JSON-LD. Every value is that of the page, from the same measures.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from sitegen.model.shop import Shop
from sitegen.publish.catalogue import CATALOGUE
from sitegen.publish.compose import canonical, page_address, site_address
from sitegen.publish.data_block import as_data
from sitegen.publish.dates import changed, published
from sitegen.publish.downloads import sheets_label
from sitegen.publish.how_to import how_to
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.sharing import COVER
from sitegen.publish.view import Link, PatternView
from sitegen.publish.ways import PICTURE

Node = dict[str, Any]
FRONT = "index.html"
LOGO = "look/icon-180.png"


@dataclass(frozen=True, slots=True)
class Place:
    """A page in its site: where it stands and how one gets there."""

    shop: Shop
    path: str
    """From the top of its language, as are the addresses on the way."""
    trail: tuple[Link, ...] = ()
    """The pages on the way to it, from the front page to itself; empty for the front page."""

    def to(self, path: str) -> str:
        """The address of a page in the same language, or of a file beside one.

        It is full where the shop has an address, otherwise from this page.
        """
        return canonical(self.shop, path) or self._up(self.path) + path

    def shared(self, path: str) -> str:
        """The address of a file that all languages share, from the top of the site."""
        return site_address(self.shop, path) or self._up(self.shop.folder + self.path) + path

    @staticmethod
    def _up(path: str) -> str:
        return "../" * path.count("/")


def shop_data(place: Place) -> Markup:
    """The front page: the site and who stands behind it."""
    shop = place.shop
    organization: Node = {
        "@type": "Organization",
        "@id": _shop_id(place),
        "name": shop.title,
        "url": place.to(FRONT),
        "logo": place.shared(LOGO),
        **_told(description=shop.about),
    }
    if shop.maker:
        organization["founder"] = {"@type": "Person", "name": shop.maker}
    site = {
        "@type": "WebSite",
        "@id": _site_id(place),
        "name": shop.title,
        "url": place.to(FRONT),
        "inLanguage": shop.language,
        "publisher": {"@id": _shop_id(place)},
        **_told(description=shop.tagline),
    }
    return _written(_page(place, "WebPage", shop.title, shop.tagline), site, organization)


def page_data(place: Place, title: str, about: str) -> Markup:
    """An inner page: what it is called, and the way to it."""
    return _written(_page(place, "WebPage", title, about), _trail(place))


def list_data(place: Place, title: str, about: str, links: Sequence[Link]) -> Markup:
    """A page that lists others, in their order."""
    page = _page(place, "CollectionPage", title, about)
    page["mainEntity"] = {
        "@type": "ItemList",
        "numberOfItems": len(links),
        "itemListElement": _items(place, links),
    }
    return _written(page, _trail(place))


def pattern_data(
    piece: Piece, view: PatternView, sheets: Sequence[Sheets], trail: tuple[Link, ...]
) -> Markup:
    """A pattern's page: instructions where they are free, goods with an offer where they are for sale.

    The page of a colourway names the pattern by its page in the author's colours, where all is told.
    """
    place = Place(piece.shop, view.address, trail)
    home = place.to(page_address(piece.pattern.name))
    page = _page(place, "WebPage", view.title, view.summary)
    page["primaryImageOfPage"] = {"@type": "ImageObject", "url": place.shared(_beside(view, PICTURE))}
    page["mainEntity"] = {"@id": f"{home}#pattern"}
    page |= _dates(piece)
    if piece.folder:
        return _written(page, _trail(place))
    about: Node = {
        "@id": f"{home}#pattern",
        "name": view.title,
        "description": view.summary,
        "url": home,
        "image": [place.shared(_beside(view, PICTURE)), place.to(_beside(view, COVER))],
    }
    if piece.pattern.price is not None:
        return _written(page, {"@type": "Product", **about, **_goods(piece, view, home)}, _trail(place))
    work = {"@type": "HowTo", **about, **_work(piece, view, place, sheets), **how_to(piece, view, place.to)}
    return _written(page, work, _trail(place))


def pattern_trail(piece: Piece, view: PatternView) -> tuple[Link, ...]:
    """The way to a pattern's page; `piece` is in the author's colours, the page may be in others."""
    home = page_address(piece.pattern.name)
    trail = (
        Link(FRONT, piece.shop.title),
        Link(CATALOGUE, piece.words.text("nav.catalogue")),
        Link(home, piece.pattern.title),
    )
    return trail if view.address == home else (*trail, Link(view.address, view.title))


def _goods(piece: Piece, view: PatternView, home: str) -> Node:
    """What a buyer learns: the facts of the page, and the offer."""
    return {
        "sku": piece.pattern.name,
        "brand": {"@type": "Brand", "name": piece.shop.title},
        "additionalProperty": [
            {
                "@type": "PropertyValue",
                "name": fact.label,
                "value": fact.value,
                **_told(description=fact.also),
            }
            for fact in view.facts
        ],
        "offers": {
            "@type": "Offer",
            "price": f"{piece.pattern.price:.2f}",
            "priceCurrency": piece.shop.currency,
            "availability": "https://schema.org/InStock",
            "url": home,
            "seller": _maker(piece.shop),
        },
    }


def _work(piece: Piece, view: PatternView, place: Place, sheets: Sequence[Sheets]) -> Node:
    """What is true of the instructions as a work: whose they are, which edition, and as which files."""
    name = piece.pattern.name
    return {
        "author": _maker(piece.shop),
        "version": piece.pattern.revision,
        "inLanguage": piece.shop.language,
        "isAccessibleForFree": True,
        "educationalLevel": view.difficulty.level,
        **_told(correction=[one.corrects for one in piece.pattern.revisions if one.corrects]),
        "license": {"@type": "CreativeWork", "text": view.licence},
        "encoding": [
            {
                "@type": "MediaObject",
                "name": sheets_label(edition, paper, piece.words),
                "contentUrl": place.to(_beside(view, edition.file_name(name, paper))),
                "encodingFormat": "application/pdf",
                "contentSize": Quantities(piece.words).kilobytes(len(data)),
            }
            for edition in sheets
            for paper, data in edition.files
        ],
        **_dates(piece),
    }


def _dates(piece: Piece) -> Node:
    first, last = published(piece.pattern), changed([piece.pattern])
    return _told(
        datePublished=first.isoformat() if first else "", dateModified=last.isoformat() if last else ""
    )


def _page(place: Place, kind: str, title: str, about: str) -> Node:
    page: Node = {
        "@type": kind,
        "@id": place.to(place.path),
        "url": place.to(place.path),
        "name": title,
        "inLanguage": place.shop.language,
        "isPartOf": {"@id": _site_id(place)},
        **_told(description=about),
    }
    return page | ({"breadcrumb": {"@id": f"{place.to(place.path)}#trail"}} if place.trail else {})


def _trail(place: Place) -> Node:
    return {
        "@type": "BreadcrumbList",
        "@id": f"{place.to(place.path)}#trail",
        "itemListElement": [
            {"@type": "ListItem", "position": number, "name": link.text, "item": {"@id": place.to(link.href)}}
            for number, link in enumerate(place.trail, 1)
        ],
    }


def _items(place: Place, links: Sequence[Link]) -> list[Node]:
    return [
        {"@type": "ListItem", "position": number, "name": link.text, "url": place.to(link.href)}
        for number, link in enumerate(links, 1)
    ]


def _maker(shop: Shop) -> Node:
    kind = "Person" if shop.maker else "Organization"
    return {"@type": kind, "name": shop.maker or shop.title}


def _shop_id(place: Place) -> str:
    return f"{place.shared(FRONT)}#shop"


def _site_id(place: Place) -> str:
    return f"{place.to(FRONT)}#site"


def _beside(view: PatternView, name: str) -> str:
    """A file in the folder of the page."""
    return view.address.rpartition("/")[0] + f"/{name}"


def _told(**values: str | list[str]) -> Node:
    """Only what there is something to say of."""
    return {key: value for key, value in values.items() if value}


def _written(*nodes: Mapping[str, Any]) -> Markup:
    return as_data({"@context": "https://schema.org", "@graph": nodes})
