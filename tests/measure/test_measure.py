"""Whole pieces, woven and measured: the figures agree with each other and rise as the piece gets harder."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

import pytest

from sitegen.measure.effort import effort
from sitegen.measure.minutes import minutes
from sitegen.model.shop import Shop, StockBead
from sitegen.model.source import Makes, Pattern
from sitegen.model.thread import MoveKind, Phrase
from sitegen.publish.report import measures_json, measures_text
from tests.measure.pieces import made, pattern, triangle

FAN = triangle(8, 7)
FRINGE = ("ABABAB",) * 8
EARRING = pattern(*FAN, strands=FRINGE)


class Echo:
    """Says a phrase by its key."""

    def say(self, phrase: Phrase) -> str:
        """The key and the values."""
        return f"{phrase.key} {dict(phrase.values)}"


def test_each_bead_is_counted_once_and_doubled_for_a_pair() -> None:
    one, pair = made(EARRING).measures, made(replace(EARRING, makes=Makes.PAIR)).measures
    assert (
        one.bead_each
        == len("".join((*FAN, *FRINGE)).replace(" ", ""))
        == sum(line.each for line in one.beads)
    )
    assert [(line.letter, line.each) for line in one.beads] == [("A", 35 + 24), ("B", 24)]
    assert [line.total for line in pair.beads] == [2 * line.total for line in one.beads]
    assert (pair.bead_each, pair.bead_total, pair.pieces) == (one.bead_each, 2 * one.bead_each, 2)


def test_grams_are_for_all_pieces_and_weight_for_one() -> None:
    pair = made(replace(EARRING, makes=Makes.PAIR)).measures
    assert pair.weight_g * 2 == pytest.approx(sum(line.grams for line in pair.beads))
    assert pair.weight_g == pytest.approx(83 / 110)


@pytest.mark.parametrize(
    ("stock_pack", "spare", "packs", "buy"), [(None, 0.1, 1, 5.0), (0.5, 0.0, 2, 1.0), (0.5, 0.9, 3, 1.5)]
)
def test_packs_are_rounded_up_with_the_spare_of_the_shop(
    stock_pack: float | None, spare: float, packs: int, buy: float
) -> None:
    stock = {"sea": StockBead("sea", "round 11/0", "sea", "#808080", pack_grams=stock_pack, price=Decimal(3))}
    colours = tuple(replace(colour, stock="sea") for colour in EARRING.colours)
    line = made(replace(EARRING, colours=colours), Shop(stock=stock, spare=spare)).measures.beads[0]
    assert (line.packs, line.buy_grams) == (packs, buy)
    assert line.buy_grams >= line.grams * (1 + spare)


def test_a_full_pack_is_not_rounded_up_to_two() -> None:
    """59 beads at 110 to the gram, bought without spare in packs of exactly that weight."""
    line = made(EARRING, Shop(spare=0.0, pack_grams=59 / 110)).measures.beads[0]
    assert line.packs == 1


def test_running_figures_end_at_the_whole() -> None:
    piece = made(EARRING)
    steps = piece.measures.steps
    assert steps[-1].beads_so_far == piece.measures.bead_each
    assert steps[-1].thread_mm == pytest.approx(piece.measures.thread.path_mm)
    assert all(one.thread_mm < other.thread_mm for one, other in pairwise(steps))


def test_passes_are_picks_and_throughs_of_the_path() -> None:
    piece = made(EARRING)
    passed = [move.bead for move in piece.path.moves if move.kind in (MoveKind.PICK, MoveKind.THROUGH)]
    assert piece.measures.passes.most == max(map(passed.count, passed))


def test_comfort_is_for_what_the_ear_wears() -> None:
    assert made(EARRING).measures.comfort == "very light"
    assert made(pattern(*FAN, finding="jump ring")).measures.comfort is None
    assert made(pattern(*FAN, finding="")).measures.comfort is None


def test_a_piece_without_a_hanging_finding_has_no_drop() -> None:
    assert made(pattern(*FAN, finding="")).measures.drop_mm is None
    hung = made(EARRING).measures
    assert hung.drop_mm is not None
    assert hung.drop_mm > hung.height_mm + 19


def smaller(source: Pattern, bead: str) -> Pattern:
    """The same pattern in another bead."""
    return replace(source, colours=tuple(replace(colour, bead=bead) for colour in source.colours))


HARDER = {
    "more beads": (EARRING, pattern(*FAN, strands=("ABABAB",) * 7 + ("ABABABAB",))),
    "more colours": (EARRING, pattern(*FAN, strands=("ABABAB",) * 7 + ("ABACAB",))),
    "smaller beads": (EARRING, smaller(EARRING, "round 15/0")),
    "a longer strand": (EARRING, pattern(*FAN, strands=("ABABAB",) * 7 + ("ABABABABABAB",))),
    "a second piece": (EARRING, replace(EARRING, makes=Makes.PAIR)),
    "a mirrored piece": (replace(EARRING, makes=Makes.PAIR), replace(EARRING, makes=Makes.MIRRORED_PAIR)),
}


@pytest.mark.parametrize("what", HARDER)
def test_a_harder_piece_scores_higher_and_takes_longer(what: str) -> None:
    easy, hard = (made(source) for source in HARDER[what])
    assert hard.measures.difficulty.score > easy.measures.difficulty.score
    if what == "a mirrored piece":  # harder to think through, not slower to stitch
        return
    before, after = (
        minutes(effort(piece.path, piece.pattern, piece.measures.thread, piece.measures.passes))
        for piece in (easy, hard)
    )
    assert after.practised > before.practised
    assert after.novice > before.novice


def test_an_increase_row_is_harder_and_slower_than_a_decrease_row() -> None:
    """The same five beads: worked from three to two, and from two to three."""
    down = made(pattern(" A A ", "A A A")).measures
    up = made(pattern("A A A", " A A ")).measures
    assert down.bead_each == up.bead_each
    assert "increases" not in {reason.factor for reason in down.difficulty.reasons}
    assert up.difficulty.score > down.difficulty.score
    assert up.minutes_high > down.minutes_high


def test_a_thread_change_is_harder_and_slower() -> None:
    long, short = Shop(working_length_mm=3000), Shop(working_length_mm=900)
    calm, busy = made(EARRING, long).measures, made(EARRING, short).measures
    assert (len(calm.thread.lengths), calm.thread.path_mm) == (1, busy.thread.path_mm)
    assert len(busy.thread.lengths) > 1
    assert busy.difficulty.score > calm.difficulty.score
    assert busy.minutes_low > calm.minutes_low


def test_smaller_beads_stay_harder_whatever_thread_they_save() -> None:
    """Smaller beads need less thread and so fewer new ones; that must not make them look easy."""
    for rows in range(4, 13):
        for big, small in (
            ("round 8/0", "round 11/0"),
            ("round 11/0", "round 15/0"),
            ("cylinder 11/0", "cylinder 15/0"),
        ):
            source = replace(
                pattern(*triangle(rows, rows - 1), strands=("AB" * 8,) * rows), thread="nylon 0.10 mm"
            )
            one, other = (made(smaller(source, bead)).measures for bead in (big, small))
            assert other.difficulty.score > one.difficulty.score
            assert other.minutes_low > one.minutes_low
            assert other.minutes_high > one.minutes_high


def test_the_report_holds_what_is_promised_and_is_plain_data() -> None:
    piece = made(replace(EARRING, makes=Makes.PAIR))
    report = measures_json(piece.pattern, piece.path, piece.measures, Echo())
    assert json.loads(json.dumps(report)) == report
    promised = (
        "pattern title revision makes pieces beads bead_count parts size weight_g thread passes difficulty"
    )
    assert list(report)[:15] == [*promised.split(), "minutes", "steps"]
    assert list(report["beads"][0]) == [
        "letter",
        "name",
        "bead",
        "hex",
        "each",
        "total",
        "grams",
        "buy_grams",
    ]
    assert list(report["parts"][0]) == ["name", "stitch", "beads", "rows", "width_mm", "height_mm"]
    assert list(report["size"]) == ["width_mm", "height_mm", "width_in", "height_in"]
    assert list(report["thread"]) == ["path_mm", "total_mm", "lengths"]
    assert list(report["thread"]["lengths"][0]) == ["cut_mm", "first_step", "last_step"]
    assert list(report["passes"]) == ["most", "beads_tight"]
    assert list(report["difficulty"]) == ["score", "level", "reasons"]
    assert list(report["difficulty"]["reasons"][0]) == ["factor", "points", "why"]
    assert list(report["minutes"]) == ["low", "high"]
    assert list(report["steps"][0]) == ["number", "part", "row", "pick_up", "beads_added", "thread_mm"]
    assert len(report["steps"]) == len(piece.path.steps), "one a stitch or strand, never collapsed"
    assert report["steps"][-1]["pick_up"] == "1A 1B 1A 1B 1A 1B"
    shown = sum(reason["points"] for reason in report["difficulty"]["reasons"])
    assert round(shown, 1) == report["difficulty"]["score"]


def test_the_text_report_says_the_same_in_narrow_lines() -> None:
    piece = made(replace(EARRING, makes=Makes.PAIR))
    text = measures_text(piece.pattern, piece.measures, Echo())
    assert "83 in one piece, 166 in all" in text
    report = measures_json(piece.pattern, piece.path, piece.measures, Echo())
    assert f"Difficulty {report['difficulty']['score']}" in text
    assert "worn: very light" in text
    assert all(line == line.rstrip() for line in text.splitlines())
    assert text.endswith("\n")


def test_words_no_table_knows_are_refused_aloud() -> None:
    for source, words in (
        (replace(EARRING, needle="crochet 3"), "crochet 3"),
        (replace(EARRING, thread="rope 9 mm"), "rope 9 mm"),
    ):
        with pytest.raises(LookupError, match=words):
            made(source)
