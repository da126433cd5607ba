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


SAID = """---
title: Schilftropfen
summary: Ein kleiner Keil mit vier kurzen Strängen.
colours:
  G: {name: Schilf}
parts:
  - name: Keil
  - name: Tropfen
---
Leicht wie Schilf im Wind.

::: steps Keil
"""
LANGUAGES = "title: Loft\nlanguages: [en, de]\n"


def test_a_translation_beside_its_pattern(tmp_path: Path) -> None:
    files = {"shop.yaml": LANGUAGES, "reed.md": REED, "reed.de.md": SAID}
    sources = shop(tmp_path, files)
    assert told(sources) == []
    (pattern,) = sources.patterns
    german = pattern.translations["de"]
    assert (german.name, german.title) == ("reed", "Schilftropfen")
    assert [colour.name for colour in german.colours] == ["Schilf", "foam"]
    assert [part.name for part in german.parts] == ["Keil", "Tropfen"]
    assert german.parts[1].hang is not None and german.parts[1].hang.part == "Keil"
    assert [part.chart for part in german.parts] == [part.chart for part in pattern.parts]
    assert [colour.hex for colour in german.colours] == [colour.hex for colour in pattern.colours]
    assert len(german.body) == 2


@pytest.mark.parametrize(
    ("expected", "old", "new"),
    [
        (("key-unknown", "reed.de.md:3:1"), "summary:", "price: 3\nsummary:"),
        (("translation-unknown", "reed.de.md:5:3"), "  G: {name", "  X: {name"),
        (("translation-count", "reed.de.md:6:1"), "  - name: Tropfen\n", ""),
        (("translation-chart", "reed.de.md:10:10"), "Leicht wie Schilf im Wind.", "```chart Keil\nG\n```"),
        (("part-unknown", "reed.de.md:12:11"), "::: steps Keil", "::: steps Kiel"),
    ],
)
def test_a_translation_that_states_something_else(
    tmp_path: Path, expected: tuple[str, str], old: str, new: str
) -> None:
    files = {"shop.yaml": LANGUAGES, "reed.md": REED, "reed.de.md": SAID.replace(old, new)}
    assert expected in told(shop(tmp_path, files))


def test_translations_of_nothing_and_for_nobody(tmp_path: Path) -> None:
    alone = shop(tmp_path / "a", {"shop.yaml": LANGUAGES, "reed.md": REED, "fern.de.md": SAID})
    assert told(alone) == [("translation-alone", "fern.de.md:0:0")]
    unshown = shop(tmp_path / "b", {"reed.md": REED, "reed.de.md": SAID})
    assert told(unshown) == [("translation-unshown", "reed.de.md:0:0")]


PAGE = "---\ntitle: {title}\nshown: head\norder: {order}\n---\n{body}\n"


def test_pages_in_their_order(tmp_path: Path) -> None:
    files = {
        "shop.yaml": "title: Loft\n",
        "patterns/reed.md": REED,
        "pages/about.md": PAGE.format(title="About", order=2, body="We [bead](shop:patterns/reed)."),
        "pages/help.md": PAGE.format(title="Help", order=1, body="See [words](shop:glossary#warp)."),
        "pages/last.md": "---\ntitle: Last\n---\n::: note\nSee [about](shop:about).\n:::\n",
    }
    sources = shop(tmp_path, {f"content/{name}": text for name, text in files.items()})
    assert told(sources) == []
    assert [page.name for page in sources.shop.pages] == ["help", "about", "last"]
    assert [page.in_head for page in sources.shop.pages] == [True, True, False]
    assert sources.shop.pages[2].title == "Last"


def test_faults_of_pages(tmp_path: Path) -> None:
    body = "Go [home](shop:hom), or\nto [a reed](shop:patterns/reeds).\n\n"
    body += "![A hand](hand.jpg)\n\n::: steps Fan\n"
    files = {
        "patterns/reed.md": REED,
        "pages/help.md": "---\ntitel: Help\n---\n" + body,
        "pages/bare.md": "Without a header.\n",
        "pages/empty.md": "---\n---\nText.\n",
        "pages/Loud.md": PAGE.format(title="Loud", order=1, body="Text."),
    }
    found = told(shop(tmp_path, {f"content/{name}": text for name, text in files.items()}))
    assert ("page-link", "content/pages/help.md:4:11") in found
    assert ("page-link", "content/pages/help.md:5:13") in found
    assert ("page-photo", "content/pages/help.md:7:1") in found
    assert ("page-part", "content/pages/help.md:9:11") in found
    assert ("key-unknown", "content/pages/help.md:2:1") in found
    assert ("key-missing", "content/pages/help.md:2:1") in found
    assert ("header-missing", "content/pages/bare.md:1:1") in found
    assert ("header-empty", "content/pages/empty.md:1:1") in found
    assert ("file-name", "content/pages/Loud.md:0:0") in found
