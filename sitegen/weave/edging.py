"""Picots or beads in words -> a picot edge or a whipped edge, sewn over the bridges of an earlier part.

Picot edge: under the first bridge, the beads of a picot picked up, under the next bridge and back out
through the last of them, which is the first stem of the next picot: from now on all but the first bead are
picked up each time.
Whipped edge: beads are picked up between one bridge and the next, always from the same side over the edge;
then the thread runs back through all of them. A picot is three or more beads in a point (https://sites.google.com/site/sagescupboard/glossary);
the paths are common practice, no source.
"""

from __future__ import annotations

from itertools import accumulate, pairwise

from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase
from sitegen.weave.curves import Placed, along, hanging_line, upside_down
from sitegen.weave.hooks import Edge, edge_of, missing_bridge, reach
from sitegen.weave.loops import loops_part
from sitegen.weave.work import Work

MOST_AT_A_TIME = 3
"""Whipped stitches of so many beads may share a row of the step table; longer ones stand by themselves."""


def picot_part(work: Work, part: Part) -> None:
    """Work a picot edge: on bridges with shared stems, on beads as little loops."""
    assert part.hang is not None
    if part.hang.points == "beads":
        loops_part(work, part)
        return
    edge = edge_of(work, part, "bridges")
    index = _begin(work, part)
    if missing_bridge(work, part, edge) or not reach(work, part, edge, edge.hooks[0], 0):
        return
    picots = part.all_strands
    words = [(letter, spot) for letter, spot in zip(picots[0].letters, picots[0].spots, strict=True)]
    for picot in picots[1:]:
        words += list(zip(picot.letters[1:], picot.spots[1:], strict=True))
    stems = list(accumulate((len(picot.letters) - 1 for picot in picots), initial=0))
    places = _picot_places(work, edge, [letter for letter, _ in words], stems)
    beads = [
        work.lay(index, 1, number, word, at)
        for number, (word, at) in enumerate(zip(words, places, strict=True), start=1)
    ]
    _thread_picots(work, edge, beads, stems)


def _begin(work: Work, part: Part) -> int:
    assert part.hang is not None
    source = [woven.name for woven in work.parts].index(str(part.hang.part))
    return work.begin_part(part, 1, 0.0, work.parts[source].bead_pitch, lines="edging")


def _picot_places(work: Work, edge: Edge, letters: list[str], stems: list[int]) -> list[Placed]:
    """Stems upright under their bridges, the beads of each point on an arc between two stems."""
    hooks = edge.hooks if edge.rightward else edge.hooks[::-1]
    kinds = [work.kind(letter) for letter in letters]
    level = hooks[0].point[1]
    places: dict[int, Placed] = {
        stem: (hook.point[0], level + kinds[stem].length_mm / 2, 0.0)
        for stem, hook in zip(stems, hooks, strict=True)
    }
    for one, other in pairwise(stems):
        lengths = [kinds[bead].length_mm for bead in range(one + 1, other)]
        left = (places[one][0], level + kinds[one].length_mm)
        right = (places[other][0], level + kinds[other].length_mm)
        widest = max(kinds[bead].width_mm for bead in range(one + 1, other))
        line = hanging_line(left, right, max(sum(lengths), abs(right[0] - left[0]) * 0.6), widest)
        if len(lengths) == 1:
            middle = (left[0] + right[0]) / 2
            places[one + 1] = (middle, max(left[1], right[1]) + widest * 0.3, 90.0)
            continue
        for bead, (x, y, angle) in zip(range(one + 1, other), along(line, lengths), strict=True):
            places[bead] = (x, y, angle)
    ordered = [places[bead] for bead in range(len(letters))]
    return upside_down(ordered, level) if edge.end is End.TOP else ordered


