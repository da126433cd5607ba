"""The address of the list of pages -> robots.txt: every robot is welcome, and is told where the list is.

Format: RFC 9309; the line that names the list is that of https://www.sitemaps.org/protocol.html.
"""

from __future__ import annotations

ROBOTS = "robots.txt"
"""Robots look for it at the top of a host and nowhere else."""


def robots(sitemap: str) -> bytes:
    """`sitemap` is a full address."""
    return f"User-agent: *\nDisallow:\n\nSitemap: {sitemap}\n".encode()
