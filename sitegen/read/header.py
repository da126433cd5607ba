"""The walked header -> the records of a pattern.

Where a value is missing or wrong its problem is noted already, and a neutral one stands in: an empty text,
a grey, a strand without beads, revision 0. The checks are silent about those.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sitegen.model.location import Location
from sitegen.model.photo import Photo
from sitegen.model.shop import EDITIONS, Shop
from sitegen.model.source import (
    Around,
    Chart,
    Colour,
    Colourway,
    Gauge,
    Hang,
    LooseFinding,
    Makes,
    Measured,
    Over,
    OwnBead,
    Part,
    Pattern,
    Revision,
    Rope,
    StrandRule,
    Swap,
)
from sitegen.read.chart import chart_of_rows
from sitegen.read.faults import Faults, hint
from sitegen.read.rope import chart_of_rope
from sitegen.read.walk import Got
from sitegen.trade.figures import tidy

GREY = "#888888"
"""Stands in for a colour that could not be read."""
USUAL_BEAD: Mapping[str, Any] = {
    "shape": "round",
    "width": 2.0,
    "length": 1.5,
    "hole": 0.8,
    "per_gram": 110.0,
}
"""Stands in for an own bead kind of which something could not be read."""


def make_pattern(got: Got, name: str, file: str, shop: Shop, faults: Faults) -> Pattern:
    """The pattern without its drawn charts and its body."""
    values = got.values
    colours = values["colours"].named if "colours" in values else {}
    return Pattern(
        name=name,
        title=values.get("title", ""),
        summary=values.get("summary", ""),
        makes=Makes(values.get("makes", Makes.ONE.value)),
        revision=values.get("revision", 0 if "revision" in got.at else 1),
        price=values.get("price"),
        colours=tuple(_colour(letter, colour, shop, faults) for letter, colour in colours.items()),
        parts=tuple(_part(part) for part in values.get("parts", ())),
        revisions=tuple(_revision(line) for line in values.get("revisions", ())),
        colourways=tuple(_colourway(way) for way in values.get("colourways", ())),
        gauge=_gauge(values.get("gauge")),
        measured=_measured(values.get("measured")),
        photo=_photo(values.get("photo")),
        bead_kinds={**shop.bead_kinds, **own_beads(values.get("bead_kinds"))},
        file=file,
        at=got.at,
        editions=editions(got),
        **got.picked("needle", "thread", "finding", "piece", "buy"),
    )


def editions(got: Got) -> tuple[str, ...]:
    """What is to be printed, in the order of the table; empty where the source does not say."""
    named = got.values.get("editions", ())
    return tuple(edition for edition in EDITIONS if edition in named)


def _colour(letter: str, got: Got, shop: Shop, faults: Faults) -> Colour:
    values = got.values
    if "stock" not in values:
        return Colour(
            letter,
            values.get("bead", ""),
            values.get("name", letter),
            values.get("hex", GREY),
            at=got.at,
            **got.picked("finish"),
        )
    key = values["stock"]
    bead = shop.stock.get(key)
    if bead is None:
        faults.add("stock-unknown", got.at["stock"], key=key, hint=hint(key, shop.stock))
        return Colour(letter, "", letter, GREY, stock=key, at=got.at)
    at = {**bead.at, **got.at}
    return Colour(letter, bead.bead, bead.name, bead.hex, bead.finish, key, at)


def own_beads(got: Got | None) -> dict[str, OwnBead]:
    """The author's bead kinds by name."""
    return {tidy(name): _own_bead(tidy(name), kind) for name, kind in (got.named.items() if got else ())}


def _own_bead(name: str, got: Got) -> OwnBead:
    values = _whole(got, "shape", "width", "length", "hole", "per_gram") or USUAL_BEAD
    return OwnBead(
        name=name,
        shape=values["shape"],
        width_mm=values["width"],
        length_mm=values["length"],
        hole_mm=values["hole"],
        per_gram=values["per_gram"],
        at=_in_mm(got.at),
    )


def _revision(got: Got) -> Revision:
    values = got.values
    note, corrects = values.get("note", ""), values.get("corrects", "")
    return Revision(values.get("number", 0), values.get("date"), note, corrects, got.at)


