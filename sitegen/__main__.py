"""`sitegen` or `python -m sitegen` -> the command line, or one line on what the machine lacks."""

from __future__ import annotations

import contextlib
import io
import os
import sys
import warnings

try:
    # Where the PDF engine cannot load a library it prints a page of its own. Without the one that cuts fonts
    # down it only warns, and then no two PDFs are alike.
    with contextlib.redirect_stdout(io.StringIO()), warnings.catch_warnings():
        warnings.filterwarnings("error", message="HarfBuzz-Subset", category=DeprecationWarning)
        from sitegen.cli import main
except KeyboardInterrupt:
    sys.exit(130)
except (ImportError, OSError, DeprecationWarning) as lack:
    if os.environ.get("SITEGEN_TRACE"):
        raise
    print(f"sitegen: this machine lacks something: {str(lack).splitlines()[0]}", file=sys.stderr)
    print(
        "On Debian: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libcairo2 libharfbuzz-subset0",
        file=sys.stderr,
    )
    sys.exit(3)

if __name__ == "__main__":
    sys.exit(main())
