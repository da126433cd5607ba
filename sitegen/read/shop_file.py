"""The text of a shop file -> Shop, and the problems met on the way."""

from __future__ import annotations

from dataclasses import replace

from sitegen.model.location import Location
from sitegen.model.numbers import plain
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop, StockBead
from sitegen.read.bundles import read_bundles, unshown_words
from sitegen.read.faults import Faults
from sitegen.read.fields import SHOP
from sitegen.read.header import GREY, editions, own_beads
from sitegen.read.text import clean
from sitegen.read.walk import Got, walk_record
from sitegen.read.yaml_nodes import read_yaml

_SAME = (
    "title",
    "tagline",
    "maker",
    "contact",
    "buy",
    "language",
    "currency",
    "licence",
    "about",
    "theme",
    "needle",
    "thread",
    "slack",
    "spare",
    "finding_passes",
    "ticks",
)
"""Keys that the record calls by the same name."""
_OTHER = {
    "working_length": "working_length_mm",
    "tail": "tail_mm",
    "loom_allowance": "loom_allowance_mm",
    "pack": "pack_grams",
}
"""Key of the file -> name in the record."""
LEAST_WORK_MM = 300.0
"""Thread between the tails of a length that is worth threading. A judgement; no source."""


def read_shop_file(text: str, file: str) -> tuple[Shop, list[Problem]]:
    """Read a shop file; what is missing or wrong takes the usual value of `Shop`."""
    faults = Faults()
    before = len(faults.problems)
    node = read_yaml(clean(text, file, faults), file, 1, faults)
    if node is None:
        if len(faults.problems) == before:
            faults.add("header-empty", Location(file, 1, 1), keys="title")
        return Shop(), faults.problems
    got = walk_record(node, SHOP, "the shop's settings, one `key: value` a line", faults)
    shop = Shop() if got is None else _shop(got)
    _language_faults(got, shop, faults)
    if shop.working_length_mm - 2 * shop.tail_mm < LEAST_WORK_MM:
        where = shop.at.get("tail_mm") or shop.at.get("working_length_mm") or Location(file, 1, 1)
        lengths = {"tail": shop.tail_mm, "working": shop.working_length_mm, "least": LEAST_WORK_MM}
        faults.add("tail-too-long", where, **{key: f"{plain(size)} mm" for key, size in lengths.items()})
    return shop, faults.problems


def _shop(got: Got) -> Shop:
    values = got.values
    picked = got.picked(*_SAME) | {_OTHER[key]: value for key, value in got.picked(*_OTHER).items()}
    if "address" in values:
        picked["address"] = values["address"].rstrip("/") + "/"
    stock = values["stock"].named if "stock" in values else {}
    at = {_OTHER.get(key, key): where for key, where in got.at.items()}
    own = own_beads(values.get("bead_kinds"))
    stocked = {key: _bead(key, bead) for key, bead in stock.items()}
    languages = tuple(dict.fromkeys(values.get("languages", (values.get("language", "en"),))))
    picked["language"] = languages[0]
    if named := editions(got):
        picked["editions"] = named
    words = values["translations"].named if "translations" in values else {}
    translations = {language: dict(texts.values) for language, texts in words.items()}
    picked["bundles"] = read_bundles(got)
    made = Shop(at=at, stock=stocked, bead_kinds=own, languages=languages, translations=translations)
    return replace(made, **picked)


def _language_faults(got: Got | None, shop: Shop, faults: Faults) -> None:
    """`language` must be the first of `languages`, and what is translated must be shown."""
    if got is None:
        return
    own = got.values.get("language", shop.language)
    if own != shop.language:
        faults.add("languages-first", shop.at["languages"], first=shop.language, language=own)
    for language in shop.translations:
        if language not in shop.languages[1:]:
            where = got.values["translations"].named[language].at[""]
            faults.add("translation-unshown", where, language=language)
    unshown_words(shop.bundles, shop.languages[1:], faults)


def _bead(key: str, got: Got) -> StockBead:
    values = got.values
    at = {"pack_grams" if name == "pack" else name: where for name, where in got.at.items()}
    return StockBead(
        key,
        values.get("bead", ""),
        values.get("name", key),
        values.get("hex", GREY),
        pack_grams=values.get("pack"),
        at=at,
        **got.picked("finish", "price"),
    )
