"""A theme's name -> its folder, and its templates ready to be filled."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

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
            if (place / name / "templates").is_dir():
                return place / name
    looked = ", ".join(str(place) for place in places)
    raise ThemeMissing(f"There is no theme called {name!r}. Looked in: {looked}.")


@lru_cache(maxsize=4)
def templates(folder: Path) -> Environment:
    """The theme's templates: everything escaped, an unknown name is an error."""
    return Environment(
        loader=FileSystemLoader(folder / "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
