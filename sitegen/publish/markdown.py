"""An author's Markdown -> HTML whose headings fit into the page around it."""

from __future__ import annotations

import re
from collections.abc import Iterable

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markupsafe import Markup

from sitegen.read.shop_pages import PLACES as SITE_PLACES

FIRST_HEADING = 3
"""The highest heading an author's text may use: the page itself has levels 1 and 2."""

PAGE_HEADING = 2
"""The same on a page of the shop's own."""

_GOOD_LINK = re.compile(r"(https?://|mailto:)", re.IGNORECASE)
_OWN_LINK = re.compile(r"shop:(?P<target>[a-z0-9/-]+)(?P<spot>#[a-z0-9-]+)?")
"""A page of this site, as the shop's own pages name it."""
_PLAIN = ("text", "code_inline", "softbreak")


class _Reader(MarkdownIt):
    """CommonMark with tables, without raw HTML; an address that leads nowhere safe stays plain text.

    Photos are blocks of their own and no longer in the text.
    """

    def __init__(self, own_links: bool = False) -> None:
        super().__init__("commonmark", {"html": False, "xhtmlOut": False})
        self.enable("table")
        self.disable("image")
        self._own_links = own_links

    def validateLink(self, url: str) -> bool:
        own = self._own_links and _OWN_LINK.fullmatch(url) is not None
        return own or _GOOD_LINK.match(url) is not None


_READER, _PAGE_READER = _Reader(), _Reader(own_links=True)


def shown_letters(text: str) -> str:
    """Every letter that an author's text shows, those that it only names (`&#x202E;`) among them."""
    tokens = _READER.parse(text)
    return "\n".join(shown.content for token in tokens for shown in (token.children or (token,)))


def heading_levels(levels: Iterable[int], first: int = FIRST_HEADING) -> list[int]:
    """Levels as written -> levels as set: from `first` on, none more than one deeper than the one before.

    Headings of equal level stay equal as long as no shallower one comes between.
    """
    open_levels: list[int] = []
    result = []
    for level in levels:
        while open_levels and open_levels[-1] >= level:
            open_levels.pop()
        open_levels.append(level)
        result.append(min(first + len(open_levels) - 1, 6))
    return result


class Author:
    """Renders the texts of one pattern in order, so that headings keep their ranks from text to text.

    With `up`, the way to the top of the site, it renders a page of the shop's own and its `shop:` links.
    """

    def __init__(self, up: str | None = None) -> None:
        self._seen: list[int] = []
        self._up = up
        self._reader = _READER if up is None else _PAGE_READER
        self._first = FIRST_HEADING if up is None else PAGE_HEADING

    def html(self, text: str) -> Markup:
        """One text as HTML; raw HTML in it comes out as plain text."""
        tokens = self._reader.parse(text)
        opened = [token for token in tokens if token.type == "heading_open"]
        closed = [token for token in tokens if token.type == "heading_close"]
        before = len(self._seen)
        self._seen += [int(token.tag[1]) for token in opened]
        levels = heading_levels(self._seen, self._first)[before:]
        for first, last, level in zip(opened, closed, levels, strict=True):
            first.tag = last.tag = f"h{level}"
        for token in tokens:
            _set_cell(token)
            if token.children:
                token.children = _plain_links(token.children)
                for child in token.children:
                    _lead(child, self._up)
        return Markup(self._reader.renderer.render(tokens, self._reader.options, {}))

    def restart(self) -> None:
        """A heading set by the page itself stands between: the next one begins at the top again."""
        self._seen.clear()


def _lead(token: Token, up: str | None) -> None:
    """A `shop:` link -> the way to the page; a link to another site gives that site no hold on this page."""
    address = str(token.attrGet("href") or "")
    found = _OWN_LINK.fullmatch(address) if up is not None else None
    if address and not found:
        token.attrSet("rel", "noopener")
    if found:
        own = found["target"].strip("/")
        folder = own if "/" in own or own in SITE_PLACES else f"pages/{own}"
        token.attrSet("href", f"{up}{folder}/index.html{found['spot'] or ''}")


def _set_cell(token: Token) -> None:
    """A heading cell heads its column; alignment is the style sheet's matter."""
    if token.type in ("th_open", "td_open"):
        token.attrs.pop("style", None)
    if token.type == "th_open":
        token.attrSet("scope", "col")


def _plain_links(children: list[Token]) -> list[Token]:
    """Links hold plain words only: readers of tagged PDFs lose links with marked-up words inside."""
    kept: list[Token] = []
    inside = False
    for token in children:
        if token.type in ("link_open", "link_close"):
            inside = token.type == "link_open"
        elif inside and token.type == "code_inline":
            token.type, token.tag = "text", ""
        elif inside and token.type not in _PLAIN:
            continue
        kept.append(token)
    return kept
