"""Codes of what is wrong with a photo -> messages."""

from __future__ import annotations

from sitegen.model.codes.code import advice, fault

PHOTOS = {
    "photo-alt": fault(
        "Nothing is said of this photo for those who cannot see it.",
        "Write what is seen between the square brackets, for example ![what is seen]({file}).",
    ),
    "photo-alt-name": fault(
        "`{alt}` is the name of a file and says nothing of the photo to those who cannot see it.",
        "Write what is seen, in a few words.",
    ),
    "photo-place": fault(
        "A photo cannot stand inside a paragraph, a list, a quotation or a set-off text.",
        "Give it a paragraph of its own at the left edge, with a blank line before and after it.",
    ),
    "photo-form": fault(
        "This looks like a photo and cannot be read as one.",
        'Write ![what is seen](file.jpg "caption"), a file name with blanks in <angle brackets>.',
    ),
    "photo-outside": fault(
        "`{file}` does not lie beside the pattern, or is a link that leads away from there.",
        "Put a copy of the photo into the pattern's folder, or into one below it, and write its path from "
        "there, with `/` between folders.",
    ),
    "photo-missing": fault("There is no photo `{file}` beside the pattern.", "{hint}"),
    "photo-case": fault(
        "The file is called `{found}`, not `{file}`: small and capital letters differ on most computers.",
        "Write the name as the file has it.",
    ),
    "photo-unreadable": fault(
        "The photo `{file}` cannot be read: {reason}.", "Save it anew as a JPEG and put that in its place."
    ),
    "photo-format": fault(
        "`{file}` is no photo that can be shown here: {found}.", "Save it as a JPEG, a PNG or a WebP."
    ),
    "photo-heic": fault(
        "`{file}` is a HEIC picture, which many browsers and printers cannot show.",
        "Save a copy as a JPEG, from the phone's or the computer's picture viewer, and name that one.",
    ),
    "photo-large": fault("`{file}` has {size}; at most {most} are possible.", "Save a smaller copy of it."),
    "photo-coarse": advice(
        "`{file}` is {width} pixels wide, so it is printed {printed} mm wide instead of {widest} mm, and "
        "may look coarse.",
        "Give a larger photo if you have one: {wanted} pixels across are best here.",
    ),
}
