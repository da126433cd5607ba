"""A structure tree -> the same tree without elements that say nothing.

The print engine has an element for each box of the layout. Those that only wrap text, without a language, a
name or any other mark of their own, give what they hold to the element around them: it is read alike, and
the tags of thousands of letters become a small part of the file.
"""

from __future__ import annotations

from pikepdf import Array, Dictionary, Object, Pdf

from sitegen.publish.tags import kids_of, parent_tree

WRAPPERS = frozenset(("/Span", "/NonStruct"))
HOLDERS = WRAPPERS | frozenset(
    ("/P", "/H1", "/H2", "/H3", "/H4", "/H5", "/H6", "/TD", "/TH", "/Lbl", "/LBody", "/Caption", "/Link")
)
"""What may hold text itself (ISO 32000-1, 14.8.4.3 and 14.8.4.4)."""
BARE = frozenset(("/Type", "/S", "/P", "/K", "/Pg"))
"""What an element that only wraps consists of."""

Owners = dict[int, Object]
"""Key of a page in the parent tree -> the owners of its marked content, by their numbers."""


def thin_tags(pdf: Pdf) -> None:
    """Take the wrappers out, in place."""
    owners = dict(parent_tree(pdf))
    _thin(pdf.Root.StructTreeRoot.K[0], owners)


def _thin(element: Object, owners: Owners) -> tuple[list[Object | int], bool]:
    """What the element holds once wrappers are gone, and whether that is other than before."""
    holds = str(element.S) in HOLDERS
    kept: list[Object | int] = []
    changed = False
    for kid in kids_of(element):
        if not isinstance(kid, Dictionary) or "/S" not in kid:
            kept.append(kid)
            continue
        below, other = _thin(kid, owners)
        if holds and _only_wraps(kid, element):
            kept += below
            changed = True
            continue
        kept.append(kid)
        if other:
            _hold(kid, below, owners)
    return kept, changed


def _only_wraps(kid: Object, element: Object) -> bool:
    return str(kid.S) in WRAPPERS and BARE.issuperset(kid.keys()) and kid.Pg.objgen == element.Pg.objgen


def _hold(element: Object, kids: list[Object | int], owners: Owners) -> None:
    """Let an element hold these, and them and the parent tree know it."""
    element.K = Array(kids)
    slots = owners[int(element.Pg.StructParents)]
    for kid in kids:
        if isinstance(kid, int):
            slots[kid] = element
        elif "/S" in kid:
            kid.P = element
