"""A large chart in every stitch -> seconds to weave, finish and measure it, growth, and peak memory.

Each size of each stitch runs in a process of its own, so that its peak memory is its own. The ratio compares
with a floor in the same process: formatting an outline for every bead. Growth is the seconds for a bead in
the largest size over those in the smallest: 1 is linear.
Run as `python -m benchmarks.stitches [BEADS ...] [--only STITCH]`.
"""

from __future__ import annotations

import argparse
import json
import math
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from sitegen.measure import measure
from sitegen.measure.plan import thread_changes
from sitegen.model.shop import Shop
from sitegen.model.thread import ThreadPath
from sitegen.read.pattern import read_pattern
from sitegen.weave import STITCHES, weave, weave_in_tails

LATEST = Path(__file__).with_name("stitches.json")
SIZES = (1_000, 10_000)
HEADER = """\
---
title: Large
summary: Large.
makes: one piece
revision: 1
price: free
thread: nylon 0.15 mm
colours:
  A: {bead: cylinder 11/0, name: red, hex: "#a03030"}
parts:
"""
MOST_WORDS = 4_900
"""Beads in one word chart, just under what the source format allows."""


def staggered(across: int, rows: int) -> str:
    """A chart whose rows move by half a bead."""
    return "\n".join(" " * (row % 2) + "A " * across for row in range(rows))


def block(across: int, rows: int) -> str:
    """A chart without blanks."""
    return "\n".join(["A" * across] * rows)


def drawn(stitch: str, chart: str, more: str = "") -> str:
    """A source of one drawn part."""
    return f"{HEADER}  - name: Piece\n    stitch: {stitch}\n{more}---\n\n```chart Piece\n{chart}\n```\n"


def square_side(beads: int) -> int:
    """An even number of beads whose square is about so many."""
    return max(4, 2 * round(math.sqrt(beads) / 2))


def flat(stitch: str, chart: Callable[[int, int], str], more: str = "") -> Callable[[int], str]:
    """A source as wide as it is high, in beads."""
    return lambda beads: drawn(stitch, chart(square_side(beads), square_side(beads)), more)


