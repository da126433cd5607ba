"""Codes of what is wrong with the languages of a shop and with translations -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

LANGUAGES = {
    "languages-first": fault(
        "The first of `languages` is `{first}`, but `language` says `{language}`.",
        "Put the language of your texts first, and leave out the key `language`.",
    ),
    "translation-language": fault(
        "`{key}` is no language code.", "Write the code of a language, such as `de`."
    ),
    "translation-unshown": advice(
        "The site has no pages in `{language}`, so this translation is not shown.",
        "Add `{language}` to `languages` in the shop file, after the language of your texts.",
    ),
    "translation-alone": fault(
        "There is no `{other}` that this could translate.",
        "Call it like the file that it translates and its language, such as `fern.md` and `fern.de.md`.",
    ),
    "translation-unknown": fault("`{name}` is no {what}.", "Known here: {known}."),
    "translation-count": fault(
        "Here are {here} {what}, but the pattern has {count}.",
        "Say something of each of them, in the pattern's order, or leave `{what}` out.",
    ),
    "translation-chart": fault(
        "A translation cannot draw a chart: it would be another pattern.",
        "Take the chart out. Write `::: chart {name}` where the pattern's own chart is to stand.",
    ),
}
