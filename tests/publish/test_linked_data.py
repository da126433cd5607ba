"""Linked data: the same facts as the page's own text, in terms of schema.org, and nothing that could run.

`TERMS` is our own short table of the terms in use, each with the type that has the property at
https://schema.org/PROPERTY and the types its value may have there.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from sitegen.model.shop import Shop
from sitegen.publish.linked_data import Place, list_data, page_data, shop_data
from sitegen.publish.sharing import page_sharing
from sitegen.publish.theme import theme_folder
from sitegen.publish.view import Link
from sitegen.publish.words import Words
from tests.publish.sample_shop import Built, Outline

HOME = "https://beads.example/shop/"
REED = f"{HOME}patterns/reed-pair/"
KINDS = {
    "Thing": (),
    "CreativeWork": ("Thing",),
    "WebSite": ("CreativeWork",),
    "WebPage": ("CreativeWork",),
    "CollectionPage": ("WebPage",),
    "MediaObject": ("CreativeWork",),
    "ImageObject": ("MediaObject",),
    "HowTo": ("CreativeWork",),
    "Intangible": ("Thing",),
    "ItemList": ("Intangible",),
    "ListItem": ("Intangible",),
    "BreadcrumbList": ("ItemList",),
    "HowToSection": ("CreativeWork", "ItemList", "ListItem"),
    "HowToStep": ("CreativeWork", "ItemList", "ListItem"),
    "HowToItem": ("ListItem",),
    "HowToSupply": ("HowToItem",),
    "HowToTool": ("HowToItem",),
    "Organization": ("Thing",),
    "Person": ("Thing",),
    "Product": ("Thing",),
    "Brand": ("Intangible",),
    "Offer": ("Intangible",),
    "PropertyValue": ("Intangible",),
    "QuantitativeValue": ("Intangible",),
}
"""Type -> the types it is a kind of, https://schema.org/TYPE."""
TERMS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "name": (("Thing",), ("text",)),
    "description": (("Thing",), ("text",)),
    "url": (("Thing",), ("url",)),
    "image": (("Thing",), ("url", "ImageObject")),
    "logo": (("Organization", "Brand", "Product"), ("url", "ImageObject")),
    "founder": (("Organization",), ("Person", "Organization")),
    "inLanguage": (("CreativeWork",), ("text",)),
    "publisher": (("CreativeWork",), ("Organization", "Person")),
    "isPartOf": (("CreativeWork",), ("CreativeWork", "url")),
    "mainEntity": (("CreativeWork",), ("Thing",)),
    "breadcrumb": (("WebPage",), ("BreadcrumbList", "text")),
    "primaryImageOfPage": (("WebPage",), ("ImageObject",)),
    "datePublished": (("CreativeWork",), ("date",)),
    "dateModified": (("CreativeWork",), ("date",)),
    "author": (("CreativeWork",), ("Person", "Organization")),
    "version": (("CreativeWork",), ("number", "text")),
    "isAccessibleForFree": (("CreativeWork",), ("boolean",)),
    "educationalLevel": (("CreativeWork",), ("text",)),
    "license": (("CreativeWork",), ("CreativeWork", "url")),
    "encoding": (("CreativeWork",), ("MediaObject",)),
    "correction": (("CreativeWork",), ("text", "url")),
    "text": (("CreativeWork",), ("text",)),
    "position": (("CreativeWork", "ListItem"), ("number", "text")),
    "contentUrl": (("MediaObject",), ("url",)),
    "contentSize": (("MediaObject",), ("text",)),
    "encodingFormat": (("CreativeWork",), ("text", "url")),
    "numberOfItems": (("ItemList",), ("number",)),
    "itemListElement": (("ItemList",), ("ListItem", "text", "Thing")),
    "item": (("ListItem",), ("Thing",)),
    "yield": (("HowTo",), ("text", "QuantitativeValue")),
    "totalTime": (("HowTo", "HowToDirection"), ("duration",)),
    "tool": (("HowTo", "HowToDirection"), ("HowToTool", "text")),
    "supply": (("HowTo", "HowToDirection"), ("HowToSupply", "text")),
    "step": (("HowTo",), ("CreativeWork", "HowToSection", "HowToStep", "text")),
    "requiredQuantity": (("HowToItem",), ("number", "QuantitativeValue", "text")),
    "value": (("PropertyValue", "QuantitativeValue"), ("number", "text", "boolean")),
    "unitCode": (("PropertyValue", "QuantitativeValue"), ("text", "url")),
    "sku": (("Product", "Offer"), ("text",)),
    "brand": (("Product", "Organization", "Person"), ("Brand", "Organization")),
    "additionalProperty": (("Product", "Offer"), ("PropertyValue",)),
    "offers": (("Product", "CreativeWork"), ("Offer",)),
    "price": (("Offer",), ("number", "text")),
    "priceCurrency": (("Offer",), ("text",)),
    "availability": (("Offer",), ("url",)),
    "seller": (("Offer",), ("Organization", "Person")),
}
"""Property -> types that have it, types of its values; a kind of a type will do for the type."""
FORMS = {
    "url": r"https?://\S+",
    "date": r"\d{4}-\d\d-\d\d",
    "duration": r"PT\d+M",
    "text": r"(?s).*\S.*",
}


