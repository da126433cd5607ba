"""The shop file, read: who sells, in which money, with which habits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal

from sitegen.model.bundle import Bundle
from sitegen.model.location import Places
from sitegen.model.source import Aside, Colour, OwnBead, Pattern, Prose


@dataclass(frozen=True, slots=True)
class StockBead:
    """A bead the shop defines once for all its patterns."""

    key: str
    bead: str
    name: str
    hex: str
    finish: str = "opaque"
    pack_grams: float | None = None
    """Grams in the pack as sold; None takes the shop's usual pack."""
    price: Decimal | None = None
    """Of one pack, in the shop's currency."""
    at: Places = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class ShopPage:
    """A page of the author's own, such as help or a licence."""

    name: str
    """From the file name; names the page's folder."""
    title: str
    summary: str
    in_head: bool
    """Linked from the head of every page; otherwise from the foot."""
    body: tuple[Prose | Aside, ...]
    translations: Mapping[str, ShopPage] = field(default_factory=dict)
    """Language -> the page in it, where the author has written one."""
    file: str = ""
    at: Places = field(default_factory=dict, compare=False, repr=False)


COLOUR, INK, LARGE_PRINT, ONE_PAGE = "colour", "ink", "large", "summary"
EDITIONS = (COLOUR, INK, LARGE_PRINT, ONE_PAGE)
"""What a pattern may be printed as, in the order in which readers are offered them."""

TRANSLATED = ("title", "tagline", "contact", "licence", "about")
"""The texts of a shop that may be given in other languages."""


@dataclass(frozen=True, slots=True)
class Shop:
    """What all patterns of a shop share."""

    title: str = "Unnamed shop"
    tagline: str = ""
    maker: str = ""
    """Whose name stands on the patterns."""
    contact: str = ""
    """Where buyers reach the maker, in words."""
    buy: str = ""
    """Address where patterns are bought, `{name}` for a pattern's name; empty where there is none."""
    language: str = "en"
    """Of these texts."""
    languages: tuple[str, ...] = ("en",)
    """All that the site is made in; the first is that of the authors' texts and stands at its top."""
    translations: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    """Language -> the shop's texts in it, by their names here; what is not there stays as it is."""
    foreign: frozenset[str] = frozenset()
    """Names of the texts that are not in `language` but in the first one."""
    currency: str = "EUR"
    """ISO 4217 code."""
    address: str = ""
    """Where the site will live, such as `https://example.org/`; may be empty."""
    licence: str = ""
    """What a buyer may do with the pattern and with pieces made from it."""
    about: str = ""
    """A paragraph for the front page's foot."""
    theme: str = "linen"
    needle: str = "beading 12"
    thread: str = "nylon 0.25 mm"
    working_length_mm: float = 1600.0
    """The longest thread a maker is asked to handle at once."""
    tail_mm: float = 150.0
    """Left over at each end of every length."""
    slack: float = 1.2
    """Thread used over thread computed, for hands that are not machines."""
    pack_grams: float = 5.0
    """The usual pack; grams to buy round up to whole packs."""
    spare: float = 0.10
    """Share of beads bought on top of the count."""
    finding_passes: int = 3
    """Times the thread goes through a finding's loop."""
    loom_allowance_mm: float = 600.0
    """How much longer a warp is cut than the loom strip: to tie on, and to finish."""
    editions: tuple[str, ...] = (COLOUR,)
    """What its patterns are printed as, some of `EDITIONS` in their order."""
    ticks: bool = False
    """Whether the boxes of printed steps are fields that can be ticked on a screen."""
    stock: Mapping[str, StockBead] = field(default_factory=dict)
    bead_kinds: Mapping[str, OwnBead] = field(default_factory=dict)
    """Bead kinds that the shop has measured itself, by name."""
    bundles: tuple[Bundle, ...] = ()
    """In the order they are shown."""
    pages: tuple[ShopPage, ...] = ()
    """In the order in which they are linked; from files of their own."""
    at: Places = field(default_factory=dict, compare=False, repr=False)

    @property
    def folder(self) -> str:
        """Where its pages stand below the top of the site: empty for the first language, else `de/`."""
        return self.folder_of(self.language)

    def folder_of(self, language: str) -> str:
        """Where the pages of one of its languages stand below the top of the site."""
        return "" if language == self.languages[0] else f"{language}/"

    @property
    def author_language(self) -> str:
        """That of what its authors wrote and did not translate; empty where it is the shop's own."""
        return "" if self.language == self.languages[0] else self.languages[0]

    def language_of(self, text: str) -> str:
        """The language of one of its `TRANSLATED` texts, empty where it is the shop's own."""
        return self.author_language if text in self.foreign else ""

    def said(self, page: ShopPage) -> tuple[ShopPage, str]:
        """A page of its own in the shop's language; where it is not translated, as written and in which."""
        if self.language in page.translations:
            return page.translations[self.language], ""
        return page, self.author_language

    def editions_of(self, pattern: Pattern) -> tuple[str, ...]:
        """What a pattern is printed as: what its source says, else what the shop says."""
        return pattern.editions or self.editions

    def stocked(self, colour: Colour | None) -> StockBead | None:
        """The bead in stock that a colour was taken from, if any."""
        return self.stock.get(colour.stock) if colour and colour.stock else None

    def in_language(self, language: str) -> Shop:
        """The same shop in another of its languages; texts that are not translated stay and are noted."""
        if language == self.languages[0]:
            return self
        words = self.translations.get(language, {})
        foreign = frozenset(name for name in TRANSLATED if getattr(self, name) and name not in words)
        texts = {name: words.get(name, getattr(self, name)) for name in TRANSLATED}
        return replace(self, language=language, foreign=foreign, **texts)
