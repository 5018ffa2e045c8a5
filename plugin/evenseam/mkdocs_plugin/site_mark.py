"""Everything besides a page itself that a theme can show on it, as one hash."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from importlib import metadata
from pathlib import Path
from types import ModuleType
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.theme import Theme

_SEARCH_MODULE = "material.plugins.search.plugin"
_PAGE_EVENTS = (
    "env",
    "pre_page",
    "page_read_source",
    "page_markdown",
    "page_content",
    "page_context",
    "post_page",
)
"""The moments at which another plugin can change a page or learn from it."""
_MADE_BY = ("mkdocs", "mkdocs-material", "jinja2", "markupsafe")
_NOT_SHOWN = ("site_dir", "config_file_path", "docs_dir", "dev_addr", "watch", "_current_page")
"""Settings that say where things stand on this computer; the first changes from build to build."""
_UNSTEADY = re.compile(
    r"\{[{%][^{}]*?(?:(?<![.\w\"'])(?:build_date_utc|pages)\b|update_date|site_dir|config_file_path|docs_dir|\|\s*random)"
)
"""What a template may show that is not in the hash: the time, all pages, a chance."""
_ADDRESS = re.compile(r" at 0x[0-9a-fA-F]+")


def search_of(config: MkDocsConfig) -> Any:
    """Return Material's search plugin if it is in use."""
    plugins: Iterable[Any] = config.plugins.values()
    return next((plugin for plugin in plugins if type(plugin).__module__ == _SEARCH_MODULE), None)


def knows_all_hands(config: MkDocsConfig, ours: object) -> bool:
    """Tell whether nobody but us and Material's search has a hand in the pages."""
    search = search_of(config)
    if search is not None and not _search_is_simple(search):
        return False
    hands = {id(ours), id(search)}
    methods: Iterable[Callable[..., Any]] = (
        method for event in _PAGE_EVENTS for method in config.plugins.events.get(event, ())
    )
    return all(id(getattr(method, "__self__", None)) in hands for method in methods)


def _search_is_simple(search: Any) -> bool:
    """Tell whether the search keeps one list of entries, and makes them from the page alone."""
    from material.plugins.search import plugin  # type: ignore[import-untyped]

    # Word lists of an author change how Chinese is split.
    return isinstance(getattr(getattr(search, "search_index", None), "entries", None), list) and plugin.jieba is None


def site_mark(nav: Navigation, config: MkDocsConfig) -> str | None:
    """Return the hash of navigation, settings and templates; None when the templates show more than can be told."""
    templates = _templates(config.theme)
    if templates is None:
        return None
    parts = [templates, *(f"{name} {_version(name)}" for name in _MADE_BY)]
    parts += [f"{name}: {_told(value)}" for name, value in sorted(config.items()) if name not in _NOT_SHOWN]
    parts += [_told_item(item) for item in nav.items]
    return hashlib.sha256("\n".join(parts).encode("utf-8", "surrogatepass")).hexdigest()


def _templates(theme: Theme) -> str | None:
    digest = hashlib.sha256()
    for folder in theme.dirs:
        is_own = not {"site-packages", "dist-packages"} & set(Path(folder).parts)
        for path in _template_files(Path(folder), is_own=is_own):
            content = path.read_bytes()
            if path.suffix == ".html" and _UNSTEADY.search(content.decode("utf-8", "replace")):
                return None
            digest.update(path.relative_to(folder).as_posix().encode() + b"\n" + hashlib.sha256(content).digest())
    return digest.hexdigest()


def _template_files(folder: Path, *, is_own: bool) -> list[Path]:
    """Return what templates are made of. The thousands of icons of an installed theme go by its version."""
    if is_own:
        return sorted(path for path in folder.rglob("*") if path.is_file())
    top = [path for path in folder.iterdir() if path.suffix in (".html", ".yml") and path.is_file()]
    inner = (
        path
        for part in folder.iterdir()
        if part.is_dir() and not part.name.startswith(".")
        for path in part.rglob("*.html")
    )
    return sorted([*top, *inner])


def _told_item(item: Any) -> str:
    """Return what a theme shows of one entry of the navigation and of all below it."""
    children = ",".join(_told_item(child) for child in item.children or ())
    meta = _told(item.meta) if isinstance(item, Page) else ""
    return f"{type(item).__name__} {item.title!r} {getattr(item, 'url', None)!r} {meta} [{children}]"


def _told(value: Any) -> str:
    """Return a setting as a text that is the same in every process."""
    match value:
        case BasePlugin():
            return f"{type(value).__module__}.{type(value).__qualname__} {_told(value.config)}"
        case Theme():
            return f"{value.name} {sorted(value.static_templates)} {_told(dict(value))}"
        case Mapping():
            return "{" + ",".join(sorted(f"{key}={_told(inner)}" for key, inner in value.items())) + "}"
        case list() | tuple():
            return "[" + ",".join(_told(inner) for inner in value) + "]"
        case set() | frozenset():
            return "{" + ",".join(sorted(_told(inner) for inner in value)) + "}"
        case partial():
            return f"partial {_told(value.func)} {_told(value.args)} {_told(value.keywords)}"
        case ModuleType():
            return value.__name__
        case _:
            return _ADDRESS.sub("", f"{type(value).__name__} {value!r}")


def _version(name: str) -> str:
    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return "none"