def _thread_picots(work: Work, edge: Edge, beads: list[int], stems: list[int]) -> None:
    """Picot after picot in order of working; the thread comes out of each new stem's foot."""
    order = stems if edge.rightward else stems[::-1]
    hooks = edge.hooks
    hooks[0].go_out(work)
    work.pick(beads[order[0]], End.TOP)  # a stem's TOP mouth is the one at the edge
    for number, (before, stem) in enumerate(pairwise(order), start=1):
        low, high = sorted((before, stem))
        between = beads[low + 1 : high] if edge.rightward else beads[low + 1 : high][::-1]
        for bead in between:
            work.pick(bead, End.TOP if edge.rightward else End.BOTTOM)
        work.pick(beads[stem], End.BOTTOM)
        hooks[number].come_in(work)
        work.through(beads[stem], End.TOP)
        motion = f"picot-{len(between) + 1}" if number > 1 else "picot-first"
        phrase = Phrase(motion, {"count": 1, "bridge": number + 1})
        work.step(1, motion, (phrase,), turned=edge.view.turned)
    for bead in reversed(between):
        work.through(bead, End.BOTTOM if edge.rightward else End.TOP)
    work.through(beads[order[-2]], End.BOTTOM)
    work.through(edge.beads[len(order) - 1], edge.end)
    phrase = Phrase("picot-close", {"count": len(between)})
    work.step(1, "picot-close", (phrase,), turned=edge.view.turned, rest=True)


def whipped_part(work: Work, part: Part) -> None:
    """Work a whipped edge, and run back through it."""
    edge = edge_of(work, part, "bridges")
    index = _begin(work, part)
    if missing_bridge(work, part, edge) or not reach(work, part, edge, edge.hooks[0], 0):
        return
    strands = part.all_strands
    runs: list[list[int]] = []
    hooks = edge.hooks if edge.rightward else edge.hooks[::-1]
    for words, one, other in zip(strands, hooks, hooks[1:], strict=False):
        kinds = [work.kind(letter) for letter in words.letters]
        lengths = [kind.length_mm for kind in kinds]
        widest = max(kind.width_mm for kind in kinds)
        drop = widest / 2
        left, right = (one.point[0], one.point[1] + drop), (other.point[0], other.point[1] + drop)
        places = along(hanging_line(left, right, sum(lengths), widest), lengths)
        if sum(lengths) < right[0] - left[0]:
            places = _centred(left, lengths, right[0] - left[0])
        if edge.end is End.TOP:
            places = upside_down(places, one.point[1])
        laid = sum(map(len, runs))
        spots = zip(words.letters, words.spots, strict=True)
        runs.append(
            [
                work.lay(index, 1, laid + number, spot, at)
                for number, (spot, at) in enumerate(zip(spots, places, strict=True), start=1)
            ]
        )
    _thread_whipped(work, edge, runs)


def _centred(left: tuple[float, float], lengths: list[float], room: float) -> list[Placed]:
    """Beads side by side in the middle of a room that is wider than they are."""
    x = left[0] + (room - sum(lengths)) / 2
    places: list[Placed] = []
    for length in lengths:
        places.append((x + length / 2, left[1], 90.0))
        x += length
    return places


def _thread_whipped(work: Work, edge: Edge, runs: list[list[int]]) -> None:
    """Over the edge from bridge to bridge, then back through all beads and into the first edge bead."""
    out, back = (End.TOP, End.BOTTOM) if edge.rightward else (End.BOTTOM, End.TOP)
    turned = edge.view.turned
    order = [run if edge.rightward else run[::-1] for run in (runs if edge.rightward else runs[::-1])]
    edge.hooks[0].go_out(work)
    for run, hook in zip(order, edge.hooks[1:], strict=False):
        for bead in run:
            work.pick(bead, out)
        hook.come_in(work)
        first = hook is edge.hooks[1]
        key = "whip-first" if first else f"whip-{len(run)}" if len(run) <= MOST_AT_A_TIME else "whip"
        values = {"bridge": hook.number, "count": 1}
        work.step(1, key, (Phrase(key, values),), turned=turned)
    whole = [bead for run in order for bead in run]
    for bead in reversed(whole):
        work.through(bead, back)
    edge.hooks[0].come_in(work)
    work.through(edge.beads[0], edge.end)
    way = edge.view.way(edge.end)
    work.step(
        1, "whip-back", (Phrase("whip-back", {"count": len(whole), "way": way}),), turned=turned, rest=True
    )
