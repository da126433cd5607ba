"""The swap of the finished output, with everything that can go wrong in between."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

import pytest

from sitegen.build.swap import MARKER, OutputRefused, check_output, replace_output, sole_build

OLD = {"site/a.html": b"old", "site/b.html": b"old"}
NEW = {"site/a.html": b"new"}


def contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.name != MARKER
    }


class Killed(BaseException):
    """Stands for the end of the process."""


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """An output that was built before."""
    replace_output(tmp_path / "output", OLD)
    return tmp_path / "output"


def test_the_new_output_replaces_the_old_one_whole(out: Path) -> None:
    replace_output(out, NEW)
    assert contents(out) == NEW
    assert [path.name for path in out.parent.iterdir()] == ["output"]


def test_an_empty_folder_may_be_taken(tmp_path: Path) -> None:
    (tmp_path / "output").mkdir()
    replace_output(tmp_path / "output", NEW)
    assert contents(tmp_path / "output") == NEW


def test_a_failed_write_leaves_the_old_output(out: Path) -> None:
    with pytest.raises(TypeError):
        replace_output(out, {**NEW, "site/c.html": "no bytes"})  # type: ignore[dict-item]
    assert contents(out) == OLD
    assert [path.name for path in out.parent.iterdir()] == ["output"]


def test_a_build_killed_between_the_renames_is_put_right(out: Path) -> None:
    out.rename(out.parent / ".output.old")
    with sole_build(out):
        assert contents(out) == OLD
    assert [path.name for path in out.parent.iterdir()] == ["output"]


def test_leftovers_of_a_broken_build_are_cleaned_up(out: Path) -> None:
    for name in (".output.new", ".output.old"):
        (out.parent / name).mkdir()
        (out.parent / name / MARKER).touch()
    with sole_build(out):
        pass
    assert [path.name for path in out.parent.iterdir()] == ["output"]
    assert contents(out) == OLD


@pytest.mark.parametrize("name", [".output.new", ".output.old"])
def test_a_build_killed_before_its_marker_came_or_after_it_went(out: Path, name: str) -> None:
    (out.parent / name).mkdir()
    with sole_build(out):
        replace_output(out, NEW)
    assert contents(out) == NEW
    assert [path.name for path in out.parent.iterdir()] == ["output"]


@pytest.mark.parametrize("deletion", ["unlink", "rmdir"])
@pytest.mark.parametrize("at", range(4))
def test_a_build_killed_at_any_deletion(
    out: Path, deletion: str, at: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    left, real = [at], getattr(os, deletion)

    def until_killed(*given: object, **named: object) -> None:
        if not left[0]:
            raise Killed
        left[0] -= 1
        real(*given, **named)

    with monkeypatch.context() as patched, suppress(Killed):
        patched.setattr(os, deletion, until_killed)
        replace_output(out, NEW)
    with sole_build(out):
        assert contents(out) == NEW
        replace_output(out, OLD)
    assert contents(out) == OLD
    assert [path.name for path in out.parent.iterdir()] == ["output"]


@pytest.mark.parametrize("name", [".output.new", ".output.old"])
def test_folders_without_our_marker_are_never_deleted(out: Path, name: str) -> None:
    other = out.parent / name
    other.mkdir()
    (other / "letter.txt").write_text("mine", encoding="utf-8")
    with sole_build(out), pytest.raises(OutputRefused, match="in the way"):
        replace_output(out, NEW)
    assert contents(other) == {"letter.txt": b"mine"}
    assert contents(out) == OLD


def test_links_and_files_are_refused(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / MARKER).touch()
    (tmp_path / "link").symlink_to(tmp_path / "elsewhere")
    (tmp_path / "file").touch()
    for name in ("link", "file"):
        with pytest.raises(OutputRefused, match="left alone"):
            check_output(tmp_path / name)


def test_two_builds_do_not_collide(out: Path) -> None:
    with sole_build(out), pytest.raises(OutputRefused, match="Another build"), sole_build(out):
        pass
    with sole_build(out):
        pass
