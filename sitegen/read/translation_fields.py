"""The keys of a translation's header: those of a pattern's header that hold words for readers."""

from __future__ import annotations

from sitegen.read.fields import LETTER, PHOTO_WORDS
from sitegen.read.kinds import Field, ListOf, Named, Record, Text, Whole

_ITS_NAME = Record((Field("name", Text(60), "Its name in this language.", required=True),))

TRANSLATION = Record(
    (
        Field("title", Text(80), "The pattern's title in this language.", required=True),
        Field("summary", Text(300), "One sentence that says what it is.", required=True),
        Field(
            "colours",
            Record((), Named(LETTER, "letter", _ITS_NAME, "The bead called by this letter.")),
            "The colours' names.",
        ),
        Field(
            "colourways",
            ListOf(
                Record(
                    (Field("name", Text(60), "The colourway's name in this language.", required=True),),
                    Named(LETTER, "letter", _ITS_NAME, "What this letter's colour becomes."),
                ),
                100,
            ),
            "The colourways' names, in the pattern's order.",
        ),
        Field("parts", ListOf(_ITS_NAME, 100), "The parts' names, in the pattern's order."),
        Field(
            "revisions",
            ListOf(
                Record(
                    (
                        Field("number", Whole(1, 9999), "The revision's number.", required=True),
                        Field("note", Text(400), "What is new in it.", required=True),
                        Field("corrects", Text(400), "What was wrong in the editions before."),
                    )
                ),
                1000,
            ),
            "What was new in each revision.",
        ),
        Field(
            "photo",
            Record(
                (
                    Field("alt", PHOTO_WORDS, "What is seen, for those who do not see it."),
                    Field("caption", PHOTO_WORDS, "A line under the photo."),
                )
            ),
            "The words of the lead photo.",
        ),
    )
)
"""The header of a translation: words alone."""
