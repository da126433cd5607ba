"""A pattern of 3,000 beads -> what its drawings cost: bytes and seconds of SVG, their share of the PDF, PNGs.

The PDF is that of as many beads in more than 400 steps; it is set against the same pages without pictures and
against what the browser Chromium, where it is installed, prints of the same sheets (no archive file).
PNGs are set against the quickest SVG renderers, where the machine has them: the program `rsvg-convert`
(Debian's librsvg2-bin; its start counts) and `resvg_py`. Ratios are within one run; seconds are of this
machine and this moment. Writes `benchmarks/drawings.json`.
"""

from __future__ import annotations

import importlib
import importlib.util
import json
import re
import shutil
import subprocess
import tempfile
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path

import cairosvg
from pikepdf import Pdf

from benchmarks.run import HEADER, ROOT, best
from sitegen.build.look import Look, shop_look
from sitegen.build.woven import make_pieces, weave_all
from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.draw.pens import Drawing
from sitegen.publish.compose import print_view
from sitegen.publish.lettering import outlined
from sitegen.publish.papers import Sheets
from sitegen.publish.picture import png
from sitegen.publish.piece import Piece
from sitegen.publish.printing import SCHEME, PrintJob, print_job, print_sheets
from sitegen.publish.table import step_table
from sitegen.publish.theme_look import print_style
from sitegen.read.sources import load_pattern, load_shop

LATEST = Path(__file__).with_name("drawings.json")
ACROSS, ROWS = 60, 50
MANY_STEPS = (8, 376)
"""Beads across and rows of a pattern with as many beads and 422 rows in its step table."""
SVG = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
PIXELS = 900
"""Width of the PNG that every renderer makes."""

Figures = dict[str, float]


def main() -> None:
    """Measure, print a small table and keep the figures."""
    piece, look = large_piece()
    many_steps, _ = large_piece(*MANY_STEPS)
    figures = {**svg_figures(piece), **pdf_figures(many_steps, look), **png_figures(piece, look)}
    for name, value in figures.items():
        print(f"{name:<44}{value:12.3f}")
    LATEST.write_text(json.dumps(figures, indent=2) + "\n", encoding="utf-8")


def large_piece(across: int = ACROSS, count: int = ROWS) -> tuple[Piece, Look]:
    """A brick chart of so many rows of so many beads, worked out and drawn."""
    rows = [" " * (row % 2) + " ".join(("ABCD" * across)[row % 4 :][:across]) for row in range(count)]
    home = load_shop(ROOT)
    look, _ = shop_look(home)
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder, "large-brick.md")
        source.write_text(HEADER + "\n```chart Field\n" + "\n".join(rows) + "\n```\n", encoding="utf-8")
        sources = load_pattern(source, home.shop)
    woven, problems = weave_all(sources, lambda line: None)
    if look is None or not woven or len(woven[0][1].beads) != across * count:
        raise SystemExit(f"the large chart cannot be woven: {problems}")
    (piece,) = make_pieces(woven, home.shop, look.words, lambda line: None)
    return piece, look


def svg_figures(piece: Piece) -> Figures:
    """Seconds to draw and write each kind of drawing, and bytes."""
    say, path, pattern = piece.words.text, piece.path, piece.pattern
    (whole,) = (drawing for drawing in piece.charts if drawing)
    steps = [one for part in piece.table for row in part.rows for one in (*row.drawings, row.strip) if one]

    def table() -> None:
        for part in step_table(path, pattern, piece.shop, piece.measures, piece.words):
            for row in part.rows:
                for one in (*row.drawings, row.strip):
                    if one:
                        one.svg("step")

    work: dict[str, tuple[Callable[[], object], list[Drawing]]] = {
        "finished": (lambda: finished(path, pattern, say).svg("a"), [piece.picture]),
        "chart": (lambda: chart(path, pattern, 0, say).svg("b"), [whole]),
        "step table": (table, steps),
    }
    figures: Figures = {}
    for name, (make, drawings) in work.items():
        figures[f"svg {name}, s"] = best(make)
        figures[f"svg {name}, drawings"] = float(len(drawings))
        figures[f"svg {name}, kB"] = sum(len(drawing.svg("c").encode()) for drawing in drawings) / 1000
    figures["svg all, s"] = sum(figures[f"svg {name}, s"] for name in work)
    figures["svg all, kB"] = sum(figures[f"svg {name}, kB"] for name in work)
    return figures


