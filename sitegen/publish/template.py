"""A piece -> the full-size template at the end of its printed sheets, with bars that prove the print.

The piece stands beside the bars, else under them, else on a sheet of its own, else on several that overlap:
whichever it fits first. A string whose ring is too large for a sheet is laid straight, line under line: a cut
up ring would tell its diameter and nothing more, while a maker can lay the string along straight lines and
compare it bead for bead.
"""

from __future__ import annotations

from markupsafe import Markup

from sitegen.draw.bars import LABEL_MM, inch_bar, millimetre_bar
from sitegen.draw.legible import legible, smallest_text
from sitegen.draw.pens import Drawing
from sitegen.draw.template import is_round, is_string, laid_straight, template
from sitegen.draw.tiles import tiles
from sitegen.model.say import Say
from sitegen.publish.blocks import LARGE, LEAST_TEXT, PRINT, Medium
from sitegen.publish.piece import Piece
from sitegen.publish.quantities import Quantities
from sitegen.publish.true_size import TemplateSheet, TemplateView, TrueSize

Room = tuple[float, float]
"""Width and height, mm."""

BESIDE: Room = (55.0, 209.5)
"""Right of the bars; with the other rooms measured on the print style sheet's page of 170 x 230 mm."""
UNDER: Room = (166.0, 72.0)
"""Between the bars and the foot of the page."""
SHEET: Room = (152.0, 198.0)
"""On a sheet of its own, with two bars."""
OVERLAP_MM = 10.0
"""What neighbouring sheets share: enough to lay them on each other and tape them."""
LARGE_SHEET: Room = (140.0, 162.0)
"""The same in large print, whose bars have larger numbers."""
LARGE_KEY_MM = 36.0
"""How high the map of the sheets may be below that."""
KEY_SCALE = 1.6
"""The small map of the sheets has room to be larger than it is drawn."""
GAP_MM = 6.0
"""Between the two pieces of a pair."""


def template_view(piece: Piece, medium: Medium = PRINT) -> TemplateView:
    """The template of one piece; of both where a pair is mirrored and one sheet holds both."""
    say = piece.words.text
    if medium is LARGE:
        return large_template_view(piece)
    drawings = _drawings(piece)
    room = next((name for name, size in (("beside", BESIDE), ("under", UNDER)) if _fits(drawings, size)), "")
    sheets = () if room else _sheets(piece, drawings)
    about = _about(piece, drawings)
    if sheets:
        size = Quantities(piece.words).size(piece.measures.width_mm, piece.measures.height_mm)
        key = "template.next" if not sheets[0].key else "template.sheets"
        about = (*about, say(key, count=len(sheets), size=size))
    figures = _figures(piece, drawings) if room else ()
    return _view(say, room or "sheets", about, figures, sheets)


def _view(
    say: Say,
    placing: str,
    about: tuple[str, ...],
    figures: tuple[TrueSize, ...],
    sheets: tuple[TemplateSheet, ...],
    label_mm: float = LABEL_MM,
) -> TemplateView:
    """The template with its three bars, their numbers so high."""
    return TemplateView(
        placing=placing,
        about=about,
        upright=Markup(millimetre_bar(say, upright=True, label_mm=label_mm).svg("bar-upright")),
        lying=Markup(millimetre_bar(say, upright=False, label_mm=label_mm).svg("bar-lying")),
        inches=Markup(inch_bar(say, label_mm).svg("bar-inches")),
        figures=figures,
        sheets=sheets,
    )


def large_template_view(piece: Piece) -> TemplateView:
    """The template in large print: on sheets of its own, without letters that beads are too small for."""
    say, measures, tell = piece.words.text, piece.measures, Quantities(piece.words)
    least = LEAST_TEXT[LARGE.name]
    lies_straight = _too_long(piece, _drawing(piece))
    whole = legible(
        laid_straight(piece.path, piece.pattern.title, LARGE_SHEET[0], say)
        if lies_straight
        else _drawing(piece, sized=False),
        least,
    )
    parts = tiles(whole, LARGE_SHEET, OVERLAP_MM, say, least)
    count = len(parts.sheets)
    about = list(_about(piece, (whole,)))
    if count > 1:
        size = tell.size(measures.width_mm, measures.height_mm)
        about.append(say("template.sheets", count=count, size=size))
    size = tell.both_sizes(measures.width_mm, measures.height_mm)
    sheets = tuple(
        TemplateSheet(
            say("template.sheet-of", number=number, count=count) if count > 1 else say("template.sheet"),
            *_bars(say, number, least),
            figures=(TrueSize(Markup(sheet.svg(f"template-{number}")), "" if lies_straight else size),),
            key=_large_key(parts.keys[number - 1], f"template-key-{number}", least)
            if parts.keys
            else Markup(),
        )
        for number, sheet in enumerate(parts.sheets, 1)
    )
    return _view(say, "sheets", tuple(about), (), sheets, least)