def is_a(kind: str, wanted: str) -> bool:
    return kind == wanted or any(is_a(above, wanted) for above in KINDS[kind])


def faults(node: dict[str, Any], ids: dict[str, str]) -> Iterator[str]:
    """Unknown types and properties, and values that do not belong there; `ids` are names -> types."""
    kind = node["@type"]
    if kind not in KINDS:
        yield f"no type {kind}"
        return
    for key, values in node.items():
        if key.startswith("@"):
            continue
        owners, allowed = TERMS.get(key, ((), ()))
        if not any(is_a(kind, owner) for owner in owners):
            yield f"{kind} has no {key}"
            continue
        for value in values if isinstance(values, list) else [values]:
            if not any(fits(value, one, ids) for one in allowed):
                yield f"{kind}.{key}: {value!r}"
            if isinstance(value, dict) and "@type" in value:
                yield from faults(value, ids)


def fits(value: Any, wanted: str, ids: dict[str, str]) -> bool:
    if isinstance(value, dict):
        kind = value.get("@type") or ids.get(value["@id"], "Thing")
        return wanted in KINDS and is_a(kind, wanted)
    if isinstance(value, bool):
        return wanted == "boolean"
    if isinstance(value, int | float):
        return wanted == "number"
    return re.fullmatch(FORMS.get(wanted, "$^"), value) is not None


def data(page: str) -> list[dict[str, Any]]:
    """The nodes of a page's one block."""
    (block,) = re.findall(r'<script type="application/ld\+json">(.*?)</script>', page, re.DOTALL)
    found = json.loads(block)
    assert found["@context"] == "https://schema.org"
    nodes: list[dict[str, Any]] = found["@graph"]
    return nodes


def the(kind: str, nodes: list[dict[str, Any]]) -> dict[str, Any]:
    (node,) = (node for node in nodes if node["@type"] == kind)
    return node


@pytest.fixture(scope="module")
def pages(built: Built) -> dict[str, str]:
    """Address -> page, all of them."""
    return {
        HOME + path.relative_to(built.site).as_posix().removesuffix("index.html"): path.read_text(
            encoding="utf-8"
        )
        for path in built.site.rglob("index.html")
    }


@pytest.fixture(scope="module")
def reed(pages: dict[str, str]) -> list[dict[str, Any]]:
    return data(pages[REED])


def test_every_page_keeps_to_the_vocabulary(pages: dict[str, str]) -> None:
    ids = {node["@id"]: node["@type"] for page in pages.values() for node in data(page) if "@id" in node}
    for address, page in pages.items():
        for node in data(page):
            assert list(faults(node, ids)) == [], address


def test_a_wrong_term_is_seen(reed: list[dict[str, Any]]) -> None:
    work = the("HowTo", reed)
    assert list(faults({**work, "prize": "1"}, {})) == ["HowTo has no prize"]
    assert list(faults({**work, "totalTime": "an hour"}, {})) == ["HowTo.totalTime: 'an hour'"]
    assert list(faults({**work, "@type": "Recipes"}, {})) == ["no type Recipes"]


