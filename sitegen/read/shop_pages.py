"""The text of a page of the shop's own -> ShopPage, and the problems met on the way.

A page is Markdown under a short header. A link to a page of the site is written `shop:` and its name:
`[the glossary](shop:glossary)`, `[the fern](shop:patterns/evening-fern)`.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from pathlib import PurePath

from sitegen.model.location import Location
from sitegen.model.photo import Photo
from sitegen.model.problem import Problem
from sitegen.model.shop import ShopPage
from sitegen.model.source import Aside, Prose
from sitegen.read.body import note_html, read_body
from sitegen.read.faults import Faults, hint
from sitegen.read.fields import PAGE
from sitegen.read.pattern import split_source
from sitegen.read.text import clean
from sitegen.read.walk import walk_record
from sitegen.read.yaml_nodes import read_yaml

PLACES = ("catalogue", "techniques", "materials", "glossary")
"""What every site has, and a page may lead to."""
LAST = 1000
"""Order of a page that states none."""

_LINK = re.compile(r"\(\s*<?shop:(?P<target>[^\s()<>]*)")


def read_page(text: str, file: str) -> tuple[ShopPage | None, int, list[Problem]]:
    """Read one page: the page, its place in the order, and every problem.

    The page is None only if its header cannot be understood.
    """
    faults = Faults()
    halves = split_source(clean(text, file, faults), file, faults)
    if halves is None:
        return None, LAST, faults.problems
    before = len(faults.problems)
    node = read_yaml(halves.header or "", file, halves.header_line, faults)
    if node is None:
        if len(faults.problems) == before:
            faults.add("header-empty", halves.opening, keys="title")
        return None, LAST, faults.problems
    got = walk_record(node, PAGE, "what the page is, one `key: value` a line", faults)
    body = read_body(halves.body, file, halves.body_line, None, faults)
    note_html(halves.body, file, halves.body_line, faults)
    if got is None:
        return None, LAST, faults.problems
    kept: list[Prose | Aside] = []
    for block in body.blocks:
        if isinstance(block, Prose | Aside):
            kept.append(block)
        elif isinstance(block, Photo):
            faults.add("page-photo", block.at[""])
        else:
            faults.add("page-part", block.where)
    values = got.values
    page = ShopPage(
        name=PurePath(file).name.split(".")[0],
        title=values.get("title", ""),
        summary=values.get("summary", ""),
        in_head=values.get("shown") == "head",
        body=tuple(kept),
        file=file,
        at=got.at,
    )
    return page, values.get("order", LAST), faults.problems


def page_targets(pages: Iterable[ShopPage], patterns: Iterable[str]) -> tuple[str, ...]:
    """What `shop:` may name: the places of every site, the shop's own pages, its patterns."""
    return (*PLACES, *(page.name for page in pages), *(f"patterns/{name}" for name in patterns))


def lost_links(pages: Iterable[ShopPage], targets: Collection[str]) -> Iterator[Problem]:
    """A fault for each `shop:` link that leads nowhere."""
    every = [made for page in pages for made in (page, *page.translations.values())]
    for page in every:
        for block in page.body:
            first = block.where.line + (1 if isinstance(block, Aside) else 0)
            for number, line in enumerate(block.text.split("\n"), first):
                for link in _LINK.finditer(line):
                    target = link["target"]
                    if target.partition("#")[0].strip("/") not in targets:
                        where = Location(page.file, number, link.start("target") - 4, len(target) + 5)
                        values = {"target": f"shop:{target}", "hint": hint(target, targets)}
                        yield Problem("page-link", where, values)
