"""Command-line words -> one stage run, what it found printed, an exit code."""

from __future__ import annotations

import argparse
import difflib
import io
import json
import os
import shlex
import shutil
import sys
import time
import traceback
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TextIO

from sitegen import __version__
from sitegen.build import OUTPUT, build
from sitegen.build.copies import CHOICES, COPIES, write_copies
from sitegen.build.look import shop_look
from sitegen.build.swap import OutputRefused
from sitegen.build.woven import is_fault, weave_all
from sitegen.check.tell import tell
from sitegen.model.location import Location
from sitegen.model.order import Order
from sitegen.model.problem import Problem
from sitegen.publish.printing import PrintFault
from sitegen.publish.report import measures_json, measures_text
from sitegen.publish.table import printed_rows
from sitegen.read.bead_swap import SwapRefused, read_swaps, swap_beads
from sitegen.read.faults import Faults, counted
from sitegen.read.orders import COLUMNS, check_name, even_name, read_orders_file
from sitegen.read.sources import SHOP_FILE, Sources, load_pattern, load_settings, load_shop
from sitegen.start import NotEmpty, start_shop

DONE, FAULTS, WRONG_USE, FAILED = 0, 1, 2, 3
"""What the exit codes mean."""
STOPPED, NOBODY_READS = 130, 141
"""128 and the number of the signal, as shells have it: Ctrl-C, and a closed pipe."""

PLAIN = (OSError, OutputRefused, PrintFault)
"""Failures whose own text says all that can be done about them."""

EPILOG = """\
exit codes: 0 done, 1 faults in the sources, 2 wrong use, 3 the machine lacks something or the tool failed,
130 stopped by Ctrl-C, 141 nobody reads the output any more
"""


class NobodyReads(Exception):
    """Whoever read one of our streams has gone away."""