def _large_key(key: Drawing, uid: str, least: float) -> Markup:
    """The map of the sheets, its numbers at least so high; where it has no room for them, without."""
    scale = min(least / smallest_text(key), LARGE_KEY_MM / key.height_mm)
    return Markup(legible(key, least / scale).svg(uid, scale))


def _drawings(piece: Piece) -> tuple[Drawing, ...]:
    """What is to be placed: the piece, with the other of a mirrored pair only where one sheet holds both."""
    one = _drawing(piece)
    if piece.second is not None:
        both = (one, _drawing(piece.second))
        if any(_fits(both, room) for room in (BESIDE, UNDER, SHEET)):
            return both
    if _too_long(piece, one):
        return (_straight(piece),)
    return (one,)


def _too_long(piece: Piece, drawing: Drawing) -> bool:
    """Whether it is a string that no sheet holds as a ring."""
    return is_string(piece.path) and not _fits((drawing,), SHEET)


def _straight(piece: Piece) -> Drawing:
    """A string in lines as wide as the page, or as a sheet of its own where they are too many."""
    wide, narrow = (
        laid_straight(piece.path, piece.pattern.title, room[0], piece.words.text) for room in (UNDER, SHEET)
    )
    return wide if _fits((wide,), UNDER) else narrow


def _drawing(piece: Piece, sized: bool = True) -> Drawing:
    return template(piece.path, piece.pattern.title, piece.measures, piece.words.text, sized)


def _fits(drawings: tuple[Drawing, ...], room: Room) -> bool:
    """Whether drawings side by side have room."""
    width = sum(drawing.width_mm for drawing in drawings) + GAP_MM * (len(drawings) - 1)
    return width <= room[0] and max(drawing.height_mm for drawing in drawings) <= room[1]


def _about(piece: Piece, drawings: tuple[Drawing, ...]) -> tuple[str, ...]:
    """What is drawn and how it is used, a sentence or two each."""
    say = piece.words.text
    if is_string(piece.path):
        length = Quantities(piece.words).mm(sum(part.strung_mm for part in piece.measures.parts))
        key = "template.lines" if _too_long(piece, _drawing(piece)) else "template.ring"
        about = [say(key, beads=len(piece.path.beads), length=length)]
    else:
        shown = {bead.part for bead in piece.path.beads}
        parts = [part for index, part in enumerate(piece.path.parts) if index in shown]
        about = [] if all(map(is_round, parts)) else [say("template.flat")]
        about += [say("template.round", part=part.name) for part in parts if is_round(part)]
    if piece.second is not None:
        about.append(say("template.mirrored" if len(drawings) == 2 else "template.mirror"))
    elif piece.pattern.makes.pieces > 1:
        about.append(say("template.pair"))
    return tuple(about)


def _figures(piece: Piece, drawings: tuple[Drawing, ...]) -> tuple[TrueSize, ...]:
    """The drawings, which tell their size in mm, with the same in inches beneath."""
    measures = piece.measures
    inches = Quantities(piece.words).size_inches(measures.width_mm, measures.height_mm)
    caption = "" if _too_long(piece, _drawing(piece)) else inches
    return tuple(
        TrueSize(Markup(drawing.svg(f"template-{number}")), caption)
        for number, drawing in enumerate(drawings, start=1)
    )


def _sheets(piece: Piece, drawings: tuple[Drawing, ...]) -> tuple[TemplateSheet, ...]:
    """All on one sheet, or the first drawing over as many as it needs, each with its place in the whole.

    A piece that just fits a sheet leaves the lines that tell its size no room: it goes without.
    """
    say = piece.words.text
    whole = drawings[0] if is_string(piece.path) else _drawing(piece, sized=False)
    parts = tiles(whole, SHEET, OVERLAP_MM, say)
    if _fits(drawings, SHEET) or not parts.keys:
        shown = _figures(piece, drawings if _fits(drawings, SHEET) else (whole,))
        return (TemplateSheet(say("template.sheet"), *_bars(say, 1), figures=shown, key=Markup()),)
    numbered = zip(parts.sheets, parts.keys, strict=True)
    return tuple(
        TemplateSheet(
            say("template.sheet-of", number=number, count=len(parts.sheets)),
            *_bars(say, number),
            figures=(TrueSize(Markup(sheet.svg(f"template-{number}")), ""),),
            key=Markup(key.svg(f"template-key-{number}", KEY_SCALE)),
        )
        for number, (sheet, key) in enumerate(numbered, start=1)
    )


def _bars(say: Say, number: int, label_mm: float = LABEL_MM) -> tuple[Markup, Markup]:
    """A sheet's own upright and lying bar."""
    return (
        Markup(millimetre_bar(say, upright=True, label_mm=label_mm).svg(f"bar-upright-{number}")),
        Markup(millimetre_bar(say, upright=False, label_mm=label_mm).svg(f"bar-lying-{number}")),
    )
