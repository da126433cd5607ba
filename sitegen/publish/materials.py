"""A pattern worked out -> its facts, materials, supplies, difficulty and cautions, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from markupsafe import Markup

from sitegen.draw.bead_key import bead_keys
from sitegen.draw.pens import Drawing
from sitegen.draw.spared import spared
from sitegen.measure.difficulty import shown_points
from sitegen.model.measures import BeadCount
from sitegen.model.numbers import plain
from sitegen.model.source import Pattern
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.units import in_both
from sitegen.publish.view import BeadLine, Difficulty, Fact, ReasonLine
from sitegen.publish.words import Words
from sitegen.trade.beads import bead_kind
from sitegen.trade.cautions import Uses, cautions_for, limits
from sitegen.trade.figures import tidy
from sitegen.trade.threads import parse_thread

KEY_ROOM = (17.0, 8.6)
"""Width and height that the drawing of a bead may take in the materials table, mm."""
LARGEST_KEY = 2.8


def facts(piece: Piece) -> tuple[Fact, ...]:
    """What a reader wants to know first."""
    say, tell, measures = piece.words.text, Quantities(piece.words), piece.measures
    pieces = measures.pieces
    low, high = tell.minutes(measures.minutes_low), tell.minutes(measures.minutes_high)
    weight = say(f"comfort.{measures.comfort}" if measures.comfort else "facts.weight-also")
    found = [Fact(say("facts.size"), tell.both_sizes(measures.width_mm, measures.height_mm))]
    if piece.pattern.measured:
        own = piece.pattern.measured
        found.append(Fact(say("facts.measured"), tell.both_sizes(own.width_mm, own.height_mm)))
    for part in measures.parts:
        if part.strung_mm:
            found.append(Fact(say("facts.strung"), tell.both_lengths(part.strung_mm)))
    if measures.drop_mm is not None:
        found.append(Fact(say("facts.drop"), tell.both_lengths(measures.drop_mm)))
    return (
        *found,
        Fact(say("facts.time"), say("facts.time-range", low=low, high=high), say("facts.time-also")),
        Fact(
            say("facts.beads"),
            say("facts.beads-total", total=measures.bead_total),
            say("facts.beads-each", each=measures.bead_each) if pieces > 1 else "",
        ),
        Fact(say("facts.weight"), tell.both_weights(measures.weight_g), weight),
        Fact(say("facts.thread"), tell.both_threads(measures.thread.total_mm * pieces)),
    )


def _keys(piece: Piece) -> tuple[Mapping[str, Drawing], float]:
    """Letter -> how its bead looks, and the scale that all of them share."""
    drawn = bead_keys(piece.pattern, piece.words.text)
    if piece.unfilled:
        drawn = {letter: spared(one) for letter, one in drawn.items()}
    fits = [min(KEY_ROOM[0] / one.width_mm, KEY_ROOM[1] / one.height_mm) for one in drawn.values()]
    return drawn, min([LARGEST_KEY, *fits])


def bead_table(piece: Piece) -> tuple[tuple[BeadLine, ...], str]:
    """The lines of the materials table, and how much larger than life their beads are drawn."""
    keys, scale = _keys(piece)
    uid = f"{piece.folder}-bead" if piece.folder else "bead"
    lines = tuple(
        bead_line(
            bead,
            piece.words,
            Markup(keys[bead.letter].svg(f"{uid}-{bead.letter}", scale)),
            colour_language(piece, bead.letter),
        )
        for bead in piece.measures.beads
    )
    return lines, plain(scale, 1)


def bead_line(bead: BeadCount, words: Words, key: Markup, language: str) -> BeadLine:
    """One line of it, with the drawing of the bead and the language of its name if that is not the page's."""
    tell = Quantities(words)
    return BeadLine(
        letter=bead.letter,
        name=bead.name,
        key=key,
        bead=bead_words(bead.bead, bead.finish, words),
        each=str(bead.each),
        total=str(bead.total),
        grams=tell.both_weights(bead.grams),
        buy=in_both(words.text("unit.g", value=plain(bead.buy_grams, 1)), tell.ounces(bead.buy_grams)),
        packs=words.text("beads.packs", count=bead.packs, grams=plain(bead.pack_grams, 1)),
        language=language,
    )


def colour_language(piece: Piece, letter: str) -> str:
    """The language of a colour's name, where it is not that of the page."""
    return piece.language_of(lambda pattern: (colour := pattern.colour(letter)) and colour.name)


