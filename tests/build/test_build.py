"""Whole builds: all or nothing, and the same bytes every time."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.build import BuildResult, build
from sitegen.build.swap import MARKER, OutputRefused
from sitegen.build.woven import is_fault
from sitegen.model.shop import EDITIONS
from sitegen.publish.papers import PAPERS
from tests.publish.sample_shop import Built, write_shop

ROOT = Path(__file__).parents[2]


ALL_EDITIONS = f"price: free\neditions: [{', '.join(EDITIONS)}]"
BUNDLE = """\
bundles:
  - {name: shore, title: Shore, summary: Both., patterns: [reed-pair, pebble-charm], price: 5.00}
"""


def write_full_shop(root: Path) -> Path:
    """The sample shop with a pattern in every edition and a bundle."""
    spoil(write_shop(root), "price: free", ALL_EDITIONS)
    with (root / "content" / "shop.yaml").open("a", encoding="utf-8") as file:
        file.write(BUNDLE)
    return root


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    root = write_full_shop(tmp_path_factory.mktemp("first"))
    return Built(root, build(root, processes=1))


def fingerprint(folder: Path) -> dict[str, str]:
    """Every file below a folder -> a hash of its bytes."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def codes(result: BuildResult) -> list[str]:
    return [problem.code for problem in result.problems]


def spoil(root: Path, old: str, new: str, file: str = "patterns/reed-pair.md") -> Path:
    path = root / "content" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return root


def test_the_output_is_what_the_result_says(built: Built) -> None:
    assert built.result.patterns == ("pebble-charm", "reed-pair")
    assert sorted([*built.result.files, MARKER]) == sorted(fingerprint(built.output))
    assert {name.partition("/")[0] for name in built.result.files} == {"site", "for-sale", "desk"}


def test_nothing_but_the_output_is_left(built: Built) -> None:
    assert sorted(path.name for path in built.root.iterdir()) == ["content", "output"]


def test_reports_lie_on_the_desk(built: Built) -> None:
    report = json.loads((built.output / "desk" / "reed-pair.json").read_text(encoding="utf-8"))
    assert report["bead_count"] == {"each": 19, "total": 38}
    assert "Reed pair" in (built.output / "desk" / "reed-pair.txt").read_text(encoding="utf-8")
    assert "html-shown" in (built.output / "desk" / "problems.txt").read_text(encoding="utf-8")


def test_equal_bytes_from_another_folder_time_zone_and_hash_seed(built: Built, tmp_path: Path) -> None:
    """In another process with two printing processes of its own, a seed and a time zone of its own."""
    root = write_full_shop(tmp_path / "elsewhere entirely")
    call = "b.build(pathlib.Path(sys.argv[1]), processes=2)"
    script = f"import sys, pathlib, sitegen.build as b\nif __name__ == '__main__': {call}"
    runner = tmp_path / "run.py"
    runner.write_text(script, encoding="utf-8")
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo"}
    subprocess.run([sys.executable, str(runner), str(root)], check=True, env=surroundings, umask=0o077)
    made = fingerprint(built.output)
    assert fingerprint(root / "output") == made
    sheets = ("reed-pair", *(f"reed-pair-{edition}" for edition in EDITIONS[1:]), "shore", "pebble-charm")
    wanted = {f"{one}-{paper.name}.pdf" for one in sheets for paper in PAPERS}
    assert {Path(name).name for name in made if name.endswith(".pdf")} == wanted


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("G W G", "G X G", "letter-undefined"),
        ("price: free", "price: cheap", "price"),
        ("strands: [3G 1W, 5G 1W]", "strands: [3G 1W]", "strand-count"),
        ("Done.", "Done \N{RIGHTWARDS ARROW} well.", "letter-not-in-fonts"),
    ],
)
def test_a_fault_leaves_the_output_as_it_is(built: Built, old: str, new: str, code: str) -> None:
    source = built.root / "content" / "patterns" / "reed-pair.md"
    text, before = source.read_text(encoding="utf-8"), fingerprint(built.output)
    stamps = {path: path.stat().st_mtime_ns for path in built.output.rglob("*")}
    try:
        spoil(built.root, old, new)
        result = build(built.root, processes=1)
    finally:
        source.write_text(text, encoding="utf-8")
    assert code in codes(result)
    assert result.files == ()
    assert fingerprint(built.output) == before
    assert {path: path.stat().st_mtime_ns for path in built.output.rglob("*")} == stamps