def main(words: Sequence[str] | None = None) -> int:
    """Run one command (`sys.argv` without words given) and return its exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # what a terminal cannot show stops nothing
    arguments = _parser().parse_args(words)
    try:
        code: int = arguments.run(arguments)
    except NobodyReads:
        return NOBODY_READS
    except KeyboardInterrupt:
        print("\nsitegen: stopped", file=sys.stderr)
        return STOPPED
    except BaseException as failure:  # the PDF engine has errors that are no Exception
        return _failed(failure)
    return code


def _write(text: str, stream: TextIO) -> None:
    """Write at once. Raises NobodyReads where the reader has gone; any other broken pipe is a failure."""
    try:
        stream.write(text)
        stream.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())  # or Python complains while it ends
        raise NobodyReads from None


def _say(line: str) -> None:
    _write(f"{line}\n", sys.stdout)


def _remark(line: str) -> None:
    """Beside the result: what went wrong, or how it went."""
    _write(f"{line}\n", sys.stderr)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="sitegen",
        description="Compiles bead pattern sources into a catalogue site and printable PDFs.",
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"sitegen {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")

    def command(name: str, run: Callable[[argparse.Namespace], int], text: str) -> argparse.ArgumentParser:
        added = commands.add_parser(
            name, help=text, description=f"{text.capitalize()}.", epilog=EPILOG, allow_abbrev=False
        )
        added.set_defaults(run=run)
        return added

    start = command("start", _start, "make a new shop in an empty or new folder")
    start.add_argument("folder", metavar="DIR", type=Path)
    check = command("check", _check, "read, check and weave all patterns and report every fault")
    build_all = command("build", _build, "write the site, the printable files and the reports into output/")
    measured = command("measure", _measure, "print the size, beads, thread and time of one pattern")
    measured.add_argument("pattern", metavar="PATTERN", help="its name in the shop, or a path to its file")
    measured.add_argument("--json", action="store_true", help="print one JSON object")
    measured.add_argument(
        "--bead",
        metavar="OLD=NEW",
        action="append",
        default=[],
        help='measure it in other beads, such as "round 11/0=cylinder 11/0"; may be given more than once',
    )
    stamp = command(
        "stamp", _stamp, "write personal copies of printed PDFs from output/, a name on each page"
    )
    stamp.add_argument("pattern", metavar="PATTERN", nargs="?", help="the pattern or bundle")
    stamp.add_argument("--for", dest="name", metavar="NAME", help="the buyer's name or order number")
    stamp.add_argument(
        "--from",
        dest="orders",
        metavar="FILE",
        type=Path,
        help=f"orders instead, a table (CSV) with the columns {', '.join(COLUMNS)}; the first two are needed",
    )
    for choice in CHOICES:
        stamp.add_argument(f"--{choice}", default="", help=f"only copies in this {choice}")
    stamp.add_argument(
        "--out", metavar="DIR", type=Path, help="where the copies go (default: copies/ in the shop)"
    )
    for in_a_shop in (check, build_all, measured, stamp):
        in_a_shop.add_argument(
            "--shop", metavar="DIR", type=Path, default=Path(), help="the shop's folder (default: here)"
        )
    return parser


def _start(arguments: argparse.Namespace) -> int:
    folder: Path = arguments.folder
    try:
        written = start_shop(folder)
    except NotEmpty as taken:
        _remark(f"sitegen start: {taken}")
        return WRONG_USE
    _say(f"A new shop of {counted(len(written), 'file')} is in {folder}. Next:")
    _say(f"  1. cd {shlex.quote(str(folder))}")
    _say("  2. Write your own words into content/shop.yaml and change the patterns in content/patterns/.")
    _say("  3. sitegen check")
    _say("  4. sitegen build")
    return DONE


def _check(arguments: argparse.Namespace) -> int:
    progress = Progress(sys.stderr)
    sources = load_shop(arguments.shop)
    _, problems = shop_look(sources)
    _, more = weave_all(sources, progress)
    progress.clear()
    problems = [*sources.problems, *problems, *more]
    _report(problems, sources.texts, sys.stdout)
    if any(map(is_fault, problems)):
        return FAULTS
    _say(f"{counted(len(sources.patterns), 'pattern')} checked and woven, no fault.")
    return DONE


def _build(arguments: argparse.Namespace) -> int:
    began = time.monotonic()
    progress = Progress(sys.stderr)
    try:
        result = build(arguments.shop, None, progress)
    finally:
        progress.clear()
    _report(result.problems, result.texts, sys.stderr)
    if any(map(is_fault, result.problems)):
        _remark("Nothing was written.")
        return FAULTS
    seconds = time.monotonic() - began
    made = (counted(len(result.patterns), "pattern"), counted(len(result.files), "file"), f"{seconds:.1f} s")
    _remark(", ".join(made))
    _say(f"Open {arguments.shop / 'output' / 'site' / 'index.html'}")
    return DONE


def _measure(arguments: argparse.Namespace) -> int:
    found = _find(arguments.pattern, arguments.shop)
    if found is None:
        return WRONG_USE
    swaps: dict[str, str] = {}
    if arguments.bead and found.patterns:
        try:
            swaps = read_swaps(arguments.bead, found.patterns[0])
        except SwapRefused as refused:
            _remark(f"sitegen measure: {refused}")
            return WRONG_USE
        found = replace(found, patterns=(swap_beads(found.patterns[0], swaps),))
    look, problems = shop_look(found)
    woven, more = weave_all(found, lambda line: None)
    problems = [*found.problems, *problems, *more]
    _report(problems, found.texts, sys.stderr)
    if look is None or not woven or any(map(is_fault, problems)):
        return FAULTS
    ((pattern, path, measures),) = woven
    if arguments.json:
        report = measures_json(pattern, path, measures, look.words) | ({"bead_swap": swaps} if swaps else {})
        _say(json.dumps(report, indent=2, ensure_ascii=False))
        return DONE
    for old, new in swaps.items():
        _say(f"With {new} in place of {old}; what the author measured in {old} is left out.")
    rows = printed_rows(path, look.words)
    _write(measures_text(pattern, measures, look.words, rows.__getitem__), sys.stdout)
    return DONE


def _stamp(arguments: argparse.Namespace) -> int:
    one = [arguments.pattern, arguments.name]
    chosen = {choice: getattr(arguments, choice) for choice in CHOICES}
    whole = all(value is not None for value in one) and arguments.orders is None
    table = not any([*one, *chosen.values()]) and arguments.orders is not None
    if not whole and not table:
        _remark("sitegen stamp: give either PATTERN and --for NAME, or --from FILE alone")
        return WRONG_USE
    sources, faults = load_settings(arguments.shop), Faults()
    texts = dict(sources.texts)
    if table:
        orders, text = read_orders_file(arguments.orders, faults)
        texts[arguments.orders.as_posix()] = text
    else:
        at = {"pattern": Location("PATTERN", 0, 0, 0), "for": Location("--for", 0, 0, 0)}
        at |= {choice: Location(f"--{choice}", 0, 0, 0) for choice in CHOICES}
        orders = [Order(arguments.pattern, even_name(arguments.name), **chosen, at=at)]
        check_name(orders[0].name, at["for"], faults)
    known = (*sources.problems, *faults.problems)
    progress = Progress(sys.stderr)
    try:
        folders = (arguments.shop / OUTPUT, arguments.out or arguments.shop / COPIES)
        written, problems = write_copies(sources, orders, known, folders, progress)
    finally:
        progress.clear()
    _report(problems, texts, sys.stderr)
    if any(map(is_fault, problems)):
        _remark("Nothing was written.")
        return FAULTS
    for path in written:
        _say(str(path))
    return DONE


def _find(wanted: str, root: Path) -> Sources | None:
    """The sources of one pattern alone, by its name in the shop or by its file.

    None where there is no such pattern; that has then been said.
    """
    shop = load_shop(root)
    of_shop = tuple(problem for problem in shop.problems if Path(problem.where.file).name == SHOP_FILE)
    path = Path(wanted)
    if path.suffix == ".md" or len(path.parts) > 1:
        if not path.is_file():
            _remark(f"sitegen measure: there is no file {wanted}")
            return None
        alone = load_pattern(path, shop.shop)
        texts = {**shop.texts, **alone.texts}
        return replace(alone, problems=of_shop + alone.problems, texts=texts, root=root)
    patterns = tuple(pattern for pattern in shop.patterns if pattern.name == wanted)
    own = tuple(problem for problem in shop.problems if Path(problem.where.file).stem == wanted)
    if not patterns and not own:
        names = [pattern.name for pattern in shop.patterns]
        near = difflib.get_close_matches(wanted, names, n=3) or names
        hint = f"; there is {', '.join(near)}" if near else ""
        _remark(f"sitegen measure: no pattern {wanted} in {root.resolve()}{hint}")
        return None
    return replace(shop, patterns=patterns, problems=of_shop + own)


class Progress:
    """One line a stage on a stream; on a terminal each line takes the place of the one before."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._in_place = _is_terminal(stream)

    def __call__(self, line: str) -> None:
        """Show what is being done now."""
        if self._in_place:
            room = shutil.get_terminal_size().columns - 1
            _write(f"\r\x1b[K{line[:room]}", self._stream)
        else:
            _write(f"{line}\n", self._stream)

    def clear(self) -> None:
        """Leave an empty line behind on a terminal."""
        if self._in_place:
            _write("\r\x1b[K", self._stream)


