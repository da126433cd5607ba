"""A raw scalar and the kind it should be -> its value, or the problem it has."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from sitegen.model.numbers import plain
from sitegen.read.faults import hint
from sitegen.read.kinds import (
    Choice,
    Day,
    Decimals,
    Flag,
    Form,
    Hex,
    Length,
    Mass,
    Percent,
    Price,
    Single,
    Text,
    Whole,
    WordChart,
)
from sitegen.read.yaml_nodes import Scalar, core_value

_NUMBER = r"[0-9]{1,9}(?:\.[0-9]{1,6})?"
_MM = {"mm": Decimal(1), "cm": Decimal(10), "m": Decimal(1000)}


@dataclass(frozen=True, slots=True)
class Refused:
    """A value that is not what it should be."""

    code: str
    values: Mapping[str, object] = field(default_factory=dict)


Value = str | int | float | bool | Decimal | date | None


def take_scalar(kind: Single, scalar: Scalar) -> Value | Refused:
    """The scalar's value by its kind. `None` stands for a price of nothing."""
    text = " ".join(scalar.text.split())
    match kind:
        case Text():
            return text if len(text) <= kind.most else _too_long(text, kind.most)
        case WordChart():
            return scalar.text
        case Whole() | Decimals():
            return _number(kind, scalar)
        case Length():
            return _unit(text, _MM, kind.least, kind.most, "mm")
        case Mass():
            return _unit(text, {"g": Decimal(1)}, kind.least, kind.most, "g")
        case Percent():
            share = _unit(text, {"%": Decimal(1)}, 0, kind.most, "%")
            return share if isinstance(share, Refused) else share / 100
        case Price():
            return _price(text)
        case Day():
            return _day(text)
        case Hex():
            return text.lower() if re.fullmatch("#[0-9A-Fa-f]{6}", text) else Refused("hex", {"value": text})
        case Flag():
            value = core_value(scalar)
            return value if isinstance(value, bool) else Refused("yes-or-no", {"value": text})
        case Choice():
            known = text in kind.options
            return (
                text
                if known
                else Refused("choice-unknown", {"value": text, "hint": hint(text, kind.options)})
            )
        case Form():
            fits = len(text) <= 200 and re.fullmatch(kind.pattern, text)
            return text if fits else Refused("form", {"value": text, "wanted": kind.wanted})


def _too_long(text: str, most: int) -> Refused:
    return Refused("text-long", {"count": len(text), "most": most})


def _range(value: str, least: float, most: float, unit: str = "") -> Refused:
    after = f" {unit}" if unit else ""
    values = {"value": value, "least": f"{plain(least)}{after}", "most": f"{plain(most)}{after}"}
    return Refused("out-of-range", values)


def _number(kind: Whole | Decimals, scalar: Scalar) -> Value | Refused:
    value = core_value(scalar)
    whole = isinstance(kind, Whole)
    right = isinstance(value, int) if whole else isinstance(value, int | float)
    if not right or isinstance(value, bool):
        return Refused("whole-number" if whole else "number", {"value": scalar.text})
    assert isinstance(value, int | float)
    if not kind.least <= value <= kind.most:
        return _range(scalar.text, kind.least, kind.most)
    return value


def _unit(text: str, units: Mapping[str, Decimal], least: float, most: float, base: str) -> float | Refused:
    found = re.fullmatch(rf"(-?{_NUMBER}) ?([a-z%]+)", text)
    if not found or found[2] not in units:
        return Refused({"mm": "length", "g": "mass", "%": "percent"}[base], {"value": text})
    amount = float(Decimal(found[1]) * units[found[2]])
    if not (math.isfinite(amount) and least <= amount <= most):
        return _range(text, least, most, base)
    return amount


def _price(text: str) -> Decimal | Refused | None:
    if text == "free":
        return None
    if not re.fullmatch(r"[0-9]{1,7}(\.[0-9]{1,2})?", text):
        return Refused("price", {"value": text})
    amount = Decimal(text)
    return amount if amount else None


def _day(text: str) -> date | Refused:
    if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            pass
    return Refused("date", {"value": text})
