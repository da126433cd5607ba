"""A pattern worked out -> the view of its page and of its printed sheets, and its card on the front page.

What a buyer pays for is left out here, once: the view of a priced pattern's page has no blocks at all.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from operator import attrgetter

from markupsafe import Markup

from sitegen.model.shop import COLOUR, ONE_PAGE, TRANSLATED, Shop, ShopPage
from sitegen.model.source import Revision
from sitegen.publish import bench, making, materials
from sitegen.publish.blocks import PRINT, SCREEN, Block, Figure, Medium
from sitegen.publish.book import book
from sitegen.publish.buying import buy_link, with_contact
from sitegen.publish.cards import CARD, CARD_LARGE
from sitegen.publish.chips import inks
from sitegen.publish.colourways import same_beads
from sitegen.publish.downloads import DownloadGroup, download_groups
from sitegen.publish.editions import ROOMS, in_edition
from sitegen.publish.imprint import imprint
from sitegen.publish.own_colours import own_colours
from sitegen.publish.papers import Sheets
from sitegen.publish.photo import in_print, on_page
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.summary import summary_blocks, word_columns
from sitegen.publish.template import template_view
from sitegen.publish.to_list import to_list
from sitegen.publish.view import Card, Fact, Link, PatternView, ShopLine, Tongue
from sitegen.publish.ways import PICTURE, Pixels, page_ways, print_ways
from sitegen.publish.words import language_name

TITLE = attrgetter("title")
SUMMARY = attrgetter("summary")
LEAD_PHOTO = attrgetter("photo")
NOTE, CORRECTS = attrgetter("note"), attrgetter("corrects")
"""Texts of a pattern, and of its revisions, whose language a page may have to name."""
LARGEST_PICTURE = 4.0
"""A small piece is shown larger than life, but not more than this."""


def page_address(name: str, folder: str = "") -> str:
    """Where a pattern's page stands in the site; `folder` is that of a colourway."""
    return "/".join(filter(None, ("patterns", name, folder, "index.html")))


def own_page_address(name: str) -> str:
    """Where a page of the shop's own stands in the site."""
    return f"pages/{name}/index.html"


def canonical(shop: Shop, path: str) -> str:
    """Full address of a page in the shop's language, or nothing for a shop that has none yet."""
    return site_address(shop, shop.folder + path)


def site_address(shop: Shop, path: str) -> str:
    """Full address of what all languages of a site share; `path` is from its top."""
    return f"{shop.address.rstrip('/')}/{path.removesuffix('index.html')}" if shop.address else ""


def shop_line(shop: Shop) -> ShopLine:
    """What stands on every page."""
    links = {
        head: tuple(own_page_link(page, shop) for page in shop.pages if page.in_head is head)
        for head in (True, False)
    }
    return ShopLine(
        shop.title,
        shop.tagline,
        shop.maker,
        shop.about,
        shop.language,
        shop.folder,
        tongues(shop),
        {name: shop.language_of(name) for name in TRANSLATED},
        head=links[True],
        foot=links[False],
    )


def own_page_link(page: ShopPage, shop: Shop) -> Link:
    """The link to a page of the shop's own, its summary beside it; as written where it is not translated."""
    shown, language = shop.said(page)
    return Link(own_page_address(page.name), shown.title, shown.summary, language, language)


def tongues(shop: Shop) -> tuple[Tongue, ...]:
    """The languages of a site, by their own names."""
    folders = {language: shop.folder_of(language) for language in shop.languages}
    return tuple(
        Tongue(language, language_name(language), folder, site_address(shop, folder))
        for language, folder in folders.items()
    )


def print_view(piece: Piece, edition: str = COLOUR) -> PatternView:
    """The printed sheets in one of their editions: everything, but for the summary."""
    piece, medium = in_edition(piece, edition), ROOMS[edition]
    if edition == ONE_PAGE:
        charts = summary_blocks(piece)
        view = _view(piece, Figure(Markup(), ""), charts)
        return replace(view, printed_as=edition, columns=word_columns(charts))
    view = replace(_view(piece, _drawn(piece, medium), making.blocks(piece, medium)), printed_as=edition)
    lead = piece.photos.get(piece.pattern.photo) if piece.pattern.photo else None
    photo = in_print(lead, piece.language_of(LEAD_PHOTO)) if lead else None
    view = replace(view, template=template_view(piece, medium), ways=print_ways(piece, medium), photo=photo)
    return replace(view, book=book(piece, view))


