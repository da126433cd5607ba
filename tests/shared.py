"""What is dear to make -> made once in a run of the tests, whichever worker comes first."""

from __future__ import annotations

import fcntl
import os
import pickle
from collections.abc import Callable
from pathlib import Path
from tempfile import mkdtemp
from typing import Protocol, TypeVar

import pytest

from sitegen.build import BuildResult, build
from tests.publish.sample_shop import Built, write_shop

ROOT = Path(__file__).parents[1]
T = TypeVar("T")


class Once(Protocol):
    """`once(name, make)` is what `make` gave when it was called, by any worker, with an empty folder."""

    def __call__(self, name: str, make: Callable[[Path], T]) -> T: ...


def once_in(folder: Path) -> Once:
    """A maker that keeps what it makes in a folder of all workers; those who come later wait and read it."""

    def once(name: str, make: Callable[[Path], T]) -> T:
        kept = folder / f"{name}.pickle"
        with (folder / f"{name}.lock").open("w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            if not kept.exists():
                kept.write_bytes(pickle.dumps(make(Path(mkdtemp(prefix=name, dir=folder)))))
        made: T = pickle.loads(kept.read_bytes())
        return made

    return once


def folder_of_all(factory: pytest.TempPathFactory) -> Path:
    """One folder for all workers of a run."""
    base = factory.getbasetemp()
    return base.parent if "PYTEST_XDIST_WORKER" in os.environ else base


def built_sample(folder: Path) -> Built:
    """The small shop of the page tests. Nobody may change it; who has to, makes a copy."""
    root = write_shop(folder / "shop")
    return Built(root, _whole(build(root)))


def built_demo(folder: Path) -> Path:
    """The site of the demo shop, which lies in the repository and is not touched."""
    _whole(build(ROOT, folder / "output"))
    return folder / "output" / "site"


def _whole(result: BuildResult) -> BuildResult:
    assert result.files, [str(problem) for problem in result.problems]
    return result
