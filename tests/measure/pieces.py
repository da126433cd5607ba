"""Small patterns made in code for the tests of measuring: letters in, a woven piece and its measures out."""

from __future__ import annotations

from dataclasses import dataclass, replace

from sitegen.measure import measure
from sitegen.model.measures import Measures
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Hang, Makes, Part, Pattern, Words
from sitegen.model.thread import ThreadPath
from sitegen.weave import weave


@dataclass(frozen=True)
class Piece:
    """A pattern with its path and measures."""

    pattern: Pattern
    path: ThreadPath
    measures: Measures


def chart(name: str, *lines: str) -> Chart:
    """A chart from its lines, top first."""
    rows = []
    for line in lines:
        rows.append(ChartRow(tuple((at, letter) for at, letter in enumerate(line) if letter != " ")))
    return Chart(name, tuple(rows))


def triangle(widest: int, rows: int, letter: str = "A") -> tuple[str, ...]:
    """Lines of a brick triangle, its widest row at the bottom."""
    counts = range(widest - rows + 1, widest + 1)
    return tuple(" " * (widest - count) + " ".join(letter * count) for count in counts)


def word(letters: str) -> Words:
    """A strand, one letter a bead."""
    return Words(letters, tuple(letters), spots=())


def pattern(
    *lines: str, strands: tuple[str, ...] = (), bead: str = "round 11/0", finding: str = "ear wire"
) -> Pattern:
    """A brick fan hung from a finding, with or without a fringe."""
    letters = sorted(set("".join((*lines, *strands))) - {" "})
    hang = Hang("top", finding=finding) if finding else None
    parts = [Part("Fan", "brick", hang=hang, chart=chart("Fan", *lines))]
    if strands:
        words = tuple(map(spotted, strands))
        parts.append(Part("Fringe", "fringe", hang=Hang("bottom", part="Fan"), strands=words))
    colours = tuple(Colour(letter, bead, f"colour {letter}", "#808080") for letter in letters)
    return Pattern(
        "piece",
        "Piece",
        "",
        Makes.ONE,
        1,
        None,
        colours,
        tuple(parts),
        finding=finding or None,
        thread="nylon 0.20 mm",
    )


def spotted(letters: str) -> Words:
    """A strand whose beads have places in a source, as the weave asks."""
    words = word(letters)
    return replace(words, spots=(words.where,) * len(words.letters))


def made(source: Pattern, shop: Shop | None = None) -> Piece:
    """The pattern woven and measured."""
    shop = shop or Shop()
    path, problems = weave(source, shop)
    assert path is not None, problems
    return Piece(source, path, measure(path, source, shop))