def page_view(
    piece: Piece, sheets: Sequence[Sheets], pixels: Pixels, author: Piece | None = None
) -> PatternView:
    """The page: everything for a free pattern; for a priced one what helps to choose it, not what makes it.

    `pixels` are the sizes of the PNGs beside the pages; a drawing would tell every bead's letter and place.
    `author` is the piece in the author's own colours where `piece` is in a colourway: the lead photo, which
    shows those, is not on its page.
    """
    view = _page_view(piece, sheets, pixels)
    own, own_language = (author.pattern.title, author.language_of(TITLE)) if author else ("", "")
    lead = piece.photos.get(piece.pattern.photo) if piece.pattern.photo and not author else None
    photo = on_page(lead, piece.beside, piece.language_of(LEAD_PHOTO)) if lead else None
    ways = page_ways(piece, author or piece, pixels)
    view = replace(view, ways=ways, own_colours=own, own_language=own_language, photo=photo)
    return replace(
        view,
        facts=(*view.facts, bench.level(view, piece.words), bench.edition(view, piece.words)),
        contents=bench.contents(view, piece.words),
        buy_link=buy_link(piece.pattern, piece.shop, piece.words),
        bench=bench.ticks(piece, view.blocks),
        to_list=to_list(piece),
        chooser=own_colours(piece, "#colours" if ways else "#materials"),
    )


def _page_view(piece: Piece, sheets: Sequence[Sheets], pixels: Pixels) -> PatternView:
    if piece.pattern.price is not None:
        image = Markup('<img src="{}" width="{}" height="{}" alt="{}">').format(
            piece.beside + PICTURE,
            *pixels[piece.folder],
            piece.picture.title,
        )
        figure = Figure(image, piece.words.text("picture.screen"))
        return _view(piece, figure, (), buy=_how_to_buy(piece, sheets))
    downloads = download_groups(piece, sheets)
    return _view(piece, _drawn(piece, SCREEN), making.blocks(piece, SCREEN), downloads)


def _how_to_buy(piece: Piece, sheets: Sequence[Sheets]) -> str:
    seller = piece.shop.maker or piece.shop.title
    how = piece.words.text("buy.how", seller=seller, count=sheets[0].pages)
    others = [piece.words.text(f"edition.{one.edition}") for one in sheets[1:]]
    if others:
        more = piece.words.text("buy.editions", editions=", ".join(others))
        how = f"{how} {more}"
    return with_contact(how, piece.shop, piece.words)


def _view(
    piece: Piece,
    picture: Figure,
    blocks: tuple[Block, ...],
    downloads: tuple[DownloadGroup, ...] = (),
    buy: str = "",
) -> PatternView:
    pattern, shop, words = piece.pattern, piece.shop, piece.words
    beads, bead_scale = materials.bead_table(piece)
    address = page_address(pattern.name, piece.folder)
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
        beads=beads,
        bead_scale=bead_scale,
        bead_each=str(piece.measures.bead_each),
        bead_total=str(piece.measures.bead_total),
        pieces=str(piece.measures.pieces),
        same=same_beads(piece) if piece.colourway else (),
        ways=(),
        own_colours="",
        own_language="",
        supplies=materials.supplies(piece),
        difficulty=materials.difficulty(piece),
        blocks=blocks,
        cautions=materials.cautions(piece),
        licence=shop.licence or words.text("licence.usual", maker=shop.maker or shop.title),
        revisions=_revisions(piece),
        downloads=downloads,
        buy=buy,
        address=address,
        beside=piece.beside,
        language=piece.language_of(TITLE),
        canonical=canonical(shop, address),
        shop=shop_line(shop),
        imprint=imprint(piece),
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
    return piece.words.text("revision.dated", number=pattern.revision, date=piece.words.date(this.date))


def _revisions(piece: Piece) -> tuple[Fact, ...]:
    """The editions, and after one that corrects those before it, what was wrong in them."""
    say, told = piece.words.text, []
    for place, one in enumerate(piece.pattern.revisions):
        day = piece.words.date(one.date) if one.date else ""
        language = _revision_language(piece, place, NOTE)
        told.append(Fact(say("revision.number", number=one.number), one.note, day, language))
        if one.corrects:
            since = say("revision.corrected", number=one.number)
            language = _revision_language(piece, place, CORRECTS)
            told.append(Fact(say("revision.correction"), one.corrects, since, language))
    return tuple(told)


def _revision_language(piece: Piece, place: int, text: Callable[[Revision], object]) -> str:
    return piece.language_of(lambda pattern: text(pattern.revisions[place]))


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
        language=piece.language_of(TITLE),
    )
