"""The command line: what each command prints, where, and its exit code."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from sitegen import __version__, cli
from sitegen.start import schema_texts
from tests.conftest import Golden

ROOT = Path(__file__).parents[1]
KELP = ROOT / "tests" / "examples" / "kelp-lantern.md"
MEASURE_KEYS = [
    *("pattern", "title", "revision", "makes", "pieces", "beads", "bead_count", "parts", "size", "weight_g"),
    *("thread", "passes", "difficulty", "minutes", "steps"),
]


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A shop of one pattern."""
    patterns = tmp_path / "shop" / "content" / "patterns"
    patterns.mkdir(parents=True)
    shutil.copyfile(KELP, patterns / KELP.name)
    (tmp_path / "shop" / "content" / "shop.yaml").write_text("title: Kelp loft\n", encoding="utf-8")
    return tmp_path / "shop"


def spoil(shop: Path) -> None:
    """Two faults in one file: a colour that is none, and a letter without a colour."""
    path = shop / "content" / "patterns" / KELP.name
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("#1f4d3a", "green").replace("5D 2L 3A 3D", "5D 2Q 3A 3D"), encoding="utf-8")


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder and what it holds."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def sitegen(*words: str | Path, **variables: str) -> subprocess.CompletedProcess[str]:
    """The command in a process of its own, with more variables in its surroundings."""
    return subprocess.run(
        [sys.executable, "-m", "sitegen", *words],
        cwd=ROOT,
        env={**os.environ, **variables},
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        check=False,
    )


@pytest.mark.parametrize(
    "words", [[], ["mesure"], ["check", "--shp", "."], ["measure"], ["start"], ["check", "--sh", "."]]
)
def test_wrong_use_is_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        cli.main(words)
    assert stop.value.code == 2
    assert capsys.readouterr().err.startswith("usage: sitegen")


def test_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        cli.main(["--version"])
    assert stop.value.code == 0
    assert capsys.readouterr().out == f"sitegen {__version__}\n"


def test_start_makes_a_shop_that_checks(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    new = tmp_path / "a new" / "shop"
    assert cli.main(["start", str(new)]) == 0
    said = capsys.readouterr().out
    assert str(new) in said
    assert "sitegen build" in said
    assert contents(new / "content") == contents(ROOT / "content")
    assert (new / ".gitignore").read_text(encoding="utf-8").splitlines()[-1] == "/output/"
    for name in ("pattern.json", "shop.json"):
        schema = json.loads((new / "schema" / name).read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator.check_schema(schema)
    assert cli.main(["check", "--shop", str(new)]) == 0


def test_start_leaves_what_is_there_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "mine.txt").write_text("mine", encoding="utf-8")
    assert cli.main(["start", str(tmp_path)]) == 2
    assert cli.main(["start", str(tmp_path / "mine.txt")]) == 2
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]
    assert "not an empty folder" in capsys.readouterr().err


def test_the_schemas_in_the_repository_are_new(golden: Golden) -> None:
    for name, text in schema_texts().items():
        golden(ROOT / "schema" / name, text)


