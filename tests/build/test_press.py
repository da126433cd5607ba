"""Printing in several processes: their renewal, their end, and what happens where there can be none."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

import sitegen.build.press as press
from sitegen.publish.printing import PrintFault, PrintJob

ROOT = Path(__file__).parents[2]
THEME = ROOT / "themes" / "linen"
TITLES = (("a4", "One line"), ("letter", "One line"))
PAGE = '<html lang="en"><head><title>One line</title>{style}</head><body><p>A line.</p></body></html>'

RUNNER = """\
import multiprocessing, sys, hashlib
import sitegen.build.press as press
from tests.build.test_press import jobs

if __name__ == "__main__":
    {before}
    made = press.print_all(jobs({count}), {processes}, lambda line: print(line, flush=True))
    print(hashlib.sha256(b"".join(data for sheets in made for _, data in sheets.files)).hexdigest())
"""


def jobs(count: int, style: str = "") -> list[PrintJob]:
    """Jobs that are longer than what fits into a pipe that nobody reads."""
    style += f"<!-- {'long ' * 15_000} -->"
    return [PrintJob(f"job-{number}", PAGE.format(style=style), TITLES, THEME) for number in range(count)]


def runner(tmp_path: Path, before: str, count: int, processes: int) -> tuple[list[str], dict[str, str]]:
    """Words and surroundings of a process that prints and tells its progress and a sum of what it made."""
    path = tmp_path / f"run-{processes}.py"
    path.write_text(RUNNER.format(before=before, count=count, processes=processes), encoding="utf-8")
    return [sys.executable, str(path)], {**os.environ, "PYTHONPATH": str(ROOT)}


def printed(tmp_path: Path, before: str, count: int, processes: int) -> list[str]:
    words, surroundings = runner(tmp_path, before, count, processes)
    done = subprocess.run(
        words, env=surroundings, capture_output=True, text=True, timeout=60, check=False, cwd=tmp_path
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


def test_more_jobs_than_processes_take_before_they_are_renewed(tmp_path: Path) -> None:
    lines = printed(tmp_path, "press.JOBS_A_PROCESS = 2", 7, 2)
    assert lines[:-1] == [f"print {job.name}" for job in jobs(7)]


@pytest.mark.parametrize(
    "before",
    [
        "multiprocessing.set_executable('/nowhere/python')",  # cannot be started, pipes break
        "import operator; press._work = operator.is_",  # ends before it prints anything
    ],
)
def test_without_processes_the_build_prints_itself(tmp_path: Path, before: str) -> None:
    lines = printed(tmp_path, before, 2, 2)
    assert lines[-1] == printed(tmp_path, "pass", 2, 1)[-1]
    assert {f"print {job.name}" for job in jobs(2)} <= set(lines)


def test_where_that_fails_too_there_are_words_for_it(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(job: PrintJob) -> None:
        raise BrokenPipeError(32, "Broken pipe")

    monkeypatch.setattr(press, "print_sheets", fail)
    with pytest.raises(PrintFault, match=r"job-0: .*Broken pipe"):
        press.print_all(jobs(1), 1, lambda line: None)


def test_a_job_is_told_as_it_begins_and_its_fault_is_passed_on() -> None:
    told: list[str] = []
    with pytest.raises(PrintFault, match="job-0: the print engine complained"):
        press.print_all([*jobs(1, "<style>p { colour: red }</style>"), *jobs(2)[1:]], 2, told.append)
    assert told[0] == "print job-0"


def running(process: int) -> bool:
    """Whether there is such a process and it has not ended."""
    try:
        stat = Path(f"/proc/{process}/stat").read_text(encoding="utf-8")
    except (FileNotFoundError, ProcessLookupError):
        return False
    return stat.rpartition(")")[2].split()[0] != "Z"


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="children are looked up in /proc")
def test_a_killed_build_leaves_no_process_behind(tmp_path: Path) -> None:
    words, surroundings = runner(tmp_path, "pass", 30, 2)
    quiet = subprocess.DEVNULL
    with subprocess.Popen(words, env=surroundings, stdout=subprocess.PIPE, stderr=quiet, text=True) as build:
        assert build.stdout is not None
        while build.stdout.readline() != "print job-2\n":
            pass
        threads = Path(f"/proc/{build.pid}/task").glob("*/children")
        workers = [int(child) for thread in threads for child in thread.read_text(encoding="utf-8").split()]
        build.kill()
    assert len(workers) >= 2, "or this test tells nothing"
    until = time.monotonic() + 10 * press.WATCH_SECONDS
    while any(map(running, workers)) and time.monotonic() < until:
        time.sleep(0.1)
    left = [worker for worker in workers if running(worker)]
    for worker in left:
        os.kill(worker, signal.SIGKILL)
    assert left == []
