"""Codes of what does not fit together in a pattern that could be read -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

CHECKS = {
    "no-beads": fault(
        "No part of this pattern has a bead to stitch.", "Give a part a stitch and its chart or strands."
    ),
    "beads-uneven": advice(
        "`{part}` sets {wide} ({most} mm wide) beside {narrow} ({least} mm): it will ripple or gape.",
        "Take beads of like width, or work a swatch and give its `gauge`.",
    ),
    "edge-taken": fault(
        "The {edge} edge of `{part}` already carries `{first}`.",
        "Hang this part from another edge, or join the two into one.",
    ),
    "finding-not-hung": advice(
        "The {name} is in the materials, but no part hangs from it.",
        "Give the part it is sewn to `hang: {{finding: {name}, from: top}}`.",
    ),
    "finding-differs": advice(
        "The header names a {name}, but a {sewn} is sewn on.", "Name the same finding in both places."
    ),
    "letter-undefined": fault(
        "No colour is called `{letter}` (used {times} in `{part}`, first here).",
        "Add it to `colours`. {hint}",
    ),
    "letter-or-count": fault(
        "No colour is called `{letter}` (used {times} in `{part}`, first here).",
        "If it is a count, write it directly before its letter or bracket, without a blank.",
    ),
    "letter-unused": advice("The colour `{letter}` is used nowhere.", "Use it, or delete the line."),
    "bead-unknown": fault("`{name}` is not a bead this program knows.", "{hint}"),
    "needle-unknown": fault("`{name}` is not a needle this program knows.", "{hint}"),
    "thread-unknown": fault(
        "`{name}` is not a thread this program knows.", "Write material and thickness, such as nylon 0.25 mm."
    ),
    "finding-unknown": fault("`{name}` is not a finding this program knows.", "{hint}"),
    "stitch-unknown": fault("`{name}` is not a stitch this program knows.", "{hint}"),
    "part-twice": fault(
        "A part called `{name}` was given before, in line {line}.", "Give each part its own name."
    ),
    "chart-needed": fault(
        "`{name}` ({stitch}) has no chart.",
        "Draw it in the text as a block that begins with: ```chart {name}",
    ),
    "chart-needless": fault(
        "A part in `{stitch}` has no chart.", "Delete the chart, or choose another stitch."
    ),
    "strands-needed": fault(
        "`{name}` ({stitch}) has no strands.", "Add `strands:` with a word chart for each."
    ),
    "strands-needless": fault(
        "A part in `{stitch}` has no strands.", "Delete them, or choose another stitch."
    ),
    "hang-needed": fault(
        "`{name}` ({stitch}) hangs from nothing.", "Add a line such as `hang: {{from: Fan, edge: bottom}}`."
    ),
    "mirror-needless": fault("There are no strands to mirror.", "Delete `mirror`, or add `strands`."),
    "row-out-of-step": fault(
        "This bead is out of step: in {stitch}, beads of a row stand two columns apart, "
        "and each row half a bead beside the next.",
        "Move it by one column to the left or right.",
    ),
    "row-shifted": fault(
        "This row is out of step: in {stitch}, each row stands half a bead, one column, beside the next.",
        "Move the whole row by one column to the left or right.",
    ),
    "row-gap": fault(
        "There is a gap in the row before this bead.", "Fill it: a row in {stitch} has no empty place."
    ),
    "row-width": fault(
        "This row has {count}, the rows of this chart have {usual}.",
        "Make all rows alike; `.` stands for an empty place.",
    ),
    "row-broken": fault(
        "A row of square stitch cannot have an empty place between beads.",
        "Fill it; empty places may stand at the row's two ends.",
    ),
    "row-not-full": fault(
        "A loom strip has no empty places.", "Fill the row: every gap between two warps takes a bead."
    ),
    "bead-unheld": fault(
        "Nothing holds this bead: it has no bead above it and none beneath.",
        "Add a bead above or beneath it, or leave it out.",
    ),
    "row-adrift": fault(
        "No bead of this row touches the row above it.",
        "Move the row, so that the two lie against each other.",
    ),
    "rows-of-one": fault(
        "A row of one bead on a row of one bead cannot be stitched: there is no bridge to go under.",
        "Add a bead to one of the two rows.",
    ),
    "drop-row": fault(
        "This bead is out of step: in peyote with `drop: {drop}`, {drop} beads stand together, {drop} places "
        "stay empty, and each row fills what the row before it left empty.",
        "Move the beads of this row, so that they stand by {drop} and {drop}.",
    ),
    "drop-rows": fault(
        "Rows in words cannot say where the beads of `drop: {drop}` stand.", "Draw the chart in the text."
    ),
    "zip-needless": fault(
        "Only a part in `peyote` is zipped into a tube; this one is in `{stitch}`.", "Delete `zip`."
    ),
    "zip-begin": fault(
        "A strip that is begun in the middle cannot be zipped.", "Write `begin: top` or `begin: bottom`."
    ),
    "zip-hang": fault(
        "`{part}` is zipped: its {edge} edge lies inside the tube, and nothing can hang from it.",
        "Leave out `zip`, or what hangs there.",
    ),
    "zip-out-of-step": fault(
        "The last row does not fit between the beads of the first, so the two cannot be zipped.",
        "Give the strip an even number of rows, `repeat` included, and straight edges.",
    ),
    "repeat-out-of-step": fault(
        "Repeated, the chart's last row comes to lie straight above its first.",
        "Give the chart an even number of rows, or repeat it once only.",
    ),
    "begin-row": fault(
        "`{part}` has no row {row}; it has {rows}.", "Name one of its rows, counted from the top."
    ),
    "hang-unknown": fault("No part is called `{name}`.", "{hint}"),
    "hang-later": fault(
        "`{name}` is not made yet when this part begins.", "Put it before this part in `parts`."
    ),
    "hang-no-edge": fault(
        "`{name}` has no row of beads to hang from.", "Hang it from a part that has a chart."
    ),
    "strand-count": fault(
        "There are {strands} (mirrored ones included), but the {edge} row of `{part}` has {places}.",
        "Write {wanted}: as many as {stitch} takes there.",
    ),
    "strand-short": fault(
        "This strand has {beads}, and the last {turn} of a strand are not passed on the way back.",
        "Make the strand longer, or `turn` smaller.",
    ),
    "colourway-letter": fault("`{name}` swaps `{letter}`, which is no colour of this pattern.", "{hint}"),
    "colourway-twice": fault(
        "A colourway called `{name}` was given before, in line {line}.", "Give it another name."
    ),
    "revision-unlisted": fault(
        "Revision {number} is not among `revisions`.", "Add a line that says what is new in it."
    ),
    "revision-old": fault(
        "`revisions` goes up to {newest}, but this is revision {number}.", "Write revision: {newest}."
    ),
    "revision-twice": fault("Revision {number} is listed twice.", "Keep one of the two lines."),
    "too-many-beads": fault(
        "One piece would have {count}; at most {most} are possible.", "Check counts and `repeat`."
    ),
}
