"""Every address in every page and style sheet leads somewhere, from the disk and over the web."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Iterator
from http.client import HTTPConnection
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

import pytest
from lxml import etree

from tests.site.host import LOOPBACK, Host
from tests.site.places import Page, Site

HERE = ("href", "src", "action", "poster", "data")
OF_THE_SHOP = "//link[@rel='canonical']/@href | //meta[starts-with(@property, 'og:')]/@content"
OUTWARD = ("https:", "mailto:")
IDS = ("for", "aria-labelledby", "aria-describedby", "aria-controls", "headers")


def addresses(page: Page) -> Iterator[str]:
    """Every address in a page as it is written."""
    for element in page.tree.iter(etree.Element):
        for name, value in element.attrib.items():
            if name in HERE or name.endswith("}href") or name == "xlink:href":
                yield value
            elif name == "srcset":
                yield from (choice.split()[0] for choice in value.split(","))


def absolute(page: Page) -> list[str]:
    """Addresses of the shop on the web that a page states about itself."""
    found = [str(value) for value in page.tree.xpath(OF_THE_SHOP)]
    return [value for value in found if re.match("https?:", value)]


def on_disk(site: Site, page: str, address: str) -> Path | None:
    """The file that an address in a page leads to; None for one that leads away from the shop."""
    home = urlsplit(site.address).path
    if page.endswith("404.html") and home and address.startswith(home):
        address = urljoin(site.address, address)
    if site.address and address.startswith(site.address):
        page, address = "index.html", address.removeprefix(site.address) or "index.html"
        address += "index.html" if address.endswith("/") else ""
    parts = urlsplit(address)
    if parts.scheme:
        assert address.startswith(OUTWARD), f"{page}: {address}"
        return None
    assert not parts.path.startswith("/"), f"{page}: {address} works from the root of a host alone"
    file = (site.root / page).parent / unquote(parts.path) if parts.path else site.root / page
    return file.resolve()


def test_every_address_leads_to_a_file_and_a_place_in_it(site: Site) -> None:
    ids = {page.path.resolve(): set(page.tree.xpath("//@id")) for page in site.pages}
    scripted = {page.path.resolve(): bool(page.tree.xpath("//script/@src")) for page in site.pages}
    faults = []
    for page in site.pages:
        for address in [*addresses(page), *absolute(page)]:
            file = on_disk(site, page.name, address)
            place = unquote(urlsplit(address).fragment)
            if file is None:
                continue
            if not file.is_file() or not file.is_relative_to(site.root.resolve()):
                faults.append(f"{page.name}: {address} leads nowhere")
            elif "=" in place and scripted[file]:
                continue  # a choice for the page's script; without script the whole page opens
            elif place and file in ids and place not in ids[file]:
                faults.append(f"{page.name}: {address} names no place in its page")
    assert faults == []


def test_style_sheets_lead_to_files(site: Site) -> None:
    for sheet in site.files(".css"):
        for address in re.findall(r"""url\(\s*["']?([^"')]+)""", sheet.read_text(encoding="utf-8")):
            assert (sheet.parent / unquote(address)).is_file(), f"{sheet}: {address}"


def test_labels_and_names_point_at_something(site: Site) -> None:
    faults = []
    for page in site.pages:
        ids = set(page.tree.xpath("//@id"))
        for name in IDS:
            pointed = {one for value in page.tree.xpath(f"//@{name}") for one in value.split()}
            faults += [f"{page.name}: {name}={one}" for one in pointed - ids]
    assert faults == []


def test_every_page_is_reached_from_the_front(site: Site) -> None:
    """All but the one that stands in for a page that is not there."""
    pages = {page.path.resolve(): page for page in site.pages}
    front = (site.root / "index.html").resolve()
    reached, waiting = {front}, deque([front])
    while waiting:
        page = pages[waiting.popleft()]
        for address in page.tree.xpath("//a/@href"):
            file = on_disk(site, page.name, address)
            if file in pages and file not in reached:
                reached.add(file)
                waiting.append(file)
    missed = {pages[file].name for file in set(pages) - reached if not pages[file].stands_in}
    assert missed == set()


def test_everything_is_found_over_the_web(site: Site, host: Host) -> None:
    """Each address, made whole as a browser does, gets an answer of the right type from a plain host."""
    wanted = {
        urljoin(host.address + page.name, address).partition("#")[0]
        for page in site.pages
        for address in addresses(page)
    }
    connection = HTTPConnection(LOOPBACK, host.port, timeout=30)
    faults = []
    for url in sorted(one for one in wanted if one.startswith(host.address)):
        connection.request("GET", urlsplit(url).path, headers={"Accept-Encoding": "gzip"})
        answer = connection.getresponse()
        answer.read()
        kind = answer.headers.get_content_type()
        if answer.status != 200 or kind == "application/octet-stream":
            faults.append(f"{url}: {answer.status} {kind}")
    assert len(wanted) > 10
    assert faults == []


@pytest.mark.parametrize("fault", ["gone.html", "index.html#gone", "/index.html", "http://plain.example/"])
def test_a_broken_link_is_seen(tmp_path: Path, fault: str) -> None:
    (tmp_path / "index.html").write_text(f'<html lang="en"><a href="{fault}">x</a></html>', encoding="utf-8")
    with pytest.raises(AssertionError):
        test_every_address_leads_to_a_file_and_a_place_in_it(Site(tmp_path))
