"""The bundles of a shop file -> Bundles, and faults for those that do not fit the shop's patterns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from sitegen.model.bundle import Bundle
from sitegen.model.location import Location
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.model.source import Pattern
from sitegen.read.faults import Faults, hint
from sitegen.read.walk import Got


def read_bundles(got: Got) -> tuple[Bundle, ...]:
    """The bundles as they are written; those without a name or a list of patterns are left out."""
    written = got.values.get("bundles", ())
    return tuple(_bundle(one) for one in written if {"name", "patterns"} <= set(one.values))


def _bundle(got: Got) -> Bundle:
    values = got.values
    words = values["translations"].named if "translations" in values else {}
    return Bundle(
        name=values["name"],
        title=values.get("title", ""),
        summary=values.get("summary", ""),
        patterns=values["patterns"],
        price=values.get("price"),
        day=values.get("date"),
        buy=values.get("buy", ""),
        translations={language: dict(texts.values) for language, texts in words.items()},
        at=got.at | {f"translation={language}": texts.at[""] for language, texts in words.items()},
    )


def unshown_words(bundles: Iterable[Bundle], shown: Sequence[str], faults: Faults) -> None:
    """Words in a language that the site is not made in."""
    for bundle in bundles:
        for language in bundle.translations:
            if language not in shown:
                faults.add("translation-unshown", bundle.at[f"translation={language}"], language=language)


def bundle_faults(shop: Shop, patterns: Sequence[Pattern], names: Sequence[str]) -> Iterator[Problem]:
    """A fault for each bundle that cannot be made of these patterns.

    `names` are all patterns of the shop, those that could not be read too.
    """
    prices = {pattern.name: pattern.price for pattern in patterns}
    taken = dict.fromkeys(names, "pattern")
    for bundle in shop.bundles:
        if bundle.name in taken:
            told = {"name": bundle.name, "what": taken[bundle.name]}
            yield Problem("bundle-name", bundle.at["name"], told)
        taken.setdefault(bundle.name, "bundle")
        if len(bundle.patterns) == 1:
            yield Problem("bundle-alone", bundle.at["patterns"])
        lost = [name for name in bundle.patterns if name not in names]
        for name in lost:
            values = {"name": name, "hint": hint(name, names)}
            yield Problem("bundle-pattern", _place(bundle, name), values)
        if lost or not set(bundle.patterns) <= set(prices):
            continue
        sold = next((name for name in bundle.patterns if prices[name] is not None), None)
        if sold and bundle.price is None:
            where = bundle.at.get("price") or _place(bundle, sold)
            yield Problem("bundle-unpriced", where, {"name": sold})
        if not sold and bundle.price is not None:
            yield Problem("bundle-priced", bundle.at["price"])


def _place(bundle: Bundle, name: str) -> Location:
    return bundle.at.get(f"patterns={name}", bundle.at["patterns"])
