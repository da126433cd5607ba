"""A pattern worked out -> its facts, materials, supplies, difficulty and cautions, in words."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from markupsafe import Markup

from sitegen.draw.bead_key import bead_keys
from sitegen.draw.pens import Drawing
from sitegen.measure.difficulty import shown_points
from sitegen.model.numbers import plain
from sitegen.publish.piece import CRIMP, Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.view import BeadLine, Difficulty, Fact, ReasonLine
from sitegen.publish.words import Words
from sitegen.trade.threads import parse_thread

KEY_ROOM = (17.0, 8.6)
"""Width and height that the drawing of a bead may take in the materials table, mm."""
LARGEST_KEY = 2.8
GENERAL_CAUTIONS = ("needle", "eyes", "children")
"""Told with every pattern; those on thread and metal depend on what it is made of."""


def facts(piece: Piece) -> tuple[Fact, ...]:
    """What a reader wants to know first."""
    say, tell, measures = piece.words.text, Quantities(piece.words), piece.measures
    pieces = measures.pieces
    low, high = tell.minutes(measures.minutes_low), tell.minutes(measures.minutes_high)
    weight_key = f"comfort.{measures.comfort}" if measures.comfort else "facts.weight-also"
    weight = say(weight_key, ounces=tell.ounces(measures.weight_g))
    found = [
        Fact(
            say("facts.size"),
            tell.size(measures.width_mm, measures.height_mm),
            tell.size_inches(measures.width_mm, measures.height_mm),
        ),
    ]
    if piece.pattern.measured:
        own = piece.pattern.measured
        width, height = own.width_mm, own.height_mm
        found.append(Fact(say("facts.measured"), tell.size(width, height), tell.size_inches(width, height)))
    for part in measures.parts:
        if part.strung_mm:
            length = tell.mm(part.strung_mm), tell.inches(part.strung_mm)
            found.append(Fact(say("facts.strung"), *length))
    if measures.drop_mm is not None:
        found.append(Fact(say("facts.drop"), tell.mm(measures.drop_mm), tell.inches(measures.drop_mm)))
    return (
        *found,
        Fact(say("facts.time"), say("facts.time-range", low=low, high=high), say("facts.time-also")),
        Fact(
            say("facts.beads"),
            say("facts.beads-total", total=measures.bead_total),
            say("facts.beads-each", each=measures.bead_each) if pieces > 1 else "",
        ),
        Fact(say("facts.weight"), tell.grams(measures.weight_g), weight),
        Fact(
            say("facts.thread"),
            tell.metres(measures.thread.total_mm * pieces),
            tell.feet(measures.thread.total_mm * pieces),
        ),
    )


def bead_scale(piece: Piece) -> str:
    """How much larger than life the beads of the materials table are drawn."""
    return plain(_keys(piece)[1], 1)


def _keys(piece: Piece) -> tuple[Mapping[str, Drawing], float]:
    """Letter -> how its bead looks, and the scale that all of them share."""
    drawn = bead_keys(piece.pattern, piece.words.text)
    fits = [min(KEY_ROOM[0] / one.width_mm, KEY_ROOM[1] / one.height_mm) for one in drawn.values()]
    return drawn, min([LARGEST_KEY, *fits])


def bead_lines(piece: Piece) -> tuple[BeadLine, ...]:
    """The materials table."""
    tell = Quantities(piece.words)
    keys, scale = _keys(piece)
    uid = f"{piece.folder}-bead" if piece.folder else "bead"
    return tuple(
        BeadLine(
            letter=bead.letter,
            name=bead.name,
            key=Markup(keys[bead.letter].svg(f"{uid}-{bead.letter}", scale)),
            bead=bead.bead if bead.finish == "opaque" else f"{bead.bead}, {bead.finish}",
            each=str(bead.each),
            total=str(bead.total),
            grams=tell.grams(bead.grams),
            buy=piece.words.text("unit.g", value=plain(bead.buy_grams, 1)),
            packs=piece.words.text("beads.packs", count=bead.packs, grams=plain(bead.pack_grams, 1)),
        )
        for bead in piece.measures.beads
    )


def supplies(piece: Piece) -> tuple[Fact, ...]:
    """Needle, thread with every length to cut, and findings."""
    say, tell, measures = piece.words.text, Quantities(piece.words), piece.measures
    lengths = measures.thread.lengths
    fit = say("supplies.fit", count=measures.passes.most)
    if measures.passes.remedy:
        tight, remedy = measures.passes.tight, piece.words.say(measures.passes.remedy)
        fit = say("supplies.tight", count=len(tight), step=piece.row_of(tight[0].step), remedy=remedy)
    found = [
        Fact(say("supplies.needle"), piece.needle, fit),
        Fact(
            say("supplies.thread"),
            piece.thread,
            say("supplies.thread-also", count=len(lengths), pieces=measures.pieces),
        ),
    ]
    for number, cut in enumerate(lengths, 1):
        both = say("supplies.cut", metric=tell.metres(cut.cut_mm), imperial=tell.feet(cut.cut_mm))
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
        both = {"metric": tell.metres(line.each_mm), "imperial": tell.feet(line.each_mm)}
        number = line.count * measures.pieces
        cut = say("supplies.warps-cut", count=measures.pieces, number=number, **both)
        also = say(
            "supplies.warps-doubled" if line.doubled else "supplies.warps-also",
            allowance=say("unit.cm", value=plain(line.allowance_mm / 10, 1)),
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
            ReasonLine(f"{share:.1f}", piece.words.say(why.why)) for share, why in ranked if share > 0
        ),
    )


def cautions(piece: Piece) -> tuple[Fact, ...]:
    """What can hurt in making it."""
    return cautions_of((piece.thread,), piece.findings, piece.words)


def cautions_of(threads: Iterable[str], findings: Collection[str], words: Words) -> tuple[Fact, ...]:
    """What can hurt, for these threads and these kinds of finding, in trade words."""
    materials = dict.fromkeys(thread.material for thread in map(parse_thread, threads) if thread)
    keys = [*GENERAL_CAUTIONS[:2], *(f"thread-{name}" for name in materials), *GENERAL_CAUTIONS[2:]]
    if findings:
        keys.append("metal")
    if CRIMP in findings:
        keys.append("crimp")
    say = words.text
    return tuple(Fact(say(f"caution.{key}.label"), say(f"caution.{key}.text")) for key in keys)
