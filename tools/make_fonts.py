"""Font subsets of two npm packages -> one static TTF a weight (print) and the same as woff2 (screen).

Run by hand when a typeface is renewed, never in a build; its results are committed in `themes/linen/fonts/`:

    npm install --ignore-scripts @fontsource/young-serif@5.3.0 @fontsource/atkinson-hyperlegible-next@5.3.0
    python tools/make_fonts.py node_modules themes/linen/fonts

The packages hold every weight as two files, Latin and Latin Extended. A print engine that gets two files
of one family and weight takes them for one font and prints wrong letters, so the two are merged here. For
screens they are two again, `NAME.woff2` and `NAME-further.woff2`: a page loads the second only if it has one
of its letters. The time stamps inside the fonts are set to a fixed moment: equal packages give equal bytes.
Both typefaces are under the SIL Open Font License 1.1; the licence texts are copied beside the fonts.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

from fontTools.merge import Merger, Options
from fontTools.subset import Options as Kept
from fontTools.subset import Subsetter
from fontTools.ttLib import TTFont

from sitegen.publish.theme_look import FURTHER

FACES = (
    ("young-serif", "400-normal", "YoungSerif-Regular"),
    ("atkinson-hyperlegible-next", "400-normal", "AtkinsonHyperlegibleNext-Regular"),
    ("atkinson-hyperlegible-next", "400-italic", "AtkinsonHyperlegibleNext-Italic"),
    ("atkinson-hyperlegible-next", "700-normal", "AtkinsonHyperlegibleNext-Bold"),
)
"""(package, weight and style as in its file names, name of the made files)."""

STAMP = 3786825600
"""2024-01-01 00:00 UTC in seconds since 1904, the count that fonts use."""


def open_subset(package: Path, part: str, style: str) -> TTFont:
    """One subset of a package, its timestamp left as it is."""
    path = package / "files" / f"{package.name}-{part}-{style}.woff2"
    return TTFont(path, recalcTimestamp=False)


def merge(package: Path, style: str) -> TTFont:
    """Latin and Latin Extended as one font; the Latin file wins where both have a letter."""
    with tempfile.TemporaryDirectory() as folder:
        files = []
        for part in ("latin", "latin-ext"):
            font = open_subset(package, part, style)
            font.flavor = None
            path = Path(folder) / f"{part}.ttf"
            font.save(path)
            files.append(str(path))
        merged = Merger(options=Options()).merge(files)
    merged.recalcTimestamp = False
    merged["head"].created = merged["head"].modified = STAMP
    return merged


def for_screens(path: Path) -> None:
    """Two screen fonts beside a print font, without hints for coarse screens (a third of a heading face)."""
    letters = TTFont(path).getBestCmap()
    further = {letter for letter in letters if any(letter in block for block in FURTHER)}
    for ending, kept in ((".woff2", set(letters) - further), ("-further.woff2", further)):
        font = TTFont(path, recalcTimestamp=False)
        options = Kept(hinting=False, layout_features=["*"], name_IDs=["*"], recalc_timestamp=False)
        subsetter = Subsetter(options)
        subsetter.populate(unicodes=kept)
        subsetter.subset(font)
        font.flavor = "woff2"
        font.save(path.with_name(path.stem + ending))


def main(modules: Path, target: Path) -> None:
    """Write every face and both licences into `target`."""
    target.mkdir(parents=True, exist_ok=True)
    for package, style, name in FACES:
        font = merge(modules / "@fontsource" / package, style)
        font.save(target / f"{name}.ttf")
        for_screens(target / f"{name}.ttf")
        shutil.copyfile(modules / "@fontsource" / package / "LICENSE", target / f"OFL-{package}.txt")
        print(f"{name}: {len(font.getBestCmap())} characters")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
