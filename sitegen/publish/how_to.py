"""A free pattern worked out -> what linked data says of its making: time, beads, thread, needle, steps.

Vocabulary: https://schema.org/HowTo. Units: common codes of UN/CEFACT recommendation 20, from memory.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from sitegen.publish.chart_files import SECOND, chart_links
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.table import TableRow
from sitegen.publish.view import PatternView

Node = dict[str, Any]
METRE = "MTR"


def how_to(piece: Piece, view: PatternView, to: Callable[[str], str]) -> Node:
    """The properties of a HowTo; `to` gives the address of a file of the site."""
    measures, say = piece.measures, piece.words.text
    needle = say("supplies.needle-is", needle=piece.needle)
    pieces = [(piece, "")] + ([(piece.second, SECOND)] if piece.second else [])
    return {
        "yield": view.makes,
        "totalTime": f"PT{Quantities(piece.words).shown_minutes(measures.minutes_high)}M",
        "tool": {
            "@type": "HowToTool",
            "name": say("data.named", label=say("supplies.needle"), value=needle),
        },
        "supply": list(_supplies(piece, view)),
        "step": [part for shown, prefix in pieces for part in _parts(shown, prefix, view.address, to)],
    }


def _supplies(piece: Piece, view: PatternView) -> Iterator[Node]:
    """Beads by number, thread by length, findings by number: for all pieces, as the page has them."""
    measures, say = piece.measures, piece.words.text
    for line, bead in zip(view.beads, measures.beads, strict=True):
        yield _supply(say("data.bead", name=line.name, bead=line.bead), bead.total)
    metres = round(measures.thread.total_mm * measures.pieces / 1000, 2)
    length = {"@type": "QuantitativeValue", "value": metres, "unitCode": METRE}
    thread = say("supplies.thread-is", thread=piece.thread)
    yield _supply(say("data.named", label=say("supplies.thread"), value=thread), length)
    for kind, count in piece.findings.items():
        yield _supply(piece.words.term("finding", kind), count * measures.pieces)


def _supply(name: str, quantity: int | Node) -> Node:
    return {"@type": "HowToSupply", "name": name, "requiredQuantity": quantity}


def _parts(piece: Piece, prefix: str, page: str, to: Callable[[str], str]) -> Iterator[Node]:
    """The step tables, part by part; a part's picture is its chart."""
    say = piece.words.text
    names = [part.name for part in piece.path.parts]
    key = "data.second" if prefix else "steps.heading"
    folder = page.rpartition("/")[0]
    for section in piece.table:
        if not section.rows:
            continue
        index = names.index(section.part)
        url = f"{to(page)}#{prefix}steps-{index + 1}"
        image = {}
        if piece.charts[index] is not None:
            image = {"image": to(f"{folder}/{chart_links(piece, index, prefix)[0].href}")}
        yield {
            "@type": "HowToSection",
            "name": say(key, part=section.part),
            "url": url,
            **image,
            "itemListElement": [
                {**_step(piece, row), "url": f"{url}-{row.number}", **image} for row in section.rows
            ],
        }


def _step(piece: Piece, row: TableRow) -> Node:
    """One row of the table: what to do before it, what to pick up, the way of the needle."""
    say = piece.words.text
    beads = " ".join(f"{count}{letter}" for count, letter in row.pick_up)
    pick = say("data.pick-up", beads=beads) if beads else ""
    return {
        "@type": "HowToStep",
        "position": row.number,
        "name": say("drawing.step", number=row.number),
        "text": " ".join(filter(None, (*row.notes, pick, *row.sentences))),
    }
