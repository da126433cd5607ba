"""Views -> the pages of the site, as HTML, and the files of a theme's look."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Protocol

from sitegen.publish.front_view import FrontView
from sitegen.publish.lean_script import lean_script
from sitegen.publish.lesson_pages import LIST
from sitegen.publish.lesson_view import LessonsView, LessonView
from sitegen.publish.linked_data import FRONT
from sitegen.publish.shop_pages import LostView
from sitegen.publish.theme import templates
from sitegen.publish.theme_look import screen_style
from sitegen.publish.view import PatternView, ShopLine
from sitegen.publish.words import Words


class View(Protocol):
    """What every page is filled from."""

    @property
    def shop(self) -> ShopLine:
        """What stands on all of them."""


def front_page(view: FrontView, words: Words, theme: Path) -> str:
    """The front page."""
    return site_page("front.html", view, words, theme, FRONT)


def pattern_page(view: PatternView, words: Words, theme: Path) -> str:
    """One pattern's page, in the author's colours or in a colourway."""
    return site_page("pattern.html", view, words, theme, view.address)


def lessons_page(view: LessonsView, words: Words, theme: Path) -> str:
    """The list of all lessons."""
    return site_page("techniques.html", view, words, theme, LIST)


def lesson_page(view: LessonView, words: Words, theme: Path, address: str) -> str:
    """One lesson."""
    return site_page("technique.html", view, words, theme, address)


def site_page(template: str, view: View, words: Words, theme: Path, address: str) -> str:
    """Any page, by its template and where it stands in its language.

    Templates find the pages of the same language behind `up`, and behind `top` the site's whole: the look,
    pictures without words, other languages. `place` is the page's own address in every language.
    """
    up = "../" * address.count("/")
    top = up + "../" * view.shop.folder.count("/")
    page = templates(theme).get_template(template)
    return page.render(view=view, t=words.text, up=up, top=top, place=address)


def lost_page(view: LostView, words: Words, theme: Path) -> str:
    """The page for an address that does not exist; in other languages, the front page stands for it."""
    page = templates(theme).get_template("404.html")
    up = view.base + view.shop.folder
    return page.render(view=view, t=words.text, up=up, top=view.base, place=FRONT)


def look_files(theme: Path) -> Iterator[tuple[str, bytes]]:
    """(address in the site, contents) of the style sheet, the scripts, and the fonts with their licences."""
    yield "look/site.css", screen_style(theme)
    for name in ("bench.css", "list.css", "shelves.css"):
        yield f"look/{name}", (theme / "styles" / name).read_bytes()
    for path in sorted((theme / "scripts").glob("*.js")):
        yield f"look/{path.name}", lean_script(path.read_text(encoding="utf-8")).encode()
    for path in sorted((theme / "fonts").iterdir()):
        if path.suffix in (".woff2", ".txt"):
            yield f"look/fonts/{path.name}", path.read_bytes()
