"""Personal copies out of a finished output: which PDFs, where they go, what is refused."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pikepdf
import pytest

from sitegen import cli
from sitegen.build.copies import Printed, copy_name, printed
from sitegen.build.swap import MARKER
from tests.publish.sample_shop import Built


def contents(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def stamp(built: Built, out: Path, *words: str | Path) -> int:
    return cli.main(["stamp", *map(str, words), "--shop", str(built.root), "--out", str(out)])


def touch(output: Path, *names: str) -> None:
    for name in names:
        (output / name).parent.mkdir(parents=True, exist_ok=True)
        (output / name).touch()


def test_one_order_takes_every_pdf_of_the_pattern(
    built: Built, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = contents(built.root)
    assert stamp(built, tmp_path / "out", "pebble-charm", "--for", "Zo\u00eb May") == 0
    written = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert [name.partition("-zoe-may-")[0] for name in written] == ["pebble-charm-a4", "pebble-charm-letter"]
    assert [Path(line).name for line in capsys.readouterr().out.splitlines()] == written
    for name in written:
        with pikepdf.open(tmp_path / "out" / name) as pdf:
            assert str(pdf.docinfo.Keywords).endswith(
                "Personal copy for Zo\u00eb May. Please do not pass it on."
            )
    assert contents(built.root) == before


def test_a_choice_narrows_it(built: Built, tmp_path: Path) -> None:
    assert stamp(built, tmp_path, "reed-pair", "--for", "4711", "--paper", "A4") == 0
    (one,) = tmp_path.iterdir()
    assert one.name.startswith("reed-pair-a4-4711-")


def test_a_table_of_orders(built: Built, tmp_path: Path) -> None:
    table = tmp_path / "orders.csv"
    table.write_text("pattern,for,paper\npebble-charm,Ada,a4\nreed-pair,Ada,\npebble-charm,Ada,a4\n")
    assert stamp(built, tmp_path / "out", "--from", table) == 0
    names = sorted(path.name for path in (tmp_path / "out").iterdir())
    stems = [name.partition("-ada-")[0] for name in names]
    assert stems == ["pebble-charm-a4", "reed-pair-a4", "reed-pair-letter"]
    first = contents(tmp_path / "out")
    assert stamp(built, tmp_path / "out", "--from", table) == 0
    assert contents(tmp_path / "out") == first


def test_every_fault_is_told_at_once_and_nothing_is_written(
    built: Built, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    table = tmp_path / "orders.csv"
    lines = [
        "pattern,for,paper,edition,language",
        "pebble-charm,Ada,a4,,",
        "pebble-charn,Ada,a4,,",
        "pebble-charm,Ada,a5,large,fr",
        "pebble-charm,\u65e5\u672c,a4,,",
        ",Ada,a4,,",
    ]
    table.write_text("\n".join(lines), encoding="utf-8")
    assert stamp(built, tmp_path / "out", "--from", table) == 1
    told = capsys.readouterr().err
    assert not (tmp_path / "out").exists()
    for place, code in (
        ("3:1", "orders-pattern"),
        ("4:18", "orders-choice"),
        ("4:21", "orders-choice"),
        ("4:27", "orders-choice"),
        ("5:14", "letter-not-in-fonts"),
        ("6:1", "orders-blank"),
    ):
        assert f"orders.csv:{place}: fault {code}" in told
    assert "Did you mean `pebble-charm`?" in told
    assert "Nothing was written." in told


@pytest.mark.parametrize(
    "words", [["pebble-charm"], ["--for", "Ada"], [], ["pebble-charm", "--from", "x.csv"]]
)
def test_wrong_use(built: Built, tmp_path: Path, words: list[str]) -> None:
    assert stamp(built, tmp_path / "out", *words) == 2


@pytest.mark.parametrize("name", ["", "  ", "x" * 81, "\u65e5"])
def test_names_that_cannot_be_written(
    built: Built, tmp_path: Path, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert stamp(built, tmp_path / "out", "pebble-charm", "--for", name) == 1
    assert "--for: fault" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_copies_never_lie_in_an_output(
    built: Built, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = tmp_path / "other"
    touch(other, MARKER)
    (tmp_path / "link").symlink_to(built.output / "site")
    for folder in (built.output, built.output / "site" / "new", other / "copies", tmp_path / "link" / "x"):
        before = contents(built.output)
        assert stamp(built, folder, "pebble-charm", "--for", "Ada") == 1
        assert "copies-in-output" in capsys.readouterr().err
        assert contents(built.output) == before


def test_without_an_output_there_is_nothing_to_copy(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["stamp", "fern", "--for", "Ada", "--shop", str(tmp_path)]) == 1
    assert "orders-unbuilt" in capsys.readouterr().err


def test_file_names_are_safe_and_never_meet() -> None:
    pdf = Path("fern-a4.pdf")
    names = [
        "Jos\u00e9",
        "Jose",
        "jose",
        "../../etc",
        "\u65e5\u672c",
        "\u672c\u65e5",
        "a" * 300,
        "con.",
        "#1/2",
    ]
    made = [copy_name(pdf, name) for name in names]
    assert len({name.lower() for name in made}) == len(names)
    assert all(set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-.") for name in made)
    assert all(name.startswith("fern-a4-") and len(name) < 100 for name in made)


def test_what_the_names_of_pdfs_say(tmp_path: Path) -> None:
    """A pattern may be called as another one with a language or an edition behind its name."""
    pages = ("fern", "fern-de", "fern-ink")
    touch(tmp_path, *(f"site/patterns/{name}/index.html" for name in pages), "site/bundles/set/index.html")
    touch(tmp_path, "for-sale/fern-a4.pdf", "for-sale/fern-de-a4.pdf", "for-sale/fern-de-large-letter.pdf")
    touch(
        tmp_path, "site/de/bundles/set/set-de-a4.pdf", "for-sale/fern-ink-ink-a4.pdf", "for-sale/else-a4.pdf"
    )
    found = [
        (one.path.name, one.pattern, one.language, one.edition, one.paper)
        for one in printed(tmp_path, ("en", "de"))
    ]
    assert found == [
        ("fern-a4.pdf", "fern", "en", "colour", "a4"),
        ("fern-de-a4.pdf", "fern-de", "en", "colour", "a4"),
        ("fern-de-large-letter.pdf", "fern-de", "en", "large", "letter"),
        ("fern-ink-ink-a4.pdf", "fern-ink", "en", "ink", "a4"),
        ("set-de-a4.pdf", "set", "de", "colour", "a4"),
    ]
    assert printed(tmp_path / "nowhere", ("en",)) == ()
    assert isinstance(printed(tmp_path, ("en",))[0], Printed)
