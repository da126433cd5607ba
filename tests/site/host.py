"""A folder -> a plain static web host on this machine: compression and sound types, and nothing else."""

from __future__ import annotations

import gzip
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import urlsplit

from tests.site.places import Site

PRESSED = {".html", ".css", ".js", ".svg", ".xml", ".json", ".txt", ".webmanifest"}
"""What every host sends compressed: text."""
LOOPBACK = "127.0.0.1"


@dataclass(frozen=True)
class Host:
    """A running server."""

    port: int
    folder: str
    """Where on the host the site lies: "/" or a path with a slash at both ends."""

    @property
    def address(self) -> str:
        return f"http://{LOOPBACK}:{self.port}{self.folder}"


class _Files(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".woff2": "font/woff2",
        ".js": "text/javascript",
        ".xml": "application/xml",
    }

    folder = "/"

    def translate_path(self, path: str) -> str:
        """Only what lies below the site's own folder on the host is there."""
        inside = path.startswith(self.folder)
        return super().translate_path(path.removeprefix(self.folder[:-1]) if inside else "/nowhere")

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() and self.path.partition("?")[0].endswith("/") else path
        if path.suffix not in PRESSED or not path.is_file() or "gzip" not in self.headers["Accept-Encoding"]:
            super().do_GET()
            return
        data = gzip.compress(path.read_bytes())
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", f"{self.guess_type(str(path))}; charset=utf-8")
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        self.wfile.write(data)

    def log_message(self, *_: object) -> None:
        """Say nothing: a failing test tells what was asked for."""


class _Server(ThreadingHTTPServer):
    daemon_threads = True

    def handle_error(self, *_: object) -> None:
        """A browser that hangs up is no fault."""


@contextmanager
def serve(site: Site) -> Iterator[Host]:
    """Serve the site on a free port until the block ends, as deep below the root as its own address says."""
    folder = urlsplit(site.address).path or "/"
    handler = type("Files", (_Files,), {"folder": folder})
    server = _Server((LOOPBACK, 0), partial(handler, directory=str(site.root)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield Host(server.server_address[1], folder)
    finally:
        server.shutdown()
        server.server_close()
