"""Views -> the pages of the site, as HTML, and the files of a theme's look."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from sitegen.publish.lesson_view import LessonsView, LessonView
from sitegen.publish.theme import templates
from sitegen.publish.view import FrontView, PatternView
from sitegen.publish.words import Words


def front_page(view: FrontView, words: Words, theme: Path) -> str:
    """The front page."""
    return templates(theme).get_template("front.html").render(view=view, t=words.text, up="")


def pattern_page(view: PatternView, words: Words, theme: Path) -> str:
    """One pattern's page, in the author's colours or in a colourway."""
    up = "../" * view.address.count("/")
    return templates(theme).get_template("pattern.html").render(view=view, t=words.text, up=up)


def lessons_page(view: LessonsView, words: Words, theme: Path) -> str:
    """The list of all lessons, one folder down."""
    return templates(theme).get_template("techniques.html").render(view=view, t=words.text, up="../")


def lesson_page(view: LessonView, words: Words, theme: Path) -> str:
    """One lesson, two folders down."""
    return templates(theme).get_template("technique.html").render(view=view, t=words.text, up="../../")


def look_files(theme: Path) -> Iterator[tuple[str, bytes]]:
    """(address in the site, contents) of the style sheet, the scripts, and the fonts with their licences."""
    yield "look/site.css", (theme / "styles" / "site.css").read_bytes()
    for path in sorted((theme / "scripts").glob("*.js")):
        yield f"look/{path.name}", path.read_bytes()
    for path in sorted((theme / "fonts").iterdir()):
        if path.suffix in (".woff2", ".txt"):
            yield f"look/fonts/{path.name}", path.read_bytes()
