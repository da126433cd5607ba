"""A pattern -> what its page needs to put it on the shopping list."""

from __future__ import annotations

from sitegen.publish.piece import Piece
from sitegen.publish.view import ToList

MOST_PIECES = 999
"""Of one pattern on a list."""


def list_name(piece: Piece) -> str:
    """What the list calls a pattern: its name, and after a point the folder of its colourway."""
    return ".".join(filter(None, (piece.pattern.name, piece.folder)))


def to_list(piece: Piece) -> ToList:
    """For the page of a piece, in the author's colours or in a colourway."""
    return ToList(list_name(piece), str(piece.measures.pieces), str(MOST_PIECES))
