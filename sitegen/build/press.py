"""Print jobs -> sheets, in several processes where there is more than one job.

Processes are started afresh: the print engine gains nothing from threads, and a fork of a process
that has opened fonts can hang. Where the machine lets no process start, or ends one, the rest is
printed in this one.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
import time
import warnings
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing.connection import Connection, wait

from sitegen.publish.papers import Sheets
from sitegen.publish.printing import PrintFault, PrintJob, print_sheets

JOBS_A_PROCESS = 10
"""A process is renewed after this many jobs: what the engine keeps in memory goes with it."""

WATCH_SECONDS = 1.0
"""How often a printing process looks whether the build that started it is still there."""

FIXED_TIME = "1704067200"
"""2024-01-01 00:00 UTC: what font code stamps into a font instead of the time of day."""


def print_all(
    jobs: Sequence[PrintJob], processes: int | None, progress: Callable[[str], None]
) -> list[Sheets]:
    """The sheets of every job, in order. Raises PrintFault where one cannot be printed.

    `processes` None takes as many as there are processors; with 1 the work is done in this process.
    `progress` is told each job as its printing begins.
    """
    wanted = min(processes or os.cpu_count() or 1, len(jobs))
    made: dict[int, Sheets] = {}
    with _fixed_time():
        if wanted > 1:
            with suppress(OSError, EOFError):  # no process starts, or one has ended: the rest is for this one
                _share_out(jobs, wanted, progress, made)
        for number, job in enumerate(jobs):
            if number not in made:
                progress(f"print {job.name}")
                made[number] = _print_here(job)
    return [made[number] for number in range(len(jobs))]


def _print_here(job: PrintJob) -> Sheets:
    try:
        return print_sheets(job)
    except OSError as error:
        raise PrintFault(f"{job.name}: the print engine failed: {error}") from error


class _Printer:
    """A process that prints one job after another, and the line to it."""

    def __init__(self) -> None:
        context = multiprocessing.get_context("spawn")
        self.line, far = context.Pipe()
        self._process = context.Process(target=_work, args=(far, os.getpid()), daemon=True)
        try:
            with warnings.catch_warnings():  # where nothing starts, Python warns of its own helper too
                warnings.filterwarnings("ignore", message="resource_tracker")
                self._process.start()
        finally:
            far.close()  # held by the process alone, so that its end is the end of the line
        self.number = -1
        self.given = 0

    def give(self, number: int, job: PrintJob) -> None:
        self.number = number
        self.given += 1
        self.line.send(job)

    def take(self) -> Sheets:
        made: Sheets | PrintFault = self.line.recv()
        if isinstance(made, PrintFault):
            raise made
        return made

    def end(self) -> None:
        self.line.close()
        self._process.terminate()
        self._process.join()


def _share_out(
    jobs: Sequence[PrintJob], processes: int, progress: Callable[[str], None], made: dict[int, Sheets]
) -> None:
    """Print in several processes into `made`. Raises OSError or EOFError where a process does not answer."""
    waiting = deque(enumerate(jobs))
    printers: list[_Printer] = []
    try:
        printers += (_Printer() for _ in range(processes))
        idle = list(printers)
        while True:
            while waiting and idle:
                printer = idle.pop(0)
                number, job = waiting.popleft()
                if printer.given == JOBS_A_PROCESS:
                    printer.end()
                    printers.remove(printer)
                    printer = _Printer()
                    printers.append(printer)
                progress(f"print {job.name}")
                printer.give(number, job)
            busy = [printer for printer in printers if printer not in idle]
            if not busy:
                return
            told = wait([printer.line for printer in busy])
            for printer in [printer for printer in busy if printer.line in told]:
                made[printer.number] = printer.take()
                idle.append(printer)
    finally:
        for printer in printers:
            printer.end()


def _work(line: Connection, build: int) -> None:
    """Print what comes along the line, until it is cut.

    Ctrl-C is left to the build, which cuts the line. Anything but a PrintFault ends the process: the build
    then prints the job itself, meets the same and can tell it.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with, args=(build,), daemon=True).start()
    try:
        while True:
            job = line.recv()
            try:
                line.send(print_sheets(job))
            except PrintFault as fault:
                line.send(fault)
    except BaseException:
        os._exit(1)


def _end_with(build: int) -> None:
    """End this process at once when the process `build` is no longer its parent."""
    while os.getppid() == build:
        time.sleep(WATCH_SECONDS)
    os._exit(1)


@contextmanager
def _fixed_time() -> Iterator[None]:
    """Set the variable that makes font code repeatable, for this process and those it starts."""
    before = os.environ.get("SOURCE_DATE_EPOCH")
    os.environ["SOURCE_DATE_EPOCH"] = FIXED_TIME
    try:
        yield
    finally:
        if before is None:
            del os.environ["SOURCE_DATE_EPOCH"]
        else:
            os.environ["SOURCE_DATE_EPOCH"] = before
