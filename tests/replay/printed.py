"""The printed step table of a demo pattern, and nothing else: what the interpreters may read."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.publish.table import step_table
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from sitegen.weave import weave
from tests.replay.hand import as_read

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Printed:
    """One row of the table as a maker reads it."""

    label: str
    letters: list[str]
    """Beads to pick up, in order."""
    text: str
    notes: str

    @property
    def row(self) -> int:
        """The number in the label; 0 if it has none."""
        found = re.match(r"Row (\d+)", self.label)
        return int(found[1]) if found else 0


def printed(name: str) -> list[Printed]:
    """The table of a pattern in the demo shop that has one part."""
    pattern = load_pattern(ROOT / "content" / "patterns" / f"{name}.md", Shop()).patterns[0]
    path, _ = weave(pattern, Shop())
    assert path is not None
    words = Words(ROOT / "themes" / "linen", "en")
    (section,) = step_table(path, pattern, Shop(), measure(path, pattern, Shop()), words)
    return [
        Printed(
            row.label,
            [letter for count, letter in row.pick_up for _ in range(count)],
            " ".join(row.sentences),
            " ".join(row.notes),
        )
        for row in as_read(section.rows)
    ]


def drawn(name: str) -> list[str]:
    """The lines of the chart block as the author wrote them."""
    text = (ROOT / "content" / "patterns" / f"{name}.md").read_text(encoding="utf-8")
    block = re.search(r"```chart [^\n]*\n(.*?)\n```", text, re.DOTALL)
    assert block is not None
    return block[1].split("\n")


def groups(letters: list[str], size: int) -> Iterator[list[str]]:
    """So many beads at a time; none may be left over."""
    assert len(letters) % size == 0
    for first in range(0, len(letters), size):
        yield letters[first : first + size]
