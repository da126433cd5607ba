"""A shop with beads in stock; and what a browser paints its pages with, held to the drawings' reckoning."""

from __future__ import annotations

from pathlib import Path

from sitegen.draw.colour import Dye, Palette, ink_on

SHOP = """\
title: The drawer
licence: Yours.
pack: 5 g
stock:
  kelp: {bead: round 11/0, name: kelp, hex: "#2f3b22", finish: matte, pack: 0.1 g}
  foam: {bead: Round 11/0, name: foam, hex: "#dfe9e6"}
  spray: {bead: round 11/0, name: spray, hex: "#dfe9e6", finish: lustre}
  reed: {bead: round 11/0, name: reed green, hex: "#3c6b45", finish: transparent}
  other: {bead: cylinder 11/0, name: other, hex: "#112233"}
"""
PATTERN = """\
---
title: Lined pair
summary: A small fan with three strands.
makes: pair
revision: 1
price: free
thread: braided 0.15 mm
colours:
  A: {bead: round 11/0, name: reed green, hex: "#3c6b45", finish: transparent}
  a: {bead: round 11/0, name: milk, hex: "#f6f1e4", finish: lined}
  W: {bead: round 15/0, name: night, hex: "#101830", finish: translucent}
colourways:
  - {name: Dusk, A: {name: plum, hex: "#4b2b4f"}, W: {name: sun, hex: "#f2c230"}}
parts:
  - {name: Fan, stitch: brick}
  - name: Fringe
    stitch: fringe
    hang: {from: Fan, edge: bottom}
    strands: [3A 1W, 5a 1W]
    mirror: true
---
```chart Fan
 A a
a A A
```
"""
PRICED = """\
---
title: Pebble charm
summary: Three rows.
makes: one piece
revision: 1
price: 4.50
colours:
  Q: {bead: round 11/0, name: slate, hex: "#42505c"}
parts:
  - {name: Pebble, stitch: brick}
---
```chart Pebble
 Q Q
Q Q Q
```
"""
PAINTED = """() => [...document.querySelectorAll("[data-fill], [data-stroke], [data-ink], .chip")]
  .filter((one) => !one.closest(".own, .ways"))
  .map((one) => {
    const look = getComputedStyle(one), { fill = "", stroke = "", ink = "" } = one.dataset;
    const chip = one.matches(".chip"), key = Boolean(one.closest(".legend"));
    return {
      fill, stroke, ink, key, chip: chip ? one.textContent : "",
      fills: chip ? look.backgroundColor : look.fill, strokes: chip ? look.color : look.stroke,
    };
  })"""
"""What each shape, letter and chip follows, and what it is painted with."""


def write_drawer(root: Path) -> Path:
    """The shop in a folder."""
    patterns = root / "content" / "patterns"
    patterns.mkdir(parents=True)
    (root / "content" / "shop.yaml").write_text(SHOP, encoding="utf-8")
    (patterns / "lined-pair.md").write_text(PATTERN, encoding="utf-8")
    (patterns / "pebble-charm.md").write_text(PRICED, encoding="utf-8")
    return root


def seen(colour: str) -> str:
    """A colour as a browser says it."""
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return f"rgb({red}, {green}, {blue})"


def followed(mark: str, colours: dict[str, str]) -> str:
    """What a drawing's mark means in some colours, by the drawings' own reckoning."""
    letter, *mixed = mark.split(" ")
    dye = Dye(letter, mixed[0], float(mixed[1])) if mixed else Dye(letter)
    return seen(Palette(colours).of(dye))


def expect(painted: list[dict[str, str]], colours: dict[str, str]) -> set[str]:
    """Holds every shape, letter and chip to some colours; the kinds of marks met."""
    met = set()
    for one in painted:
        if one["key"]:
            continue
        for name in ("fill", "stroke"):
            if one[name]:
                assert one[f"{name}s"] == followed(one[name], colours), one
                met.add(f"{name} {one[name]}")
        if one["ink"]:
            assert one["fills"] == seen(ink_on(colours[one["ink"]])), one
            met.add(f"ink {one['ink']}")
        if one["chip"]:
            assert one["fills"] == seen(colours[one["chip"]]), one
            assert one["strokes"] == seen(ink_on(colours[one["chip"]])), one
            met.add(f"chip {one['chip']}")
    return met
