"""Orders and a finished output -> personal copies of its PDFs, in a folder outside of it.

Nothing is built: a copy is the printed PDF with one line more. Names of buyers are nowhere but in the copies,
in their file names and metadata.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from sitegen.build.look import Look, shop_look
from sitegen.build.swap import MARKER, sole_build
from sitegen.build.tree import FOR_SALE, SITE
from sitegen.build.woven import is_fault
from sitegen.model.location import Location
from sitegen.model.order import Order
from sitegen.model.problem import Problem
from sitegen.model.shop import COLOUR, EDITIONS
from sitegen.publish.papers import PAPERS
from sitegen.publish.printing import theme_letters
from sitegen.publish.slugs import slugs
from sitegen.publish.stamping import Line, set_line, stamped
from sitegen.read.faults import Faults, hint
from sitegen.read.sources import Sources

COPIES = "copies"
"""The folder of the copies, beside the output."""
CHOICES = ("paper", "edition", "language")
LONGEST_SLUG = 40


@dataclass(frozen=True, slots=True)
class Printed:
    """A PDF of the output."""

    path: Path
    pattern: str
    paper: str
    edition: str
    language: str


Wanted = tuple[Order, tuple[Printed, ...]]
"""An order and the PDFs it asks for."""


def write_copies(
    sources: Sources,
    orders: Sequence[Order],
    known: Sequence[Problem],
    folders: tuple[Path, Path],
    progress: Callable[[str], None],
) -> tuple[tuple[Path, ...], list[Problem]]:
    """Write a copy of every PDF that is asked for; the files, and all problems, those `known` before too.

    `folders` are that of the output and that of the copies. With a fault nothing is written. Raises
    OutputRefused while the output is being built.
    """
    output, out = folders
    look, problems = shop_look(sources)
    faults = Faults()
    if any((folder / MARKER).is_file() for folder in (out.resolve(), *out.resolve().parents)):
        faults.add("copies-in-output", Location(str(out), 0, 0, 0))
    if not (output / MARKER).is_file():
        faults.add("orders-unbuilt", Location(str(output), 0, 0, 0))
    if look is None or not (output / MARKER).is_file():
        return (), [*known, *problems, *faults.problems]
    with sole_build(output):
        found = printed(output, sources.shop.languages)
        wanted = [(order, _wanted(order, found, faults)) for order in orders]
        _check_letters(orders, theme_letters(look.theme), faults)
        problems = [*known, *problems, *faults.problems]
        if any(map(is_fault, problems)):
            return (), problems
        return tuple(dict.fromkeys(_written(wanted, look, out, progress))), problems


def printed(output: Path, languages: Sequence[str]) -> tuple[Printed, ...]:
    """Every PDF of the output, by what its name says; the first of the languages is in no name."""
    pages = [*output.glob(f"{SITE}/patterns/*/index.html"), *output.glob(f"{SITE}/bundles/*/index.html")]
    names = sorted({page.parent.name for page in pages}, key=lambda name: (-len(name), name))
    further, editions, papers = (
        "|".join(map(re.escape, some)) or "(?!)"
        for some in (languages[1:], EDITIONS[1:], [paper.name for paper in PAPERS])
    )
    form = re.compile(f"-(?:({further})-)?(?:({editions})-)?({papers})")
    found = []
    for path in sorted([*output.glob(f"{FOR_SALE}/*.pdf"), *output.glob(f"{SITE}/**/*.pdf")]):
        for name in names:
            said = form.fullmatch(path.stem.removeprefix(name)) if path.stem.startswith(name) else None
            if said:
                language, edition, paper = said.groups()
                found.append(Printed(path, name, paper, edition or COLOUR, language or languages[0]))
                break
    return tuple(found)


def _wanted(order: Order, found: Sequence[Printed], faults: Faults) -> tuple[Printed, ...]:
    """The PDFs of an order; faults where there are none."""
    own = [one for one in found if one.pattern == order.pattern]
    if not own:
        names = dict.fromkeys(one.pattern for one in found)
        faults.add("orders-pattern", order.at["pattern"], name=order.pattern, hint=hint(order.pattern, names))
        return ()
    chosen = {choice: value for choice in CHOICES if (value := getattr(order, choice).casefold())}
    before = len(faults.problems)
    for choice, value in chosen.items():
        known = list(dict.fromkeys(getattr(one, choice) for one in own))
        if value not in map(str.casefold, known):
            told = {"name": order.pattern, "column": choice, "value": getattr(order, choice)}
            faults.add("orders-choice", order.at[choice], **told, hint=hint(value, known))
    fit = [one for one in own if all(getattr(one, key).casefold() == value for key, value in chosen.items())]
    if not fit and len(faults.problems) == before:
        known = [", ".join(getattr(one, key) for key in CHOICES) for one in own]
        told = {"name": order.pattern, "chosen": ", ".join(chosen.values()), "known": "; ".join(known)}
        faults.add("orders-together", order.at["pattern"], **told)
    return tuple(fit)


def _check_letters(orders: Sequence[Order], known: frozenset[str], faults: Faults) -> None:
    """Every letter of a name must be in the fonts of the line it stands in."""
    for order in orders:
        for letter in dict.fromkeys(order.name):
            if letter not in known and letter != " ":
                told = {"letter": letter, "code": f"U+{ord(letter):04X}"}
                faults.problems.append(Problem("letter-not-in-fonts", order.at["for"], told))


def _written(
    wanted: Sequence[Wanted], look: Look, out: Path, progress: Callable[[str], None]
) -> Iterator[Path]:
    """Each copy once it is written, whole or not at all."""
    words = {one.language: one for one in (look.words, *look.others)}

    @lru_cache(maxsize=8)
    def line(name: str, language: str) -> Line:
        return set_line(words[language].text("copy.line", name=name), look.theme)

    out.mkdir(parents=True, exist_ok=True)
    for order, files in wanted:
        for one in files:
            path = out / copy_name(one.path, order.name)
            progress(f"copy {one.path.stem}")
            unfinished = path.with_suffix(".part")
            unfinished.write_bytes(stamped(one.path.read_bytes(), line(order.name, one.language)))
            unfinished.replace(path)
            yield path


def copy_name(pdf: Path, name: str) -> str:
    """What a copy is called, safe for every system: the PDF's own name, then the buyer's in plain letters.

    A few digits from the exact name keep apart those that look alike so; the same name gives the same file.
    """
    plain = slugs((name,), "copy")[0][:LONGEST_SLUG].strip("-")
    return f"{pdf.stem}-{plain}-{hashlib.sha256(name.encode()).hexdigest()[:12]}.pdf"
