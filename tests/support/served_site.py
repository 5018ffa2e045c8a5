"""A site of two small patterns, built once, and served from a path below the root of its server."""

from __future__ import annotations

import functools
import http.server
import shutil
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from support.mkdocs_site import ROOT, mkdocs, tutorial_patterns, write_config, write_pattern

PALETTE = [
    {"media": "(prefers-color-scheme: light)", "scheme": "default", "primary": "custom"},
    {"media": "(prefers-color-scheme: dark)", "scheme": "slate", "primary": "custom"},
]
SUB_PATH = "quay/side"


class QuietHandler(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format, *arguments):
        pass


class PatientServer(http.server.ThreadingHTTPServer):
    """A server to which it is no fault that a browser goes to another page before all of one has come."""

    def handle_error(self, request, client_address):
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


def build(folder: Path, features: tuple[str, ...] = ()) -> Path:
    """Build the site in our own theme settings and return where it is."""
    write_pattern(folder / "patterns" / "low-tide", tutorial_patterns()[1])
    docs = folder / "docs" / "stylesheets"
    docs.mkdir(parents=True)
    shutil.copy(ROOT / "site_src" / "stylesheets" / "workshop.css", docs)
    shutil.copytree(ROOT / "patterns" / "harbour-lanterns", folder / "patterns" / "harbour-lanterns")
    config = write_config(
        folder,
        plugins=["search", {"evenseam": {"handouts": "never"}}],
        theme="material",
        features=features,
        palette=PALETTE,
        extra_css=["stylesheets/workshop.css"],
        site_dir=str(folder / "www" / SUB_PATH),
        site_url="http://localhost/",
    )
    told = mkdocs(config)
    assert told.returncode == 0, told.stderr
    return folder / "www" / SUB_PATH


@contextmanager
def served(site: Path, port: int = 0) -> Iterator[str]:
    """Serve a built site and give its address."""
    root = site.parents[len(Path(SUB_PATH).parts) - 1]
    handler = functools.partial(QuietHandler, directory=str(root))
    server = PatientServer(("127.0.0.1", port), handler)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/{SUB_PATH}/"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()