def _colourway(got: Got) -> Colourway:
    swaps = {
        letter: Swap(swap.values.get("name", ""), swap.values.get("hex", GREY), swap.at)
        for letter, swap in got.named.items()
    }
    return Colourway(got.values.get("name", ""), swaps, got.at)


def _whole(got: Got | None, *names: str) -> dict[str, Any] | None:
    """The values of a record of which nothing may be missing."""
    if got is None or any(name not in got.values for name in names):
        return None
    return got.values


def _gauge(got: Got | None) -> Gauge | None:
    values = _whole(got, "beads", "width", "rows", "height")
    if got is None or values is None:
        return None
    return Gauge(values["beads"], values["width"], values["rows"], values["height"], _in_mm(got.at))


def _measured(got: Got | None) -> Measured | None:
    values = _whole(got, "width", "height")
    return (
        None if got is None or values is None else Measured(values["width"], values["height"], _in_mm(got.at))
    )


def _photo(got: Got | None) -> Photo | None:
    values = _whole(got, "file", "alt")
    if got is None or values is None:
        return None
    return Photo(values["file"], values["alt"], values.get("caption", ""), lead=True, at=got.at)


def _in_mm(at: Mapping[str, Location]) -> dict[str, Location]:
    """Places under the names the records give their lengths."""
    lengths = ("width", "height", "length", "hole")
    return {f"{name}_mm" if name in lengths else name: where for name, where in at.items()}


def _hang(got: Got | None) -> Hang | None:
    if got is None:
        return None
    values, at = got.values, got.at
    if "finding" in at:
        if "finding" not in values or "from" not in values:
            return None
        places = {"edge" if name == "from" else name: where for name, where in at.items()}
        return Hang(values["from"], finding=values["finding"], at=places)
    if "edge" not in values or "from" not in values:
        return None
    names = {"from": "part", "at": "points"}
    places = {names.get(name, name): where for name, where in at.items()}
    return Hang(values["edge"], part=values["from"], points=values.get("at", ""), at=places)


def _over(got: Got | None) -> Over | None:
    values = _whole(got, "part", "row")
    return None if got is None or values is None else Over(values["part"], values["row"], got.at)


def _loose_finding(got: Got | None) -> LooseFinding | None:
    if got is None:
        return None
    return LooseFinding(got.values.get("kind", ""), got.values.get("width"), _in_mm(got.at))


def _around(got: Got | None) -> Around | None:
    values = _whole(got, "ring")
    return None if got is None or values is None else Around(values["ring"], got.at)


def _rope(got: Got | None) -> Rope | None:
    values = _whole(got, "core", "outer", "stitches")
    if got is None or values is None:
        return None
    return Rope(values["core"], values["outer"], values["stitches"], got.at)


def _worded_chart(got: Got, rope: Rope | None) -> Chart | None:
    """The chart of a part that gives its rows, its rounds or its rope in words."""
    values, name = got.values, got.values.get("name", "")
    for key in ("rows", "rounds"):
        if key in values:
            return chart_of_rows(name, values.get("stitch", ""), values[key], got.at[key])
    return chart_of_rope(name, rope) if rope is not None else None


def _part(got: Got) -> Part:
    values = got.values
    name, stitch = values.get("name", ""), values.get("stitch", "")
    rope = _rope(values.get("rope"))
    unsure = "mirror" in got.at and "mirror" not in values
    strands = () if unsure else values.get("strands", ())
    rule = strands if isinstance(strands, StrandRule) else None
    return Part(
        name=name,
        stitch=stitch,
        hang=_hang(values.get("hang")),
        strands=() if rule else strands,
        chart=_worded_chart(got, rope),
        finding=_loose_finding(values.get("finding")),
        gauge=_gauge(values.get("gauge")),
        around=_around(values.get("around")),
        rope=rope,
        rule=rule,
        over=_over(values.get("over")),
        loom_allowance_mm=values.get("loom_allowance"),
        at=got.at,
        **got.picked("begin", "start", "reinforce", "repeat", "turn", "mirror"),
        **got.picked("base", "net"),
        **got.picked("span", "twist", "clasp", "ends"),
        **got.picked("drop", "zip", "edge_warps"),
    )
