"""The kinds of piece a pattern can be for: the one table of them."""

from __future__ import annotations

PIECE_KINDS = (
    "earrings",
    "pendant",
    "necklace",
    "bracelet",
    "ring",
    "brooch",
    "bead",
    "charm",
    "tag",
    "bookmark",
    "ornament",
)
"""The kinds of piece a catalogue is ordered by, in its order. Everyday words; common practice, no source."""
