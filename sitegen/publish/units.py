"""A quantity in metric and in imperial units -> one text that holds both, and pages that show either."""

from __future__ import annotations

from markupsafe import Markup

_PAGE = '<span class="metric">{}</span> <span class="imperial"><span>(</span>{}<span>)</span></span>'
"""The style sheet hides one of the two, and the brackets with it, once a reader has chosen."""


class InBoth(str):
    """Text that holds a quantity in both systems: `1.42 m (4 ft 8 in)`.

    As a string it is plain text; a template gets the same as HTML, each system in an element of its own. A
    sentence that is filled with such a text is one itself (`Words.text`).
    """

    __slots__ = ("_page",)
    _page: Markup

    def __new__(cls, text: str, page: Markup) -> InBoth:
        """`page` is the same text as HTML."""
        made = super().__new__(cls, text)
        made._page = page
        return made

    def __html__(self) -> Markup:
        """What templates and Markup ask for."""
        return self._page

    def __reduce__(self) -> tuple[type[InBoth], tuple[str, Markup]]:
        """For copies, and for other processes."""
        return InBoth, (str(self), self._page)


def in_both(metric: str, imperial: str) -> InBoth:
    """The same quantity in both systems."""
    return InBoth(f"{metric} ({imperial})", Markup(_PAGE).format(metric, imperial))
