"""What every site has, whatever its patterns: the page of keys, the schema, the style of the pages."""

from __future__ import annotations

import json
from importlib import resources

from evenseam.figures import web_styles
from evenseam.publish.cache import Cache
from evenseam.publish.entry import MadeFile, MadePage, MadePattern
from evenseam.publish.guide import write_key_page
from evenseam.publish.reader import SCRIPT_FILE, reader_script, reader_styles
from evenseam.publish.site import STYLE_FILE
from evenseam.publish.type import type_files, type_styles
from evenseam.reading import schema

KEY_PAGE = "guide/every-key.md"
SCHEMA_FILE = "pattern.schema.json"


def make_common(cache: Cache) -> MadePattern:
    """Return the parts that all sites share, in the form in which a pattern's parts are kept."""
    title, text = write_key_page()
    about = "Every key of a pattern file, what it means and what it is when it is left out."
    page = MadePage(KEY_PAGE, title, title, about, text.contents, cache.keep(text.body.encode()), "", "")
    schema_text = json.dumps(schema(), indent=1, ensure_ascii=False, sort_keys=True) + "\n"
    styles = web_styles() + (resources.files("evenseam.publish") / "pattern.css").read_text(encoding="utf-8")
    styles += reader_styles() + type_styles()
    files = (
        MadeFile(SCHEMA_FILE, cache.keep(schema_text.encode())),
        MadeFile(STYLE_FILE, cache.keep(styles.encode())),
        MadeFile(SCRIPT_FILE, cache.keep(reader_script().encode())),
        *(MadeFile(path, cache.keep(content)) for path, content in type_files().items()),
    )
    return MadePattern("", "", "", "", "", KEY_PAGE, "", (1, 1), (), (page,), files, (), is_published=True)
