"""An empty folder -> a new shop: the demo's sources, the schemas for an editor, what not to keep."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from sitegen.read.schema import header_schema, page_schema, shop_schema

_PACKAGE = Path(__file__).resolve().parent

DEMO = (_PACKAGE / "demo", _PACKAGE.parent / "content")
"""Where the demo shop's sources lie: inside the package once installed, beside it in a working copy."""

IGNORED = """\
# What `sitegen stamp` makes: personal copies, with the names of buyers.
/copies/
# What `sitegen build` makes.
/.output.new/
/.output.old/
/output/
"""


class NotEmpty(Exception):
    """The place for a new shop is taken."""


def start_shop(folder: Path) -> list[Path]:
    """Fill a new or empty folder; the files written, sorted, relative to it.

    Raises NotEmpty where something is there already, OSError where the folder cannot be written.
    """
    if folder.exists() and not (folder.is_dir() and not any(folder.iterdir())):
        raise NotEmpty(f"{folder} is not an empty folder; name a new one")
    demo = next(place for place in DEMO if place.is_dir())
    for source in sorted(path for path in demo.rglob("*") if path.is_file()):
        target = folder / "content" / source.relative_to(demo)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(source, target)
    for name, text in schema_texts().items():
        target = folder / "schema" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")
    (folder / ".gitignore").write_text(IGNORED, encoding="utf-8", newline="\n")
    return sorted(path.relative_to(folder) for path in folder.rglob("*") if path.is_file())


def schema_texts() -> dict[str, str]:
    """File name -> JSON Schema of the headers of patterns and pages and of the shop file, as text."""
    schemas = {"page.json": page_schema(), "pattern.json": header_schema(), "shop.json": shop_schema()}
    return {name: json.dumps(schema, indent=2, ensure_ascii=False) + "\n" for name, schema in schemas.items()}
