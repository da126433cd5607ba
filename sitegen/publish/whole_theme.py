"""A theme's name -> one folder with all its files: its own laid over those of its base."""

from __future__ import annotations

import shutil
import string
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import yaml
from fontTools.ttLib import TTLibError
from jinja2 import Environment, TemplateSyntaxError

from sitegen.model.location import Location
from sitegen.model.theme import ThemeFile
from sitegen.publish.theme import BUNDLED, theme_folder
from sitegen.publish.theme_colours import colour_faults
from sitegen.publish.theme_look import CUTS, THEME_FILE, font_names, read_font
from sitegen.read.faults import Faults, hint
from sitegen.read.theme_file import read_theme_file
from sitegen.read.yaml_nodes import Entries, Scalar, read_yaml

ADDED = frozenset({"styles/more.css", "styles/more-print.css", "README.md"})
"""What a theme may have that its base has not, beside fonts and their licences."""


@dataclass(frozen=True, slots=True)
class WholeTheme:
    """A theme that lacks nothing."""

    folder: Path
    made: TemporaryDirectory[str] | None = None
    """The folder lasts as long as this; None where it is the theme's own."""


@dataclass(slots=True)
class _Laying:
    """A theme, its base and the growing list of what is wrong."""

    own: Path
    base: Path
    shown: str
    """The theme's folder as locations name it."""
    faults: Faults = field(default_factory=Faults)

    def at(self, name: str, line: int = 0) -> Location:
        """A line of one of the theme's files, or the whole of it."""
        return Location(f"{self.shown}/{name}", line, 1 if line else 0, 1 if line else 0)

    def text(self, name: str) -> str | None:
        """A file's text; or a problem and None."""
        try:
            return (self.own / name).read_text(encoding="utf-8")
        except UnicodeDecodeError:
            self.faults.add("file-not-utf8", self.at(name))
        except OSError as error:
            self.faults.add("file-unreadable", self.at(name), reason=(error.strerror or "").lower())
        return None


def whole_theme(name: str, shop_root: Path, faults: Faults) -> WholeTheme | None:
    """The theme of that name, ready for use; None and faults where it has any.

    Raises ThemeMissing where there is none.
    """
    own = theme_folder(name, shop_root)
    shown = f"themes/{name}"
    text = (own / THEME_FILE).read_text(encoding="utf-8", errors="replace")
    theme, problems = read_theme_file(text, f"{shown}/{THEME_FILE}")
    faults.problems += problems
    if own.parent.resolve() in BUNDLED and not theme.base and not problems:
        return WholeTheme(own)
    base = _base(theme)
    if base is None:
        where = theme.at.get("base", Location(f"{shown}/{THEME_FILE}", 1, 1))
        faults.add("theme-base", where, name=theme.base, known=", ".join(_wholes()))
        return None
    laying = _Laying(own, base, shown, faults)
    before = len(problems)
    lent, _ = read_theme_file((base / THEME_FILE).read_text(encoding="utf-8"), THEME_FILE)
    merged = replace(
        theme,
        base="",
        colours={**lent.colours, **theme.colours},
        dark_colours={**lent.dark_colours, **theme.dark_colours},
        faces={**lent.faces, **theme.faces},
    )
    found = len(faults.problems)
    faults.problems += colour_faults(merged)
    files = sorted(path.relative_to(own).as_posix() for path in own.rglob("*") if path.is_file())
    _check_files(laying, files, merged)
    messages = _messages(laying, files)
    _check_templates(laying, files)
    if before or len(faults.problems) > found:
        return None
    return _laid(laying, files, merged, messages)


def _wholes() -> tuple[str, ...]:
    """Names of the themes that rest on no other."""
    found = (path.parent for place in BUNDLED for path in place.glob(f"*/{THEME_FILE}"))
    return tuple(sorted({folder.name for folder in found if (folder / "lessons").is_dir()}))


def _base(theme: ThemeFile) -> Path | None:
    places = (place / theme.base for place in BUNDLED)
    return next((place for place in places if theme.base in _wholes() and place.is_dir()), None)


def _font(laying: _Laying, name: str, ending: str) -> Path | None:
    places = (folder / "fonts" / f"{name}.{ending}" for folder in (laying.own, laying.base))
    return next((place for place in places if place.is_file()), None)


def _check_files(laying: _Laying, files: list[str], merged: ThemeFile) -> None:
    """A file that replaces nothing is a slip of the pen; a font must be there and be what it is called."""
    known = {path.relative_to(laying.base).as_posix() for path in laying.base.rglob("*") if path.is_file()}
    endings = (".ttf", ".woff2", "-further.woff2")
    fonts = {f"fonts/{name}{ending}" for name in font_names(merged) for ending in endings}
    for name in files:
        licence = name.startswith("fonts/") and name.endswith(".txt")
        used = name in fonts if name.startswith("fonts/") else name in known | ADDED
        if not (used or licence):
            laying.faults.add("theme-file", laying.at(name), hint=hint(name, sorted(known | ADDED | fonts)))
    for face, cuts in merged.faces.items():
        for cut, name in cuts.items():
            where = merged.at.get(f"faces.{face}.{cut}", laying.at(THEME_FILE))
            for ending in ("ttf", "woff2"):
                if _font(laying, name, ending) is None:
                    laying.faults.add("theme-font-missing", where, file=f"fonts/{name}.{ending}")
            path = _font(laying, name, "ttf")
            if path is not None:
                _check_font(laying, path, cut, where)


