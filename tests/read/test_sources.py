"""Folders: what is read, what is refused, and under which names."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from sitegen.model.shop import Shop
from sitegen.read.sources import MOST_BYTES, Sources, load_pattern, load_shop
from tests.read.samples import REED


def shop(root: Path, files: dict[str, str | bytes]) -> Sources:
    """Write the files and load the folder."""
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return load_shop(root)


def told(sources: Sources) -> list[tuple[str, str]]:
    return [(problem.code, str(problem.where)) for problem in sources.problems]


def test_a_whole_shop(tmp_path: Path) -> None:
    files = {"shop.yaml": "title: Loft\n", "patterns/b.md": REED, "patterns/a-2.md": REED}
    sources = shop(tmp_path, {f"content/{name}": text for name, text in files.items()})
    assert told(sources) == []
    assert sources.shop.title == "Loft"
    assert [pattern.name for pattern in sources.patterns] == ["a-2", "b"]
    assert set(sources.texts) == {f"content/{name}" for name in files}
    assert sources.patterns[0].file == "content/patterns/a-2.md"
    assert sources.patterns[0].at["title"].file == "content/patterns/a-2.md"


def test_without_folders(tmp_path: Path) -> None:
    sources = shop(tmp_path, {"reed.md": REED})
    assert told(sources) == []
    assert sources.shop == Shop()
    assert [pattern.name for pattern in sources.patterns] == ["reed"]


def test_the_header_beside(tmp_path: Path) -> None:
    header, body = REED.removeprefix("---\n").split("---\n")
    sources = shop(
        tmp_path, {"shop.yaml": "title: A\n", "reed.md": body, "reed.yaml": header, "lone.yaml": header}
    )
    assert told(sources) == [("header-alone", "lone.yaml:0:0")]
    assert sources.patterns[0].at["title"].file == "reed.yaml"
    both = shop(tmp_path, {"reed.md": REED})
    assert ("header-double", "reed.md:1:1") in told(both)


def test_marks_and_line_ends_of_other_systems(tmp_path: Path) -> None:
    plain = shop(tmp_path / "a", {"reed.md": REED})
    other = shop(tmp_path / "b", {"reed.md": b"\xef\xbb\xbf" + REED.replace("\n", "\r\n").encode()})
    assert told(other) == []
    assert other.patterns == plain.patterns
    assert other.patterns[0].at == plain.patterns[0].at


@pytest.mark.parametrize(
    ("files", "problem"),
    [
        ({}, ("no-patterns", ".:0:0")),
        ({"Reed.md": REED}, ("file-name", "Reed.md:0:0")),
        ({"reed drops.md": REED}, ("file-name", "reed drops.md:0:0")),
        ({"-reed.md": REED}, ("file-name", "-reed.md:0:0")),
        ({"reed.MD": REED}, ("file-name", "reed.MD:0:0")),
        ({"reed.markdown": REED}, ("file-name", "reed.markdown:0:0")),
        ({"a.md": REED, "patterns/b.Md": REED}, ("file-name", "patterns/b.Md:0:0")),
        ({"content/patterns/reed.md": REED}, ("shop-missing", "content:0:0")),
        ({"reed.md": b"---\ntitle: Caf\xe9\n"}, ("file-not-utf8", "reed.md:2:11")),
        ({"reed.md": b"x" * (MOST_BYTES + 1)}, ("file-too-large", "reed.md:0:0")),
        ({"reed.md/inner.txt": ""}, ("file-unreadable", "reed.md:0:0")),
        ({"reed.md": REED, "shop.yaml": b"\xff"}, ("file-not-utf8", "shop.yaml:1:1")),
    ],
)
def test_refuses(tmp_path: Path, files: dict[str, str | bytes], problem: tuple[str, str]) -> None:
    assert told(shop(tmp_path, files)) == [problem]


def test_a_missing_folder(tmp_path: Path) -> None:
    assert told(load_shop(tmp_path / "none")) == [("folder-missing", f"{tmp_path / 'none'}:0:0")]


def test_links_stay_inside(tmp_path: Path) -> None:
    root = tmp_path / "shop"
    root.mkdir()
    (tmp_path / "secret.md").write_text(REED)
    (root / "kept.md").write_text(REED)
    (root / "inside.md").symlink_to("kept.md")
    (root / "outside.md").symlink_to(tmp_path / "secret.md")
    (root / "round.md").symlink_to("round.md")
    sources = load_shop(root)
    assert told(sources) == [("file-link-outside", "outside.md:0:0"), ("file-unreadable", "round.md:0:0")]
    assert [pattern.name for pattern in sources.patterns] == ["inside", "kept"]
    assert "outside.md" not in sources.texts


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this system")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "reed.md")
    assert told(load_shop(tmp_path)) == [("file-unreadable", "reed.md:0:0")]


def test_a_pattern_outside_of_a_shop(tmp_path: Path) -> None:
    path = tmp_path / "reed.md"
    path.write_text(REED)
    sources = load_pattern(path, Shop())
    assert told(sources) == []
    assert sources.patterns[0].file == path.as_posix()
    assert told(load_pattern(tmp_path / "none.md", Shop())) == [
        ("file-unreadable", f"{(tmp_path / 'none.md').as_posix()}:0:0")
    ]
