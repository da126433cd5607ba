"""A shop folder -> its shop file and all its patterns, read, with every problem and every text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, ShopPage
from sitegen.model.source import Pattern
from sitegen.read.bundles import bundle_faults
from sitegen.read.faults import Faults
from sitegen.read.file_names import file_name_faults
from sitegen.read.pattern import read_pattern
from sitegen.read.photos import with_photos
from sitegen.read.shop_file import read_shop_file
from sitegen.read.shop_pages import lost_links, page_targets, read_page
from sitegen.read.text import readable, utf8
from sitegen.read.translation import read_translation

MOST_BYTES = 1_000_000
"""Size of one source file."""
SHOP_FILE = "shop.yaml"
PAGES = "pages"
"""Folder beside the shop file in which the shop's own pages lie."""

MARKDOWN = frozenset({".md", ".markdown", ".mdown", ".mdwn", ".mkd", ".mkdn"})
"""How Markdown files end, in small letters; all but `.md` are reported, so that none is skipped unseen."""

_TRANSLATED = re.compile(r"(?P<name>[a-z0-9-]+)\.(?P<language>[a-z]{2,3}(?:-[A-Z]{2})?)\.md")
"""A translation lies beside its pattern: `fern.de.md` beside `fern.md`."""
_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class Sources:
    """Everything read from a shop folder."""

    shop: Shop
    patterns: tuple[Pattern, ...]
    """By name."""
    problems: tuple[Problem, ...]
    texts: Mapping[str, str]
    """File as named in locations -> its text, with LF line ends; for showing excerpts."""
    root: Path


@dataclass(slots=True)
class _Folder:
    """Files read so far, each of them once."""

    root: Path
    named_from: Path | None
    """Locations name files from here; None names them as given."""
    faults: Faults = field(default_factory=Faults)
    texts: dict[str, str] = field(default_factory=dict)

    def name(self, path: Path) -> str:
        """The file as locations name it."""
        return (path.relative_to(self.named_from) if self.named_from else path).as_posix()

    def nowhere(self, path: Path) -> Location:
        """A place that is the whole file or folder."""
        return Location(self.name(path), 0, 0, 0)

    def read(self, path: Path) -> str | None:
        """The file's text, noted; or a problem and None."""
        where = self.nowhere(path)
        try:
            if not path.resolve(strict=True).is_relative_to(self.root.resolve()):
                self.faults.add("file-link-outside", where)
                return None
            if not path.is_file():
                self.faults.add("file-unreadable", where, reason="it is no plain file")
                return None
            with path.open("rb") as file:
                data = file.read(MOST_BYTES + 1)
        except (OSError, RuntimeError) as error:
            reason = getattr(error, "strerror", None) or "links that lead in a circle"
            self.faults.add("file-unreadable", where, reason=reason.lower())
            return None
        if len(data) > MOST_BYTES:
            self.faults.add("file-too-large", where, most="1 MB")
            return None
        self.texts[where.file] = readable(data)
        return utf8(data, where.file, self.faults)

    def pattern(self, path: Path, shop: Shop) -> Pattern | None:
        """Read a pattern from its Markdown file and the header beside it, if there is one."""
        if not _NAME.fullmatch(path.stem) or path.suffix != ".md":
            self.faults.add("file-name", self.nowhere(path), name=path.name)
        text = self.read(path)
        beside = path.with_suffix(".yaml")
        header = self.read(beside) if beside.exists() else None
        if text is None or (header is None and beside.exists()):
            return None
        if header is None:
            pattern, problems = read_pattern(text, self.name(path), shop)
        else:
            pattern, problems = read_pattern(text, self.name(path), shop, header, self.name(beside))
        self.faults.problems.extend(problems)
        if pattern is None:
            return None
        pattern = with_photos(pattern, path.parent, self.root, self.faults)
        return replace(pattern, translations=dict(self.translations(pattern, path, shop)))

    def translations(self, pattern: Pattern, path: Path, shop: Shop) -> Iterator[tuple[str, Pattern]]:
        """(language, the pattern in it) for each translation beside the pattern's file."""
        for beside in sorted(path.parent.glob(f"{path.stem}.*.md")):
            found = _TRANSLATED.fullmatch(beside.name)
            text = self.read(beside) if found else None
            if found is None or text is None:
                continue
            if found["language"] not in shop.languages[1:]:
                self.faults.add("translation-unshown", self.nowhere(beside), language=found["language"])
            made = read_translation(text, self.name(beside), pattern, self.faults)
            if made is not None:
                yield found["language"], with_photos(made, path.parent, self.root, self.faults)

    def pages(self, folder: Path) -> tuple[ShopPage, ...]:
        """The shop's own pages in a folder, in their order; `help.de.md` is `help.md` in German."""
        paths = sorted(folder.iterdir()) if folder.is_dir() else []
        translated = [path for path in paths if _TRANSLATED.fullmatch(path.name)]
        found: list[tuple[int, str, ShopPage]] = []
        for path in paths:
            if path in translated or path.suffix.lower() not in MARKDOWN:
                continue
            if not _NAME.fullmatch(path.stem) or path.suffix != ".md":
                self.faults.add("file-name", self.nowhere(path), name=path.name)
            page, order = self.page(path)
            beside = [one for one in translated if one.name.split(".")[0] == path.stem]
            others = {one.name.split(".")[1]: self.page(one)[0] for one in beside}
            if page is not None:
                kept = {language: one for language, one in others.items() if one is not None}
                found.append((order, page.name, replace(page, translations=kept)))
        for path in translated:
            other = f"{path.name.split('.')[0]}.md"
            if folder / other not in paths:
                self.faults.add("translation-alone", self.nowhere(path), other=other)
        return tuple(page for _, _, page in sorted(found, key=lambda one: one[:2]))

    def page(self, path: Path) -> tuple[ShopPage | None, int]:
        """One of the shop's own pages, and its place among them."""
        text = self.read(path)
        if text is None:
            return None, 0
        page, order, problems = read_page(text, self.name(path))
        self.faults.problems.extend(problems)
        return page, order