def test_faults_of_every_file_in_one_run(tmp_path: Path) -> None:
    root = write_shop(tmp_path / "shop")
    spoil(root, "G W G", "G X G")
    spoil(root, "Z Q Q", "Z Y Q", "patterns/pebble-charm.md")
    files = {problem.where.file for problem in build(root).problems if problem.code == "letter-undefined"}
    assert files == {"content/patterns/reed-pair.md", "content/patterns/pebble-charm.md"}
    assert not (root / "output").exists()


@pytest.mark.parametrize(
    ("line", "code"), [("theme: velvet\n", "theme-unknown"), ("language: cy\n", "language-unknown")]
)
def test_theme_and_language_that_are_not_there(tmp_path: Path, line: str, code: str) -> None:
    root = write_shop(tmp_path / "shop")
    spoil(root, "maker:", f"{line}maker:", "shop.yaml")
    result = build(root)
    assert code in codes(result)
    where = next(problem.where for problem in result.problems if problem.code == code)
    assert (where.file, where.line) == ("content/shop.yaml", 3)
    assert not (root / "output").exists()


@pytest.mark.parametrize(
    ("old", "new", "seen"),
    [
        ("Done.", "Done \N{RIGHTWARDS ARROW} well.", "\N{RIGHTWARDS ARROW} well"),
        ("Done.", "Done &amp; &#x202E;well.", "&#x202E;well"),
        ("Done.", "Done &rarr; well.", "&rarr; well"),
        ("finish: matte", "finish: matte \N{RIGHTWARDS ARROW}", "\N{RIGHTWARDS ARROW}}"),
        (
            "A clearer fringe.",
            'A clearer fringe., corrects: "Row \N{RIGHTWARDS ARROW} 2"',
            "\N{RIGHTWARDS ARROW} 2",
        ),
    ],
)
def test_a_missing_letter_is_shown_where_it_stands(tmp_path: Path, old: str, new: str, seen: str) -> None:
    root = write_shop(tmp_path / "shop")
    spoil(root, old, new)
    where = next(problem.where for problem in build(root).problems if problem.code == "letter-not-in-fonts")
    line = (root / where.file).read_text(encoding="utf-8").splitlines()[where.line - 1]
    assert line[where.column - 1 :].startswith(seen)


def test_progress_names_every_stage(tmp_path: Path) -> None:
    root = write_shop(tmp_path / "shop")
    (root / "content" / "patterns" / "pebble-charm.md").unlink()
    told: list[str] = []
    build(root, progress=told.append, processes=1)
    name = "reed-pair"
    drawn = [f"draw {name}", f"draw the steps of {name}"]
    assert told == ["read", f"weave {name}", *drawn, f"print {name}", "write"]


def test_what_is_left_of_the_former_output_is_advice_and_no_failure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root, former = write_shop(tmp_path), tmp_path / ".output.old"
    for name in ("patterns/reed-pair.md", "pages/help.md"):  # what is left is built sooner
        (root / "content" / name).unlink()
    assert build(root, processes=1).files
    before = fingerprint(root / "output")
    with monkeypatch.context() as patched:
        patched.setattr(shutil, "rmtree", no_permission)
        result = build(root, processes=1)
        assert [str(problem.where) for problem in result.problems if problem.code == "former-left"] == [
            f"{former}:0:0"
        ]
        assert not any(map(is_fault, result.problems))
        assert fingerprint(root / "output") == before
        with pytest.raises(OutputRefused, match="cannot be deleted: Permission denied"):
            build(root, processes=1)
    assert codes(build(root, processes=1)) == [code for code in codes(result) if code != "former-left"]
    assert not former.exists()


def no_permission(path: Path) -> None:
    raise PermissionError(13, "Permission denied", str(path))


def test_an_output_folder_of_somebody_else_is_left_alone(tmp_path: Path) -> None:
    root = write_shop(tmp_path / "shop")
    (root / "output").mkdir()
    (root / "output" / "thesis.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(OutputRefused, match="Move it away"):
        build(root, processes=1)
    assert fingerprint(root / "output").keys() == {"thesis.txt"}