def pdf_figures(piece: Piece, look: Look) -> Figures:
    """The printed sheets with their pictures and without, in one paper."""
    job = print_job(print_view(piece), look.words, look.theme)
    bare = replace(job, html=SVG.sub("", job.html))
    made: list[Sheets] = []
    bare_s = best(lambda: made.append(print_sheets(bare)))
    with_s = best(lambda: made.append(print_sheets(job)))
    (bare_kb, bare_pages), (with_kb, with_pages) = (
        (len(sheets.files[0][1]) / 1000, float(sheets.pages)) for sheets in (made[0], made[-1])
    )
    return {
        **browser_figures(job),
        "pdf with pictures, s": with_s,
        "pdf with pictures, kB": with_kb,
        "pdf with pictures, pages": with_pages,
        "pdf without pictures, s": bare_s,
        "pdf without pictures, kB": bare_kb,
        "pdf without pictures, pages": bare_pages,
        "pdf pictures' share of seconds": 1 - bare_s / with_s,
        "pdf pictures' share of bytes": 1 - bare_kb / with_kb,
    }


def browser_figures(job: PrintJob) -> Figures:
    """The same sheets printed by Chromium, its start counted in; nothing where it is not installed."""
    program = shutil.which("chromium")
    if program is None:
        return {}
    style = print_style(job.theme).replace(f"{SCHEME}:", job.theme.resolve().as_uri())
    with tempfile.TemporaryDirectory() as folder:
        page, pdf = Path(folder, "sheets.html"), Path(folder, "sheets.pdf")
        page.write_text(job.html.replace("</head>", f"<style>{style}</style></head>", 1), encoding="utf-8")
        words = [program, "--headless", "--no-sandbox", "--no-pdf-header-footer", f"--print-to-pdf={pdf}"]
        seconds = best(
            partial(subprocess.run, [*words, page.as_uri()], capture_output=True, check=True, timeout=300)
        )
        with Pdf.open(pdf) as printed:
            pages = len(printed.pages)
        return {
            "pdf by the browser, s": seconds,
            "pdf by the browser, kB": pdf.stat().st_size / 1000,
            "pdf by the browser, pages": float(pages),
        }


def png_figures(piece: Piece, look: Look) -> Figures:
    """The same two SVGs, finished piece and chart in outlines, through every renderer there is."""
    (whole,) = (drawing for drawing in piece.charts if drawing)
    figures: Figures = {"png of ours with palette, finished, s": best(lambda: png(piece.picture, "#ffffff"))}
    for name, drawing in (("finished", piece.picture), ("chart", outlined(whole, look.theme))):
        svg = drawing.svg("d")
        ours = best(partial(cairosvg.svg2png, svg.encode(), output_width=PIXELS))
        figures[f"png {name} by CairoSVG, s"] = ours
        for other, work in _other_renderers(svg).items():
            figures[f"png {name} by {other}, s"] = best(work)
            figures[f"png {name}, CairoSVG : {other}"] = ours / figures[f"png {name} by {other}, s"]
    return figures


def _other_renderers(svg: str) -> dict[str, Callable[[], object]]:
    """Those this machine has, each ready to make the PNG."""
    found: dict[str, Callable[[], object]] = {}
    if program := shutil.which("rsvg-convert"):
        words = [program, "--width", str(PIXELS)]
        found["rsvg-convert"] = partial(
            subprocess.run, words, input=svg.encode(), capture_output=True, check=True
        )
    if importlib.util.find_spec("resvg_py"):
        resvg = importlib.import_module("resvg_py")
        found["resvg_py"] = partial(
            resvg.svg_to_bytes, svg_string=svg, width=PIXELS, dpi=96.0, skip_system_fonts=True
        )
    return found


if __name__ == "__main__":
    main()
