"""Finished files -> the output folder, all at once: the old output stands until the new one is whole.

Only folders that carry our marker file are ever renamed or deleted, and empty ones: a build that is killed
leaves nothing else.
"""

from __future__ import annotations

import fcntl
import os
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from sitegen.model.location import Location
from sitegen.model.problem import Problem

MARKER = ".made-by-sitegen"
MARKER_TEXT = "sitegen made this folder and may replace it. Keep nothing of your own in it.\n"

REMEDY = "Move it away, then build again."


class OutputRefused(Exception):
    """The output folder cannot be replaced; the text says why and what to do."""


def check_output(out: Path) -> None:
    """Raise OutputRefused if there is something at `out` that is not ours to replace."""
    if out.is_symlink() or (out.exists() and not out.is_dir()):
        raise OutputRefused(f"{out} is not a plain folder, so it is left alone. {REMEDY}")
    if out.is_dir() and not _is_ours(out) and any(out.iterdir()):
        raise OutputRefused(f"{out} holds files that sitegen did not make, so it is left alone. {REMEDY}")


def _is_ours(folder: Path) -> bool:
    return not folder.is_symlink() and (folder / MARKER).is_file()


@contextmanager
def sole_build(out: Path) -> Iterator[None]:
    """Lock the folder around the output for the time of a build.

    Raises OutputRefused while another build holds the lock. The folder itself is locked, so nothing is left.
    """
    out.parent.mkdir(parents=True, exist_ok=True)
    folder = os.open(out.parent, os.O_RDONLY | os.O_DIRECTORY)
    try:
        try:
            fcntl.flock(folder, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            raise OutputRefused(f"Another build is writing {out} now. Wait until it is done.") from None
        try:
            _clean_up(out)
        except OSError as error:
            reason = error.strerror or error
            raise OutputRefused(
                f"What an earlier build left beside {out} cannot be deleted: {reason}: {error.filename}."
                f" {REMEDY}"
            ) from error
        yield
    finally:
        os.close(folder)


def _fresh(out: Path) -> Path:
    return out.parent / f".{out.name}.new"


def _former(out: Path) -> Path:
    return out.parent / f".{out.name}.old"


def _clean_up(out: Path) -> None:
    """Put right what a broken build left: bring the old output back if it alone is there, drop the rest.

    Raises OSError where that cannot be deleted.
    """
    former = _former(out)
    if _is_ours(former) and not out.exists():
        former.rename(out)
    for leftover in (_fresh(out), former):
        if _is_ours(leftover):
            _delete(leftover)
        elif leftover.is_dir() and not leftover.is_symlink() and not any(leftover.iterdir()):
            leftover.rmdir()  # killed before the marker came, or after it went


def _delete(folder: Path) -> None:
    """Delete a folder of ours, its marker last: half deleted it is still known as ours."""
    for path in folder.iterdir():
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path)
        elif path.name != MARKER:
            path.unlink()
    (folder / MARKER).unlink()
    folder.rmdir()


def replace_output(out: Path, files: Mapping[str, bytes]) -> tuple[Problem, ...]:
    """Write all files (path below `out` -> contents) beside the output, then rename them into its place.

    Where the former output cannot be deleted afterwards, that is advice: the new one is in its place.
    """
    check_output(out)
    fresh, former = _fresh(out), _former(out)
    for taken in (fresh, former):
        if taken.exists():
            raise OutputRefused(f"{taken} is in the way, without sitegen's mark. {REMEDY}")
    fresh.mkdir()
    try:
        (fresh / MARKER).write_text(MARKER_TEXT, encoding="utf-8")
        for name, data in files.items():
            path = fresh / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        if out.exists() and not _is_ours(out):
            out.rmdir()  # empty, as check_output made sure
        if out.exists():
            out.rename(former)
        fresh.rename(out)
    except BaseException:
        with suppress(OSError):  # what went wrong first is worth more
            _clean_up(out)
        raise
    try:
        _clean_up(out)
    except OSError as error:
        where = Location(former.as_posix(), 0, 0, 0)
        return (Problem("former-left", where, {"reason": str(error.strerror or error).lower()}),)
    return ()
