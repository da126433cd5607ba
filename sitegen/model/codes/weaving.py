"""Codes of what cannot be woven, and of what the virtual needle objects to -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import fault

WEAVE = {
    "weave-ladder-rows": fault(
        "A ladder is one row, but `{part}` has {rows}.",
        "Take the stitch `brick` for rows on a ladder, or leave one row and `repeat` out.",
    ),
    "weave-no-footing": fault(
        "Row {row} cannot begin here: one bead on one bead, without a bridge, holds nothing.",
        "Let two of its beads rest on the bead below, or give the row below a second bead.",
    ),
    "weave-no-hold": fault(
        "The {finding} has no hold here: the thread cannot go round and come out again.",
        "Hang it from an edge of two beads or more.",
    ),
    "weave-peyote-rows": fault(
        "`{part}` has fewer than three rows: the first two are one string of beads, and nothing holds them.",
        "Give the chart a third row.",
    ),
    "weave-peyote-loose": fault(
        "No bead beside this one holds it at the edge.",
        "Let the row after it reach as far, to within one column, or take the bead out.",
    ),
    "weave-no-way": fault(
        "The thread cannot get to where row {row} begins without showing.",
        "Begin at another row (`begin`), or at the other side (`start`), or change the rows beside it.",
    ),
    "weave-part-apart": fault(
        "`{part}` hangs from nothing: only the first part (`{first}`) may stand by itself.",
        "Hang it from an earlier part, or make it a pattern of its own.",
    ),
}

PATH = {
    "path-picked-twice": fault("The needle would pick up this bead ({letter}) twice (move {move}).", "{bug}"),
    "path-not-there": fault(
        "The needle would pass through this bead ({letter}) before it is there (move {move}).", "{bug}"
    ),
    "path-pulls-out": fault(
        "The needle would go back into this bead ({letter}) and pull its thread out (move {move}).", "{bug}"
    ),
    "path-no-bridge": fault("No bridge lies where the needle would go under one (move {move}).", "{bug}"),
    "path-bare-thread": fault("Thread would lie bare beside this bead ({letter}) (move {move}).", "{bug}"),
    "path-left-out": fault("This bead ({letter}) would never be picked up.", "{bug}"),
    "path-single-pass": fault(
        "This bead ({letter}) would hang on a single pass of thread.",
        "Give it a neighbour in its row, or a row above it.",
    ),
    "path-off-warps": fault(
        "This bead ({letter}) would not sit between two warps with thread under and over them.", "{bug}"
    ),
    "path-step-astray": fault("Step {step} does not say what the needle does.", "{bug}"),
    "path-tail-loose": fault("Step {step} does not weave in its end of thread so that it holds.", "{bug}"),
    "path-unlike-chart": fault("The woven `{part}` does not read like its chart.", "{bug}"),
}
"""What the virtual needle objects to. But for a bead all alone, these are mistakes of this program."""