def load_shop(root: Path) -> Sources:
    """Read the shop in `root`: the folder `content` in it if there is one, else the folder itself.

    Patterns are the Markdown files of its folder `patterns`; without such a folder, those beside the shop
    file. Patterns with problems are among the patterns, as far as they could be read. A folder `content`
    without a shop file is worth advice; a folder of mere patterns is not.
    """
    folder = _Folder(root, root)
    if not root.is_dir():
        folder.faults.add("folder-missing", Location(str(root), 0, 0, 0))
        return Sources(Shop(), (), tuple(folder.faults.problems), folder.texts, root)
    source = root / "content" if (root / "content").is_dir() else root
    shop = _shop(folder, source / SHOP_FILE)
    if source != root and not (source / SHOP_FILE).exists():
        folder.faults.add("shop-missing", folder.nowhere(source))
    here = source / "patterns" if (source / "patterns").is_dir() else source
    paths = sorted(path for path in here.iterdir() if path.suffix.lower() in MARKDOWN)
    translated = [path for path in paths if _TRANSLATED.fullmatch(path.name)]
    paths = [path for path in paths if path not in translated]
    for path in translated:
        other = f"{path.name.split('.')[0]}.md"
        if here / other not in paths:
            folder.faults.add("translation-alone", folder.nowhere(path), other=other)
    if not paths:
        folder.faults.add("no-patterns", Location(folder.name(here), 0, 0, 0))
    for header in sorted(here.glob("*.yaml")):
        if header != source / SHOP_FILE and header.stem not in {path.stem for path in paths}:
            folder.faults.add("header-alone", folder.nowhere(header), other=f"{header.stem}.md")
    shop = replace(shop, pages=folder.pages(source / PAGES))
    patterns = [folder.pattern(path, shop) for path in paths]
    targets = page_targets(shop.pages, (path.stem for path in paths))
    folder.faults.problems.extend(lost_links(shop.pages, targets))
    known = [pattern for pattern in patterns if pattern is not None]
    folder.faults.problems.extend(bundle_faults(shop, known, [path.stem for path in paths]))
    folder.faults.problems.extend(file_name_faults(shop, known))
    return _sources(folder, shop, patterns)


def load_pattern(path: Path, shop: Shop) -> Sources:
    """Read one pattern that lies outside of a shop folder; `shop` lends its settings and stock."""
    folder = _Folder(path.parent, None)
    return _sources(folder, shop, [folder.pattern(path, shop)])


def load_settings(root: Path) -> Sources:
    """The shop file of the shop in `root` alone: what is needed beside a finished output."""
    folder = _Folder(root, root)
    source = root / "content" if (root / "content").is_dir() else root
    return _sources(folder, _shop(folder, source / SHOP_FILE), [])


def _shop(folder: _Folder, path: Path) -> Shop:
    if not path.exists():
        return Shop()
    text = folder.read(path)
    if text is None:
        return Shop()
    shop, problems = read_shop_file(text, folder.name(path))
    folder.faults.problems.extend(problems)
    return shop


def _sources(folder: _Folder, shop: Shop, patterns: list[Pattern | None]) -> Sources:
    made = sorted((p for p in patterns if p is not None), key=lambda pattern: pattern.name)
    return Sources(shop, tuple(made), tuple(folder.faults.problems), folder.texts, folder.root)
