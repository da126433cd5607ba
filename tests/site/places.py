"""The folder of a finished site -> its pages, their kinds, and one page of each kind."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from lxml import html


@dataclass(frozen=True, order=True)
class Kind:
    """Pages that one template made: alike in language, place and what they load."""

    language: str
    place: str
    """First folder or file name below the language's own folder."""
    depth: int
    loads: tuple[str, ...]
    """Names of its style sheets and scripts, sorted."""


@dataclass(frozen=True)
class Page:
    """One page, read once."""

    path: Path
    name: str
    """Below the site's folder, with slashes."""

    @cached_property
    def text(self) -> str:
        return self.path.read_text(encoding="utf-8")

    @cached_property
    def tree(self) -> html.HtmlElement:
        return html.document_fromstring(self.path.read_bytes(), html.HTMLParser(encoding="utf-8"))

    @property
    def stands_in(self) -> bool:
        """Whether a host shows this page at any depth in place of one that is not there."""
        return self.path.name == "404.html"

    @cached_property
    def kind(self) -> Kind:
        language = self.tree.get("lang") or ""
        parts = self.name.split("/")
        if len(parts) > 1 and parts[0] == language:
            parts = parts[1:]
        loads = self.tree.xpath("//link[@rel='stylesheet']/@href | //script/@src")
        names = {address.rpartition("/")[2] for address in loads}
        return Kind(language, parts[0], len(parts), tuple(sorted(names)))


@dataclass(frozen=True)
class Site:
    """A finished site as it would be uploaded."""

    root: Path

    @cached_property
    def pages(self) -> tuple[Page, ...]:
        """Every page, by name."""
        files = sorted(self.root.rglob("*.html"))
        return tuple(Page(path, path.relative_to(self.root).as_posix()) for path in files)

    @cached_property
    def examples(self) -> tuple[Page, ...]:
        """The longest page of each kind."""
        longest: dict[Kind, Page] = {}
        for page in self.pages:
            other = longest.get(page.kind)
            if other is None or len(page.text) > len(other.text):
                longest[page.kind] = page
        return tuple(longest[kind] for kind in sorted(longest))

    @cached_property
    def pattern_pages(self) -> tuple[Page, ...]:
        """The pages that teach or sell one pattern, colourways among them."""
        return tuple(page for page in self.pages if page.kind.place == "patterns")

    @cached_property
    def front(self) -> Page:
        """The front page, in the shop's first language."""
        return Page(self.root / "index.html", "index.html")

    @property
    def language(self) -> str:
        """The shop's first language."""
        return self.front.kind.language

    @cached_property
    def address(self) -> str:
        """Where the shop says it lives, with a slash at the end; "" where it does not say."""
        found = self.front.tree.xpath("//link[@rel='canonical']/@href")
        return str(found[0]) if found else ""

    def files(self, *suffixes: str) -> list[Path]:
        """All files with these endings."""
        return sorted(path for path in self.root.rglob("*") if path.suffix in suffixes)

    def short(self, path: str) -> str:
        """A path or address without the folder, for a readable failure."""
        return path.replace(f"{self.root}/", "").removeprefix("file:")
