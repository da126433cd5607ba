"""The JSON Schemas say what the reader says."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from sitegen.read.faults import Faults
from sitegen.read.schema import header_schema, page_schema, shop_schema
from sitegen.read.yaml_nodes import Entries, Items, Node, Scalar, core_value, read_yaml
from tests.read.samples import REED, changed, read
from tests.read.test_shop_file import FULL

EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.md"))


def plain(node: Node | None) -> Any:
    """What an editor sees: the nodes as JSON values."""
    if isinstance(node, Entries):
        return {key.text: plain(value) for key, value in node.pairs}
    if isinstance(node, Items):
        return [plain(item) for item in node.nodes]
    assert isinstance(node, Scalar)
    return core_value(node)


def data(yaml: str) -> Any:
    return plain(read_yaml(yaml, "f", 1, Faults()))


def header(text: str) -> Any:
    return data(text.split("---\n")[1])


def valid(instance: Any) -> bool:
    return Draft202012Validator(header_schema()).is_valid(instance)


def test_schemas_are_schemas() -> None:
    Draft202012Validator.check_schema(header_schema())
    Draft202012Validator.check_schema(shop_schema())
    Draft202012Validator.check_schema(page_schema())


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_the_examples_are_valid(path: Path) -> None:
    Draft202012Validator(header_schema()).validate(header(path.read_text(encoding="utf-8")))


def test_a_full_shop_file_is_valid() -> None:
    Draft202012Validator(shop_schema()).validate(data(FULL))
    assert not Draft202012Validator(shop_schema()).is_valid(data(FULL.replace("SEK", "crowns")))


@pytest.mark.parametrize(
    "change",
    [
        ("title: Reed drops\n", ""),
        ("makes: pair", "makes: three"),
        ("makes: pair\n", "makes: pair\neditions: [grand]\n"),
        ("makes: pair\n", "makes: pair\neditions: [ink, ink]\n"),
        ("price: 4.50", "price: -4.50"),
        ("price: 4.50", "price: dear"),
        ("  G: {", "  Gr: {"),
        ("#5d7a3a", "5d7a3a"),
        ("turn: 1", "turn: 10"),
        ("turn: 1", "turns: 1"),
        ("mirror: true", "mirror: yes"),
        ("begin: bottom", "begin: row 0"),
        ("edge: bottom", "edge: left"),
        ("{finding: ear wire, from: top}", "{finding: ear wire, from: Wedge}"),
        ("3G 1W", "3G + 1W"),
        ("name: reed, ", ""),
        ("{bead: round 11/0, name: reed,", "{stock: reed, name: reed,"),
    ],
)
def test_reader_and_schema_refuse_alike(change: tuple[str, str]) -> None:
    text = changed(change)
    assert read(text)[1]
    assert not valid(header(text))
    assert valid(header(REED))


def test_every_key_is_described() -> None:
    def records(schema: Any) -> Any:
        if isinstance(schema, dict):
            yield from schema.get("properties", {}).values()
            for value in schema.values():
                yield from records(value)

    described = list(records(header_schema())) + list(records(shop_schema()))
    assert len(described) > 60
    assert all(entry["description"].endswith(".") for entry in described)
