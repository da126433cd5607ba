"""Problem codes of strands, edgings, strings and beads sewn on top -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import fault

HUNG = {
    "branch-start": fault(
        "A side branch needs a bead of the strand before it.", "Write the bead it grows below before the `[`."
    ),
    "branch-nested": fault(
        "A side branch stands inside another.", "Close the first with `]`: branches do not branch again."
    ),
    "branch-short": fault(
        "This side branch has one bead.",
        "Give it two or more: its last bead holds the others and is not passed on the way back.",
    ),
    "rule-form": fault(
        "This is no rule for strands: {wanted} should stand here.",
        "Write `each 5D 3A`, or `from 10D, each 2D longer to the centre, then 3A`, or a list of strands.",
    ),
    "rule-listed": fault(
        "A rule for all strands stands here in a list.",
        "Write it by itself, without brackets or a dash before it: `strands: each 5D 3A`.",
    ),
    "rule-shorter": fault(
        "How many beads go from strand to strand is a number.", "Write for example `each 2 shorter`."
    ),
    "rule-none-left": fault(
        "Over {strands} strands {gone} beads would go, but there are {beads} to begin with.",
        "Begin with more beads, or let fewer go.",
    ),
    "strand-span": fault(
        "The {edge} row of `{part}` has {places}: {stitch} with a span of {span} does not come out even.",
        "Choose another `span`, or another `at: beads` or `at: bridges`.",
    ),
    "mirror-rule": fault(
        "The rule for the strands of `{name}` covers all of them: there is nothing to mirror.",
        "Delete `mirror`, or lead the rule `to the centre`.",
    ),
    "rule-needless": fault(
        "A part in `{stitch}` takes a list of word charts, not a rule.", "Write them as a list."
    ),
    "over-needed": fault(
        "`{name}` ({stitch}) lies on nothing.", "Add a line such as `over: {{part: Band, row: 3}}`."
    ),
    "over-unknown": fault("`{name}` lies on `{part}`, which is no earlier part.", "{hint}"),
    "over-row": fault(
        "`{name}` has {strands} from row {row} on, but `{part}` has {rows}.",
        "Choose an earlier `row`, or write fewer.",
    ),
    "over-gaps": fault(
        "These are {beads}, but row {row} of `{part}` has {gaps}.", "Write a bead for each gap."
    ),
    "clasp-needed": fault("`{name}` ({stitch}) has no clasp.", "Add a line such as `clasp: toggle clasp`."),
    "strung-one": fault("`{name}` is one string, and has {strands}.", "Write one word chart."),
    "strung-short": fault(
        "A string of {beads} is too short to be secured at both ends.", "Write at least 6 beads."
    ),
    "ends-wire": fault("Knots do not hold in beading wire.", "Write `ends: crimps`, or choose a thread."),
    "branch-needless": fault(
        "A strand in `{stitch}` has no side branches.", "Choose `branched fringe`, or leave `[...]` out."
    ),
    "branch-foot": fault(
        "This side branch grows where the strand turns.",
        "Let it grow further up: at least one bead between it and the last {turn} must hold the turn.",
    ),
    "twist-uneven": fault(
        "Without its {turn} at the turn this strand has {beads}: its legs are not alike.",
        "Write both legs with the beads of the turn between them, such as 8D A 8D.",
    ),
    "picot-beads": fault("A picot of {beads} does not make a point.", "Write 3, 4 or 5 beads."),
    "picot-stem": fault(
        "Picots on bridges share their stems: this one begins with `{letter}`, "
        "but the one to its left ends in `{other}`.",
        "Begin it with `{other}`, or hang the picots `at: beads`.",
    ),
    "whip-points": fault("A whipped edge is sewn over bridges.", "Delete `at`."),
    "hang-bridges": fault(
        "`{part}` has no bridges to hang from: {stitch} lays none.", "Delete `at`, or write `at: beads`."
    ),
    "key-needless": fault("A part in `{stitch}` has no use for `{key}`.", "Delete it: it is for {use}."),
    "weave-no-bridge": fault(
        "No thread lies between beads {bead} and {after} of the edge of `{part}`: nothing can hang there.",
        "Hang the part `at: beads`.",
    ),
    "weave-swag-short": fault(
        "This string is {mm} mm long, but must reach over {apart} mm with some slack.",
        "Give it more beads, or a smaller `span`.",
    ),
    "weave-twist-tight": fault(
        "With {turns} turns this strand would kink: its legs take at most {most}.",
        "Write a smaller `twist`, or longer legs.",
    ),
}
"""Codes of what hangs, is sewn on or strung."""