def _is_terminal(stream: TextIO) -> bool:
    return stream.isatty() and os.environ.get("TERM", "dumb") != "dumb"


def _report(problems: Iterable[Problem], texts: Mapping[str, str], stream: TextIO) -> None:
    colour = _is_terminal(stream) and not os.environ.get("NO_COLOR")
    _write(tell(problems, texts, colour), stream)


def _failed(failure: BaseException) -> int:
    """One line on what went wrong, and the whole story where SITEGEN_TRACE is set."""
    if os.environ.get("SITEGEN_TRACE"):
        traceback.print_exception(failure)
    if isinstance(failure, OSError) and failure.strerror:
        where = failure.filename or "SITEGEN_TRACE=1 shows where"
        print(f"sitegen: {failure.strerror}: {where}", file=sys.stderr)
        return FAILED
    if isinstance(failure, PLAIN):
        print(f"sitegen: {failure}", file=sys.stderr)
        return FAILED
    text = str(failure).strip().splitlines()
    print(f"sitegen: {type(failure).__name__}: {text[0] if text else 'no details'}", file=sys.stderr)
    print(
        "This is a fault of sitegen itself. Run it again with SITEGEN_TRACE=1 set and send what it prints,"
        " with the pattern's source, to whoever gave you sitegen.",
        file=sys.stderr,
    )
    return FAILED
