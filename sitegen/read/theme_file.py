"""The text of a theme's file -> ThemeFile, and the problems met on the way."""

from __future__ import annotations

from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.theme import COLOURS, FACES, ThemeFile
from sitegen.read.faults import Faults
from sitegen.read.kinds import Field, Form, Hex, Record
from sitegen.read.text import clean
from sitegen.read.walk import Got, walk_record
from sitegen.read.yaml_nodes import read_yaml

_COLOURS = Record(
    tuple(Field(name, Hex(), f'The colour `{name}`, in quotes: "#1f4d3a".') for name in COLOURS)
)
_FONT = Form("[A-Za-z0-9][A-Za-z0-9_-]{0,79}", "the name of a font file without its ending")
THEME = Record(
    (
        Field("base", Form("[a-z][a-z0-9-]{0,39}", "a theme's name such as linen"), "The theme it rests on."),
        Field("colours", _COLOURS, "Colours of light pages, print and pictures."),
        Field("dark_colours", _COLOURS, "Colours of dark pages."),
        Field(
            "faces",
            Record(
                tuple(
                    Field(
                        face,
                        Record(
                            tuple(Field(cut, _FONT, f"Font file of the {cut} cut.", True) for cut in cuts)
                        ),
                        f"The face of the {face}.",
                    )
                    for face, cuts in FACES.items()
                )
            ),
            "The typefaces, each by its font files in the folder `fonts`.",
        ),
    )
)
"""The keys of `theme.yaml`."""


def read_theme_file(text: str, file: str) -> tuple[ThemeFile, list[Problem]]:
    """Read a theme's file; what is wrong in it is left out."""
    faults = Faults()
    node = read_yaml(clean(text, file, faults), file, 1, faults)
    if node is None:
        if not faults.problems:
            faults.add("header-empty", Location(file, 1, 1), keys="base")
        return ThemeFile(), faults.problems
    got = walk_record(node, THEME, "what the theme changes, one `key: value` a line", faults)
    return (ThemeFile() if got is None else _theme(got)), faults.problems


def _theme(got: Got) -> ThemeFile:
    at = dict(got.at)
    colours: dict[str, dict[str, str]] = {}
    for key in ("colours", "dark_colours"):
        record = got.values.get(key, Got())
        colours[key] = record.values
        at |= {f"{key}.{name}": where for name, where in record.at.items() if name}
    faces = {}
    for face, cuts in got.values.get("faces", Got()).values.items():
        faces[face] = cuts.values
        at |= {f"faces.{face}.{cut}": where for cut, where in cuts.at.items() if cut}
    return ThemeFile(got.values.get("base", ""), colours["colours"], colours["dark_colours"], faces, at)
