"""The pages of a site, its pieces and their sheets -> what machines read: list of pages, robots.txt, feed."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from urllib.parse import urlsplit

from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.publish.bundle_links import bundle_address
from sitegen.publish.catalogue import CATALOGUE
from sitegen.publish.compose import site_address
from sitegen.publish.dates import changed
from sitegen.publish.feed import FEED, feed
from sitegen.publish.linked_data import FRONT
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.robots import ROBOTS, robots
from sitegen.publish.sitemap import SITEMAP, Listed, sitemap
from sitegen.publish.stock_page import MATERIALS
from sitegen.publish.words import Words

PATTERNS = "patterns"
GATHER = (FRONT, CATALOGUE, MATERIALS)
"""Pages that are made out of all patterns."""


def feed_files(
    pieces: Sequence[Piece],
    sheets: Sequence[Sequence[Sheets]],
    bound: Sequence[Sheets],
    shop: Shop,
    words: Words,
) -> dict[str, bytes]:
    """Path below the top of the shop's language -> the feed; nothing where there can be none."""
    entries = feed(pieces, sheets, bound, shop, words)
    return {} if entries is None else {FEED: entries}


def feed_address(shop: Shop, patterns: Iterable[Pattern]) -> str:
    """Where the feed stands below the top of the shop's language; empty where the shop has none."""
    dated = changed(patterns) or any(bundle.day for bundle in shop.bundles)
    return FEED if shop.address and dated else ""


def site_files(paths: Iterable[str], patterns: Sequence[Pattern], shop: Shop) -> dict[str, bytes]:
    """The list of pages and robots.txt of the whole site; nothing for a shop without an address.

    `paths` are those of all files of the site: every `index.html` is a page. `shop` is in its first language.
    """
    if not shop.address:
        return {}
    pages = [path for path in paths if path == FRONT or path.endswith(f"/{FRONT}")]
    pages.sort(key=lambda path: path.removesuffix(FRONT))
    found = frozenset(pages)
    return {
        SITEMAP: sitemap([listed(path, patterns, shop, found) for path in pages]),
        ROBOTS: robots(site_address(shop, SITEMAP)),
    }


def listed(
    path: str, patterns: Sequence[Pattern], shop: Shop, pages: Collection[str] = frozenset()
) -> Listed:
    """A page in the list, with the same page in other languages where it is among `pages`.

    A pattern's page has the newest date of its editions, a page that gathers patterns that of them all, a
    bundle's page that of its patterns or its own. No other page has a date: nothing in the sources says when
    it changed.
    """
    folder = next((f"{one}/" for one in shop.languages[1:] if path.startswith(f"{one}/")), "")
    own = path.removeprefix(folder)
    parts = own.split("/")
    bundle = next((one for one in shop.bundles if own == bundle_address(one.name)), None)
    names = bundle.patterns if bundle else parts[1:2] if parts[0] == PATTERNS else ()
    told = patterns if own in GATHER else [pattern for pattern in patterns if pattern.name in names]
    days = [day for day in (changed(told), bundle.day if bundle else None) if day]
    return Listed(site_address(shop, path), max(days, default=None), _languages(own, shop, pages))


def _languages(path: str, shop: Shop, pages: Collection[str]) -> tuple[tuple[str, str], ...]:
    """(language, full address) of a page in each of its languages, and the first for readers of any other."""
    trees = [(one, shop.folder_of(one) + path) for one in shop.languages]
    made = tuple((one, site_address(shop, page)) for one, page in trees if page in pages)
    return (*made, ("x-default", made[0][1])) if len(made) > 1 else ()


def report(files: Mapping[str, bytes], patterns: Sequence[Pattern], shop: Shop, words: Words) -> str:
    """What was made of it, and what was left out and why, for the author's desk."""
    say = words.text
    if not shop.address:
        return say("machines.no-address") + "\n"
    lines = [say("machines.pages", count=files[SITEMAP].count(b"<loc>"), file=SITEMAP)]
    if urlsplit(shop.address).path.strip("/"):
        line = files[ROBOTS].decode().splitlines()[-1]
        lines.append(say("machines.robots", line=line))
    feeds = [path for one in shop.languages if (path := shop.folder_of(one) + FEED) in files]
    lines += [say("machines.entries", count=files[one].count(b"<entry>"), file=one) for one in feeds]
    if not feeds:
        lines.append(say("machines.no-feed"))
    undated = [pattern for pattern in patterns if changed([pattern]) is None]
    lines += [say("machines.undated", title=pattern.title, name=pattern.name) for pattern in undated]
    return "\n".join(lines) + "\n"