def test_every_name_that_is_pointed_at_is_told_somewhere(pages: dict[str, str]) -> None:
    text = "".join(pages.values())
    pointed = set(re.findall(r'\{"@id":"([^"]+)"\}', text))
    told = {node.get("@id") for page in pages.values() for node in data(page)}
    assert pointed <= told


def test_inner_pages_tell_the_way_to_them(pages: dict[str, str]) -> None:
    for address, page in pages.items():
        if address == HOME:
            assert [node["@type"] for node in data(page)] == ["WebPage", "WebSite", "Organization"]
            continue
        steps = the("BreadcrumbList", data(page))["itemListElement"]
        assert [step["position"] for step in steps] == list(range(1, len(steps) + 1))
        places = [step["item"]["@id"] for step in steps]
        assert (places[0], places[-1]) == (HOME, address)
        assert set(places) <= set(pages)
        words = Outline(page).text
        assert all(step["name"] in words for step in steps), address


def test_the_front_page_tells_who_stands_behind_it(pages: dict[str, str]) -> None:
    _, site, organization = data(pages[HOME])
    assert site["publisher"] == {"@id": organization["@id"]}
    assert organization["name"] == site["name"] == "Ferry & Daughters"
    assert organization["founder"]["name"] == "Oona Ferry"
    assert organization["logo"] == f"{HOME}look/icon-180.png"


def test_a_free_pattern_tells_the_measures_of_its_page(built: Built, pages: dict[str, str]) -> None:
    work, page = the("HowTo", data(pages[REED])), Outline(pages[REED]).text
    report = json.loads((built.output / "desk" / "reed-pair.json").read_text(encoding="utf-8"))
    beads = {one["name"]: one["requiredQuantity"] for one in work["supply"]}
    assert list(beads.values())[:2] == [bead["total"] for bead in report["beads"]]
    assert list(beads)[:2] == ["reed green, round 11/0", "milk, round 11/0, matte"]
    thread = beads["Thread: braided 0.15 mm"]
    assert thread["unitCode"] == "MTR"
    assert f"{thread['value']:.2f} m" in page
    assert beads["ear wire"] == 2
    assert work["tool"]["name"] == "Needle: beading 12"
    hours, minutes = divmod(int(re.sub(r"\D", "", work["totalTime"])), 60)
    said = " ".join([*([f"{hours} h"] if hours else []), *([f"{minutes} min"] if minutes else [])])
    assert f"to {said} practised hand to first try" in page
    for value in (
        work["yield"],
        work["educationalLevel"],
        work["license"]["text"],
        f"Edition {work['version']}",
    ):
        assert value in page
    assert (work["datePublished"], work["dateModified"]) == ("2026-03-14", "2026-05-02")


def test_every_step_of_the_page_is_told_in_order(built: Built, pages: dict[str, str]) -> None:
    work, page = the("HowTo", data(pages[REED])), Outline(pages[REED])
    numbers = []
    for part in work["step"]:
        address, _, fragment = part["url"].partition("#")
        assert address == REED
        assert fragment in page.ids
        assert (built.site / part["image"].removeprefix(HOME)).is_file()
        for step in part["itemListElement"]:
            numbers.append(step["position"])
            assert step["url"].partition("#")[2] in page.ids
            for sentence in re.findall(r"[^.]+\.", re.sub(r"Pick up [^.]*\. ?", "", step["text"])):
                assert sentence.strip() in page.text
    assert numbers == list(range(1, len(numbers) + 1))
    assert list(map(str, numbers)) == re.findall(r'aria-label="Step (\d+) done"', pages[REED])


def test_files_that_are_named_are_there(
    built: Built, pages: dict[str, str], reed: list[dict[str, Any]]
) -> None:
    work = the("HowTo", reed)
    for file in work["encoding"]:
        path = built.site / file["contentUrl"].removeprefix(HOME)
        assert file["contentSize"] == f"{math.ceil(path.stat().st_size / 1000)} kB"
        assert file["contentSize"] in Outline(pages[REED]).text
    for image in work["image"]:
        assert (built.site / image.removeprefix(HOME)).is_file()


