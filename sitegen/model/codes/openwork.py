"""Problem codes of herringbone, right-angle weave and netting -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import fault

OPEN = {
    "open-place": fault(
        "No bead of {stitch} can stand in column {column} of this line.",
        "Letters stand on the lines of the drawing alone: move it, or count the columns from the left.",
    ),
    "open-missing": fault(
        "A bead is missing in column {column} of this line.", "Write its letter: every place carries a bead."
    ),
    "open-size": fault(
        "{lines} and {columns} do not make whole {shapes} (at least {least}).",
        "Write {remedy}.",
    ),
    "open-begin": fault(
        "{stitch} cannot begin at `{begin}`.", "Write `begin: bottom` (or leave it out) or `begin: top`."
    ),
    "open-repeat": fault(
        "A drawing of {stitch} cannot be worked several times above itself.", "Draw the whole part."
    ),
    "open-hang": fault(
        "`{part}` is in {stitch}, which has no edge to hang from or sew to.",
        "Hang it from a part in another stitch.",
    ),
    "net-finding": fault(
        "A net cannot hold a finding: its edge beads hang on one pass.",
        "Delete `hang`, and let a chain or ribbon run through the nets.",
    ),
    "net-size": fault("A net of {net} has no middle bead.", "Write `net: 3`, `net: 5` or `net: 7`."),
    "net-start": fault(
        "A net begins at the side where the first line worked has a bead at the edge.",
        "Delete `start`; to begin at the other side, mirror the drawing.",
    ),
    "pairs-odd": fault(
        "Herringbone is worked in pairs, but this row has {beads}.", "Add a bead, or take one away."
    ),
    "pairs-growth": fault(
        "This row does not stand on the row worked before it.",
        "A row has the columns of the row before it, and at most two more side by side between two pairs.",
    ),
    "pairs-early": fault(
        "This row grows too soon: the needle cannot turn at its edge without showing thread.",
        "Let a row that does not grow come before it, above the ladder.",
    ),
    "pairs-base": fault(
        "The ladder takes {base}, but the chart has {rows}.", "Write `base: 1`, or add a row."
    ),
    "weave-uneven": fault(
        "This bead ({letter}) is too small for its place: thread would lie bare beside it.",
        "Take beads of more equal size in one part, or measure the gauge again.",
    ),
    "weave-no-middle": fault(
        "The {finding} needs a middle bead, and an edge of {count} has none.",
        "Make the part an odd number of squares wide.",
    ),
}
"""Code -> how much it matters, what is wrong, what to do."""