def _check_font(laying: _Laying, path: Path, cut: str, where: Location) -> None:
    try:
        font = read_font(path)
    except (OSError, TTLibError, KeyError):
        laying.faults.add("theme-font", where, file=path.name, cut=cut)
        return
    plain = all(letter.isalnum() or letter in " -" for letter in font.family)
    if (font.weight, font.italic) != CUTS[cut] or not font.family or not plain:
        laying.faults.add("theme-font", where, file=path.name, cut=cut)


def _messages(laying: _Laying, files: list[str]) -> dict[str, dict[str, Any]]:
    """Language -> key -> the theme's own message; each replaces one of the base and fills the same fields."""
    own: dict[str, dict[str, Any]] = {}
    for name in files:
        parts = Path(name).parts
        if parts[0] != "strings" or len(parts) != 3 or not (laying.base / name).is_file():
            continue
        text = laying.text(name)
        node = None if text is None else read_yaml(text, f"{laying.shown}/{name}", 1, laying.faults)
        lent: dict[str, Any] = {}
        for file in (laying.base / "strings" / parts[1]).glob("*.yaml"):
            lent |= yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
        for key, value in node.pairs if isinstance(node, Entries) else ():
            said = _said(value)
            if key.text not in lent:
                laying.faults.add(
                    "theme-message", key.where, key=key.text, hint=hint(key.text, lent, "its base's")
                )
            elif said is None or isinstance(said, str) != isinstance(lent[key.text], str):
                laying.faults.add("theme-message-form", key.where, key=key.text)
            elif not _fields(said) <= _fields(lent[key.text]):
                laying.faults.add(
                    "theme-message-fields",
                    key.where,
                    key=key.text,
                    fields=", ".join(f"{{{field}}}" for field in sorted(_fields(lent[key.text]))) or "none",
                )
            else:
                own.setdefault(parts[1], {})[key.text] = said
    return own


def _said(node: object) -> Any:
    """A text, or plural category -> text; None for anything else."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Entries) and all(isinstance(value, Scalar) for _, value in node.pairs):
        forms = {key.text: value.text for key, value in node.pairs if isinstance(value, Scalar)}
        return forms if "other" in forms else None
    return None


def _fields(message: str | Mapping[str, str]) -> set[str]:
    """The fields of a message; a brace that is never closed counts as a field of its own."""
    texts = [message] if isinstance(message, str) else list(message.values())
    try:
        return {
            name for text in texts for _, name, _, _ in string.Formatter().parse(text) if name is not None
        }
    except ValueError:
        return {"{"}


def _check_templates(laying: _Laying, files: list[str]) -> None:
    for name in files:
        text = laying.text(name) if name.startswith("templates/") else None
        if text is not None:
            try:
                Environment(autoescape=True).parse(text)
            except TemplateSyntaxError as error:
                where = laying.at(name, error.lineno)
                laying.faults.add("theme-template", where, reason=error.message or "it cannot be read")


def _laid(
    laying: _Laying, files: list[str], merged: ThemeFile, messages: Mapping[str, Mapping[str, Any]]
) -> WholeTheme:
    """Write the base's files and the theme's over them; a template that was replaced stays at hand."""
    made = TemporaryDirectory(prefix="sitegen-theme-")
    folder = Path(made.name).resolve()
    shutil.copytree(laying.base, folder, dirs_exist_ok=True)
    for name in files:
        if name.startswith("strings/"):
            continue
        target = folder / name
        if name.startswith("templates/"):
            lent = folder / "templates" / laying.base.name / Path(name).name
            lent.parent.mkdir(exist_ok=True)
            target.replace(lent)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(laying.own / name, target)
    for language, own in messages.items():
        for file in (folder / "strings" / language).glob("*.yaml"):
            lent_words = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
            kept = {key: own.get(key, message) for key, message in lent_words.items()}
            file.write_text(_yaml(kept), encoding="utf-8")
    for path in _unused_fonts(folder, merged):
        path.unlink()
    whole = {"colours": merged.colours, "dark_colours": merged.dark_colours, "faces": merged.faces}
    (folder / THEME_FILE).write_text(_yaml({key: dict(value) for key, value in whole.items()}), "utf-8")
    return WholeTheme(folder, made)


def _unused_fonts(folder: Path, merged: ThemeFile) -> Iterator[Path]:
    used = set(font_names(merged))
    yield from (
        path
        for path in sorted((folder / "fonts").iterdir())
        if path.suffix in (".ttf", ".woff2") and path.stem.removesuffix("-further") not in used
    )


def _yaml(values: Mapping[str, Any]) -> str:
    return yaml.safe_dump(dict(values), allow_unicode=True, sort_keys=False)
