"""The first pages of a bundle and the print jobs of its patterns -> the job of printing them in one file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from sitegen.publish.bundles import BundleSheets
from sitegen.publish.papers import PAPERS
from sitegen.publish.printing import PrintJob
from sitegen.publish.theme import templates
from sitegen.publish.words import Words


def bundle_job(view: BundleSheets, parts: Sequence[PrintJob], words: Words, theme: Path) -> PrintJob:
    """One job, in the edition of its parts; they are in the bundle's order, as its contents name them."""
    say = words.text
    titles = tuple(
        (paper.name, say("pdf.title", title=view.title, paper=say(f"paper.{paper.name}"))) for paper in PAPERS
    )
    front = templates(theme).get_template("bundle-sheets.html")
    return replace(
        parts[0],
        name=f"{view.name} in {parts[0].language}" if parts[0].language else view.name,
        html=front.render(view=view, t=say, title=titles[0][1]),
        titles=titles,
        photos=tuple(dict(photo for part in parts for photo in part.photos).items()),
        bound=tuple(part.html for part in parts),
    )
