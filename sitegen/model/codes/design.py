"""Problem codes of bead kinds, and of the design itself -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

BEADS = {
    "bead-kind-name": fault(
        "`{key}` cannot name a bead kind.",
        "Use lower-case letters, digits, blanks, hyphens, points and strokes, beginning with a letter.",
    ),
    "bead-kind-known": fault(
        "`{name}` is a bead of the trade tables already.", "Give your own bead another name."
    ),
    "finish-unknown": advice(
        "`{name}` is not a finish this program knows: the bead is drawn opaque and glossy.",
        "{hint} Words may be joined.",
    ),
    "bead-kind-hole": fault(
        "The hole of `{name}` is as wide as the bead.", "Measure both again: the hole is the smaller one."
    ),
    "bead-kind-weight": advice(
        "{given} of `{name}` to the gram is unlikely: in glass, a bead of this size would be about {glass}.",
        "Weigh ten or more again, or leave it if they are of metal, plastic or wood.",
    ),
    "bead-kind-unused": advice("No colour uses the bead kind `{name}`.", "Use it, or delete the line."),
    "gauge-unlike-beads": fault(
        "This swatch makes {pitch} mm a bead or row; these beads can lie {least} to {most} mm apart.",
        "Count and measure the swatch again, or check the bead kinds.",
    ),
    "colours-alike": advice(
        "`{one}` and `{other}` may be taken for each other: {figure} apart by CIEDE2000 {vision}, "
        "where {least} is wanted.",
        "Choose colours further apart, best in lightness, or say in the text how to keep them apart.",
    ),
    "mirror-bead": advice(
        "Symmetric but for one bead: {place} is {letter}, its mirror bead ({mirror_place}) is {mirror}.",
        "Change one of the two, or leave it if it is meant.",
    ),
    "turn-bead-long": fault(
        "A strand cannot turn round so long a bead as `{letter}`: it would lie across the end like a bar.",
        "End the strand with a smaller bead, and let the long one come before it.",
    ),
}
"""Bead kinds, colours and charts; given by reading and checking."""

_TIGHT = (
    "Beads that get tight with {with_needle} and {with_thread}: {count}; the first is bead {place} of {row} "
    "({letter}), with {passes} passes where {allowed} fit."
)
DESIGN = {
    "design-ear-weight": advice(
        "An earring weighs {grams} g in beads alone; above {most} g few wear one all day.",
        "Choose smaller beads or shorter strands, or leave it if it is for short wear.",
    ),
    "design-strand-tangles": advice(
        "This strand is {length} cm long, {times} times the larger side of what it hangs from: it tangles.",
        "Make it shorter, or let heavier beads pull its end straight.",
    ),
    "design-holes-finer-needle": advice(
        _TIGHT, "Change to {needle} at the step that the step table marks, or from the start."
    ),
    "design-holes-finer-thread": advice(_TIGHT, "Name a finer thread, {thread}."),
    "design-holes-finer-both": advice(_TIGHT, "Name a finer thread, {thread}, and a finer needle, {needle}."),
    "design-holes-larger": advice(_TIGHT, "Choose beads with larger holes, or let fewer passes meet there."),
    "design-bare-thread": advice(
        "{gap} mm of thread lie bare before bead {place} of row {row} ({letter}).",
        "Choose beads nearer in size, or a step of half a bead at this edge.",
    ),
    "design-loose-beads": advice(
        "{passes} passes of {thread} fill {share} % of the hole of `{kind}`: these beads will sit loose.",
        "Name a thicker thread, or beads with smaller holes.",
    ),
}
"""Advice on what can be made but may wear, hang or hold badly; given by measuring."""
