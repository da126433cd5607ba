"""Customs of languages: plural categories, numbers, dates, money and forms of trade words."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from sitegen.model.numbers import plain
from sitegen.publish.quantities import Quantities
from sitegen.publish.words import Words


def words(theme: Path, language: str, messages: str) -> Words:
    """A language with these messages alone."""
    folder = theme / "strings" / language
    folder.mkdir(parents=True)
    (folder / "all.yaml").write_text(messages, encoding="utf-8")
    return Words(theme, language)


@pytest.mark.parametrize(("count", "said"), [(1, "1 koralik"), (3, "3 koraliki"), (5, "5 koralików")])
def test_plurals_are_those_of_the_language(tmp_path: Path, count: int, said: str) -> None:
    """Polish has three forms for whole numbers (Unicode CLDR, plural rules, pl)."""
    forms = '{one: "{count} koralik", few: "{count} koraliki", many: "{count} koralików", other: "-"}'
    assert words(tmp_path, "pl", f"locale: pl\nn: {forms}\n").text("n", count=count) == said


def test_numbers_dates_and_money_in_german(tmp_path: Path) -> None:
    """Decimal comma, day before month, the sign of the currency last (Unicode CLDR, de)."""
    german = words(tmp_path, "de", 'locale: de_DE\nunit.m: "{value} m"\nn: "{value}"\n')
    assert Quantities(german).metres(1420) == "1,42 m"
    assert german.text("n", value=plain(31.5)) == "31,5"
    assert german.text("n", value="31.5") == "31.5"  # an author's text is no number
    assert german.date(date(2026, 9, 14)) == "14. September 2026"
    assert german.money(Decimal("6.5"), "EUR") == "6,50\N{NO-BREAK SPACE}€"


def test_trade_words_have_forms_and_keep_their_sizes(tmp_path: Path) -> None:
    messages = 'thread.nylon: Nylon\nto.left: nach links\nt: "{thread:thread}"\nw: "{way:to}"\n'
    german = words(tmp_path, "de", "locale: de_DE\n" + messages)
    assert german.text("t", thread="nylon 0.25 mm") == "Nylon 0,25 mm"
    assert german.text("t", thread="horsehair 0.3 mm") == "horsehair 0.3 mm"
    assert german.text("w", way="left") == "nach links"


def test_words_of_the_trade_that_stand_together_are_said_one_by_one(tmp_path: Path) -> None:
    """One that the language lacks leaves all of them as they stand: half a translation is none."""
    german = words(tmp_path, "de", "locale: de_DE\nfinish.matte: matt\nfinish.lined: mit Einzug\n")
    assert german.term("finish", "matte, lined") == "matt, mit Einzug"
    assert german.term("finish", "matte pearl") == "matte pearl"
    assert german.term("finish", "") == ""
