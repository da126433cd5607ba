"""The text of a table of orders (CSV) -> Orders, and the problems met on the way.

The form is that of RFC 4180, with a line of column names; semicolons or tabs may stand for the commas, as
table programs write them in many countries.
"""

from __future__ import annotations

import unicodedata
from bisect import bisect_right
from dataclasses import dataclass
from pathlib import Path

from sitegen.model.location import Location
from sitegen.model.order import Order
from sitegen.read.faults import Faults, hint
from sitegen.read.text import clean, readable, utf8

NEEDED = ("pattern", "for")
COLUMNS = (*NEEDED, "paper", "edition", "language")
SEPARATORS = ",;\t"
MOST_LETTERS = 80
"""Of a name or an order number: the line it stands in has to fit on a page."""
MOST_BYTES = 5_000_000
"""Size of a table of orders."""


@dataclass(frozen=True, slots=True)
class _Cell:
    text: str
    where: Location
    closed: bool = True
    """False for a quote without an end, which takes in the rest of the table and is told by itself."""


def read_orders_file(path: Path, faults: Faults) -> tuple[list[Order], str]:
    """The orders in a file, and its text for showing the problems."""
    name = path.as_posix()
    try:
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except OSError as error:
        faults.add("file-unreadable", Location(name, 0, 0, 0), reason=str(error.strerror or error).lower())
        return [], ""
    if len(data) > MOST_BYTES:
        faults.add("file-too-large", Location(name, 0, 0, 0), most="5 MB")
        return [], ""
    text = utf8(data, name, faults)
    return [] if text is None else read_orders(text, name, faults), readable(data)


def read_orders(text: str, file: str, faults: Faults) -> list[Order]:
    """Every order that is without fault by itself; whether there is such a pattern is not asked here."""
    rows = _rows(clean(text, file, faults), file, faults)
    if not all(cell.closed for row in rows[:1] for cell in row):
        return []
    if len(rows) < 2:
        faults.add("orders-none", Location(file, 1, 1))
    columns = _columns(rows[0], faults) if rows else []
    if not set(NEEDED) <= set(columns):
        return []
    orders = []
    for row in rows[1:]:
        if not all(cell.closed for cell in row):
            continue
        if len(row) != len(columns):
            where = row[min(len(row), len(columns) + 1) - 1].where
            faults.add("orders-cells", where, count=len(row), wanted=len(columns))
            continue
        before = len(faults.problems)
        cells = {column: cell for column, cell in zip(columns, row, strict=True) if column}
        if not cells["pattern"].text:
            faults.add("orders-blank", cells["pattern"].where, column="pattern")
        check_name(even_name(cells["for"].text), cells["for"].where, faults)
        if len(faults.problems) == before:
            orders.append(_order(cells))
    return orders


def even_name(text: str) -> str:
    """A name or order number with single blanks and each letter as one sign: equal names are equal texts."""
    return " ".join(unicodedata.normalize("NFC", text).split())


def check_name(name: str, where: Location, faults: Faults) -> None:
    """A name or order number must be there and fit into the line it stands in."""
    if not name:
        faults.add("orders-blank", where, column="for")
    if len(name) > MOST_LETTERS:
        faults.add("text-long", where, count=len(name), most=MOST_LETTERS)


def _order(cells: dict[str, _Cell]) -> Order:
    values = {column: cells[column].text for column in COLUMNS[2:] if column in cells}
    at = {column: cell.where for column, cell in cells.items()}
    return Order(cells["pattern"].text, even_name(cells["for"].text), **values, at=at)


def _columns(row: list[_Cell], faults: Faults) -> list[str]:
    """The names in the first line; empty for one that is wrong."""
    found: list[str] = []
    for cell in row:
        name = cell.text.lower()
        if name not in COLUMNS:
            faults.add("orders-column", cell.where, name=cell.text, hint=hint(name, COLUMNS))
        elif name in found:
            faults.add("orders-column-twice", cell.where, name=name)
        found.append(name if name in COLUMNS and name not in found else "")
    for name in NEEDED:
        if name not in found:
            faults.add("orders-column-missing", row[0].where, name=name, needed=",".join(NEEDED))
    return found


def _rows(text: str, file: str, faults: Faults) -> list[list[_Cell]]:
    """The lines that hold anything, cell by cell."""
    if not text.strip():
        return []
    first = text.lstrip().partition("\n")[0]
    page = _Page(text, file, max(SEPARATORS, key=first.count), faults)
    rows: list[list[_Cell]] = [[]]
    at = 0
    while at <= len(text):
        cell, at = page.cell(at)
        rows[-1].append(cell)
        if text[at : at + 1] != page.separator:
            rows.append([])
        at += 1
    return [row for row in rows if any(cell.text for cell in row)]


class _Page:
    """The text, and the way from a place in it to line and column."""

    def __init__(self, text: str, file: str, separator: str, faults: Faults) -> None:
        self.text, self.file, self.separator, self.faults = text, file, separator, faults
        self._starts = [0, *(at + 1 for at, sign in enumerate(text) if sign == "\n")]

    def cell(self, at: int) -> tuple[_Cell, int]:
        """The cell that begins at a place, without the blanks round it, and where it ends.

        In quotes it may go on over several lines, and a quote in it stands twice.
        """
        text, written, closed = self.text, "", True
        while text[at : at + 1] == " ":
            at += 1
        opening, quoted = at, text[at : at + 1] == '"'
        if quoted:
            end = at = at + 1
            while (end := text.find('"', end)) >= 0 and text[end + 1 : end + 2] == '"':
                end += 2
            if end < 0:
                self.faults.add("orders-quote", self.place(opening, 1))
                end, closed = len(text), False
            written, at = text[at:end].replace('""', '"'), min(end + 1, len(text))
        begin = at
        while at < len(text) and text[at] not in (self.separator, "\n"):
            at += 1
        rest = text[begin:at].strip()
        if quoted and rest:
            where = self.place(text.index(rest, begin), len(rest))
            self.faults.add("orders-after-quote", where, rest=rest)
        shown = " ".join((written if quoted else rest).split())
        return _Cell(shown, self.place(opening, len(shown) + 2 * quoted), closed), at

    def place(self, at: int, length: int) -> Location:
        """So many characters from a place on."""
        line = bisect_right(self._starts, at)
        return Location(self.file, line, at - self._starts[line - 1] + 1, max(1, length))
