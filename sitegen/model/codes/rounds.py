"""Problem codes of rounds, tubes and ropes -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

ROUNDS = {
    "rounds-needed": fault(
        "`{name}` ({stitch}) has no rounds.",
        "Add `rounds:` with a word chart for each, from the middle outward.",
    ),
    "rope-needed": fault(
        "`{name}` ({stitch}) does not say what it is made of.",
        "Add a line such as `rope: {{core: 4C, outer: 3A, stitches: 60}}`.",
    ),
    "round-key-needless": fault(
        "`{key}` means nothing for a part in {stitch}.", "Delete it, or choose another stitch."
    ),
    "round-no-hold": fault(
        "A part in {stitch} cannot hold a finding.",
        "Delete `hang`, and name in the header's `finding` and in the text what it is fastened with.",
    ),
    "round-no-edge": fault(
        "`{name}` is worked in rounds: nothing can be hung from its edge.",
        "Hang this part from a flat one.",
    ),
    "round-few": fault("A round needs {least} beads or more.", "Add beads, or leave the round out."),
    "round-growth": fault(
        "Round {row} has {beads} on a round of {below}: {least} to {most} can be stitched to it.",
        "Let the rounds grow or shrink more evenly.",
    ),
    "round-bare": fault(
        "Round {row} would leave thread bare: its {beads} beads fill {need} of {around} mm.",
        "Take more beads, about {best}, and let the rounds before it grow so far.",
    ),
    "round-gapes": advice(
        "Round {row} will show gaps: its {beads} beads fill {need} of {around} mm.",
        "About {best} would lie close.",
    ),
    "round-buckles": advice(
        "Round {row} will not lie flat: its {beads} beads take {need} mm, and its circle has {around}.",
        "About {best} would fit.",
    ),
    "tube-begin": fault(
        "A tube in {stitch} is worked from one end to the other.", "Write `begin: bottom` or `begin: top`."
    ),
    "tube-short": fault("A tube in {stitch} needs {least} rounds or more.", "Add rows to its chart."),
    "tube-row-unlike": fault(
        "All rounds of a tube are alike: the first row has {usual}; this has {beads}, or begins elsewhere.",
        "Give each row as many beads, begun by turns at the same two columns.",
    ),
    "tube-pairs": fault(
        "A round in {stitch} is made of pairs, and {beads} beads are not two pairs or more.",
        "Take an even number of beads, four or more.",
    ),
    "rope-outer": fault(
        "{beads}, {mm} mm long, cannot lie well beside {core} mm of core.",
        "Take as many as reach round the core beads of a stitch, {most} at most; or fewer core beads.",
    ),
}
"""Given by checking."""
