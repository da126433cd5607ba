"""One small shop for the tests of pages, sheets and builds: a free pair with a fringe, and a priced charm."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path

from sitegen.build import BuildResult

SHOP = """\
title: Ferry & Daughters
tagline: Small beads, plain words.
maker: Oona Ferry
currency: EUR
address: https://beads.example/shop
licence: Make it, wear it, give it away.
about: A workroom over the "old" <ferry> office.
ticks: true
"""

FREE = """\
---
title: Reed pair
summary: A small fan with three strands.
makes: pair
piece: earrings
revision: 2
revisions:
  - {number: 2, date: 2026-05-02, note: A clearer fringe.}
  - {number: 1, date: 2026-03-14, note: First edition.}
price: free
thread: braided 0.15 mm
finding: ear wire
measured: {width: 8 mm, height: 21 mm}
colours:
  G: {bead: round 11/0, name: reed green, hex: "#3c6b45"}
  W: {bead: round 11/0, name: milk, hex: "#f6f1e4", finish: matte}
colourways:
  - {name: Dusk, G: {name: plum, hex: "#4b2b4f"}}
parts:
  - name: Fan
    stitch: brick
    hang: {finding: ear wire, from: top}
  - name: Fringe
    stitch: fringe
    hang: {from: Fan, edge: bottom}
    strands: [3G 1W, 5G 1W]
    mirror: true
---
A first line with *stress*, <b>no markup</b> and [a link with **bold** words](https://example.org/).

```chart Fan
 G G
G W G
```

## Before you begin

#### Far too deep

| Tool | Why |
|------|:---:|
| Lamp | Eyes |

::: note
Count the bottom row.
:::

::: steps Fan

## At the end

> Weave the tail in.

1. Knot.
2. Cut.

---

Done.
"""

PRICED = """\
---
title: Pebble charm
summary: Three rows, quickly done.
makes: one piece
revision: 1
price: 4.50
thread: nylon 0.2 mm
colours:
  Q: {bead: cylinder 11/0, name: slate, hex: "#42505c"}
  Z: {bead: cylinder 11/0, name: chalk, hex: "#e9e6da"}
parts:
  - name: Pebble
    stitch: brick
---
The secret of this charm is its quiet middle row.

```chart Pebble
 Q Z Z
Q Z Q Z
 Z Q Q
```

::: tip
Nobody may read this without paying.
:::
"""


HELP = """\
---
title: Help
summary: Where to begin.
shown: head
order: 1
---
## First

See [the words](shop:glossary#warp), [a pair](shop:patterns/reed-pair) and [terms](shop:terms).

### Second

Shown as text: <b>no markup</b>.

::: tip
Begin small.
:::
"""

TERMS = """\
---
title: Terms
---
Be kind.
"""


@dataclass(frozen=True)
class Built:
    """A shop folder and what its build gave."""

    root: Path
    result: BuildResult

    @property
    def output(self) -> Path:
        return self.root / "output"

    @property
    def site(self) -> Path:
        return self.output / "site"

    def pdfs(self) -> list[Path]:
        return sorted(self.output.rglob("*.pdf"))

    def page(self, name: str) -> str:
        return (self.site / "patterns" / name / "index.html").read_text(encoding="utf-8")


def write_shop(root: Path) -> Path:
    """The sample shop in a folder."""
    patterns = root / "content" / "patterns"
    patterns.mkdir(parents=True)
    (root / "content" / "shop.yaml").write_text(SHOP, encoding="utf-8")
    (patterns / "reed-pair.md").write_text(FREE, encoding="utf-8")
    (patterns / "pebble-charm.md").write_text(PRICED, encoding="utf-8")
    (root / "content" / "pages").mkdir()
    (root / "content" / "pages" / "help.md").write_text(HELP, encoding="utf-8")
    (root / "content" / "pages" / "terms.md").write_text(TERMS, encoding="utf-8")
    return root


class Outline(HTMLParser):
    """What a page consists of: headings, addresses, ids, text; and whether its tags are closed in order."""

    INLINE = frozenset({"b", "span", "em", "strong", "a", "code"})
    VOID = frozenset({"meta", "link", "br", "img", "input", "hr"})

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.faults: list[str] = []
        self.headings: list[int] = []
        self.addresses: list[str] = []
        self.ids: list[str] = []
        self.attributes: list[tuple[str, str]] = []
        self.words: list[str] = []
        self.feed(page)
        self.close()
        self.faults += [f"<{tag}> is never closed" for tag in self.open]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.words.append("" if tag in self.INLINE else " ")
        self.attributes += [(tag, name) for name, _ in attrs]
        names = [name for name, _ in attrs]
        self.faults += [f"{name} stands twice in <{tag}>" for name in set(names) if names.count(name) > 1]
        for name, value in attrs:
            if name in ("href", "src"):
                self.addresses.append(value or "")
            if name == "id":
                self.ids.append(value or "")
        if re.fullmatch("h[1-6]", tag):
            self.headings.append(int(tag[1]))
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in self.VOID:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        self.words.append("" if tag in self.INLINE else " ")
        if not self.open or self.open.pop() != tag:
            self.faults.append(f"</{tag}> closes nothing, line {self.getpos()[0]}")

    def handle_data(self, data: str) -> None:
        if self.open[-1:] != ["script"]:
            self.words.append(data)

    @property
    def text(self) -> str:
        """All text that a reader sees, blanks made even."""
        return " ".join("".join(self.words).split())
