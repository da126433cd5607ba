"""Numbers with units -> the words a reader sees, in metric and in imperial units."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

from sitegen.model.numbers import GRAMS_PER_OUNCE, MM_PER_INCH, Plain, inches, plain
from sitegen.publish.units import InBoth, in_both
from sitegen.publish.words import Words

_STEP_MINUTES = 5
"""Times are estimates: minutes are shown rounded to this."""


@dataclass(frozen=True, slots=True)
class Quantities:
    """Says quantities in the words of a theme's language."""

    words: Words

    def size(self, width_mm: float, height_mm: float) -> str:
        """`31.5 × 78 mm`."""
        return self.words.text("unit.size-mm", width=plain(width_mm, 1), height=plain(height_mm, 1))

    def size_inches(self, width_mm: float, height_mm: float) -> str:
        """`1 1/4 × 3 1/16 in`."""
        return self.words.text("unit.size-in", width=inches(width_mm), height=inches(height_mm))

    def mm(self, length_mm: float) -> str:
        """`78 mm`."""
        return self.words.text("unit.mm", value=plain(length_mm, 1))

    def inches(self, length_mm: float) -> str:
        """`3 1/16 in`."""
        return self.words.text("unit.in", value=inches(length_mm))

    def metres(self, length_mm: float) -> str:
        """`1.42 m`, always to the centimetre."""
        return self.words.text("unit.m", value=Plain(f"{length_mm / 1000:.2f}"))

    def feet(self, length_mm: float) -> str:
        """`4 ft 8 in`, rounded up to whole inches: thread is never cut short."""
        whole, rest = divmod(math.ceil(round(length_mm / MM_PER_INCH, 6)), 12)
        if not whole:
            return self.words.text("unit.in", value=rest)
        return self.words.text("unit.ft-in", feet=whole, inches=rest)

    def grams(self, grams: float) -> str:
        """`3.4 g`; below a tenth of a gram, to the hundredth."""
        return self.words.text("unit.g", value=Plain(f"{grams:.{1 if grams >= 0.1 else 2}f}"))

    def ounces(self, grams: float) -> str:
        """`0.12 oz`; below a tenth of an ounce, to the second figure that is not nothing."""
        ounces = grams / GRAMS_PER_OUNCE
        places = 2 if ounces >= 0.1 or not ounces else 1 - math.floor(math.log10(ounces))
        return self.words.text("unit.oz", value=plain(ounces, places))

    def both_sizes(self, width_mm: float, height_mm: float) -> InBoth:
        """Width and height in millimetres and in inches."""
        return in_both(self.size(width_mm, height_mm), self.size_inches(width_mm, height_mm))

    def both_lengths(self, length_mm: float) -> InBoth:
        """A length in millimetres and in inches."""
        return in_both(self.mm(length_mm), self.inches(length_mm))

    def both_spans(self, length_mm: float) -> InBoth:
        """Thread by the hand: `15 cm (6 in)`, inches rounded up to whole ones."""
        inches = plain(math.ceil(round(length_mm / MM_PER_INCH, 6)), 0)
        return in_both(
            self.words.text("unit.cm", value=plain(length_mm / 10, 1)),
            self.words.text("unit.in", value=inches),
        )

    def both_threads(self, length_mm: float) -> InBoth:
        """A length of thread in metres and in feet."""
        return in_both(self.metres(length_mm), self.feet(length_mm))

    def both_weights(self, grams: float) -> InBoth:
        """A weight in grams and in ounces."""
        return in_both(self.grams(grams), self.ounces(grams))

    def minutes(self, minutes: int) -> str:
        """`2 h 15 min`, rounded to five minutes and never nothing."""
        hours, rest = divmod(self.shown_minutes(minutes), 60)
        if not hours:
            return self.words.text("unit.min", minutes=rest)
        return self.words.text("unit.h-min" if rest else "unit.h", hours=hours, minutes=rest)

    def shown_minutes(self, minutes: int) -> int:
        """As `minutes` says them: rounded to five and never nothing."""
        return max(_STEP_MINUTES, _STEP_MINUTES * round(minutes / _STEP_MINUTES))

    def price(self, price: Decimal | None, currency: str) -> str:
        """`€6.50` as the language writes money, or the word for free."""
        if price is None:
            return self.words.text("price.free")
        return self.words.money(price, currency)

    def kilobytes(self, size: int) -> str:
        """`84 kB`: thousands of bytes, rounded up."""
        return self.words.text("unit.kb", value=math.ceil(size / 1000))
