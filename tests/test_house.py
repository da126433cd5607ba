"""House rules that a reader notices at once: size of files and functions, docstrings, words we do not use."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
CODE_FOLDERS = ("sitegen", "tools", "benchmarks")
PRODUCT = sorted(path for folder in CODE_FOLDERS for path in (ROOT / folder).rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
TEXT_SUFFIXES = {".py", ".md", ".yaml", ".html", ".css", ".toml", ".svg", ".json", ".xml", ".txt"}
TEXTS = sorted(
    path
    for folder in ("sitegen", "themes", "content", "tests", "tools", "benchmarks", "schema", ".ci")
    for path in (ROOT / folder).rglob("*")
    if path.suffix in TEXT_SUFFIXES and path != Path(__file__) and path.name != "latest.json"
) + [ROOT / name for name in ("README.md", "DEVELOPERS.md", "CHANGELOG.md", "Makefile", "pyproject.toml")]

LONGEST_FILE = 400
LONGEST_FUNCTION = 60
MOST_PARAMETERS = 7
# Pattern -> why it must not stand in the project.
NOT_OURS = {
    r"/tmp/\w|/root/|/home/\w|/work/": "a path of one machine",
    r"(?i)\bfront[ -]?matter\b": "we say header",
    r"\b(TODO|FIXME|XXX|HACK)\b": "finish it or leave it out",
    r"(?i)\blorem ipsum\b": "filler text",
    r"(?i)\bissue #?\d": "the project explains itself",
}

Function = ast.FunctionDef | ast.AsyncFunctionDef


def parsed(path: Path) -> ast.Module:
    """The module's syntax tree."""
    return ast.parse(path.read_text(encoding="utf-8"), str(path))


def shown(path: Path) -> str:
    """A short name for the report."""
    return str(path.relative_to(ROOT))


def functions(tree: ast.AST) -> list[Function]:
    """All functions and methods, nested ones too."""
    return [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)]


def public_things(tree: ast.Module) -> list[Function | ast.ClassDef]:
    """Public functions and classes of the module and public methods of its public classes."""
    things: list[Function | ast.ClassDef] = []
    for node in tree.body:
        if isinstance(node, Function | ast.ClassDef) and not node.name.startswith("_"):
            things.append(node)
            if isinstance(node, ast.ClassDef):
                things += [item for item in node.body if isinstance(item, Function) and item.name[0] != "_"]
    return things


@pytest.mark.parametrize("path", PRODUCT + TESTS, ids=shown)
def test_files_and_functions_stay_short(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= LONGEST_FILE
    for function in functions(ast.parse(text)):
        assert function.end_lineno is not None
        assert function.end_lineno - function.lineno < LONGEST_FUNCTION, f"{function.name} is too long"


@pytest.mark.parametrize("path", PRODUCT, ids=shown)
def test_few_parameters(path: Path) -> None:
    for function in functions(parsed(path)):
        given = function.args
        names = [item.arg for item in given.posonlyargs + given.args + given.kwonlyargs]
        assert len([name for name in names if name not in ("self", "cls")]) <= MOST_PARAMETERS, function.name


@pytest.mark.parametrize("path", PRODUCT, ids=shown)
def test_the_first_line_says_what_becomes_what(path: Path) -> None:
    """A module that does something says `input -> output`; one that only holds records names them."""
    tree = parsed(path)
    docstring = ast.get_docstring(tree)
    assert docstring
    does = any(isinstance(node, Function) for node in tree.body)
    assert "->" in docstring.splitlines()[0] or not does


@pytest.mark.parametrize("path", PRODUCT, ids=shown)
def test_public_things_have_docstrings(path: Path) -> None:
    things = public_things(parsed(path))
    told = {thing.name for thing in things if ast.get_docstring(thing)}
    # A method that a protocol of the same module describes is described once, there.
    assert not {thing.name for thing in things} - told


@pytest.mark.parametrize("path", TESTS, ids=shown)
def test_test_files_say_what_they_test(path: Path) -> None:
    tree = parsed(path)
    assert ast.get_docstring(tree) or not tree.body


@pytest.mark.parametrize("path", TEXTS, ids=shown)
def test_no_words_that_are_not_ours(path: Path) -> None:
    text = path.read_text(encoding="utf-8", errors="replace")  # some broken sources are not UTF-8 on purpose
    for pattern, why in NOT_OURS.items():
        found = re.search(pattern, text)
        assert found is None, f"{found.group()!r}: {why}"
