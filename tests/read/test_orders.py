"""Tables of orders: what is read, and the whole message for each line that is wrong."""

from __future__ import annotations

from pathlib import Path

import pytest

from sitegen.check.tell import tell
from sitegen.model.location import Location
from sitegen.model.order import Order
from sitegen.read.faults import Faults
from sitegen.read.orders import MOST_BYTES, even_name, read_orders, read_orders_file
from tests.conftest import Golden

BROKEN = sorted((Path(__file__).parents[1] / "broken" / "orders").glob("*.csv"))


def read(text: str) -> list[Order]:
    faults = Faults()
    orders = read_orders(text, "orders.csv", faults)
    assert faults.problems == []
    return orders


def test_two_columns_are_enough_in_any_order() -> None:
    assert read("For,Pattern\nAda May,fern\n1234,wren-wing\n") == [
        Order("fern", "Ada May"),
        Order("wren-wing", "1234"),
    ]


def test_all_columns() -> None:
    (order,) = read("pattern,for,paper,edition,language\nfern,Ada,a4,ink,de")
    assert order == Order("fern", "Ada", "a4", "ink", "de")


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_separators_of_table_programs(separator: str) -> None:
    text = separator.join(("pattern", "for", "paper")) + "\r\n" + separator.join(("fern", "Ada", "")) + "\r\n"
    assert read("\ufeff" + text) == [Order("fern", "Ada")]


def test_quotes_hold_separators_quotes_and_line_ends() -> None:
    assert read('pattern,for\nfern,"May, ""Ada""\nof the mill"\n') == [
        Order("fern", 'May, "Ada" of the mill')
    ]


def test_empty_lines_are_no_orders() -> None:
    assert read("\npattern,for\n\n,\nfern,Ada\n  \n") == [Order("fern", "Ada")]


def test_every_value_knows_its_place() -> None:
    (order,) = read('pattern,for\n\n fern , "Ada"\n')
    assert order.at["pattern"] == Location("orders.csv", 3, 2, 4)
    assert order.at["for"] == Location("orders.csv", 3, 9, 5)


def test_equal_names_are_equal_texts() -> None:
    assert even_name(" Zoe\u0308  May ") == even_name("Zo\u00eb May") == "Zo\u00eb May"


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_the_message(path: Path, golden: Golden) -> None:
    faults = Faults()
    orders, text = read_orders_file(path, faults)
    told = tell(faults.problems, {path.as_posix(): text})
    assert told
    golden(path.with_suffix(".txt"), told.replace(f"{path.parent.as_posix()}/", ""))
    lines = text.split("\n")
    for problem in faults.problems:
        assert 1 <= problem.where.column <= len(lines[problem.where.line - 1]) + 1
    assert len({problem.where for problem in faults.problems}) == len(faults.problems)
    assert all("Ada" in order.name for order in orders)


def test_a_file_that_cannot_be_read(tmp_path: Path) -> None:
    faults = Faults()
    assert read_orders_file(tmp_path / "nowhere.csv", faults) == ([], "")
    (tmp_path / "large.csv").write_bytes(b"x" * (MOST_BYTES + 1))
    assert read_orders_file(tmp_path / "large.csv", faults) == ([], "")
    assert [problem.code for problem in faults.problems] == ["file-unreadable", "file-too-large"]
