"""All files of a site -> the worker that keeps opened patterns for where there is no net."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from pathlib import Path

WORKER = "offline.js"
"""Where it stands in the site: at the top, for a worker serves its own folder and those below."""


def offline_worker(files: Mapping[str, bytes], theme: Path) -> bytes:
    """The worker, named after the contents of the site: another build is another worker.

    `files` are all others, path in the site -> contents.
    """
    made = hashlib.sha256()
    for name in sorted(files):
        made.update(f"{name}\n{len(files[name])}\n".encode() + files[name])
    built = f'const BUILT = "{made.hexdigest()[:16]}";\n'
    return built.encode() + (theme / "workers" / WORKER).read_bytes()