def bead_words(bead: str, finish: str, words: Words) -> str:
    """A bead kind and, unless it is the usual one, its finish."""
    key = "beads.kind" if finish == "opaque" else "beads.kind-finish"
    return words.text(key, bead=bead, finish=finish)


def supplies(piece: Piece) -> tuple[Fact, ...]:
    """Needle, thread with every length to cut, and findings."""
    say, tell, measures = piece.words.text, Quantities(piece.words), piece.measures
    lengths = measures.thread.lengths
    fit = say("supplies.fit", count=measures.passes.most)
    if measures.passes.remedy:
        tight, remedy = measures.passes.tight, piece.words.say(measures.passes.remedy)
        fit = say("supplies.tight", count=len(tight), step=piece.row_of(tight[0].step), remedy=remedy)
    found = [
        Fact(say("supplies.needle"), say("supplies.needle-is", needle=piece.needle), fit),
        Fact(
            say("supplies.thread"),
            say("supplies.thread-is", thread=piece.thread),
            say("supplies.thread-also", count=len(lengths), pieces=measures.pieces),
        ),
    ]
    for number, cut in enumerate(lengths, 1):
        both = tell.both_threads(cut.cut_mm)
        first, last = piece.row_of(cut.first_step), piece.row_of(cut.last_step)
        where = say("supplies.cut-where", first=first, last=last)
        found.append(Fact(say("supplies.length", number=number, count=len(lengths)), both, where))
    found += _warps(piece)
    for kind, count in piece.findings.items():
        amount = say("supplies.findings", number=count * measures.pieces, kind=kind)
        found.append(Fact(say("supplies.finding"), amount))
    return tuple(found)


def _warps(piece: Piece) -> list[Fact]:
    """The warps of each loom strip."""
    say, tell, measures = piece.words.text, Quantities(piece.words), piece.measures
    found = []
    for line in measures.warps:
        number, length = line.count * measures.pieces, tell.both_threads(line.each_mm)
        cut = say("supplies.warps-cut", count=measures.pieces, number=number, length=length)
        also = say(
            "supplies.warps-doubled" if line.doubled else "supplies.warps-also",
            allowance=tell.both_spans(line.allowance_mm),
        )
        found.append(Fact(say("supplies.warps", count=len(measures.warps), part=line.part), cut, also))
    return found


def difficulty(piece: Piece) -> Difficulty:
    """Level, score and every factor with its points, the weightiest first."""
    hard = piece.measures.difficulty
    score, points = shown_points(hard)
    ranked = sorted(zip(points, hard.reasons, strict=True), key=lambda pair: -pair[0])
    return Difficulty(
        level=piece.words.text(f"level.{hard.level}"),
        score=piece.words.text("difficulty.score", score=plain(score, 1)),
        reasons=tuple(
            ReasonLine(piece.words.number(f"{share:.1f}"), piece.words.say(why.why))
            for share, why in ranked
            if share > 0
        ),
    )


def cautions(piece: Piece) -> tuple[Fact, ...]:
    """What can hurt in making and wearing it."""
    return cautions_of(uses(piece), piece.words)


def uses(piece: Piece) -> Uses:
    """What a piece has that may hurt, and that asks for tools."""
    findings = (name.partition(",")[0] for name in piece.findings)  # a ring is named with its size
    return uses_of([piece.pattern], [piece.thread], findings)


def uses_of(patterns: Sequence[Pattern], threads: Iterable[str], findings: Iterable[str]) -> Uses:
    """What these patterns have that may hurt, worked in these threads and with these kinds of finding."""
    beads = [bead_kind(one.bead, pattern.bead_kinds) for pattern in patterns for one in pattern.colours]
    return Uses(
        threads=frozenset(thread.material for thread in map(parse_thread, threads) if thread),
        findings=frozenset(map(tidy, findings)),
        shapes=frozenset(bead.shape for bead in beads if bead),
        stitches=frozenset(part.stitch for pattern in patterns for part in pattern.parts),
    )


def cautions_of(uses: Uses, words: Words) -> tuple[Fact, ...]:
    """What can hurt, for what is used, in words."""
    say = words.text
    figures = {name: plain(value) for name, value in limits().items()}
    return tuple(
        Fact(say(f"caution.{name}.label"), say(f"caution.{name}.text", **figures))
        for name in cautions_for(uses)
    )
