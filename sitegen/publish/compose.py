"""A pattern worked out -> the view of its page and of its printed sheets, and its card on the front page.

What a buyer pays for is left out here, once: the view of a priced pattern's page has no blocks at all.
"""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from sitegen.model.shop import Shop
from sitegen.publish import making, materials
from sitegen.publish.blocks import PRINT, SCREEN, Block, Figure, Medium
from sitegen.publish.cards import CARD, CARD_LARGE
from sitegen.publish.chips import inks
from sitegen.publish.colourways import same_beads
from sitegen.publish.papers import Sheets
from sitegen.publish.photo import in_print, on_page
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.sharing import shop_sharing
from sitegen.publish.template import template_view
from sitegen.publish.view import Card, Download, Fact, FrontView, PatternView, ShopLine
from sitegen.publish.ways import PICTURE, Pixels, page_ways, print_ways
from sitegen.publish.words import Words

LARGEST_PICTURE = 4.0
"""A small piece is shown larger than life, but not more than this."""


def page_address(name: str, folder: str = "") -> str:
    """Where a pattern's page stands in the site; `folder` is that of a colourway."""
    return "/".join(filter(None, ("patterns", name, folder, "index.html")))


def canonical(shop: Shop, path: str) -> str:
    """Full address of a page, or nothing for a shop that has none yet."""
    return f"{shop.address.rstrip('/')}/{path.removesuffix('index.html')}" if shop.address else ""


def shop_line(shop: Shop) -> ShopLine:
    """What stands on every page."""
    return ShopLine(shop.title, shop.tagline, shop.maker, shop.about, shop.language)


def print_view(piece: Piece) -> PatternView:
    """The printed sheets: everything."""
    view = _view(piece, _drawn(piece, PRINT), making.blocks(piece, PRINT))
    lead = piece.photos.get(piece.pattern.photo) if piece.pattern.photo else None
    photo = in_print(lead) if lead else None
    return replace(view, template=template_view(piece), ways=print_ways(piece), photo=photo)


def page_view(piece: Piece, sheets: Sheets, pixels: Pixels, author: Piece | None = None) -> PatternView:
    """The page: everything for a free pattern; for a priced one what helps to choose it, not what makes it.

    `pixels` are the sizes of the PNGs beside the pages; a drawing would tell every bead's letter and place.
    `author` is the piece in the author's own colours where `piece` is in a colourway: the lead photo, which
    shows those, is not on its page.
    """
    view = _page_view(piece, sheets, pixels)
    own = author.pattern.title if author else ""
    lead = piece.photos.get(piece.pattern.photo) if piece.pattern.photo and not author else None
    photo = on_page(lead) if lead else None
    return replace(view, ways=page_ways(piece, author or piece, pixels), own_colours=own, photo=photo)


def _page_view(piece: Piece, sheets: Sheets, pixels: Pixels) -> PatternView:
    if piece.pattern.price is not None:
        image = Markup('<img src="{}" width="{}" height="{}" alt="{}">').format(
            PICTURE, *pixels[piece.folder], piece.picture.title
        )
        figure = Figure(image, piece.words.text("picture.screen"))
        return _view(piece, figure, (), buy=_how_to_buy(piece, sheets))
    tell = Quantities(piece.words)
    downloads = tuple(
        Download(
            href=("../" if piece.folder else "") + sheets.file_name(piece.pattern.name, paper),
            label=piece.words.text("pdf.download", paper=piece.words.text(f"paper.{paper}")),
            size=piece.words.text("pdf.size", count=sheets.pages, size=tell.kilobytes(len(data))),
        )
        for paper, data in sheets.files
    )
    return _view(piece, _drawn(piece, SCREEN), making.blocks(piece, SCREEN), downloads)


def _how_to_buy(piece: Piece, sheets: Sheets) -> str:
    seller = piece.shop.maker or piece.shop.title
    how = piece.words.text("buy.how", seller=seller, count=sheets.pages)
    contact = piece.shop.contact
    ask = piece.words.text("buy.contact", contact=contact)
    return f"{how} {ask}" if contact else how


def _view(
    piece: Piece,
    picture: Figure,
    blocks: tuple[Block, ...],
    downloads: tuple[Download, ...] = (),
    buy: str = "",
) -> PatternView:
    pattern, shop, words = piece.pattern, piece.shop, piece.words
    return PatternView(
        name=pattern.name,
        title=pattern.title,
        summary=pattern.summary,
        makes=words.text(f"makes.{pattern.makes.value}"),
        price=Quantities(words).price(pattern.price, shop.currency),
        edition=_edition(piece),
        picture=picture,
        facts=materials.facts(piece),
        inks=inks(pattern),
        beads=materials.bead_lines(piece),
        bead_scale=materials.bead_scale(piece),
        bead_each=str(piece.measures.bead_each),
        bead_total=str(piece.measures.bead_total),
        pieces=str(piece.measures.pieces),
        same=same_beads(piece) if piece.colourway else (),
        ways=(),
        own_colours="",
        supplies=materials.supplies(piece),
        difficulty=materials.difficulty(piece),
        blocks=blocks,
        cautions=materials.cautions(piece),
        licence=shop.licence or words.text("licence.usual", maker=shop.maker or shop.title),
        revisions=_revisions(piece),
        downloads=downloads,
        buy=buy,
        address=page_address(pattern.name, piece.folder),
        canonical=canonical(shop, page_address(pattern.name, piece.folder)),
        shop=shop_line(shop),
        sharing=None,
        lessons=(),
        template=None,
        photo=None,
    )


def _drawn(piece: Piece, medium: Medium) -> Figure:
    svg, scale = making.fitted(piece.picture, "finished", medium.finished, LARGEST_PICTURE)
    key = "picture.print" if medium is PRINT else "picture.screen"
    return Figure(svg, piece.words.text(key, percent=round(scale * 100)))


def _edition(piece: Piece) -> str:
    pattern = piece.pattern
    this = next((one for one in pattern.revisions if one.number == pattern.revision), None)
    if this is None or this.date is None:
        return piece.words.text("revision.number", number=pattern.revision)
    return piece.words.text("revision.dated", number=pattern.revision, date=this.date.isoformat())


def _revisions(piece: Piece) -> tuple[Fact, ...]:
    return tuple(
        Fact(
            label=piece.words.text("revision.number", number=one.number),
            value=one.note,
            also=one.date.isoformat() if one.date else "",
        )
        for one in piece.pattern.revisions
    )


def card(piece: Piece, pixels: tuple[int, int]) -> Card:
    """One pattern on the front page; `pixels` is the size at which its picture is shown."""
    view = materials.facts(piece)
    level = piece.words.text("facts.level")
    return Card(
        href=page_address(piece.pattern.name),
        title=piece.pattern.title,
        summary=piece.pattern.summary,
        picture=page_address(piece.pattern.name).replace("index.html", CARD),
        picture_large=page_address(piece.pattern.name).replace("index.html", CARD_LARGE),
        picture_width=pixels[0],
        picture_height=pixels[1],
        alt=piece.picture.title,
        facts=(view[0], Fact(level, materials.difficulty(piece).level)),
        price=Quantities(piece.words).price(piece.pattern.price, piece.shop.currency),
    )


def front_view(shop: Shop, cards: tuple[Card, ...], words: Words) -> FrontView:
    """The front page."""
    return FrontView(
        cards=cards,
        count=words.text("front.count", count=len(cards)),
        canonical=canonical(shop, ""),
        description=shop.tagline or words.text("front.description", shop=shop.title),
        shop=shop_line(shop),
        sharing=shop_sharing(shop, canonical(shop, ""), words) if cards else None,
    )
