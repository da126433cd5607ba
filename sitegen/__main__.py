"""The command `sitegen`, or `python -m sitegen` -> the command line, or one line on what the machine lacks."""

from __future__ import annotations

import contextlib
import io
import os
import sys

try:
    with contextlib.redirect_stdout(io.StringIO()):  # the PDF engine prints a page of its own when it cannot load
        from sitegen.cli import main
except (ImportError, OSError) as lack:
    # Python packages and the shared libraries of the PDF engine are loaded on import.
    if os.environ.get("SITEGEN_TRACE"):
        raise
    print(f"sitegen: this machine lacks something: {str(lack).splitlines()[0]}", file=sys.stderr)
    print(
        "On Debian: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
        file=sys.stderr,
    )
    sys.exit(3)

if __name__ == "__main__":
    sys.exit(main())
