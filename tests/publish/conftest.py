"""One small shop, built once for all tests of the pages and sheets: a free pair with a fringe, a priced charm."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from sitegen.build import BuildResult, build

SHOP = """\
title: Ferry & Daughters
tagline: Small beads, plain words.
maker: Oona Ferry
currency: EUR
address: https://beads.example/shop
licence: Make it, wear it, give it away.
about: A workroom over the "old" <ferry> office.
"""

FREE = """\
---
title: Reed pair
summary: A small fan with three strands.
makes: pair
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
    return root


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The sample shop, built in this process."""
    root = write_shop(tmp_path_factory.mktemp("shop"))
    result = build(root, processes=1)
    assert result.files, result.problems
    return Built(root, result)
