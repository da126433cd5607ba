"""Codes of what keeps pages and printed sheets from being made -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

LOOK = {
    "letter-not-in-fonts": fault(
        "The theme's fonts have no `{letter}` ({code}): it could not be printed.",
        "Write it in words, or with another sign.",
    ),
    "theme-unknown": fault(
        "There is no theme called `{name}`.", "Use `linen`, or put your own into the shop's folder `themes`."
    ),
    "theme-base": fault(
        "The theme says of the theme it rests on: `{name}`, which is no whole theme.",
        "Write `base:` with one of: {known}.",
    ),
    "theme-contrast": fault(
        "`{front}` stands out from `{back}` by {found} to 1; people need {least} to 1.",
        "Take another shade, such as `{better}` for `{front}`.",
    ),
    "theme-file": fault("The theme has a file that replaces nothing.", "Delete or rename it. {hint}"),
    "theme-font": fault(
        "`{file}` cannot be read as a {cut} font.",
        "Regular and italic have weight 400, bold has 700; a family is named in letters, digits and blanks.",
    ),
    "theme-font-missing": fault(
        "There is no font file `{file}`.",
        "Put a TTF for print and a WOFF2 for screens into the folder `fonts`.",
    ),
    "theme-message": fault("No page has a message `{key}`.", "{hint}"),
    "theme-message-fields": fault(
        "The message `{key}` has fields that are not filled.", "It may have: {fields}; close every brace."
    ),
    "theme-message-form": fault(
        "The message `{key}` has another form than the one it replaces.",
        "Write one text, or texts by number with `other` among them, as the base has it.",
    ),
    "theme-template": fault("The template cannot be read: {reason}.", "Compare it with the one it replaces."),
    "language-unknown": fault("The theme has no words in `{name}`.", "It has: {known}."),
}

OUTPUT = {
    "former-left": advice(
        "The output is new, but the former one could not be deleted whole: {reason}.",
        "Delete this folder yourself before the next build.",
    ),
}
