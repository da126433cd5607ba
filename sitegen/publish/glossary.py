"""The theme's terms and the titles of its lessons -> the glossary, in the order of the language's letters."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path

from sitegen.model.shop import Shop
from sitegen.publish.compose import canonical, shop_line
from sitegen.publish.lesson_pages import lesson_address
from sitegen.publish.lessons import lesson_plans, lesson_title
from sitegen.publish.view import ForMachines, Link, Sharing, ShopLine
from sitegen.publish.words import Words

GLOSSARY = "glossary/index.html"
"""Where it stands in the site."""

TERMS = (
    "ab-finish",
    "bail",
    "beading-needle",
    "bicone",
    "braided-thread",
    "bridge",
    "bugle",
    "chart",
    "colourway",
    "core",
    "crimp",
    "cylinder",
    "decrease",
    "drop",
    "ear-wire",
    "edition",
    "finding",
    "finish",
    "full-size-template",
    "gauge",
    "grams-to-buy",
    "half-hitch",
    "hole",
    "increase",
    "jump-ring",
    "letter",
    "level",
    "lined",
    "matte",
    "mirrored-pair",
    "pass",
    "pick-up",
    "pitch",
    "round",
    "round-bead",
    "row",
    "seed-bead",
    "size",
    "spare",
    "stop-bead",
    "strand",
    "swatch",
    "tail",
    "tension",
    "toggle",
    "turn-bead",
    "two-drop",
    "unit",
    "warp",
    "wax",
    "weave-in",
    "weft",
    "word-chart",
    "working-thread",
    "zip",
)
"""Each has a name and a sentence or two in the theme's strings: `glossary.TERM` and `glossary.TERM.is`."""


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade and what it means."""

    anchor: str
    name: str
    meaning: str
    lesson: Link | None
    """Where a stitch is taught."""


@dataclass(frozen=True, slots=True)
class GlossaryView:
    """The glossary, letter by letter."""

    letters: tuple[tuple[str, tuple[Term, ...]], ...]
    canonical: str
    shop: ShopLine
    sharing: Sharing | None = None
    machines: ForMachines | None = None


def glossary_view(shop: Shop, theme: Path, words: Words) -> GlossaryView:
    """All terms, and every stitch with its lesson."""
    say = words.text
    terms = [Term(name, say(f"glossary.{name}"), say(f"glossary.{name}.is"), None) for name in TERMS]
    for plan in lesson_plans(theme):
        title = lesson_title(plan.name, words)
        to = Link(lesson_address(plan.name), say("glossary.to-lesson", stitch=title))
        terms.append(Term(f"stitch-{plan.name}", title, say(f"lesson.{plan.name}.is"), to))
    return GlossaryView(letters=by_letter(terms), canonical=canonical(shop, GLOSSARY), shop=shop_line(shop))


def by_letter(terms: Iterable[Term]) -> tuple[tuple[str, tuple[Term, ...]], ...]:
    """Terms in order of their letters, marks on letters left aside, under the letter they begin with."""
    in_order = sorted(terms, key=lambda term: _plain(term.name))
    return tuple(
        (letter, tuple(some))
        for letter, some in groupby(in_order, key=lambda term: _plain(term.name)[0].upper())
    )


def _plain(name: str) -> str:
    """Small letters without marks: `Ö` stands with `O`."""
    apart = unicodedata.normalize("NFKD", name.casefold())
    return "".join(sign for sign in apart if not unicodedata.combining(sign))
