"""Print jobs -> sheets, in several processes where there is more than one job.

Processes are started afresh: the print engine gains nothing from threads, and a fork of a process
that has opened fonts can hang.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager

from sitegen.publish.papers import Sheets
from sitegen.publish.printing import PrintJob, print_sheets

JOBS_A_PROCESS = 10
"""A process is renewed after this many jobs: what the engine keeps in memory goes with it."""

FIXED_TIME = "1704067200"
"""2024-01-01 00:00 UTC: what font code stamps into a font instead of the time of day."""


def print_all(
    jobs: Sequence[PrintJob], processes: int | None, progress: Callable[[str], None]
) -> Iterator[Sheets]:
    """The sheets of every job, in order.

    `processes` None takes as many as there are processors; with 1 the work is done in this process.
    """
    wanted = min(processes or os.cpu_count() or 1, len(jobs))
    with _fixed_time():
        if wanted <= 1:
            for job in jobs:
                progress(f"print {job.name}")
                yield print_sheets(job)
            return
        context = multiprocessing.get_context("spawn")
        with ProcessPoolExecutor(
            wanted,
            context,
            initializer=signal.signal,  # Ctrl-C is for the process that waits, which then ends these
            initargs=(signal.SIGINT, signal.SIG_IGN),
            max_tasks_per_child=JOBS_A_PROCESS,
        ) as pool:
            for job, made in zip(jobs, pool.map(print_sheets, jobs), strict=True):
                progress(f"print {job.name}")
                yield made


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
