"""Pattern folders that a stranger with bad intentions, or bad luck, might send; each with what must come of it.

An input is a function that writes into an empty folder of patterns. `EXPECTED` is a problem's code, or PUBLISHED for
one that must become an ordinary page, or HARMLESS where either will do as long as nothing acts.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from copy import deepcopy
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from support.mkdocs_site import ROOT, tutorial_patterns

SECRET = "the-secret-behind-the-harbour-wall"
"""Stands in files outside the folder of patterns; nothing that is published or said may hold it."""
PUBLISHED, HARMLESS = "published", "harmless"
MARKUP = "\"'><img src=//e.example/x onerror=ran()>"
SCRIPT = "</title><script>ran()</script>"
PLAIN: dict[str, Any] = {
    "format": 1, "title": "Low Water", "summary": "Two skiffs.", "designer": "Saltmarsh Workshop", "version": "1.0", "skill level": "beginner",
    "licence": "CC BY 4.0", "changes": [{"version": "1.0", "date": "2026-03-02", "what": "First published."}],
    "fabrics": {"sky": {"name": "Pale Sky", "colour": "#cfe0e6", "role": "background"}, "tar": {"name": "Tar", "colour": "#43382f"}},
    "blocks": {"skiff": {"name": "Skiff", "finished size": "4 x 4", "grid": "4 x 4", "pieces": [
        {"fabric": "sky", "corners": "0,0 4,0 4,4", "name": "Roof"}, {"tar": "0,0 4,4 0,4"}]}},
    "arrangement": {"rows": 1, "columns": 2, "block": "skiff"},
    "borders": {"narrow border": {"width": 1, "fabric": "tar"}},
    "finish": {"kind": "turned", "backing": {"fabric": "sky"}},
    "introduction": "Sew **slowly** and press well.\n",
    "sizes": {"mug rug": {"name": "Mug rug", "use": "mug rug", "summary": "One for one cup."}},
    "claims": {"mug rug": {"finished width": 10}},
}  # fmt: skip


@dataclass(frozen=True)
class Hostile:
    """One input: its name, how it is written, and what must come of it."""

    name: str
    write: Callable[[Path], None]
    expected: str
    has_handouts: bool = False


def changed(changes: Mapping[tuple[Any, ...], Any]) -> dict[str, Any]:
    """Return the plain pattern with some values changed, each named by its path."""
    whole = deepcopy(PLAIN)
    for path, value in changes.items():
        node: Any = whole
        for key in path[:-1]:
            node = node[key]
        if isinstance(node, dict) and isinstance(value, Renamed):
            items = [(value.key if key == path[-1] else key, inner) for key, inner in node.items()]
            node.clear()
            node.update(items)
        else:
            node[path[-1]] = value
    return whole


@dataclass(frozen=True)
class Renamed:
    """Stands for: this key is called otherwise."""

    key: str


def as_yaml(tree: object) -> str:
    """Return a tree as the text of a pattern file."""
    return yaml.safe_dump(tree, allow_unicode=True, sort_keys=False, width=10_000)


def put(folder: Path, text: str | bytes, slug: str = "x", drawings: Mapping[str, str] | None = None) -> None:
    """Write one pattern folder."""
    (folder / slug).mkdir(parents=True)
    (folder / slug / "pattern.yaml").write_bytes(
        text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    )
    for name, drawing in (drawings or {}).items():
        (folder / slug / name).write_text(drawing, "utf-8")


def text(name: str, content: str | bytes, expected: str, drawings: Mapping[str, str] | None = None) -> Hostile:
    """Return an input that is one pattern file."""
    return Hostile(name, lambda folder: put(folder, content, drawings=drawings), expected)


def words(
    name: str, path: tuple[Any, ...], value: object, expected: str = PUBLISHED, *, has_handouts: bool = False
) -> Hostile:
    """Return an input that is the plain pattern with one value changed."""
    return Hostile(name, lambda folder: put(folder, as_yaml(changed({path: value}))), expected, has_handouts)


def drawn(name: str, drawing: str, expected: str) -> Hostile:
    """Return an input whose block is an SVG drawing."""
    block = {"name": "Skiff", "finished size": "4 x 4", "grid": "4 x 4", "drawing": "skiff.svg"}
    return text(name, as_yaml(changed({("blocks", "skiff"): block})), expected, {"skiff.svg": drawing})


def _yaml_bombs() -> list[Hostile]:
    laughs = "a0: &a0 [lol]\n" + "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 12))
    plain = as_yaml(PLAIN)
    return [
        text("billion laughs", laughs, "anchor-or-alias"),
        text("alias of itself", "a: &a [*a]\n", "anchor-or-alias"),
        text("deep lists", "title: " + "[" * 50_000, HARMLESS),
        text("deep mappings", "".join("  " * n + "a:\n" for n in range(300)), "too-deep"),
        text("deep braces", "a: " + "{a: " * 5_000 + "}" * 5_000, "too-deep"),
        text("wide list", "title: [" + "a, " * 200_000 + "]", "too-many-entries"),
        text("wide mapping", "".join(f"k{n}: 1\n" for n in range(60_000)), "too-many-entries"),
        text("same key ten thousand times", "title: x\n" * 10_000, "duplicate-key"),
        text("long title", "title: " + "a" * 900_000, "too-much-text"),
        text("long key", "a" * 500_000 + ": 1\n", HARMLESS),
        text("long blanks", "title: \"" + " " * 500_000 + "\\n\"x\n", "not-readable"),
        text("too long a file", b"# " + b"a" * 1_500_000, "file-too-large"),
        text("merge key", plain + "extra:\n  <<: {a: 1}\n", "merge-key"),
        text("python object", plain + "run: !!python/object/apply:os.system ['touch /tmp/ran']\n", "tag"),
        text("binary tag", plain + "run: !!binary aGVsbG8=\n", "tag"),
        text("second document", plain + "---\ntitle: other\n", "second-document"),
        text("thousand documents", "---\na: 1\n" * 1000, "second-document"),
        text("quotes never closed", 'title: "' + "a\n" * 20_000, "not-readable"),
        text("thousands of tabs", "\ta: 1\n" * 20_000, "tab-indent"),
        text("directives", "%YAML 9.9\n%TAG ! !evil\n---\ntitle: x\n", HARMLESS),
        text("nothing", b"", "empty-file"),
        text("no text at all", b"\xff\xfe\x00\x01" * 100, "file-not-text"),
        text("NUL", plain.replace("Low Water", "Low\0Water"), "invisible-character"),
        text("lone surrogate in bytes", plain.encode().replace(b"Low Water", b"Low \xed\xa0\x80"), "file-not-text"),
        text("lone surrogate by its number", plain.replace("title: Low Water", 'title: "Low \\ud800"'), HARMLESS),
        text("control characters everywhere", "\x01\x02\x03" * 5_000, "invisible-character"),
        text("another line end for each line", "a: 1\r\nb: 2\rc: 3\x85d: 4\u2028e: 5", HARMLESS),
    ]  # fmt: skip


def _numbers() -> list[Hostile]:
    return [
        words("a milliard rows", ("arrangement", "rows"), 10**9, "not-a-count"),
        words("rows of a thousand digits", ("arrangement", "rows"), 10**999, "not-a-count"),
        words("rows below nothing", ("arrangement", "rows"), -1, "not-a-count"),
        words("rows of nothing", ("arrangement", "rows"), 0, "not-a-count"),
        words("grid of milliardths", ("blocks", "skiff", "grid"), "1/1000000000 x 1/1000000000", HARMLESS),
        words("grid of a milliard", ("blocks", "skiff", "grid"), "1000000000 x 1000000000", HARMLESS),
        words("corners of long fractions", ("blocks", "skiff", "pieces", 1), {"tar": "0,0 4,4 0," + "9" * 4000 + "/" + "7" * 4000}, HARMLESS),
        words("ten thousand corners", ("blocks", "skiff", "pieces", 1), {"tar": " ".join(f"{n},{n % 7}" for n in range(10_000))}, HARMLESS),
        words("ten thousand pieces", ("blocks", "skiff", "pieces"), [{"tar": "0,0 4,4 0,4"}] * 10_000, HARMLESS),
        words("finished size of light years", ("blocks", "skiff", "finished size"), "9" * 9 + " x 1", "size-too-large"),
        words("finished size of a hair", ("blocks", "skiff", "finished size"), "1/999999 x 1/999999", HARMLESS),
        words("divided by nothing", ("borders", "narrow border", "width"), "1/0", "not-a-length"),
        words("an exponent", ("borders", "narrow border", "width"), "1e999", "not-a-length"),
        words("not a number", ("borders", "narrow border", "width"), ".nan", "not-a-length"),
        words("no end of width", ("borders", "narrow border", "width"), ".inf", "not-a-length"),
        words("figures of other scripts", ("borders", "narrow border", "width"), "\u0661\u0662", "not-a-length"),
        words("a claim of a million digits", ("claims", "mug rug"), {"finished width": "9" * 100_000}, HARMLESS),
        words("seam allowance wider than the block", ("seam allowance",), "9", HARMLESS),
        words("usable width of a thread", ("usable width",), "1/16", HARMLESS),
        Hostile("hundreds of sizes", lambda folder: put(folder, as_yaml(changed({("sizes",): {f"size {n}": {} for n in range(400)}}))), "too-many"),
        Hostile("hundreds of fabrics", lambda folder: put(folder, as_yaml(changed({("fabrics",): {f"f{n}": {"colour": "#123456"} for n in range(500)}}))), "too-many"),
        Hostile("everything at its most", _write_everything_at_most, HARMLESS),
    ]  # fmt: skip


def _write_everything_at_most(folder: Path) -> None:
    pieces = [
        {"tar" if (x + y) % 2 else "sky": f"{x},{y} {x + 1},{y} {x + 1},{y + 1} {x},{y + 1}"}
        for x in range(20)
        for y in range(20)
    ]
    tree = changed(
        {
            ("blocks", "skiff", "pieces"): pieces,
            ("blocks", "skiff", "grid"): "20 x 20",
            ("arrangement", "rows"): 40,
            ("arrangement", "columns"): 40,
        }
    )
    tree["borders"] = {f"border {n}": {"width": 1, "fabric": "tar"} for n in range(12)}
    tree["claims"] = {}
    put(folder, as_yaml(tree))


def _injections() -> list[Hostile]:
    fields: tuple[tuple[str, tuple[Any, ...]], ...] = (
        ("title", ("title",)), ("summary", ("summary",)), ("designer", ("designer",)), ("skill level", ("skill level",)), ("licence", ("licence",)),
        ("fabric name", ("fabrics", "sky", "name")), ("fabric role", ("fabrics", "sky", "role")), ("block name", ("blocks", "skiff", "name")),
        ("piece name", ("blocks", "skiff", "pieces", 0, "name")), ("size name", ("sizes", "mug rug", "name")),
        ("size use", ("sizes", "mug rug", "use")), ("size summary", ("sizes", "mug rug", "summary")), ("change", ("changes", 0, "what")),
    )  # fmt: skip
    found = [words(f"markup in {name}", path, MARKUP) for name, path in fields]
    found += [words(f"script in {name}", path, SCRIPT) for name, path in fields]
    payloads = {
        "style sheet": "</style><style>*{background:url(//e.example)}",
        "SVG": "</text></svg><svg onload=ran()>",
        "CDATA": "]]><script>ran()</script><![CDATA[",
        "comment": "--><script>ran()</script><!--",
        "template": "{{ 7*7 }}{% for x in ().__class__ %}{{ config }}",
        "Markdown": "[x](javascript:ran()) ![x](//e.example/x) `#` **y**",
        "attributes of Markdown": "Low {: onclick=ran() } {#id .class}",
        "JSON of linked data": '</script><script>ran()</script>"}]',
        "front matter": "x\"\n---\n<script>ran()</script>\ntitle: 'y",
        "site link": "<a href=\"site:../../secret.txt\">",
        "page mark": "<!--/pattern page--><!-- gallery -->",
        "entities": "&lt;script&gt;ran()&lt;/script&gt; &#60;b&#62;",
        "backslashes": "\\u003cscript\\u003e \\x3c \\\\ \\0",
    }  # fmt: skip
    found += [words(f"{name} in title and summary", ("title",), value[:80]) for name, value in payloads.items()]
    found += [
        Hostile(f"typst in every name ({number})", _everywhere(value), PUBLISHED, has_handouts=True)
        for number, value in enumerate(('#panic("x") $x$ \\', '"#read("/etc/passwd")', "*_`@a <b> ]}) //"))
    ]  # fmt: skip
    found += [
        words("colour with a style", ("fabrics", "sky", "colour"), "#fff000;background:url(//e.example)", "not-a-colour"),
        words("colour with markup", ("fabrics", "sky", "colour"), '#fff000"/><script>ran()</script>', "not-a-colour"),
        words("colour of an address", ("fabrics", "sky", "colour"), "url(#x)", "not-a-colour"),
        words("border key with markup", ("borders", "narrow border"), Renamed(MARKUP), HARMLESS),
        words("size key with markup", ("sizes", "mug rug"), Renamed(SCRIPT), HARMLESS),
        words("fabric key with markup", ("fabrics", "tar"), Renamed("<script>"), HARMLESS),
        words("claim of a figure with markup", ("claims", "mug rug"), {MARKUP: 1}, HARMLESS),
        words("key with markup", ("title",), Renamed(MARKUP), "unknown-key"),
        words("version with markup", ("version",), "1<script>", HARMLESS),
    ]  # fmt: skip
    prose = {
        "raw HTML": ("<script>ran()</script>\n\n<img src=x onerror=ran()>\n", "html-in-text"),
        "a script address": ("[a](javascript:ran()) [b](  JaVaScRiPt:ran()) [c](&#106;avascript:ran())\n", "link-address"),
        "a data address": ("[a](data:text/html;base64,PHNjcmlwdD4=) <vbscript:x>\n", "link-address"),
        "an address without a scheme": ("[a](//e.example/x) [b](\\\\e.example) [c](/\\e.example)\n", HARMLESS),
        "a picture": ("![x](https://e.example/x.png)\n", "not-in-text"),
        "a reference": ("[a][b]\n\n[b]: javascript:ran() \"x\"\n", HARMLESS),
        "a walk through attributes": ("{{ finished_width.__class__.__mro__ }}\n", "not-a-figure-name"),
        "a call": ("{{ cycler.__init__.__globals__.os.popen('id').read() }}\n", "not-a-figure-name"),
        "a loop without end": ("{% for a in range(999999999) %}x{% endfor %}\n", "no-programs-in-text"),
        "a program in braces": ("{{ ''.join(['x']*10**9) }}\n", "not-a-figure-name"),
        "another file": ("{% include '/etc/passwd' %}{% import 'os' as os %}\n", "no-programs-in-text"),
        "no figure": ("{{ no_such_figure }}\n", "unknown-figure"),
        "a hundred thousand stars": ("*" * 7_900 + "\n", HARMLESS),
        "brackets without end": ("[" * 7_900 + "\n", HARMLESS),
        "quotes in quotes": ("> " * 3_900 + "x\n", HARMLESS),
        "lists in lists": ("".join("  " * n + "* x\n" for n in range(80)), HARMLESS),
        "links in brackets": ("[a](" * 1_900 + "\n", HARMLESS),
        "back quotes": ("`" * 3_000 + "a" + "`" * 2_999 + "\n", HARMLESS),
        "a novel": ("word " * 50_000, HARMLESS),
        "typst": ('#panic("x") #read("/etc/passwd") $ sum $ \\ #let x = 1 // @ref\n', PUBLISHED),
    }  # fmt: skip
    found += [words(f"prose: {name}", ("introduction",), value, expected) for name, (value, expected) in prose.items()]
    found += [
        Hostile(
            "prose: private signs of our own",
            lambda folder: put(folder, as_yaml(changed({("introduction",): "\ue0009 in\ue001finished_width\ue002\n"}))),
            HARMLESS,
        )
    ]
    return found


def _everywhere(value: str) -> Callable[[Path], None]:
    paths: tuple[tuple[Any, ...], ...] = (
        ("title",), ("summary",), ("designer",), ("licence",), ("fabrics", "sky", "name"), ("fabrics", "sky", "role"),
        ("blocks", "skiff", "name"), ("sizes", "mug rug", "name"), ("sizes", "mug rug", "use"), ("changes", 0, "what"),
    )  # fmt: skip
    return lambda folder: put(folder, as_yaml(changed(dict.fromkeys(paths, value))))


def _unicode() -> list[Hostile]:
    return [
        words("writing turned round", ("title",), "Low \u202eretaW\u202c", "invisible-character"),
        words("isolated writing", ("summary",), "a \u2066b\u2069 c", "invisible-character"),
        words("signs without width", ("title",), "Lo\u200bw\u200d Wa\u2060ter\ufeff", HARMLESS),
        words("a tower of accents", ("title",), "Z" + "\u0351" * 79, HARMLESS),
        words("accents in every name", ("fabrics", "sky", "name"), "e\u0301" * 30, HARMLESS),
        words("a very long word", ("summary",), "w" * 300, PUBLISHED, has_handouts=True),
        words("another script", ("title",), "\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627", HARMLESS, has_handouts=True),
        words("faces and flags", ("title",), "\U0001f468\u200d\U0001f469\u200d\U0001f467 \U0001f1e9\U0001f1ea", HARMLESS, has_handouts=True),
        words("private signs", ("title",), "\ue000\ue001\ue002", HARMLESS),
        words("no characters", ("title",), "\ufdd0\U0001fffe\U0010ffff", HARMLESS),
        words("tags that nobody sees", ("title",), "Low\U000e0041\U000e0042", HARMLESS),
        words("letters that look alike", ("fabrics", "tar"), Renamed("t\u0430r"), "undefined-fabric"),
        words("a size key of another script", ("sizes", "mug rug"), Renamed("\u043a\u0440\u0443\u0436\u043a\u0430"), HARMLESS),
        words("a size key with a way up", ("sizes", "mug rug"), Renamed("../../../etc/x"), HARMLESS),
    ]  # fmt: skip


def _drawings() -> list[Hostile]:
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4">'
    good = '<path fill="#cfe0e6" d="M0,0 4,0 4,4z"/><path fill="#43382f" d="M0,0 4,4 0,4z"/>'
    entities = "".join(f'<!ENTITY a{n} "{f"&a{n - 1};" * 10}">' for n in range(1, 10))
    return [
        drawn("drawing: good", head + good + "</svg>", PUBLISHED),
        drawn("drawing: a gap", head + '<path fill="#cfe0e6" d="M0,0 4,0 4,3z"/><path fill="#43382f" d="M0,0 4,4 0,4z"/></svg>', "gap-between-pieces"),
        drawn("drawing: a gap, and words that are markup", head + '<title>&lt;/title&gt;&lt;script&gt;ran()&lt;/script&gt;</title><path class="x&quot; onload=&quot;ran()" fill="url(http://e.example)" d="M0,0 4,0 4,3z"/><path fill="#43382f" style="fill:url(//e.example)" d="M0,0 4,4 0,4z"/></svg>', HARMLESS),
        drawn("drawing: entity bomb", f'<!DOCTYPE svg [<!ENTITY a0 "lol">{entities}]>{head}<text>&a9;</text></svg>', "drawing-with-doctype"),
        drawn("drawing: file by entity", f'<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>{head}<text>&x;</text></svg>', "drawing-with-doctype"),
        drawn("drawing: rules from elsewhere", f'<!DOCTYPE svg SYSTEM "http://e.example/x.dtd">{head}</svg>', "drawing-with-doctype"),
        drawn("drawing: a picture from elsewhere", f'{head}<image href="http://e.example/x.png" width="4" height="4"/>{good}</svg>', PUBLISHED),
        drawn("drawing: use of another file", f'{head}<use href="../../secret.svg#x"/>{good}</svg>', "outside-reference"),
        drawn("drawing: use of itself", f'{head}<g id="a"><use href="#a"/></g>{good}</svg>', HARMLESS),
        drawn("drawing: a tree of uses", head + "<defs><g id='u0'><rect width='1' height='1'/></g>" + "".join(f"<g id='u{n}'>{f'<use href=#u{n - 1}/>'.replace('=#', chr(61) + chr(34) + '#').replace('/>', chr(34) + '/>') * 10}</g>" for n in range(1, 9)) + "</defs><use href='#u8'/></svg>", HARMLESS),
        drawn("drawing: script", f"{head}<script>ran()</script>{good}</svg>", PUBLISHED),
        drawn("drawing: style from elsewhere", f'<?xml-stylesheet href="http://e.example/x.css"?>{head}<style>@import url(//e.example);</style>{good}</svg>', HARMLESS),
        drawn("drawing: depth", head + "<g>" * 50_000, "drawing-too-large"),
        drawn("drawing: width", head + "<g/>" * 100_000 + "</svg>", "drawing-too-large"),
        drawn("drawing: huge numbers", f'{head}<path fill="#cfe0e6" d="M0,0 {"9" * 5000},0 1e400,4z"/></svg>', HARMLESS),
        drawn("drawing: a path of a hundred thousand corners", head + '<path fill="#cfe0e6" d="M0,0' + " 1,1 2,2" * 50_000 + 'z"/></svg>', HARMLESS),
        drawn("drawing: a thousand lines across", head + "".join(f'<line x1="0" y1="{n / 300}" x2="4" y2="{(n * 7 % 1000) / 300}" stroke="#000"/>' for n in range(1000)) + "</svg>", HARMLESS),
        drawn("drawing: a transform of transforms", f'{head}<g transform="{"scale(9) " * 20_000}">{good}</g></svg>', HARMLESS),
        drawn("drawing: a long tag", head + "<path " + " " * 800_000 + "/></svg>", HARMLESS),
        drawn("drawing: a window of nothing", f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 0">{good}</svg>', HARMLESS),
        drawn("drawing: empty", "", HARMLESS),
        drawn("drawing: no XML", "\x00\x01<<<>>>&&&", HARMLESS),
        words("drawing outside the folder", ("blocks", "skiff"), {"finished size": "4 x 4", "grid": "4 x 4", "drawing": "../../secret.svg"}, "undefined-drawing"),
        words("drawing by its whole path", ("blocks", "skiff"), {"finished size": "4 x 4", "grid": "4 x 4", "drawing": "/etc/passwd"}, "undefined-drawing"),
    ]  # fmt: skip


def _folders() -> list[Hostile]:
    good = as_yaml(PLAIN)

    def link(target: str, name: str = "pattern.yaml") -> Callable[[Path], None]:
        def write(folder: Path) -> None:
            (folder / "x").mkdir()
            if name != "pattern.yaml":
                (folder / "x" / "pattern.yaml").write_text(good)
            (folder / "x" / name).symlink_to(target)

        return write

    def special(make: Callable[[Path], None], name: str = "pattern.yaml") -> Callable[[Path], None]:
        def write(folder: Path) -> None:
            (folder / "x").mkdir()
            if name != "pattern.yaml":
                (folder / "x" / "pattern.yaml").write_text(good)
            make(folder / "x" / name)

        return write

    def circle(folder: Path) -> None:
        (folder / "x").mkdir()
        (folder / "x" / "pattern.yaml").symlink_to("other.yaml")
        (folder / "x" / "other.yaml").symlink_to("pattern.yaml")

    def linked_folder(folder: Path) -> None:
        (folder.parent / "outside").mkdir()
        (folder.parent / "outside" / "pattern.yaml").write_text(good.replace("Low Water", SECRET))
        (folder / "x").symlink_to(folder.parent / "outside")

    def named(name: str) -> Callable[[Path], None]:
        return lambda folder: put(folder, good, slug=name)

    def twins(folder: Path) -> None:
        put(folder, good, slug="low water")
        put(folder, good, slug="low-water")

    def capitals(folder: Path) -> None:
        put(folder, good, slug="Low-Water")
        put(folder, good, slug="low-water")

    def crowd(folder: Path) -> None:
        put(folder, good)
        for number in range(3000):
            (folder / "x" / f"d{number}.svg").write_text("<svg/>")

    def bad_bytes(folder: Path) -> None:
        put(folder, good, slug=os.fsdecode(b"x\xff\xfe"))

    def bad_drawing(folder: Path) -> None:
        put(folder, good)
        Path(os.fsdecode(os.fsencode(folder) + b"/x/\xff\n::error::.svg")).write_text("<svg/>")

    odd = {
        "spaces": "low water", "quotes": "low\"water'", "a leading dash": "-rf", "dots": "...", "a line end": "low\n::error::water", "markup": "<img src=x onerror=ran()>",
        "a template": "{{ 7*7 }}", "a percent sign": "%2e%2e%2fetc", "a hash": "low#water", "a question mark": "low?water", "another script": "\u043b\u043e\u0434\u043a\u0430",
        "writing turned round": "low\u202eretaw", "two hundred letters": "w" * 200, "a hidden name": ".low",
    }  # fmt: skip
    return [
        Hostile("pattern file is a link to a secret", link("../../secret.txt"), "file-outside-folder"),
        Hostile("pattern file is a link to the machine", link("/etc/passwd"), "file-outside-folder"),
        Hostile("pattern file is a link to zeros without end", link("/dev/zero"), "file-outside-folder"),
        Hostile("pattern file is a link to nowhere", link("nowhere.yaml"), "file-unreadable"),
        Hostile("pattern file is a link in a circle", circle, "file-unreadable"),
        Hostile("pattern file is a pipe", special(os.mkfifo), "file-unreadable"),
        Hostile("pattern file is a folder", special(Path.mkdir), "file-unreadable"),
        Hostile("drawing is a link to a secret", link("../../secret.svg", "skiff.svg"), "file-outside-folder"),
        Hostile("drawing is a link to the memory", link("/proc/self/environ", "skiff.svg"), "file-outside-folder"),
        Hostile("drawing is a pipe", special(os.mkfifo, "skiff.svg"), "file-unreadable"),
        Hostile("drawing is a folder", special(Path.mkdir, "skiff.svg"), "file-unreadable"),
        Hostile("folder is a link out of the patterns", linked_folder, "file-outside-folder"),
        Hostile("three thousand drawings", crowd, "too-many-drawings"),
        Hostile("folder of bytes that are no text", bad_bytes, "folder-name"),
        Hostile("drawing of bytes that are no text", bad_drawing, "drawing-name"),
        Hostile("two names, one address", twins, "folder-name"),
        Hostile("two names that differ in capitals", capitals, "folder-name"),
        *(Hostile(f"folder with {name}", named(folder), "folder-name") for name, folder in odd.items()),
    ]


PLAIN_INPUTS = (
    words("plain", ("format",), 1),
    text("plain: a demo", (ROOT / "patterns" / "harbour-lanterns" / "pattern.yaml").read_text("utf-8"), PUBLISHED),
    text("plain: the tutorial", tutorial_patterns()[1], PUBLISHED),
)
"""Nothing is wrong with these: their pages show what the publisher writes by itself."""
CORPUS: tuple[Hostile, ...] = (
    *PLAIN_INPUTS,
    *_yaml_bombs(),
    *_numbers(),
    *_injections(),
    *_unicode(),
    *_drawings(),
    *_folders(),
)

REF_NAMES = (
    "<img/src=//e.example/x/onerror=ran()>", "</code></p><script>ran()</script>", "\"onmouseover=\"ran()\"x=\"", "'onmouseover='ran()", "<svg/onload=ran()>", "-->", "]]>",
    "$(touch${IFS}ran)", "`touch${IFS}ran`", ";touch${IFS}ran", "|touch${IFS}ran", "&touch${IFS}ran&", ">ran", "$HOME", "%0A%0D", "%s%s%n",
    "@everyone", "@", "#1", "!1", "{{7*7}}", "${{github.token}}", "{%print(1)%}", "www.e.example", "http/e.example", "**bold**".replace("*", "_"), "|a|b|",
    "--output=ran", "-rf", "--", "--help", "main/../main".replace("..", "."), "refs/heads/main", "HEAD", "FETCH_HEAD", "0" * 40, "a" * 200, "a/" * 60 + "a",
    "\u202eniam", "\u043c\u0430in", "ma\u200bin", "\ufeffmain", "\U0001f9f5", "ma\u0301in",
)  # fmt: skip
"""Names that git takes for a branch, or refuses; none may act as markup, as an option or as a command."""
NO_REVISIONS = (
    "", " ", "-", "--all", "--output=ran", "-o", "^main", "main..HEAD", "main...HEAD", "main:patterns", "main^{tree}", "main^{blob}", ":/Change", ":0:patterns",
    "@{u}", "@{-1}", "main@{9999}", "main~9999", "main^{/no such words}", "main\nHEAD", "main HEAD", "main\0", "main\t", "HEAD^@", "HEAD^!", "x" * 5000, "\ud800", "../main", "/etc/passwd",
    "file:///etc/passwd", "ext::touch ran", "~", "*", "refs/heads/*", "stash@{0}", "'; touch ran; '", "$(touch ran)", "`touch ran`",
)  # fmt: skip
"""What a stranger might put where a revision is asked for, and is none."""
