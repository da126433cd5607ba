"""A piece -> its pictures for the front page, at the size they have there and at twice that."""

from __future__ import annotations

from pathlib import Path

from sitegen.publish.picture import picture_look, png, trimmed
from sitegen.publish.piece import Piece

CARD, CARD_LARGE = "card.png", "card-2.png"
"""Beside a pattern's page."""
CARD_ROOM = (316, 284)
"""What a card has on the front page, pixels."""


def card_files(piece: Piece, theme: Path) -> tuple[dict[str, bytes], tuple[int, int]]:
    """File name -> contents, and the size in pixels at which the card is shown."""
    picture, ground = trimmed(piece.picture), picture_look(theme).plate
    small, size = png(picture, ground, CARD_ROOM)
    large, _ = png(picture, ground, (2 * size[0], 2 * size[1]))
    return {CARD: small, CARD_LARGE: large}, size