def test_check_tells_every_fault_with_its_place(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check", "--shop", str(shop)]) == 0
    assert capsys.readouterr().out.endswith("1 pattern checked and woven, no fault.\n")
    spoil(shop)
    assert cli.main(["check", "--shop", str(shop)]) == 1
    told = capsys.readouterr().out
    assert "content/patterns/kelp-lantern.md:11:" in told  # the hex
    assert "content/patterns/kelp-lantern.md:25:13" in told  # the letter Q
    assert "^" in told
    assert "\x1b" not in told


def test_check_of_no_shop_is_a_fault(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check", "--shop", str(tmp_path)]) == 1
    assert cli.main(["check", "--shop", str(tmp_path / "nowhere")]) == 1
    assert "fault" in capsys.readouterr().out


def test_measure_by_name_and_by_file(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["measure", "kelp-lantern", "--json", "--shop", str(shop)]) == 0
    by_name = json.loads(capsys.readouterr().out)
    assert list(by_name)[: len(MEASURE_KEYS)] == MEASURE_KEYS
    fan, fringe = by_name["parts"]
    assert (fan["name"], fan["beads"]) == ("Fan", 65)
    assert (fringe["name"], fringe["rows"]) == ("Fringe", 11)
    assert by_name["bead_count"]["each"] == fan["beads"] + fringe["beads"]
    assert by_name["bead_count"]["total"] == 2 * by_name["bead_count"]["each"]
    assert cli.main(["measure", str(KELP), "--json", "--shop", str(shop)]) == 0
    assert json.loads(capsys.readouterr().out) == by_name
    assert cli.main(["measure", "kelp-lantern", "--shop", str(shop)]) == 0
    assert "Kelp lantern earrings" in capsys.readouterr().out


def test_a_shop_without_a_name_is_told_so_but_not_one_pattern(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (shop / "content" / "shop.yaml").unlink()
    for pattern in ("kelp-lantern", str(KELP)):
        assert cli.main(["measure", pattern, "--shop", str(shop)]) == 0
        assert "shop-missing" not in capsys.readouterr().err
    assert cli.main(["check", "--shop", str(shop)]) == 0
    assert "content: advice shop-missing" in capsys.readouterr().out


def test_measure_of_an_unknown_pattern(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["measure", "kelp-lanten", "--shop", str(shop)]) == 2
    assert "there is kelp-lantern" in capsys.readouterr().err
    assert cli.main(["measure", "nowhere/else.md", "--shop", str(shop)]) == 2
    assert "nowhere/else.md" in capsys.readouterr().err


def test_measure_prints_faults_and_no_figures(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spoil(shop)
    assert cli.main(["measure", "kelp-lantern", "--json", "--shop", str(shop)]) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "kelp-lantern.md:25:13" in printed.err


def test_measure_minds_its_own_pattern(shop: Path) -> None:
    (shop / "content" / "patterns" / "half-done.md").write_text("no header yet\n", encoding="utf-8")
    assert cli.main(["measure", "kelp-lantern", "--shop", str(shop)]) == 0
    assert cli.main(["check", "--shop", str(shop)]) == 1
    assert cli.main(["measure", "half-done", "--shop", str(shop)]) == 1


def test_build_says_what_to_open(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["build", "--shop", str(shop)]) == 0
    printed = capsys.readouterr()
    assert printed.out == f"Open {shop / 'output' / 'site' / 'index.html'}\n"
    assert (shop / "output" / "site" / "index.html").is_file()
    assert "kelp-lantern" in printed.err, "progress names the pattern"
    before = contents(shop / "output")
    spoil(shop)
    assert cli.main(["build", "--shop", str(shop)]) == 1
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "Nothing was written" in printed.err
    assert contents(shop / "output") == before


@pytest.mark.parametrize(
    ("failure", "code", "told"),
    [
        (RuntimeError("the drawer is stuck"), 3, "RuntimeError: the drawer is stuck"),
        (PermissionError(13, "Permission denied", "output"), 3, "Permission denied: output"),
        (BrokenPipeError(32, "Broken pipe"), 3, "Broken pipe"),
        (KeyboardInterrupt(), 130, "stopped"),
    ],
)
def test_a_failure_is_one_line_and_never_a_traceback(
    failure: BaseException,
    code: int,
    told: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    def fail(root: Path) -> None:
        raise failure

    monkeypatch.setattr(cli, "load_shop", fail)
    monkeypatch.delenv("SITEGEN_TRACE", raising=False)
    assert cli.main(["check"]) == code
    said = capsys.readouterr().err
    assert told in said
    assert "Traceback" not in said
    if code == 3:
        monkeypatch.setenv("SITEGEN_TRACE", "1")
        assert cli.main(["check"]) == 3
        assert "Traceback" in capsys.readouterr().err


def test_colours_only_on_a_terminal_that_wants_them(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    spoil(shop)
    monkeypatch.setenv("TERM", "xterm")
    for refusal, painted in (("", True), ("1", False)):
        monkeypatch.setenv("NO_COLOR", refusal)
        terminal = Terminal()
        monkeypatch.setattr(sys, "stdout", terminal)
        assert cli.main(["check", "--shop", str(shop)]) == 1
        assert ("\x1b[" in terminal.getvalue()) is painted


def test_progress_takes_one_line_on_a_terminal_and_many_elsewhere(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    for stream, text in (
        (Terminal(), "\r\x1b[Kweave fan\r\x1b[Kdraw fan\r\x1b[K"),
        (io.StringIO(), "weave fan\ndraw fan\n"),
    ):
        progress = cli.Progress(stream)
        progress("weave fan")
        progress("draw fan")
        progress.clear()
        assert stream.getvalue() == text


@pytest.mark.parametrize("command", ["measure kelp-lantern --json", "check"])
def test_a_reader_that_went_away_is_no_fault(shop: Path, command: str) -> None:
    words = [sys.executable, "-m", "sitegen", *command.split(), "--shop", str(shop)]
    pipe = subprocess.PIPE
    with subprocess.Popen(words, cwd=ROOT, stdout=pipe, stderr=pipe, text=True) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        said = process.stderr.read()
    assert "sitegen:" not in said
    assert "Exception" not in said
    assert process.returncode == 141


@pytest.mark.parametrize(
    ("engine", "told"),
    [
        ("raise OSError(\"cannot load library 'libpango-1.0-0'\")", "libpango-1.0-0"),
        ("import warnings\nwarnings.warn('HarfBuzz-Subset ...', DeprecationWarning)", "HarfBuzz-Subset"),
    ],
)
def test_a_missing_library_is_named_with_what_installs_it(tmp_path: Path, engine: str, told: str) -> None:
    (tmp_path / "weasyprint").mkdir()
    code = f"print('a page of advice')\n{engine}\n"
    (tmp_path / "weasyprint" / "__init__.py").write_text(code, encoding="utf-8")
    done = sitegen("check", PYTHONPATH=str(tmp_path))
    assert done.returncode == 3
    assert done.stdout == ""
    assert "Traceback" not in done.stderr
    assert told in done.stderr
    assert "apt-get install" in done.stderr
