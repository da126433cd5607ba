"""Codes of what is wrong with a bundle of patterns -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import fault

BUNDLES = {
    "bundle-pattern": fault("This shop has no pattern `{name}`.", "{hint}"),
    "bundle-alone": fault(
        "A bundle holds several patterns; this one holds a single one.",
        "Name at least two under `patterns`, or delete the bundle.",
    ),
    "bundle-name": fault(
        "`{name}` is the name of a {what} already.", "Choose another: the files are called by it."
    ),
    "bundle-unpriced": fault(
        "`{name}` is for sale, and the bundle that holds it has no price.",
        "Add `price:` with the price of the whole bundle.",
    ),
    "bundle-priced": fault(
        "All patterns of this bundle are free, so it is free too.",
        "Delete its price, or give one of the patterns a price.",
    ),
}
