"""Addresses of pages -> sitemap.xml, for those who search the web.

Format: https://www.sitemaps.org/protocol.html; links between languages as xhtml:link, common practice.
"""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from sitegen.publish.xml_file import add, xml_file

SITEMAP = "sitemap.xml"
"""At the top of the site."""


@dataclass(frozen=True, slots=True)
class Listed:
    """A page as the list names it."""

    address: str
    """Full."""
    changed: date | None
    """None where its sources have no date."""
    languages: tuple[tuple[str, str], ...] = ()
    """(language, full address) of the same page in every language, its own too; empty in a site of one."""


def sitemap(pages: Sequence[Listed]) -> bytes:
    """The list of all pages, in the order given."""
    root = ET.Element("urlset", {"xmlns": "http://www.sitemaps.org/schemas/sitemap/0.9"})
    if any(page.languages for page in pages):
        root.set("xmlns:xhtml", "http://www.w3.org/1999/xhtml")
    for page in pages:
        url = add(root, "url")
        add(url, "loc", page.address)
        if page.changed:
            add(url, "lastmod", page.changed.isoformat())
        for language, address in page.languages:
            add(url, "xhtml:link", rel="alternate", hreflang=language, href=address)
    return xml_file(root)
