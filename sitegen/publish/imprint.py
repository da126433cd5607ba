"""A piece -> what its PDFs say of themselves: whose they are, what they are about, and from when."""

from __future__ import annotations

from sitegen.publish.dates import changed, published
from sitegen.publish.lessons import stitches
from sitegen.publish.piece import Piece
from sitegen.publish.view import Imprint


def imprint(piece: Piece) -> Imprint:
    """Keywords are the kind of piece, its stitches and its kinds of bead, as readers know them."""
    pattern, shop, words = piece.pattern, piece.shop, piece.words
    kind = [words.text(f"piece.{pattern.piece}")] if pattern.piece else []
    beads = [words.term("bead", bead.bead) for bead in piece.measures.beads]
    first, last = published(pattern), changed([pattern])
    return Imprint(
        author=shop.maker or shop.title,
        keywords=tuple(dict.fromkeys((*kind, *stitches(pattern, words).values(), *beads))),
        published=first.isoformat() if first else "",
        changed=last.isoformat() if last else "",
        ticks=shop.ticks,
    )
