"""The demo shop and a large chart -> a table of times and ratios, and `benchmarks/latest.json`.

Times are of this machine and this moment; the ratios, each to a floor measured in the same run, are what can
be compared. The best of several rounds counts: the others were disturbed.
"""

from __future__ import annotations

import io
import json
import os
import platform
import re
import shutil
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from pikepdf import Pdf
from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration

from sitegen.build import build
from sitegen.build.look import shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.thread import ThreadPath
from sitegen.publish.compose import print_view
from sitegen.publish.papers import saved
from sitegen.publish.printing import print_job
from sitegen.publish.stamping import set_line, stamped
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern, load_shop
from sitegen.weave import weave

ROOT = Path(__file__).resolve().parents[1]
LATEST = Path(__file__).with_name("latest.json")
ACROSS, ROWS, ROUNDS = 100, 100, 3
SVG = re.compile(r"<svg\b.*?</svg>", re.DOTALL)

HEADER = """\
---
title: Large brick chart
summary: One hundred rows of one hundred beads.
makes: one piece
revision: 1
price: free
colours:
  A: {bead: cylinder 11/0, name: red, hex: "#a03030"}
  B: {bead: cylinder 11/0, name: green, hex: "#307040"}
  C: {bead: cylinder 11/0, name: blue, hex: "#304f90"}
  D: {bead: cylinder 11/0, name: cream, hex: "#f0e8d0"}
parts:
  - {name: Field, stitch: brick, begin: bottom}
---
"""


def main() -> None:
    """Measure, print a small table and keep the figures."""
    seconds = {**brick_seconds(), **shop_seconds()}
    ratios = {
        "brick chart : floor": seconds["brick chart"] / seconds["floor: format every bead"],
        "demo build : bare print": seconds["demo build"] / seconds["floor: bare print"],
        "personal copy : bare copy": seconds["personal copy"] / seconds["floor: read and write"],
    }
    for name, value in seconds.items():
        print(f"{name:<28}{value:9.3f} s")
    for name, value in ratios.items():
        print(f"{name:<28}{value:9.2f}")
    kept = {"seconds": seconds, "ratios": ratios, "python": platform.python_version(), "cpus": os.cpu_count()}
    LATEST.write_text(json.dumps(kept, indent=2) + "\n", encoding="utf-8")


def best(work: Callable[[], object]) -> float:
    """Seconds of the quickest of several rounds."""
    taken = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return min(taken)


def brick_seconds() -> dict[str, float]:
    """Weave, measure and draw a large brick chart, beside a loop that only formats each bead's outline."""
    letters = "ABCD" * (ACROSS // 4 + 1)
    rows = [" " * (row % 2) + " ".join(letters[row % 4 :][:ACROSS]) for row in range(ROWS)]
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder, "large-brick.md")
        source.write_text(HEADER + "\n```chart Field\n" + "\n".join(rows) + "\n```\n", encoding="utf-8")
        sources = load_pattern(source, Shop())
    (pattern,) = sources.patterns
    assert [len(row.cells) for row in pattern.parts[0].all_rows] == [ACROSS] * ROWS
    woven, problems = weave(pattern, sources.shop)
    if woven is None:
        raise SystemExit(f"the large chart cannot be woven: {problems}")
    path: ThreadPath = woven
    say = Words(theme_folder("linen", ROOT), "en").text
    drawing = finished(path, pattern, say)
    steps = {
        "  weave": best(lambda: weave(pattern, sources.shop)),
        "  measure": best(lambda: measure(path, pattern, sources.shop)),
        "  draw finished": best(lambda: finished(path, pattern, say).svg("a")),
        "  draw chart": best(lambda: chart(path, pattern, 0, say).svg("b")),
    }
    if len(drawing.svg("a")) < len(outlines(path)) / 2:
        raise SystemExit("the drawing is too small to show every bead")
    return {
        "brick chart": sum(steps.values()),
        **steps,
        "floor: format every bead": best(lambda: outlines(path)),
    }


def outlines(path: ThreadPath) -> str:
    """A box for each bead as path text: the least that any drawing of the piece has to do."""
    return "".join(
        f"M{bead.x - bead.width / 2:.2f} {bead.y - bead.length / 2:.2f}h{bead.width:.2f}v{bead.length:.2f}"
        f"h{-bead.width:.2f}z"
        for bead in path.beads
    )


def shop_seconds() -> dict[str, float]:
    """The whole demo build in one process, beside the print engine alone on its pages without pictures."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        shutil.copytree(ROOT / "content", root / "content")
        if not build(root).files:
            raise SystemExit("the demo shop has faults")
        together = best(lambda: build(root))
        alone = best(lambda: build(root, processes=1))
        pages, style, fonts = bare_pages(root)
        copies = copy_seconds(root)
    return {
        **copies,
        "demo build": alone,
        "demo build, all processors": together,
        "floor: bare print": best(
            lambda: [page.write_pdf(stylesheets=[style], font_config=fonts) for page in pages]
        ),
    }


def copy_seconds(root: Path) -> dict[str, float]:
    """A buyer's copy of the longest PDF for sale, beside reading and writing that alone."""
    longest = max((root / "output" / "for-sale").glob("*.pdf"), key=lambda path: path.stat().st_size)
    sheet, line = longest.read_bytes(), set_line("Personal copy for order 4711", theme_folder("linen", root))

    def bare() -> None:
        with Pdf.open(io.BytesIO(sheet)) as pdf:
            saved(pdf)

    return {"personal copy": best(lambda: stamped(sheet, line)), "floor: read and write": best(bare)}


def bare_pages(root: Path) -> tuple[list[HTML], CSS, FontConfiguration]:
    """The printed pages of a shop without their pictures, and their style with the fonts loaded."""
    sources = load_shop(root)
    look, _ = shop_look(sources)
    woven, _ = weave_all(sources, lambda line: None)
    if look is None or not woven:
        raise SystemExit("the demo shop has faults")
    fonts = FontConfiguration()
    address = look.theme.resolve().as_uri() + "/"
    text = (look.theme / "styles" / "print.css").read_text(encoding="utf-8").replace("theme:/", address)
    style = CSS(string=text, font_config=fonts)
    pieces = make_pieces(woven, sources.shop, look.words, lambda line: None)
    jobs = [print_job(print_view(piece), look.words, look.theme) for piece in pieces]
    return [HTML(string=SVG.sub("", job.html), base_url=address) for job in jobs], style, fonts


if __name__ == "__main__":
    main()
