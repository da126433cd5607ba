"""Problem code -> how much it matters, what is wrong and what to do: the one table of all messages.

`{braces}` are filled from `Problem.values`. Codes are stable: scripts and tests may rely on them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from sitegen.model.problem import Severity


@dataclass(frozen=True, slots=True)
class Code:
    """One kind of problem."""

    severity: Severity
    message: str
    """What is wrong."""
    remedy: str
    """What to do about it."""


def _fault(message: str, remedy: str) -> Code:
    return Code(Severity.FAULT, message, remedy)


def _advice(message: str, remedy: str) -> Code:
    return Code(Severity.ADVICE, message, remedy)


_FILES = {
    "folder-missing": _fault("There is no folder here.", "Give the folder that holds the shop."),
    "no-patterns": _fault(
        "No pattern was found in this folder.", "Put at least one Markdown file into `content/patterns`."
    ),
    "file-name": _fault(
        "`{name}` cannot name a page.", "Rename the file: lower-case letters, digits and hyphens, then `.md`."
    ),
    "file-unreadable": _fault(
        "This file cannot be read: {reason}.", "See that it is a plain file that you may open."
    ),
    "file-link-outside": _fault(
        "This is a link that leads out of the shop folder.", "Put a copy of the file itself here."
    ),
    "file-too-large": _fault("This file is larger than {most}.", "Split it, or take out what is no text."),
    "file-not-utf8": _fault(
        "The text is not in UTF-8 from here on.", "Save the file again with the encoding UTF-8."
    ),
    "hidden-character": _fault(
        "A character that cannot be seen stands here ({name}).", "Delete it and type the place anew."
    ),
    "header-missing": _fault(
        "The file does not begin with a header.", "Put the header between two lines of `---` at the very top."
    ),
    "header-unclosed": _fault(
        "The header that begins here has no end.", "Close it with a line of `---` before the text begins."
    ),
    "header-empty": _fault("The header holds nothing.", "Write at least: {keys}."),
    "header-double": _fault(
        "There is a header here and another one in `{other}`.", "Keep one of the two and delete the other."
    ),
    "header-alone": _fault("This header has no text beside it.", "Add `{other}`, or delete this file."),
}

_YAML = {
    "yaml-tab": _fault("A tab is used to indent this line.", "Indent with blanks instead."),
    "yaml-alias": _fault(
        "`&` and `*` in front of a value (names and copies of values) are not used here.",
        "Write the value out, or put it in quotes if the sign belongs to it.",
    ),
    "yaml-merge": _fault("`<<` (taking over another record) is not used here.", "Write the keys out."),
    "yaml-tag": _fault(
        "`!` in front of a value (a type mark) is not used here.",
        "Delete the mark, or put the value in quotes if the sign belongs to it.",
    ),
    "yaml-key": _fault(
        "A key must be a single word or phrase.", "Write `key: value`, with plain text as the key."
    ),
    "yaml-twice": _fault("`{key}` was given before, in line {line}.", "Keep one of the two."),
    "yaml-deep": _fault("Records lie too deep inside each other here.", "Leave out the superfluous levels."),
    "yaml-second": _fault(
        "A second document begins here.",
        "Keep one document: delete the line of `---` or `...` that parts the two.",
    ),
    "yaml-quote": _fault(
        "The quote that opens here is never closed.", "Add the closing quote at the end of the value."
    ),
    "yaml-escape": _fault(
        "A backslash in double quotes has a meaning of its own, and this one has none.",
        "Write two backslashes, or use single quotes.",
    ),
    "yaml-bracket": _fault(
        "The bracket that opens here is not closed, or a comma is missing inside.",
        "Close it with `{closing}`, and put a comma between its entries.",
    ),
    "yaml-colon": _fault(
        "A colon followed by a blank is not expected here.",
        "Put the value in quotes if the colon belongs to it; else indent the line like its neighbours.",
    ),
    "yaml-indent": _fault(
        "This line does not fit the ones above it.",
        "Indent it exactly like its neighbours; every line needs its own `key:` or `- `.",
    ),
    "yaml-character": _fault("A value cannot begin with `{sign}`.", "Put the value in quotes."),
    "yaml-other": _fault(
        "The header cannot be understood here.", "Look for a missing quote, colon or bracket."
    ),
    "value-comment": _fault(
        "All that follows `#` is a comment, so there is no value here.", 'Put it in quotes: "{eaten}".'
    ),
}

_VALUES = {
    "key-missing": _fault("`{key}` is missing.", "Add `{key}: ...`. {doc}"),
    "key-unknown": _fault("`{key}` is not a key that belongs here.", "{hint}"),
    "value-empty": _fault("`{key}` has no value.", "Give one, or delete the line. {doc}"),
    "value-shape": _fault("`{key}` must be {wanted}, not {found}.", "{doc}"),
    "list-empty": _fault("`{key}` is an empty list.", "Add at least one entry, or delete the line."),
    "list-long": _fault("`{key}` has {count} entries; at most {most} are possible.", "Shorten the list."),
    "text-long": _fault("This is {count} characters long; at most {most} fit.", "Shorten it."),
    "choice-unknown": _fault("`{value}` is not one of the choices.", "{hint}"),
    "whole-number": _fault("`{value}` is not a whole number.", "Write digits alone, such as 3."),
    "number": _fault("`{value}` is not a number.", "Write digits with a point, such as 1.2."),
    "out-of-range": _fault("`{value}` is out of range.", "Write a value from {least} to {most}."),
    "yes-or-no": _fault("`{value}` is neither `true` nor `false`.", "Write `true` or `false`."),
    "hex": _fault(
        "`{value}` is not a colour in hex.", 'Write # and six digits 0-9, a-f in quotes, such as "#1f4d3a".'
    ),
    "length": _fault("`{value}` is not a length.", "Write a number and its unit, such as 43 mm or 4.3 cm."),
    "mass": _fault("`{value}` is not a mass.", "Write a number and its unit, such as 5 g."),
    "percent": _fault("`{value}` is not a share.", "Write a number and the sign, such as 10 %."),
    "price": _fault(
        "`{value}` is not a price.",
        "Write `free`, or an amount without its currency and with at most two decimals, such as 5.50.",
    ),
    "date": _fault("`{value}` is not a date.", "Write year-month-day, such as 2026-03-14."),
    "form": _fault("`{value}` has not the right form.", "Write {wanted}."),
    "letter": _fault(
        "`{letter}` cannot stand for a bead.", "Use a single letter A-Z or a-z or a single digit 0-9."
    ),
    "stock-key": _fault(
        "`{key}` cannot be a key of the stock.",
        "Use lower-case letters, digits and hyphens, beginning with a letter.",
    ),
    "stock-unknown": _fault("The shop's stock has no `{key}`.", "{hint}"),
}

_WORDS = {
    "words-empty": _fault("This word chart has no bead.", "Write counts and letters, such as 6D 2L."),
    "words-character": _fault(
        "`{sign}` has no meaning in a word chart.",
        "Use counts, bead letters, round brackets and blanks alone.",
    ),
    "words-count": _fault(
        "`{count}` is not a count of beads.", "Write a count of 1 or more before the letter."
    ),
    "words-unclosed": _fault(
        "The bracket that opens here is never closed.", "Add `)` where the repeat ends."
    ),
    "words-stray": _fault("This `)` closes nothing.", "Delete it, or add `(` where the repeat begins."),
    "words-hollow": _fault(
        "There is nothing between these brackets.", "Put the beads to repeat inside, or delete them."
    ),
    "words-deep": _fault("Brackets lie too deep inside each other.", "Use at most {most} levels."),
    "words-many": _fault("This word chart spells out more than {most} beads.", "Check its counts."),
}

_CHARTS = {
    "chart-nameless": _fault(
        "This chart names no part.", "Write the part's name after the word chart: chart {example}"
    ),
    "chart-part-unknown": _fault("No part is called `{name}`.", "{hint}"),
    "chart-twice": _fault("`{name}` has a chart already, in line {line}.", "Keep one of the two charts."),
    "chart-and-rows": _fault("`{name}` has `rows` in the header and a chart too.", "Keep one of the two."),
    "chart-empty": _fault(
        "The chart of `{name}` is empty.", "Draw its rows between the two fences, top row first."
    ),
    "chart-row-empty": _fault("This row of the chart has no bead.", "Delete the row, or put its beads in."),
    "chart-character": _fault(
        "`{sign}` cannot stand in a chart.", "Use bead letters, digits, `.` for an empty place, and blanks."
    ),
    "chart-tab": _fault("A tab stands in the chart.", "Use blanks: every column counts."),
    "chart-inside": _fault(
        "A chart cannot stand inside {inside}.", "Move it out, so that its fence begins at the left edge."
    ),
    "fence-unclosed": _fault(
        "The fence that opens here is never closed.", "Add a line of {fence} alone where the block ends."
    ),
}

_BODY = {
    "mark-unknown": _fault("`{name}` is not something that `:::` can place.", "{hint}"),
    "mark-unclosed": _fault(
        "The `::: {name}` that begins here is never closed.", "Add a line `:::` where it ends."
    ),
    "mark-stray": _fault(
        "This `:::` closes nothing.",
        "Delete it: only {kinds} are closed; `steps` and `chart` stand on one line.",
    ),
    "mark-part": _fault("`::: {name}` must name a part.", "Write the part's name after it. {hint}"),
    "mark-extra": _fault("`::: {name}` takes nothing after it.", "Move `{extra}` to the next line."),
    "mark-empty": _fault(
        "This `::: {name}` holds nothing.", "Write its text on the lines before the closing `:::`."
    ),
    "part-unknown": _fault("No part is called `{name}`.", "{hint}"),
    "placed-twice": _fault("`{what}` for `{name}` stands already in line {line}.", "Delete one of the two."),
    "html-shown": _advice(
        "HTML is not carried out: the reader will see `{tag}` as it stands.", "Use Markdown, or delete it."
    ),
}

_CHECKS = {
    "letter-undefined": _fault(
        "No colour is called `{letter}` (used {times} in `{part}`, first here).",
        "Add it to `colours`. {hint}",
    ),
    "letter-or-count": _fault(
        "No colour is called `{letter}` (used {times} in `{part}`, first here).",
        "If it is a count, write it directly before its letter or bracket, without a blank.",
    ),
    "letter-unused": _advice("The colour `{letter}` is used nowhere.", "Use it, or delete the line."),
    "bead-unknown": _fault("`{name}` is not a bead this program knows.", "{hint}"),
    "needle-unknown": _fault("`{name}` is not a needle this program knows.", "{hint}"),
    "thread-unknown": _fault(
        "`{name}` is not a thread this program knows.", "Write material and thickness, such as nylon 0.25 mm."
    ),
    "finding-unknown": _fault("`{name}` is not a finding this program knows.", "{hint}"),
    "stitch-unknown": _fault("`{name}` is not a stitch this program knows.", "{hint}"),
    "part-twice": _fault(
        "A part called `{name}` was given before, in line {line}.", "Give each part its own name."
    ),
    "chart-needed": _fault(
        "`{name}` ({stitch}) has no chart.",
        "Draw it in the text as a block that begins with: ```chart {name}",
    ),
    "chart-needless": _fault(
        "A part in `{stitch}` has no chart.", "Delete the chart, or choose another stitch."
    ),
    "strands-needed": _fault(
        "`{name}` ({stitch}) has no strands.", "Add `strands:` with a word chart for each."
    ),
    "strands-needless": _fault(
        "A part in `{stitch}` has no strands.", "Delete them, or choose another stitch."
    ),
    "hang-needed": _fault(
        "`{name}` ({stitch}) hangs from nothing.", "Add a line such as `hang: {{from: Fan, edge: bottom}}`."
    ),
    "mirror-needless": _fault("There are no strands to mirror.", "Delete `mirror`, or add `strands`."),
    "row-out-of-step": _fault(
        "This bead is out of step: in {stitch}, beads of a row stand two columns apart, "
        "and each row half a bead beside the next.",
        "Move it by one column to the left or right.",
    ),
    "row-shifted": _fault(
        "This row is out of step: in {stitch}, each row stands half a bead, one column, beside the next.",
        "Move the whole row by one column to the left or right.",
    ),
    "row-gap": _fault(
        "There is a gap in the row before this bead.", "Fill it: a row in {stitch} has no empty place."
    ),
    "row-width": _fault(
        "This row has {count}, the rows of this chart have {usual}.",
        "Make all rows alike; `.` stands for an empty place.",
    ),
    "row-adrift": _fault(
        "No bead of this row touches the row above it.",
        "Move the row, so that the two lie against each other.",
    ),
    "rows-of-one": _fault(
        "A row of one bead on a row of one bead cannot be stitched: there is no bridge to go under.",
        "Add a bead to one of the two rows.",
    ),
    "repeat-out-of-step": _fault(
        "Repeated, the chart's last row comes to lie straight above its first.",
        "Give the chart an even number of rows, or repeat it once only.",
    ),
    "begin-row": _fault(
        "`{part}` has no row {row}; it has {rows}.", "Name one of its rows, counted from the top."
    ),
    "hang-unknown": _fault("No part is called `{name}`.", "{hint}"),
    "hang-later": _fault(
        "`{name}` is not made yet when this part begins.", "Put it before this part in `parts`."
    ),
    "hang-no-edge": _fault(
        "`{name}` has no row of beads to hang from.", "Hang it from a part that has a chart."
    ),
    "strand-count": _fault(
        "There are {strands} (mirrored ones included), but the {edge} row of `{part}` has {beads}.",
        "Give every bead of that row its own strand.",
    ),
    "strand-short": _fault(
        "This strand has {beads}, and the last {turn} of a strand are not passed on the way back.",
        "Make the strand longer, or `turn` smaller.",
    ),
    "colourway-letter": _fault("`{name}` swaps `{letter}`, which is no colour of this pattern.", "{hint}"),
    "colourway-twice": _fault(
        "A colourway called `{name}` was given before, in line {line}.", "Give it another name."
    ),
    "revision-unlisted": _fault(
        "Revision {number} is not among `revisions`.", "Add a line that says what is new in it."
    ),
    "revision-old": _fault(
        "`revisions` goes up to {newest}, but this is revision {number}.", "Write revision: {newest}."
    ),
    "revision-twice": _fault("Revision {number} is listed twice.", "Keep one of the two lines."),
    "too-many-beads": _fault(
        "One piece would have {count}; at most {most} are possible.", "Check counts and `repeat`."
    ),
}

_WEAVE = {
    "weave-ladder-rows": _fault(
        "A ladder is one row, but `{part}` has {rows}.",
        "Take the stitch `brick` for rows on a ladder, or leave one row and `repeat` out.",
    ),
    "weave-no-footing": _fault(
        "Row {row} cannot begin here: one bead on one bead, without a bridge, holds nothing.",
        "Let two of its beads rest on the bead below, or give the row below a second bead.",
    ),
    "weave-no-hold": _fault(
        "The {finding} has no hold here: the thread cannot go round and come out again.",
        "Hang it from an edge of two beads or more.",
    ),
    "weave-no-way": _fault(
        "The thread cannot get to where row {row} begins without showing.",
        "Begin at another row (`begin`), or at the other side (`start`), or change the rows beside it.",
    ),
    "weave-part-apart": _fault(
        "`{part}` hangs from nothing: only the first part (`{first}`) may stand by itself.",
        "Hang it from an earlier part, or make it a pattern of its own.",
    ),
}

_PATH = {
    "path-picked-twice": _fault(
        "The needle would pick up this bead ({letter}) twice (move {move}).", "{bug}"
    ),
    "path-not-there": _fault(
        "The needle would pass through this bead ({letter}) before it is there (move {move}).", "{bug}"
    ),
    "path-pulls-out": _fault(
        "The needle would go back into this bead ({letter}) and pull its thread out (move {move}).", "{bug}"
    ),
    "path-no-bridge": _fault("No bridge lies where the needle would go under one (move {move}).", "{bug}"),
    "path-bare-thread": _fault("Thread would lie bare beside this bead ({letter}) (move {move}).", "{bug}"),
    "path-left-out": _fault("This bead ({letter}) would never be picked up.", "{bug}"),
    "path-single-pass": _fault(
        "This bead ({letter}) would hang on a single pass of thread.",
        "Give it a neighbour in its row, or a row above it.",
    ),
    "path-step-astray": _fault("Step {step} does not say what the needle does.", "{bug}"),
    "path-unlike-chart": _fault("The woven `{part}` does not read like its chart.", "{bug}"),
}
"""What the virtual needle objects to. But for a bead all alone, these are mistakes of this program."""

_LOOK = {
    "letter-not-in-fonts": _fault(
        "The theme's fonts have no `{letter}` ({code}): it could not be printed.",
        "Write it in words, or with another sign.",
    ),
    "theme-unknown": _fault(
        "There is no theme called `{name}`.", "Use `linen`, or put your own into the shop's folder `themes`."
    ),
    "language-unknown": _fault("The theme has no words in `{name}`.", "It has: {known}."),
}

CODES: Mapping[str, Code] = MappingProxyType(
    {**_FILES, **_YAML, **_VALUES, **_WORDS, **_CHARTS, **_BODY, **_CHECKS, **_WEAVE, **_PATH, **_LOOK}
)
"""Every code there is."""
