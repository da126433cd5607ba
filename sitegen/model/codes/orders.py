"""Codes of what keeps personal copies from being written -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import fault

ORDERS = {
    "orders-none": fault(
        "There is no order in this file.",
        "Write `pattern,for` into the first line, and each order into a line of its own below it.",
    ),
    "orders-column": fault("`{name}` is not a column of orders.", "{hint}"),
    "orders-column-twice": fault("There is a second column `{name}`.", "Keep one of the two."),
    "orders-column-missing": fault(
        "The first line names no column `{name}`.", "Name at least these columns there: `{needed}`."
    ),
    "orders-cells": fault(
        "This line has {count} values; the first line names {wanted} columns.",
        "Add or delete values; put a value in quotes if the separator belongs to it.",
    ),
    "orders-quote": fault(
        "The quote that opens here is never closed.", "Add the closing quote at the end of the value."
    ),
    "orders-after-quote": fault(
        "`{rest}` stands behind the closing quote.", "Move it inside; write a quote that belongs there twice."
    ),
    "orders-blank": fault(
        "`{column}` is empty.", "Name the pattern in `pattern`, and a person or an order number in `for`."
    ),
    "orders-unbuilt": fault(
        "There is no output to take PDFs from.", "Run `sitegen build` first, or name the shop with `--shop`."
    ),
    "orders-pattern": fault("The output has no PDF of `{name}`.", "{hint}"),
    "orders-choice": fault("`{name}` has no PDF with the {column} `{value}`.", "{hint}"),
    "orders-together": fault(
        "`{name}` has a PDF of each of these, but none of them together: {chosen}.",
        "There is: {known}.",
    ),
    "copies-in-output": fault(
        "Copies with names must not lie in the output folder: it is uploaded, and replaced by each build.",
        "Name a folder outside of it after `--out`.",
    ),
}
