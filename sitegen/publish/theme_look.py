"""A whole theme's folder -> its colours and faces, and its style sheets with both in them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont

from sitegen.model.numbers import plain
from sitegen.model.shop import COLOUR, LARGE_PRINT
from sitegen.model.theme import ThemeFile
from sitegen.read.theme_file import read_theme_file

THEME_FILE = "theme.yaml"
DRAWING_FONTS = ("AtkinsonHyperlegibleNext-Regular", "AtkinsonHyperlegibleNext-Bold")
"""What letters in drawings are set in, whatever the theme: their widths were measured in these."""
CUTS = {"regular": (400, False), "italic": (400, True), "bold": (700, False)}
"""Cut -> weight and slope of its font. Source: OpenType specification, OS/2 table, usWeightClass."""
FALLBACKS = {
    "title": '"Titles meanwhile", "Wide titles meanwhile", serif',
    "text": '"Text meanwhile", "Wide text meanwhile", sans-serif',
}
"""What a screen shows until a face has come; `site.css` makes them."""
FURTHER = (range(0x100, 0x2B0), range(0x1E00, 0x1F00))
"""Letters that a screen font may keep in a file of their own, `NAME-further.woff2`: only pages that have one
of them load it. Source: Unicode Standard, blocks Latin Extended-A, -B, IPA, Latin Extended Additional."""
LEAST_POINTS, TEXT_POINTS = 18.0, 9.6
"""The smallest type of large print; the size of running text in `print.css` that becomes it."""
_SIZE = re.compile(r"(font(?:-size)?:[^;{}/]*?)(\d*\.?\d+)pt")
_ITALIC = 1
_NAME = re.compile(r"var\(--([a-z]+)\)")


@dataclass(frozen=True, slots=True)
class Font:
    """One font file of a theme."""

    file: str
    """Without its ending."""
    family: str
    weight: int
    italic: bool


@dataclass(frozen=True, slots=True)
class ThemeLook:
    """Every colour and every face of a theme."""

    light: Mapping[str, str]
    dark: Mapping[str, str]
    families: Mapping[str, str]
    """`title` and `text` -> family."""
    fonts: tuple[Font, ...]


def read_font(path: Path) -> Font:
    """What a font file says of itself. Raises OSError or TTLibError where it is none."""
    with TTFont(path, lazy=True) as font:
        family = font["name"].getDebugName(16) or font["name"].getDebugName(1) or ""
        about = font["OS/2"]
        return Font(path.stem, family, about.usWeightClass, bool(about.fsSelection & _ITALIC))


def font_names(theme: ThemeFile) -> tuple[str, ...]:
    """Every font file that a theme's pages and sheets need, without endings, each once."""
    named = [name for cuts in theme.faces.values() for name in cuts.values()]
    return tuple(dict.fromkeys((*named, *DRAWING_FONTS)))


@lru_cache(maxsize=8)
def theme_look(folder: Path) -> ThemeLook:
    """The look of a whole theme. Raises FileNotFoundError and KeyError where it is not whole."""
    theme, _ = read_theme_file((folder / THEME_FILE).read_text(encoding="utf-8"), THEME_FILE)
    fonts = {name: read_font(folder / "fonts" / f"{name}.ttf") for name in font_names(theme)}
    families = {face: fonts[cuts["regular"]].family for face, cuts in theme.faces.items()}
    return ThemeLook(theme.colours, theme.dark_colours, families, tuple(fonts.values()))


def screen_style(folder: Path) -> bytes:
    """The style sheet of the pages: faces and colours first, then the theme's rules and what it adds."""
    look = theme_look(folder)
    names = dict(look.light) | {f"day-{name}": value for name, value in look.light.items()}
    names |= {face: f'"{family}", {FALLBACKS[face]}' for face, family in look.families.items()}
    names |= {"sheet": "transparent", "lay": "normal"}
    night = dict(look.dark) | {"sheet": look.dark["ground"], "lay": "multiply"}
    dark = _declared(night, "dark")
    parts = [
        *_faces(look, "fonts/{}.woff2", ' format("woff2")', " font-display: fallback;"),
        *_further_faces(folder, look),
        f":root {{ {_declared(names, 'light')} }}",
        f'@media screen and (prefers-color-scheme: dark) {{ :root:not([data-light="light"]) {{ {dark} }} }}',
        f'@media screen {{ :root[data-light="dark"] {{ {dark} }} }}',
        *_sheets(folder, "site.css", "more.css"),
    ]
    return "\n".join(parts).encode()


def print_style(folder: Path, edition: str = COLOUR) -> str:
    """An edition's style sheet of print; it knows no names, so every one is replaced by its value.

    After the rules of all editions come those of its own, and in large print every size is a larger one.
    """
    look = theme_look(folder)
    values = dict(look.light) | {face: f'"{family}"' for face, family in look.families.items()}
    rules = "\n".join(_sheets(folder, "print.css", "more-print.css"))
    if edition == LARGE_PRINT:
        rules = enlarged(rules)
    rules = "\n".join([rules, *_sheets(folder, f"print-{edition}.css")])
    return "\n".join([*_faces(look, "theme:/fonts/{}.ttf"), _NAME.sub(lambda found: values[found[1]], rules)])


def enlarged(rules: str) -> str:
    """Print rules with every font size in points of at least `LEAST_POINTS`.

    The running text becomes that; what is larger by some points stays so much larger.
    """

    def larger(found: re.Match[str]) -> str:
        return f"{found[1]}{plain(LEAST_POINTS + max(0.0, float(found[2]) - TEXT_POINTS))}pt"

    return _SIZE.sub(larger, rules)


def _declared(names: Mapping[str, str], scheme: str) -> str:
    return f"color-scheme: {scheme}; " + " ".join(f"--{name}: {value};" for name, value in names.items())


def _sheets(folder: Path, *names: str) -> Iterator[str]:
    for name in names:
        if (folder / "styles" / name).is_file():
            yield (folder / "styles" / name).read_text(encoding="utf-8")


def _further_faces(folder: Path, look: ThemeLook) -> Iterator[str]:
    blocks = ", ".join(f"U+{block.start:X}-{block.stop - 1:X}" for block in FURTHER)
    fonts = tuple(font for font in look.fonts if (folder / "fonts" / f"{font.file}-further.woff2").is_file())
    more = f" font-display: fallback; unicode-range: {blocks};"
    yield from _faces(replace(look, fonts=fonts), "fonts/{}-further.woff2", ' format("woff2")', more)


def _faces(look: ThemeLook, address: str, form: str = "", more: str = "") -> Iterator[str]:
    for font in look.fonts:
        slope = "italic" if font.italic else "normal"
        yield (
            f'@font-face {{ font-family: "{font.family}"; src: url("{address.format(font.file)}"){form};'
            f" font-weight: {font.weight}; font-style: {slope};{more} }}"
        )
