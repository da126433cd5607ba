"""A theme's name -> its folder, and its templates ready to be filled."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

_PACKAGE = Path(__file__).resolve().parent.parent

BUNDLED = (_PACKAGE / "themes", _PACKAGE.parent / "themes")
"""Where the themes that come along lie: inside the package once installed, beside it in a working copy."""


class ThemeMissing(Exception):
    """No theme of that name can be found."""


def theme_folder(name: str, shop_root: Path) -> Path:
    """The folder of a theme: the shop's own `themes/NAME` first, then the bundled ones.

    Raises ThemeMissing with the places that were looked in.
    """
    places = (shop_root / "themes", *BUNDLED)
    if name and Path(name).name == name:
        for place in places:
            if (place / name / "theme.yaml").is_file():
                return place / name
    looked = ", ".join(str(place) for place in places)
    raise ThemeMissing(f"There is no theme called {name!r}. Looked in: {looked}.")


def _folder(address: str) -> str:
    """The address of a page's folder, which stands for the page in full addresses."""
    return address.removesuffix("index.html")


def _spoken(text: str, language: str) -> str:
    """A text that is not in the language of its page, in an element that says so."""
    return Markup('<span lang="{}">{}</span>').format(language, text) if language else text


def _lang(language: str) -> Markup:
    """The attribute that names the language of an element; nothing where that is the page's."""
    return Markup(' lang="{}"').format(language) if language else Markup("")


@lru_cache(maxsize=4)
def templates(folder: Path) -> Environment:
    """The theme's templates: everything escaped, an unknown name is an error.

    Where a text is not in the language of its page, the filter `lang` turns its language into an attribute,
    and `spoken` names it in an element of its own.
    """
    made = Environment(
        loader=FileSystemLoader(folder / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters |= {"lang": _lang, "spoken": _spoken, "folder": _folder}
    return made
