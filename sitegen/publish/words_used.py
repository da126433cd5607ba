"""What sheets say, as HTML -> the words of the glossary that occur in it, with what they mean."""

from __future__ import annotations

import re
from collections.abc import Sequence

from sitegen.publish.glossary import TERMS, Term, by_letter
from sitegen.publish.lessons import lesson_title
from sitegen.publish.words import Words

_UNREAD = re.compile(r"<svg.*?</svg>|<[^>]*>", re.DOTALL)
"""Drawings and tags: the words of drawings are for those who do not see them."""


def words_used(html: str, stitches: Sequence[str], words: Words) -> tuple[Term, ...]:
    """The terms in any of their forms, and the stitches of the pattern, in order of their letters."""
    say, text = words.text, " ".join(_UNREAD.sub(" ", html).split())
    terms = [
        Term(name, say(f"glossary.{name}"), say(f"glossary.{name}.is"), None)
        for name in TERMS
        if _occurs(say(f"glossary.{name}.as").split(", "), text)
    ]
    terms += [Term(name, lesson_title(name, words), say(f"lesson.{name}.is"), None) for name in stitches]
    return tuple(term for _, some in by_letter(terms) for term in some)


def _occurs(forms: Sequence[str], text: str) -> bool:
    """Whether one of the forms stands in the text as a word or words of its own."""
    return (
        re.search(rf"(?<![\w/])({'|'.join(map(re.escape, forms))})(?![\w/])", text, re.IGNORECASE) is not None
    )
