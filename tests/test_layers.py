"""Import directions: arrows run downward only, without circles and without imports hidden in functions."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

# Which folders of sitegen/ each one may import from, from the leaves up. The command line may import all.
MAY_IMPORT: dict[str, set[str]] = {
    "model": set(),
    "trade": set(),
    "read": {"model", "trade"},
    "check": {"model", "trade", "read"},
    "weave": {"model", "trade"},
    "measure": {"model", "trade"},
    "draw": {"model", "trade"},
    "publish": {"model", "trade", "read", "check", "weave", "measure", "draw"},
    "build": {"model", "trade", "read", "check", "weave", "measure", "draw", "publish"},
}
# Libraries and the only folders that may know them.
LIBRARIES: dict[str, set[str]] = {
    "PIL": {"read", "publish"},
    "cairosvg": {"publish"},
    "coloraide": {"trade", "check"},
    "fontTools": {"publish"},
    "jinja2": {"publish"},
    "markdown_it": {"read", "publish"},
    "pikepdf": {"publish"},
    "pydyf": {"publish"},
    "segno": {"draw"},
    "weasyprint": {"publish"},
    "yaml": {"read", "trade", "publish"},
}
OWN_LAYER = ["__main__", "cli", "start"]
"""Modules above the folders: the command line and what belongs to it."""

MODULES = sorted((ROOT / "sitegen").rglob("*.py"))


def dotted(path: Path) -> str:
    """`sitegen/weave/brick.py` -> `sitegen.weave.brick`; a package's `__init__.py` -> the package."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


NAMES = {dotted(path): path for path in MODULES}


def imported(tree: ast.AST) -> Iterator[str]:
    """Every module that the code imports by name; `from a import b` gives `a.b` where that is a module."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports name the whole module"
            assert node.module is not None
            for alias in node.names:
                whole = f"{node.module}.{alias.name}"
                yield whole if whole in NAMES else node.module


def parsed(path: Path) -> ast.Module:
    """The module's syntax tree."""
    return ast.parse(path.read_text(encoding="utf-8"), str(path))


def layer(name: str) -> str:
    """`sitegen.weave.brick` -> `weave`; the package itself -> an empty string."""
    return name.split(".")[1] if "." in name else ""


def test_there_are_modules_to_look_at() -> None:
    assert {layer(name) for name in NAMES} - {""} - set(OWN_LAYER) == set(MAY_IMPORT)


@pytest.mark.parametrize("name", sorted(NAMES))
def test_imports_run_downward(name: str) -> None:
    here = layer(name)
    allowed = MAY_IMPORT.get(here, set(MAY_IMPORT)) | {here, ""}
    if here in OWN_LAYER:
        allowed |= set(OWN_LAYER)
    for target in imported(parsed(NAMES[name])):
        if target.split(".")[0] == "sitegen":
            assert layer(target) in allowed, f"{name} imports {target}"
        else:
            keepers = LIBRARIES.get(target.split(".")[0])
            assert keepers is None or here in keepers, f"{name} imports {target}"


@pytest.mark.parametrize("name", sorted(NAMES))
def test_no_import_inside_a_function(name: str) -> None:
    for node in ast.walk(parsed(NAMES[name])):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            assert not list(imported(node)), f"{name}:{node.lineno} {node.name}"


def test_no_circles() -> None:
    arrows = {name: set(imported(parsed(path))) & set(NAMES) for name, path in NAMES.items()}
    done: set[str] = set()

    def follow(name: str, trail: tuple[str, ...]) -> None:
        assert name not in trail, " -> ".join([*trail[trail.index(name) :], name])
        if name not in done:
            for target in sorted(arrows[name]):
                follow(target, (*trail, name))
            done.add(name)

    for name in sorted(arrows):
        follow(name, ())
    assert done == set(NAMES)