def tube(stitch: str, chart: Callable[[int, int], str]) -> Callable[[int], str]:
    """A tube of 24 beads around."""
    return lambda beads: drawn(stitch, chart(24, max(2, beads // 48 * 2)))


def rounds(stitch: str, first: int, more: int) -> Callable[[int], str]:
    """Rounds from a ring outward, each a few beads more."""

    def make(beads: int) -> str:
        counts = [first]
        while sum(counts) < beads:
            counts.append(counts[-1] + more)
        words = ", ".join(f"{count}A" for count in counts)
        keys = f"    stitch: {stitch}\n    around: {{ring: 14 mm}}\n    rounds: [{words}]\n"
        return f"{HEADER}  - name: Piece\n{keys}---\n"

    return make


def hung(stitch: str, each: int, per: float, words: str = "") -> Callable[[int], str]:
    """Strands of `each` beads (in `words`, if given), `per` for each bead of a brick base of four rows."""

    def make(beads: int) -> str:
        across = max(6, round(beads / (each * per + 4)))
        across += across % 2
        strands = f"    strands: each {words or f'{each}A'}\n"
        if stitch == "swags":  # how far each reaches follows from how many there are
            strands = f"    strands: [{', '.join([f'{each}A'] * round(across * per))}]\n"
        part = f"  - name: Hung\n    stitch: {stitch}\n    hang: {{from: Piece, edge: bottom}}\n{strands}"
        text = drawn("brick", staggered(across, 4))
        return text.replace("---\n\n```", f"{part}---\n\n```", 1)

    return make


def ladder(beads: int) -> str:
    """One row."""
    return drawn("ladder", "A " * beads)


def strung(beads: int) -> str:
    """One string, as long as a word chart may be."""
    words = f"    strands: [{min(beads, MOST_WORDS)}A]\n"
    header = HEADER.replace("cylinder", "round")
    return f"{header}  - name: Piece\n    stitch: strung\n    clasp: toggle clasp\n{words}---\n"


def rope(beads: int) -> str:
    """Four core beads, three outer beads a stitch."""
    words = f"    rope: {{core: 4A, outer: 3A, stitches: {max(4, beads // 4)}}}\n"
    return f"{HEADER}  - name: Piece\n    stitch: spiral rope\n{words}---\n"


def units(beads: int) -> str:
    """Right-angle weave: rows of lying beads between rows of upright ones."""
    side = max(2, round(math.sqrt(beads / 2)))
    lying, upright = "." + "A." * side, " ".join("A" * (side + 1))
    return drawn("right-angle weave", "\n".join([lying, upright] * side + [lying]))


def net(beads: int) -> str:
    """Nets of five beads: joints every sixth column, and legs that go down and out from each to the next."""
    across = max(3, round(math.sqrt(beads / 5)))
    width, lines = 3 * (2 * across + 1) + 1, 3 * 2 * across + 1
    rows = [
        "".join(
            "A" if (column - line) % 6 == 0 or (column + line) % 6 == 0 else " " for column in range(width)
        )
        for line in range(lines)
    ]
    return drawn("netting", "\n".join(row.rstrip() for row in rows), "    net: 5\n    begin: top\n")


SOURCES: Mapping[str, Callable[[int], str]] = {
    "ladder": ladder,
    "brick": flat("brick", staggered),
    "fringe": hung("fringe", 40, 1),
    "branched fringe": hung("branched fringe", 40, 1, "10A [4A] 10A [4A] 12A"),
    "twisted fringe": hung("twisted fringe", 41, 1),
    "looped fringe": hung("looped fringe", 20, 0.5),
    "swags": hung("swags", 20, 0.5),
    "picot edge": hung("picot edge", 3, 1),
    "whipped edge": hung("whipped edge", 2, 1),
    "strung": strung,
    "peyote": flat("peyote", staggered, "    begin: top\n"),
    "square": flat("square", block),
    "loom": flat("loom", block),
    "circular brick": rounds("circular brick", 30, 5),
    "circular peyote": rounds("circular peyote", 24, 6),
    "tubular peyote": tube("tubular peyote", staggered),
    "tubular brick": tube("tubular brick", staggered),
    "tubular herringbone": tube("tubular herringbone", block),
    "spiral rope": rope,
    "herringbone": flat("herringbone", block),
    "right-angle weave": units,
    "netting": net,
}
"""Stitch -> a source of about so many beads."""


def one(stitch: str, beads: int) -> dict[str, float | int | str]:
    """Figures of one stitch and size, measured here and now."""
    pattern, problems = read_pattern(SOURCES[stitch](beads), "large.md", Shop())
    if pattern is None or problems:
        return {"fault": str(problems[0].code if problems else "unread")}
    began = time.perf_counter()
    bare, objections = weave(pattern, Shop())
    woven = time.perf_counter()
    if bare is None:
        return {"fault": objections[0].code}
    path, objections = weave_in_tails(bare, pattern, thread_changes(bare, pattern, Shop()))
    finished = time.perf_counter()
    if path is None:
        return {"fault": objections[0].code}
    measure(path, pattern, Shop())
    measured = time.perf_counter()
    outlines(path)
    floor = time.perf_counter() - measured
    return {
        "beads": len(path.beads),
        "weave": woven - began,
        "finish": finished - woven,
        "measure": measured - finished,
        "ratio": (measured - began) / floor,
        "peak_mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
    }


def outlines(path: ThreadPath) -> str:
    """A box for each bead as path text: the least that any work on the piece has to do."""
    return "".join(
        f"M{bead.x - bead.width / 2:.2f} {bead.y - bead.length / 2:.2f}h{bead.width:.2f}v{bead.length:.2f}"
        f"h{-bead.width:.2f}z"
        for bead in path.beads
    )


def main() -> None:
    """Measure every stitch at every size, print a table and keep the figures."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks.stitches")
    parser.add_argument("beads", nargs="*", type=int, default=SIZES)
    parser.add_argument("--only", choices=sorted(SOURCES))
    parser.add_argument("--here", action="store_true", help="measure in this process and print JSON")
    asked = parser.parse_args()
    if asked.here:
        print(json.dumps(one(asked.only, asked.beads[0])))
        return
    kept: dict[str, dict[str, object]] = {}
    print(
        f"{'stitch':<21}{'beads':>8}{'weave':>8}{'finish':>8}{'measure':>8}{'ratio':>7}{'peak':>9}{'growth':>8}"
    )
    missing = sorted(STITCHES.keys() - SOURCES.keys() - {"none"})
    for stitch in [asked.only] if asked.only else SOURCES:
        figures: list[dict[str, float]] = []
        for beads in asked.beads:
            command = [sys.executable, "-m", "benchmarks.stitches", str(beads), "--only", stitch, "--here"]
            run = subprocess.run(command, capture_output=True, text=True, check=False)
            found: dict[str, Any] = (
                json.loads(run.stdout) if run.returncode == 0 else {"fault": run.stderr.splitlines()[-1]}
            )
            kept[f"{stitch} {beads}"] = found
            if "fault" in found:
                print(f"{stitch:<21}{beads:>8}  {found['fault']}")
                continue
            figures.append(found)
            print(_line(stitch, found, figures[0]), flush=True)
    if missing:
        print(f"not measured: {', '.join(missing)}")
    LATEST.write_text(json.dumps(kept, indent=2) + "\n", encoding="utf-8")


def _line(stitch: str, found: Mapping[str, float], first: Mapping[str, float]) -> str:
    """One line of the table."""
    growth = _per_bead(found) / _per_bead(first)
    times = "".join(f"{found[part]:8.2f}" for part in ("weave", "finish", "measure"))
    ratio, peak = f"{found['ratio']:7.0f}", f"{found['peak_mb']:6.0f} MB"
    return f"{stitch:<21}{found['beads']:>8.0f}{times}{ratio}{peak}{growth:8.2f}"


def _per_bead(found: Mapping[str, float]) -> float:
    return (found["weave"] + found["finish"] + found["measure"]) / found["beads"]


if __name__ == "__main__":
    main()
