"""A whole site as plain files, for any generator that reads Markdown: there whole, or not there at all."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from evenseam.publish.site_files import SiteFiles, front_matter, with_links

GALLERY_MARK = "<!-- gallery -->"
"""A line of a hand-written page in whose place the gallery is shown."""
MARK_FILE = ".evenseam-export"
"""Stands in every exported folder, so that only such a folder is ever replaced."""


class ExportRefusedError(Exception):
    """The folder to write holds something that was not exported; the message names it."""


def export(site: SiteFiles, out: Path, docs: Path | None = None, *, has_folders: bool = True) -> int:
    """Write a site to the folder `out` and return the number of its pages.

    Pages become `.md` files with a title in front and finished HTML below. With `docs`, the hand-written pages of that
    folder go along. `has_folders` tells how the generator addresses pages: harbour/size/ or harbour/size.html. Whoever
    looks sees the old folder or the new one, never half of it.

    Raises ExportRefusedError when `out` is there and is not an exported folder.
    """
    out = out.absolute()
    if out.exists() and not (out / MARK_FILE).exists() and any(out.iterdir()):
        raise ExportRefusedError(f"{out} is not empty and was not written by an export; name another folder")
    out.parent.mkdir(parents=True, exist_ok=True)
    beside = Path(tempfile.mkdtemp(dir=out.parent, prefix=f".{out.name}-"))
    try:
        if docs is not None:
            _copy_docs(docs, beside, site, has_folders=has_folders)
        for page in site.pages:
            _write(beside, page.path, (front_matter(page) + page.body(has_folders=has_folders) + "\n").encode())
        for file in site.files:
            _write(beside, file.path, file.stored.read_bytes())
        _write(beside, MARK_FILE, b"This folder is replaced as a whole by each export.\n")
        beside.chmod(0o755)
        _put_in_place(beside, out)
    except BaseException:
        shutil.rmtree(beside, ignore_errors=True)
        raise
    return len(site.pages)


def with_gallery(markdown: str, path: str, site: SiteFiles, *, has_folders: bool) -> str:
    """Return a hand-written page with the gallery in place of its mark."""
    if GALLERY_MARK not in markdown:
        return markdown
    return markdown.replace(GALLERY_MARK, with_links(site.gallery, path, has_folders=has_folders))


def _copy_docs(docs: Path, to: Path, site: SiteFiles, *, has_folders: bool) -> None:
    for source in sorted(docs.rglob("*")):
        if not source.is_file() or not source.resolve().is_relative_to(docs.resolve()):
            continue
        path = source.relative_to(docs).as_posix()
        content = source.read_bytes()
        if source.suffix == ".md":
            content = with_gallery(content.decode(), path, site, has_folders=has_folders).encode()
        _write(to, path, content)


def _write(folder: Path, path: str, content: bytes) -> None:
    target = folder / path
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(content)


def _put_in_place(beside: Path, out: Path) -> None:
    """Let the new folder take the old one's name; two renames are as near to one as a folder can come."""
    if not out.exists():
        beside.rename(out)
        return
    old = Path(tempfile.mkdtemp(dir=out.parent, prefix=f".{out.name}-old-"))
    out.rename(old / out.name)
    try:
        beside.rename(out)
    except BaseException:
        (old / out.name).rename(out)
        raise
    finally:
        shutil.rmtree(old, ignore_errors=True)
