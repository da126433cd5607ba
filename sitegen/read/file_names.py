"""A shop and its patterns -> faults for patterns and bundles whose PDFs could be called alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.model.file_names import print_name
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import COLOUR, Shop
from sitegen.model.source import Pattern


def file_name_faults(shop: Shop, patterns: Sequence[Pattern]) -> Iterator[Problem]:
    """A fault for each pattern or bundle that has a file's name in common with another.

    It lies with the longer name, or with a bundle where that is named. PDFs for sale lie in one folder, and
    buyers' copies of all are known by their names alone. The first edition counts for every pattern: a name
    without an edition is always its. Many systems take capital and small letters for the same.
    """
    owners: dict[str, str] = {}
    for name, where, editions in _printed(shop, patterns):
        files = [
            print_name(name, language, edition).lower()
            for language in ("", *shop.languages[1:])
            for edition in dict.fromkeys((COLOUR, *editions))
        ]
        shared = next((file for file in files if owners.get(file, name) != name), None)
        if shared is not None:
            told = {"name": name, "other": owners[shared], "file": f"{shared}-a4.pdf"}
            yield Problem("file-name-shared", where, told)
        for file in files:
            owners.setdefault(file, name)


def _printed(shop: Shop, patterns: Sequence[Pattern]) -> Iterator[tuple[str, Location, tuple[str, ...]]]:
    """Name, where a fault of it lies, and editions: the patterns, short names first, then the bundles."""
    for pattern in sorted(patterns, key=lambda one: len(one.name)):
        yield pattern.name, Location(pattern.file, 1, 1), shop.editions_of(pattern)
    for bundle in shop.bundles:
        yield bundle.name, bundle.at["name"], ()
