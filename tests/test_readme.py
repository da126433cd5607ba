"""The README's promises: its example reads, checks and weaves; its commands and addresses exist."""

from __future__ import annotations

import json
import re
from pathlib import Path

import jsonschema
import pytest
import yaml

from sitegen import cli
from sitegen.start import schema_texts

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLE = re.search(r"^````markdown\n(.*?)^````$", README, re.DOTALL | re.MULTILINE)


def test_the_example_weaves(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert EXAMPLE
    source = tmp_path / "example.md"
    source.write_text(EXAMPLE.group(1), encoding="utf-8")
    assert cli.main(["measure", str(source), "--json"]) == 0, capsys.readouterr().err
    printed = capsys.readouterr()
    assert printed.err == "", "not even advice"
    figures = json.loads(printed.out)
    assert [part["beads"] for part in figures["parts"]] == [5, 11 + 9 + 11]


def test_the_example_fits_the_schema_for_editors() -> None:
    assert EXAMPLE
    header = yaml.load(EXAMPLE.group(1).split("---\n")[1], Loader=yaml.BaseLoader)
    header["revision"] = int(header["revision"])
    for part in header["parts"]:
        part.update({key: yaml.safe_load(part[key]) for key in ("turn", "mirror") if key in part})
    jsonschema.validate(header, json.loads(schema_texts()["pattern.json"]))


def test_the_opening_commands_are_targets() -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for document in (README, (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")):
        for target in set(re.findall(r"^make (\w+)|`make (\w+)`", document, re.MULTILINE)):
            assert re.search(rf"^{''.join(target)}:", makefile, re.MULTILINE), target


def test_every_exit_code_is_told() -> None:
    told = {int(code) for code in re.findall(r"^\| (\d+) \|", README, re.MULTILINE)}
    assert told == {cli.DONE, cli.FAULTS, cli.WRONG_USE, cli.FAILED, cli.STOPPED, cli.NOBODY_READS}


def test_named_patterns_are_in_the_demo_shop() -> None:
    named = re.findall(r"sitegen measure ([a-z-]+)", README)
    assert named
    assert all((ROOT / "content" / "patterns" / f"{name}.md").is_file() for name in named)
