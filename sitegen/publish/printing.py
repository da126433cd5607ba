"""A print view -> its sheets as PDFs, through WeasyPrint, with only the theme and its photos to read."""

from __future__ import annotations

import logging
import mimetypes
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from pathlib import Path
from types import MappingProxyType
from typing import Any
from urllib.parse import urlsplit

from fontTools.ttLib import TTFont
from markupsafe import Markup
from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from sitegen.model.shop import COLOUR, EDITIONS
from sitegen.publish.binding import bind
from sitegen.publish.chips import style_sheet
from sitegen.publish.drawings_apart import take_apart
from sitegen.publish.editions import TEMPLATES
from sitegen.publish.papers import PAPERS, Sheets, sheets
from sitegen.publish.photo import SCHEME as PHOTO_SCHEME
from sitegen.publish.photo import PhotoFile
from sitegen.publish.tags import carry_languages
from sitegen.publish.theme import templates
from sitegen.publish.theme_look import print_style
from sitegen.publish.view import PatternView
from sitegen.publish.words import Words
from sitegen.publish.words_used import words_used

SCHEME = "theme"
"""Addresses in print are `theme:/fonts/NAME`: a file of the theme's own folder."""

NO_DRAWINGS: Mapping[str, bytes] = MappingProxyType({})
_ENGINE = logging.getLogger("weasyprint")


class PrintFault(Exception):
    """The print engine could not set a page as it is meant; the text says what it said."""


@dataclass(frozen=True, slots=True)
class PrintJob:
    """All that a printing process needs: plain data, so that it can be sent to another process."""

    name: str
    """The pattern, for messages."""
    html: str
    titles: tuple[tuple[str, str], ...]
    """(paper, title) for each paper."""
    theme: Path
    photos: tuple[PhotoFile, ...] = ()
    """The photos that the sheets show."""
    language: str = ""
    """As it is in the names of the files; empty for the first of the shop."""
    author_language: str = ""
    """Of the texts that are not in the language of the sheets."""
    edition: str = COLOUR
    """Which of the editions of the pattern it is."""
    bound: tuple[str, ...] = ()
    """For a bundle, the sheets of its patterns as HTML: they come behind its own, in one document."""


class _Jail(URLFetcher):  # type: ignore[misc]  # WeasyPrint has no type information
    """Hands out the theme's files and the job's pictures, and stops the printing at any other address."""

    def __init__(
        self, theme: Path, photos: tuple[PhotoFile, ...] = (), drawings: Mapping[str, bytes] = NO_DRAWINGS
    ) -> None:
        super().__init__()
        self._theme = theme.resolve()
        self._photos = {f"{PHOTO_SCHEME}:/{name}": data for name, data in photos}
        self._drawings = drawings

    def fetch(self, url: str, headers: object = None) -> URLFetcherResponse:
        """A file of the theme or a picture of the job. Raises FatalURLFetchingError for anything else."""
        if url in self._drawings:
            return URLFetcherResponse(url, self._drawings[url], {"Content-Type": "image/svg+xml"})
        if url in self._photos:
            return URLFetcherResponse(url, self._photos[url], {"Content-Type": "image/jpeg"})
        parts = urlsplit(url)
        path = (self._theme / parts.path.lstrip("/")).resolve()
        if parts.scheme != SCHEME or not path.is_relative_to(self._theme) or not path.is_file():
            raise FatalURLFetchingError(f"printing reads only the theme's files and the photos, not {url}")
        kind = mimetypes.guess_type(path.name)[0] or "application/octet-stream"
        return URLFetcherResponse(url, path.read_bytes(), {"Content-Type": kind})


@dataclass(frozen=True, slots=True)
class _Press:
    """What is the same for every job of a theme and an edition."""

    fonts: Any
    style: CSS


@lru_cache(maxsize=2 * len(EDITIONS))
def _press(theme: Path, edition: str = COLOUR) -> _Press:
    """Fonts and an edition's style sheet, read once in each process."""
    fonts = FontConfiguration()
    with _listening("the theme's print style"):
        sheet, jail = print_style(theme, edition), _Jail(theme)
        style = CSS(string=sheet, base_url=f"{SCHEME}:/", url_fetcher=jail, font_config=fonts)
    return _Press(fonts, style)


@lru_cache(maxsize=2)
def theme_letters(theme: Path) -> frozenset[str]:
    """The letters that every font of the theme has."""
    fonts = [TTFont(path, lazy=True) for path in sorted((theme / "fonts").glob("*.ttf"))]
    return frozenset.intersection(*(frozenset(map(chr, font.getBestCmap())) for font in fonts))


def print_job(view: PatternView, words: Words, theme: Path) -> PrintJob:
    """A view -> the job of printing it."""
    title = view.title
    if view.printed_as != COLOUR:
        title = words.text("pdf.title-edition", title=title, edition=words.text(f"edition.{view.printed_as}"))
    titles = tuple(
        (paper.name, words.text("pdf.title", title=title, paper=words.text(f"paper.{paper.name}")))
        for paper in PAPERS
    )
    chips = Markup(style_sheet(view.inks))
    html = (
        templates(theme)
        .get_template(TEMPLATES[view.printed_as])
        .render(
            view=view,
            t=words.text,
            title=titles[0][1],
            chips=chips,
            words_in=partial(words_used, stitches=view.book.stitches if view.book else (), words=words),
        )
    )
    language = view.shop.language if view.shop.folder else ""
    name = f"{view.name} in {language}" if language else view.name
    if view.printed_as != COLOUR:
        name = f"{name} ({view.printed_as})"
    author_language = view.shop.tongues[0].language
    return PrintJob(
        name, html, titles, theme, view.photo_files, language, author_language, edition=view.printed_as
    )


def print_sheets(job: PrintJob) -> Sheets:
    """A job -> its PDFs. Raises PrintFault with all that the engine complained of."""
    press = _press(job.theme, job.edition)
    try:
        with _listening(job.name):
            drawings: dict[str, bytes] = {}
            html, *bound = (take_apart(part, drawings) for part in (job.html, *job.bound))
            jail = _Jail(job.theme, job.photos, drawings)
            document = HTML(string=html, base_url=f"{SCHEME}:/", url_fetcher=jail)
            bind(document.etree_element, [HTML(string=part).etree_element for part in bound])
            carry_languages(document.etree_element)
            layout = document.write_pdf(
                stylesheets=[press.style], font_config=press.fonts, pdf_variant="pdf/a-2a", pdf_forms=True
            )
    except FatalURLFetchingError as error:
        raise PrintFault(f"{job.name}: {error}") from error
    except (ArithmeticError, AttributeError, LookupError, TypeError, ValueError) as error:
        raise PrintFault(f"{job.name}: the print engine failed: {error}") from error
    made = sheets(layout, dict(job.titles), job.language, job.author_language)
    return replace(made, edition=job.edition)


@contextmanager
def _listening(name: str) -> Iterator[None]:
    """Any warning of the engine is a fault: one bad value can blank every later picture of a page."""
    heard: list[str] = []

    class Ear(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            heard.append(record.getMessage())

    ear = Ear(logging.WARNING)
    spread, level = _ENGINE.propagate, _ENGINE.level
    _ENGINE.addHandler(ear)
    _ENGINE.propagate = False
    if level == logging.NOTSET or level > logging.WARNING:
        _ENGINE.setLevel(logging.WARNING)
    try:
        yield
    finally:
        _ENGINE.removeHandler(ear)
        _ENGINE.propagate = spread
        _ENGINE.setLevel(level)
    if heard:
        raise PrintFault(f"{name}: the print engine complained: " + "; ".join(heard))
