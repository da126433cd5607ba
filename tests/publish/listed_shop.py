"""A small shop for the tests of the shopping list: three patterns that share beads, two of them in stock."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import BrowserContext, Page

from sitegen.build.files import output_files
from sitegen.build.look import shop_look
from sitegen.build.tree import Tree
from sitegen.build.woven import make_pieces, weave_all
from sitegen.publish.papers import Sheets
from sitegen.publish.piece import Piece
from sitegen.publish.shopping import SHOPPING
from sitegen.publish.to_list import list_name
from sitegen.read.sources import load_shop

SHOP = """\
title: Ferry & Daughters
maker: Oona Ferry
currency: EUR
pack: 5 g
spare: 10 %
stock:
  reed: {bead: round 11/0, name: reed green, hex: "#3c6b45", price: 2.35, pack: 2 g}
  chalk: {bead: round 11/0, name: chalk, hex: "#e9e6da", price: 0.1}
"""

FAN = """\
---
title: Reed pair
summary: A sample.
makes: pair
revision: 1
price: free
thread: braided 0.15 mm
finding: ear wire
colours:
  G: {stock: reed}
  W: {bead: round 11/0, name: milk, hex: "#f6f1e4", finish: matte}
colourways:
  - {name: Dusk, G: {name: plum, hex: "#4b2b4f"}}
parts:
  - name: Fan
    stitch: brick
    hang: {finding: ear wire, from: top}
---
```chart Fan
 G G
G W G
```
"""

CHARM = """\
---
title: =1+2, "Pebble" </script> charm
summary: A sample.
makes: one piece
revision: 1
price: 4.50
thread: nylon 0.2 mm
colours:
  Q: {stock: reed}
  Z: {stock: chalk}
parts:
  - name: Pebble
    stitch: square
---
```chart Pebble
Q Z Z
Q Q Z
```
"""

BAND = """\
---
title: Loom band
summary: A sample.
makes: one piece
revision: 1
price: free
thread: nylon 0.2 mm
colours:
  a: {bead: round 11/0, name: "+sand", hex: "#d8c48a"}
  b: {stock: chalk}
parts:
  - name: Band
    stitch: loom
---
```chart Band
a b b a
a b b a
a a a a
a b b a
```
"""

SOURCES = {"reed-pair": FAN, "pebble-charm": CHARM, "loom-band": BAND}


@dataclass(frozen=True)
class Listed:
    """The shop's site, and what the list calls a piece -> the piece."""

    site: Path
    pieces: Mapping[str, Piece]


def make_listed(root: Path) -> Listed:
    """The shop in a folder and its site, without its PDFs."""
    (root / "content" / "patterns").mkdir(parents=True)
    (root / "content" / "shop.yaml").write_text(SHOP, encoding="utf-8")
    for name, text in SOURCES.items():
        (root / "content" / "patterns" / f"{name}.md").write_text(text, encoding="utf-8")
    sources = load_shop(root)
    look, _ = shop_look(sources)
    assert look is not None
    woven, _ = weave_all(sources, lambda line: None)
    pieces = make_pieces(woven, sources.shop, look.words, lambda line: None)
    assert len(pieces) == len(SOURCES)
    printed = [(Sheets(1, (("a4", b""),)),) for _ in pieces]
    files = output_files([Tree(sources.shop, look.theme, look.words, pieces, printed)], look, "")
    for path, data in files.items():
        (root / "output" / path).parent.mkdir(parents=True, exist_ok=True)
        (root / "output" / path).write_bytes(data)
    every = {list_name(one): one for piece in pieces for one in (piece, *piece.ways)}
    return Listed(root / "output" / "site", every)


def listed(context: BrowserContext, site: Path, wanted: Mapping[str, int]) -> Page:
    """The page of the list, opened with these on it."""
    page = context.new_page()
    page.goto((site / SHOPPING).as_uri())
    page.evaluate("list => localStorage.setItem('sitegen:list', list)", json.dumps(wanted))
    page.reload()
    return page


def on_list(page: Page) -> dict[str, str]:
    """Title -> pieces, as the page shows them."""
    page.locator(".made").wait_for()
    rows = page.locator(".wanted li")
    values = [rows.nth(place).locator("input").input_value() for place in range(rows.count())]
    return dict(zip(page.locator(".wanted .title").all_inner_texts(), values, strict=True))


def as_table(page: Page) -> list[list[str]]:
    """The saved CSV, read by Python's own reader."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as CSV").click()
    assert download.value.suggested_filename == "shopping-list.csv"
    data = Path(download.value.path()).read_bytes()
    assert data.endswith(b"\r\n")
    assert data.count(b"\n") == data.count(b"\r\n"), "RFC 4180: lines end with CRLF"
    return list(csv.reader(io.StringIO(data.decode("utf-8"), newline=""), strict=True))