def test_an_offer_is_the_page_s_own(pages: dict[str, str]) -> None:
    address = f"{HOME}patterns/pebble-charm/"
    nodes, page = data(pages[address]), Outline(pages[address]).text
    product = the("Product", nodes)
    offer = product["offers"]
    assert (offer["price"], offer["priceCurrency"], offer["url"]) == ("4.50", "EUR", address)
    (shown,) = set(re.findall(r"(?:€|EUR ?)\s?(\d+\.\d\d)|(\d+\.\d\d) EUR", page))
    assert Decimal("".join(shown)) == Decimal(offer["price"])
    assert offer["availability"] == "https://schema.org/InStock"
    assert "is for sale" in page
    assert product["description"] in page
    assert product["additionalProperty"]
    assert all(fact["name"] in page and fact["value"] in page for fact in product["additionalProperty"])
    assert "HowTo" not in {node["@type"] for node in nodes}
    assert "secret" not in json.dumps(nodes)


def test_free_pages_offer_nothing_and_priced_ones_teach_nothing(pages: dict[str, str]) -> None:
    for page in pages.values():
        kinds = {node["@type"] for node in data(page)}
        assert not {"Product", "HowTo"} <= kinds
        assert ('"priceCurrency"' in page) is ("Product" in kinds)


def test_a_colourway_points_at_the_pattern(pages: dict[str, str]) -> None:
    nodes = data(pages[f"{REED}in-dusk/"])
    assert the("WebPage", nodes)["mainEntity"] == {"@id": f"{REED}#pattern"}
    assert {node["@type"] for node in nodes} == {"WebPage", "BreadcrumbList"}


HOSTILE = ["</script><script>alert(1)</script>", '"}]', "<!--", "]]>", "a\\u003c", "\u2028"]


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words(text: str) -> None:
    shop = Shop(title=text, tagline=text, maker=text, about=text, address="https://a.example/")
    place = Place(shop, "x/index.html", (Link("index.html", text),))
    for block in (shop_data(place), page_data(place, text, text), list_data(place, text, text, place.trail)):
        assert "<" not in block
        assert text in {node["name"] for node in json.loads(block)["@graph"] if "name" in node}


def test_without_an_address_places_are_given_from_the_page() -> None:
    assert Place(Shop(), "patterns/a/index.html").to("look/icon-180.png") == "../../look/icon-180.png"
    assert Place(Shop(), "index.html").to("cover.png") == "cover.png"


def test_pages_in_another_language_lead_to_the_front_page_in_it() -> None:
    shop = Shop(title="T", address="https://a.example/", languages=("en", "de")).in_language("de")
    place = Place(shop, "x/index.html", (Link("index.html", "T"), Link("x/index.html", "X")))
    page = json.loads(page_data(place, "X", ""))["@graph"][0]
    assert page["isPartOf"] == {"@id": "https://a.example/de/#site"}
    assert page["inLanguage"] == "de"
    assert page["url"] == "https://a.example/de/x/"
    assert place.shared("look/icon-180.png") == "https://a.example/look/icon-180.png"
    nowhere = replace(place, shop=replace(shop, address=""))
    assert nowhere.shared("look/icon-180.png") == "../../look/icon-180.png"
    assert nowhere.to("index.html") == "../index.html"


def test_what_is_passed_on_names_language_and_dates(built: Built, pages: dict[str, str]) -> None:
    assert '<meta property="article:published_time" content="2026-03-14">' in pages[REED]
    assert '<meta property="article:modified_time" content="2026-05-02">' in pages[REED]
    assert "article:published_time" not in pages[f"{HOME}patterns/pebble-charm/"]
    assert f'<meta property="og:url" content="{HOME}techniques/brick/">' in pages[f"{HOME}techniques/brick/"]
    words = Words(theme_folder("linen", built.root), "en")
    for language, locale in (("en-GB", "en_GB"), ("en", "")):
        known = Shop(address=HOME, language=language, languages=(language,))
        sharing = page_sharing(known, "T", "article", f"{HOME}a/", words)
        assert sharing is not None
        assert (sharing.locale, sharing.image) == (locale, f"{HOME}cover.png")
