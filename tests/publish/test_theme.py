"""Themes: the small one that comes along, what a broken one is told, and how dark pages follow."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from sitegen.check.tell import tell
from sitegen.draw.colour import contrast
from sitegen.model.theme import COLOURS
from sitegen.publish.picture import picture_look
from sitegen.publish.printing import _press
from sitegen.publish.theme import templates
from sitegen.publish.theme_colours import _better
from sitegen.publish.theme_look import FURTHER, print_style, screen_style, theme_look
from sitegen.publish.whole_theme import whole_theme
from sitegen.publish.words import Words
from sitegen.read.faults import Faults

THEMES = Path(__file__).resolve().parents[2] / "themes"
LINEN = THEMES / "linen"


def told(root: Path) -> str:
    """What is told of the theme `mine` in a shop."""
    faults = Faults()
    assert whole_theme("mine", root, faults) is None
    return tell(faults.problems, {})


def mine(root: Path, says: str = "", **files: str) -> Path:
    """A shop with a theme `mine`; `a__b` names the file `a/b`."""
    files["theme.yaml"] = f"base: linen\n{says}"
    for name, text in files.items():
        path = root / "themes" / "mine" / name.replace("__", "/")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return root


def test_the_small_theme_takes_from_its_base_what_it_does_not_say(tmp_path: Path) -> None:
    faults = Faults()
    whole = whole_theme("slate", tmp_path, faults)
    assert whole is not None, faults.problems
    look = theme_look(whole.folder)
    assert look.light["paper"] == "#f2f5f6"
    assert set(look.families.values()) == {"Atkinson Hyperlegible Next"}
    assert not list((whole.folder / "fonts").glob("YoungSerif*"))
    assert (whole.folder / "fonts" / "AtkinsonHyperlegibleNext-Bold-further.woff2").is_file()
    assert picture_look(whole.folder).accent == look.light["accent"]
    assert ".selvedge" in screen_style(whole.folder).decode()
    page = templates(whole.folder).get_template("page.html")
    assert page is not None
    assert (whole.folder / "templates" / "linen" / "page.html").read_bytes() == (
        LINEN / "templates" / "page.html"
    ).read_bytes()
    assert Words(whole.folder, "en").text("light.to-dark") == Words(LINEN, "en").text("light.to-dark")
    _press(whole.folder)


def test_a_message_replaces_one_and_leaves_the_others(tmp_path: Path) -> None:
    faults = Faults()
    root = mine(tmp_path, strings__en__site_yaml="")
    (root / "themes/mine/strings/en/site_yaml").rename(root / "themes/mine/strings/en/site.yaml")
    (root / "themes/mine/strings/en/site.yaml").write_text("light.to-dark: Lamps out\n", encoding="utf-8")
    whole = whole_theme("mine", root, faults)
    assert whole is not None, tell(faults.problems, {})
    assert Words(whole.folder, "en").text("light.to-dark") == "Lamps out"
    assert Words(whole.folder, "en").text("light.to-light") == Words(LINEN, "en").text("light.to-light")


@pytest.mark.parametrize(
    ("says", "expected"),
    [
        ('colours:\n  ink: "#cccccc"\n', "themes/mine/theme.yaml:3:9: fault theme-contrast"),
        ('dark_colours:\n  accent: "#401010"\n', "themes/mine/theme.yaml:3:12: fault theme-contrast"),
        ('dark_colours:\n  ground: "#202020"\n', "themes/mine/theme.yaml:3:12: fault theme-contrast"),
        ('colours:\n  inc: "#000000"\n', "themes/mine/theme.yaml:3:3: fault key-unknown"),
        ("faces:\n  title:\n    regular: Nowhere\n", "themes/mine/theme.yaml:4:14: fault theme-font-missing"),
        (
            "faces:\n  title:\n    regular: AtkinsonHyperlegibleNext-Bold\n",
            "themes/mine/theme.yaml:4:14: fault theme-font",
        ),
    ],
)
def test_a_fault_names_its_place(tmp_path: Path, says: str, expected: str) -> None:
    assert expected in told(mine(tmp_path, says))


@pytest.mark.parametrize(
    ("name", "text", "expected"),
    [
        ("templates/pege.html", "", "theme-file"),
        ("fonts/Unused.ttf", "", "theme-file"),
        ("templates/page.html", "{% if %}", "templates/page.html:1:1: fault theme-template"),
        ("strings/en/site.yaml", "no.such: x\n", "strings/en/site.yaml:1:1: fault theme-message"),
        ("strings/en/site.yaml", 'light.to-dark: "{no}"\n', "site.yaml:1:1: fault theme-message-fields"),
        ("strings/en/site.yaml", "light.to-dark: {one: a, other: b}\n", "1:1: fault theme-message-form"),
    ],
)
def test_a_file_that_is_wrong_is_named(tmp_path: Path, name: str, text: str, expected: str) -> None:
    root = mine(tmp_path)
    path = root / "themes" / "mine" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    assert expected in told(root)


def test_a_base_must_be_whole(tmp_path: Path) -> None:
    (mine(tmp_path) / "themes/mine/theme.yaml").write_text("base: slate\n", encoding="utf-8")
    assert "themes/mine/theme.yaml:1:7: fault theme-base" in told(tmp_path)


def test_every_fault_comes_in_one_run(tmp_path: Path) -> None:
    root = mine(tmp_path, 'colours:\n  soft: "#eeeeee"\nfaces:\n  title:\n    regular: Nowhere\n')
    shutil.copy(LINEN / "templates" / "page.html", root / "themes" / "mine" / "stray.html")
    found = told(root)
    assert all(code in found for code in ("theme-contrast", "theme-font-missing", "theme-file"))


def test_the_shade_that_is_offered_is_enough() -> None:
    assert contrast("#cccccc", "#ffffff") < 4.5
    assert contrast(_better("#cccccc", "#ffffff", 4.5), "#ffffff") >= 4.5


def test_every_name_in_a_style_has_a_value() -> None:
    screen = screen_style(LINEN).decode()
    screen += "".join(path.read_text(encoding="utf-8") for path in (LINEN / "styles").glob("*.css"))
    used = set(re.findall(r"var\(--([a-z-]+)", screen))
    assert used <= set(re.findall(r"--([a-z-]+):", screen))
    assert "var(" not in print_style(LINEN)
    assert set(theme_look(LINEN).light) == set(theme_look(LINEN).dark) == set(COLOURS)


def test_dark_pages_are_for_screens_alone() -> None:
    head = screen_style(LINEN).decode().split("/*", 1)[0]
    dark = theme_look(LINEN).dark["paper"]
    assert [line for line in head.splitlines() if dark in line]
    assert all(line.startswith("@media screen") for line in head.splitlines() if f"--paper: {dark}" in line)


def test_screens_have_every_letter_of_print_in_one_of_two_files() -> None:
    """Letters that few pages have lie apart, in the blocks that the style sheet names and nowhere else."""
    style = screen_style(LINEN).decode()
    for path in (LINEN / "fonts").glob("*.ttf"):
        common, further = (
            set(TTFont(path.with_name(path.stem + ending)).getBestCmap())
            for ending in (".woff2", "-further.woff2")
        )
        assert common | further == set(TTFont(path).getBestCmap())
        assert further == {letter for letter in common | further if any(letter in one for one in FURTHER)}
        assert f'"fonts/{path.stem}-further.woff2"' in style
    assert style.count("unicode-range: U+100-2AF, U+1E00-1EFF;") == len(theme_look(LINEN).fonts)
