"""Codes of what is wrong with a source as text -> messages: files, YAML, values, word charts, charts."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

FILES = {
    "folder-missing": fault("There is no folder here.", "Give the folder that holds the shop."),
    "no-patterns": fault(
        "No pattern was found in this folder.", "Put at least one Markdown file into `content/patterns`."
    ),
    "shop-missing": advice(
        "There is no `shop.yaml` in this folder, so the shop has no name.",
        "Add one with at least `title:` and your shop's name.",
    ),
    "file-name": fault(
        "`{name}` cannot name a page.", "Rename the file: lower-case letters, digits and hyphens, then `.md`."
    ),
    "file-name-shared": fault(
        "`{name}` and `{other}` would each have a file called `{file}`.",
        "Rename one of them: no name may be that of another pattern with a language or an edition behind it.",
    ),
    "file-unreadable": fault(
        "This file cannot be read: {reason}.", "See that it is a plain file that you may open."
    ),
    "file-link-outside": fault(
        "This is a link that leads out of the shop folder.", "Put a copy of the file itself here."
    ),
    "file-too-large": fault("This file is larger than {most}.", "Split it, or take out what is no text."),
    "file-not-utf8": fault(
        "The text is not in UTF-8 from here on.", "Save the file again with the encoding UTF-8."
    ),
    "hidden-character": fault(
        "A character that cannot be seen stands here ({name}).", "Delete it and type the place anew."
    ),
    "header-missing": fault(
        "The file does not begin with a header.", "Put the header between two lines of `---` at the very top."
    ),
    "header-unclosed": fault(
        "The header that begins here has no end.", "Close it with a line of `---` before the text begins."
    ),
    "header-empty": fault("The header holds nothing.", "Write at least: {keys}."),
    "header-double": fault(
        "There is a header here and another one in `{other}`.", "Keep one of the two and delete the other."
    ),
    "header-alone": fault("This header has no text beside it.", "Add `{other}`, or delete this file."),
}

YAML = {
    "yaml-tab": fault("A tab is used to indent this line.", "Indent with blanks instead."),
    "yaml-alias": fault(
        "`&` and `*` in front of a value (names and copies of values) are not used here.",
        "Write the value out, or put it in quotes if the sign belongs to it.",
    ),
    "yaml-merge": fault("`<<` (taking over another record) is not used here.", "Write the keys out."),
    "yaml-tag": fault(
        "`!` in front of a value (a type mark) is not used here.",
        "Delete the mark, or put the value in quotes if the sign belongs to it.",
    ),
    "yaml-key": fault(
        "A key must be a single word or phrase.", "Write `key: value`, with plain text as the key."
    ),
    "yaml-twice": fault("`{key}` was given before, in line {line}.", "Keep one of the two."),
    "yaml-deep": fault("Records lie too deep inside each other here.", "Leave out the superfluous levels."),
    "yaml-second": fault(
        "A second document begins here.",
        "Keep one document: delete the line of `---` or `...` that parts the two.",
    ),
    "yaml-quote": fault(
        "The quote that opens here is never closed.", "Add the closing quote at the end of the value."
    ),
    "yaml-escape": fault(
        "A backslash in double quotes has a meaning of its own, and this one has none.",
        "Write two backslashes, or use single quotes.",
    ),
    "yaml-bracket": fault(
        "The bracket that opens here is not closed, or a comma is missing inside.",
        "Close it with `{closing}`, and put a comma between its entries.",
    ),
    "yaml-colon": fault(
        "A colon followed by a blank is not expected here.",
        "Put the value in quotes if the colon belongs to it; else indent the line like its neighbours.",
    ),
    "yaml-indent": fault(
        "This line does not fit the ones above it.",
        "Indent it exactly like its neighbours; every line needs its own `key:` or `- `.",
    ),
    "yaml-character": fault("A value cannot begin with `{sign}`.", "Put the value in quotes."),
    "yaml-other": fault(
        "The header cannot be understood here.", "Look for a missing quote, colon or bracket."
    ),
    "value-comment": fault(
        "All that follows `#` is a comment, so there is no value here.", 'Put it in quotes: "{eaten}".'
    ),
}

VALUES = {
    "tail-too-long": fault(
        "Two tails of {tail} leave less than {least} of a working length of {working}.",
        "Make `tail` shorter or `working_length` longer.",
    ),
    "key-missing": fault("`{key}` is missing.", "Add `{key}: ...`. {doc}"),
    "key-unknown": fault("`{key}` is not a key that belongs here.", "{hint}"),
    "value-empty": fault("`{key}` has no value.", "Give one, or delete the line. {doc}"),
    "value-shape": fault("`{key}` must be {wanted}, not {found}.", "{doc}"),
    "list-twice": fault("`{text}` stands in `{key}` twice.", "Delete one of the two."),
    "list-empty": fault("`{key}` is an empty list.", "Add at least one entry, or delete the line."),
    "list-long": fault("`{key}` has {count} entries; at most {most} are possible.", "Shorten the list."),
    "text-long": fault("This is {count} characters long; at most {most} fit.", "Shorten it."),
    "choice-unknown": fault("`{value}` is not one of the choices.", "{hint}"),
    "whole-number": fault("`{value}` is not a whole number.", "Write digits alone, such as 3."),
    "number": fault("`{value}` is not a number.", "Write digits with a point, such as 1.2."),
    "out-of-range": fault("`{value}` is out of range.", "Write a value from {least} to {most}."),
    "yes-or-no": fault("`{value}` is neither `true` nor `false`.", "Write `true` or `false`."),
    "hex": fault(
        "`{value}` is not a colour in hex.", 'Write # and six digits 0-9, a-f in quotes, such as "#1f4d3a".'
    ),
    "length": fault("`{value}` is not a length.", "Write a number and its unit, such as 43 mm or 4.3 cm."),
    "mass": fault("`{value}` is not a mass.", "Write a number and its unit, such as 5 g."),
    "percent": fault("`{value}` is not a share.", "Write a number and the sign, such as 10 %."),
    "price": fault(
        "`{value}` is not a price.",
        "Write `free`, or an amount without its currency and with at most two decimals, such as 5.50.",
    ),
    "date": fault("`{value}` is not a date.", "Write year-month-day, such as 2026-03-14."),
    "form": fault("`{value}` has not the right form.", "Write {wanted}."),
    "letter": fault(
        "`{letter}` cannot stand for a bead.", "Use a single letter A-Z or a-z or a single digit 0-9."
    ),
    "stock-key": fault(
        "`{key}` cannot be a key of the stock.",
        "Use lower-case letters, digits and hyphens, beginning with a letter.",
    ),
    "stock-unknown": fault("The shop's stock has no `{key}`.", "{hint}"),
}

WORDS = {
    "words-empty": fault("This word chart has no bead.", "Write counts and letters, such as 6D 2L."),
    "words-character": fault(
        "`{sign}` has no meaning in a word chart.",
        "Use counts, bead letters, round brackets and blanks alone; square brackets in a branched strand.",
    ),
    "words-count": fault(
        "`{count}` is not a count of beads.", "Write a count of 1 or more before the letter."
    ),
    "words-unclosed": fault("The bracket that opens here is never closed.", "Add `)` where the repeat ends."),
    "words-stray": fault(
        "This `{sign}` closes nothing.", "Delete it, or add the bracket that opens where it begins."
    ),
    "words-hollow": fault(
        "There is nothing between these brackets.", "Put the beads to repeat inside, or delete them."
    ),
    "words-deep": fault("Brackets lie too deep inside each other.", "Use at most {most} levels."),
    "words-many": fault("This word chart spells out more than {most} beads.", "Check its counts."),
}

CHARTS = {
    "chart-nameless": fault(
        "This chart names no part.", "Write the part's name after the word chart: chart {example}"
    ),
    "chart-part-unknown": fault("No part is called `{name}`.", "{hint}"),
    "chart-twice": fault("`{name}` has a chart already, in line {line}.", "Keep one of the two charts."),
    "chart-and-rows": fault("`{name}` has `rows` in the header and a chart too.", "Keep one of the two."),
    "chart-empty": fault(
        "The chart of `{name}` is empty.", "Draw its rows between the two fences, top row first."
    ),
    "chart-row-empty": fault("This row of the chart has no bead.", "Delete the row, or put its beads in."),
    "chart-character": fault(
        "`{sign}` cannot stand in a chart.", "Use bead letters, digits, `.` for an empty place, and blanks."
    ),
    "chart-tab": fault("A tab stands in the chart.", "Use blanks: every column counts."),
    "chart-inside": fault(
        "A chart cannot stand inside {inside}.", "Move it out, so that its fence begins at the left edge."
    ),
    "fence-unclosed": fault(
        "The fence that opens here is never closed.", "Add a line of {fence} alone where the block ends."
    ),
}

PAGES = {
    "page-photo": fault(
        "A page of the shop holds no photos.", "Show the photo in the pattern it belongs to."
    ),
    "page-part": fault("A page of the shop has no parts to show.", "Place charts and steps in a pattern."),
    "page-link": fault("`{target}` is no page of this shop.", "{hint}"),
}

BODY = {
    "mark-unknown": fault("`{name}` is not something that `:::` can place.", "{hint}"),
    "mark-unclosed": fault(
        "The `::: {name}` that begins here is never closed.", "Add a line `:::` where it ends."
    ),
    "mark-stray": fault(
        "This `:::` closes nothing.",
        "Delete it: only {kinds} are closed; `steps` and `chart` stand on one line.",
    ),
    "mark-part": fault("`::: {name}` must name a part.", "Write the part's name after it. {hint}"),
    "mark-extra": fault("`::: {name}` takes nothing after it.", "Move `{extra}` to the next line."),
    "mark-empty": fault(
        "This `::: {name}` holds nothing.", "Write its text on the lines before the closing `:::`."
    ),
    "part-unknown": fault("No part is called `{name}`.", "{hint}"),
    "placed-twice": fault("`{what}` for `{name}` stands already in line {line}.", "Delete one of the two."),
    "html-shown": advice(
        "HTML is not carried out: the reader will see `{tag}` as it stands.", "Use Markdown, or delete it."
    ),
}
