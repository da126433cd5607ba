"""An author's Markdown -> HTML whose headings fit into the page around it."""

from __future__ import annotations

import re
from collections.abc import Iterable

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markupsafe import Markup

FIRST_HEADING = 3
"""The highest heading an author's text may use: the page itself has levels 1 and 2."""

_GOOD_LINK = re.compile(r"(https?://|mailto:)", re.IGNORECASE)
_PLAIN = ("text", "code_inline", "softbreak")


class _Reader(MarkdownIt):
    """CommonMark with tables, without raw HTML; an address that leads nowhere safe stays plain text.

    Photos are blocks of their own and no longer in the text.
    """

    def __init__(self) -> None:
        super().__init__("commonmark", {"html": False, "xhtmlOut": False})
        self.enable("table")
        self.disable("image")

    def validateLink(self, url: str) -> bool:
        return _GOOD_LINK.match(url) is not None


_READER = _Reader()


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
    """Renders the texts of one pattern in order, so that headings keep their ranks from text to text."""

    def __init__(self) -> None:
        self._seen: list[int] = []

    def html(self, text: str) -> Markup:
        """One text as HTML; raw HTML in it comes out as plain text."""
        tokens = _READER.parse(text)
        opened = [token for token in tokens if token.type == "heading_open"]
        closed = [token for token in tokens if token.type == "heading_close"]
        before = len(self._seen)
        self._seen += [int(token.tag[1]) for token in opened]
        levels = heading_levels(self._seen)[before:]
        for first, last, level in zip(opened, closed, levels, strict=True):
            first.tag = last.tag = f"h{level}"
        for token in tokens:
            _set_cell(token)
            if token.children:
                token.children = _plain_links(token.children)
        return Markup(_READER.renderer.render(tokens, _READER.options, {}))

    def restart(self) -> None:
        """A heading set by the page itself stands between: the next one begins at the top again."""
        self._seen.clear()


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
