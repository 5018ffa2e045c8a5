"""Pattern folders to a site: whole, the same every time, linked within itself, and nothing made twice."""

from __future__ import annotations

import json
import os
import posixpath
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pdfplumber
import pytest
from evenseam.problems import SourceText
from evenseam.publish import export as export_module
from evenseam.publish import parallel
from evenseam.publish.cache import Cache, key_of
from evenseam.publish.contents import ContentsEntry, contents_as_data
from evenseam.publish.entry import as_text, from_text
from evenseam.publish.export import ExportRefusedError, export, with_gallery
from evenseam.publish.freshness import mark_changed
from evenseam.publish.making import make_pattern
from evenseam.publish.options import SiteOptions
from evenseam.publish.site import build_site
from evenseam.publish.site_files import SiteFiles, address_of, site_link, with_links
from evenseam.publish.sources import PatternSource
from support.mkdocs_site import mkdocs, tree, tutorial_patterns, write_config
from support.page_reader import figures_in, read_page
from support.paper_reader import body_text

SMALL, WHOLE = tutorial_patterns()


def source(slug: str, text: str) -> PatternSource:
    return PatternSource(slug, SourceText(f"patterns/{slug}/pattern.yaml", text), {})


SOURCES = (source("low-tide", WHOLE), source("stranded", WHOLE.replace("fabric: hull", "fabric: hulk")))
"""One pattern as it should be and one with a mistake."""


@pytest.fixture(scope="module")
def cache_folder(tmp_path_factory) -> Path:
    return tmp_path_factory.mktemp("cache")


@pytest.fixture(scope="module")
def site(cache_folder) -> SiteFiles:
    return build_site(SOURCES, SiteOptions(), Cache(cache_folder), processes=1)


@pytest.fixture(scope="module")
def exported(site, tmp_path_factory) -> Path:
    out = tmp_path_factory.mktemp("export") / "out"
    export(site, out)
    return out


class TestWhatIsPublished:
    """An overview, one page for each size and edition, handouts on both papers, figures as data, a gallery."""

    def test_every_page_is_there(self, site):
        assert sorted(page.path for page in site.pages) == [
            "guide/every-key.md", "help/check-your-templates.md", "patterns/index.md", "patterns/low-tide/index.md", "patterns/low-tide/mug-rug-centimetres.md",
            "patterns/low-tide/mug-rug-inches.md", "patterns/low-tide/wall-hanging-centimetres.md", "patterns/low-tide/wall-hanging-inches.md",
            "patterns/stranded/index.md",
        ]  # fmt: skip

    def test_every_file_is_there(self, site):
        sizes = [f"{size}-{edition}" for size in ("mug-rug", "wall-hanging") for edition in ("inches", "centimetres")]
        handouts = {f"patterns/low-tide/{size}-{paper}.pdf" for size in sizes for paper in ("letter", "a4")}
        data = {f"patterns/low-tide/{size}.json" for size in sizes}
        found = {file.path for file in site.files}
        assert (
            handouts | data | {"pattern.schema.json", "assets/evenseam.css", "patterns/low-tide/mug-rug-inches.svg"}
            <= found
        )

    def test_navigation_leads_to_every_pattern_page(self, site):
        def paths(entries):
            for entry in entries:
                yield entry.path
                yield from paths(entry.children)

        assert set(paths(site.navigation)) == {page.path for page in site.pages} - {
            "guide/every-key.md",
            "help/check-your-templates.md",
        }

    def test_a_pattern_with_a_mistake_shows_it_and_the_other_is_published(self, site):
        (page,) = [page for page in site.pages if "stranded" in page.path]
        body = page.body(has_folders=True)
        (error,) = site.errors
        assert error.place is not None and error.place.file == "patterns/stranded/pattern.yaml"
        assert str(error.place) in body and "hulk" in body and "What to do:" in body
        assert not page.is_searched
        assert "Not published yet" in site.gallery and "Low Tide" in site.gallery

    def test_options_leave_things_out(self, tmp_path):
        options = SiteOptions(
            folder="sew", papers=("a4",), editions=("centimetres",), has_author_guide=False, has_paper_pictures=False
        )
        made = build_site(SOURCES[:1], options, Cache(tmp_path), processes=1)
        assert [page.path for page in made.pages] == [
            "sew/index.md",
            "help/check-your-templates.md",
            "sew/low-tide/index.md",
            "sew/low-tide/mug-rug-centimetres.md",
            "sew/low-tide/wall-hanging-centimetres.md",
        ]
        assert {file.path.rpartition("/")[2] for file in made.files} == {
            "pattern.schema.json", "evenseam.css", "evenseam.js", "changes.xml", "check-your-templates-a4.svg",
            "text-regular.woff2", "text-bold.woff2", "book-bold.woff2", "mug-rug-centimetres.svg", "wall-hanging-centimetres.svg", "mug-rug-centimetres.json", "mug-rug-centimetres-a4.pdf",
            "wall-hanging-centimetres.json", "wall-hanging-centimetres-a4.pdf",
            "mug-rug-centimetres-colouring.svg", "wall-hanging-centimetres-colouring.svg",
        }  # fmt: skip

    def test_without_handouts_the_overview_says_so(self, tmp_path):
        made = build_site(SOURCES[:1], SiteOptions(has_handouts=False), Cache(tmp_path), processes=1)
        assert not [file.path for file in made.files if file.path.endswith(".pdf")]
        (overview,) = [page for page in made.pages if page.path == "patterns/low-tide/index.md"]
        assert "not made in this preview" in overview.body(has_folders=True)

    def test_a_site_without_patterns_says_so(self, tmp_path):
        made = build_site((), SiteOptions(), Cache(tmp_path))
        assert "no pattern here yet" in made.gallery

    def test_data_of_a_size_is_json_with_its_figures(self, site):
        (file,) = [file for file in site.files if file.path == "patterns/low-tide/wall-hanging-inches.json"]
        data = json.loads(file.stored.read_bytes())
        # Three 6 in boats, two 1 in strips between them, and a 2 in border all round.
        assert data["finished"] == {"width": "24", "height": "10"}


class TestSameText:
    """Page and handout of one size say the same, figure by figure."""

    @pytest.mark.parametrize("size", ["mug-rug-inches", "wall-hanging-inches", "wall-hanging-centimetres"])
    @pytest.mark.parametrize("paper", ["letter", "a4"])
    def test_the_figures_agree_in_order(self, size, paper):
        from evenseam.publish.checked import check_pattern
        from evenseam.publish.handout import HandoutFrame, write_handout
        from evenseam.publish.html import write_html
        from evenseam.wording import write_document
        from support.documents import paint

        checked = check_pattern(SOURCES[0])
        (sheet,) = [
            sheet
            for sheet in checked.sheets
            if size == f"{sheet.project.size}-{ {'in': 'inches', 'cm': 'centimetres'}[sheet.project.unit.symbol] }"
        ]
        document = write_document(sheet).value
        page = figures_in(read_page(write_html(document, paint).body).words)
        handout = write_handout(document, HandoutFrame("", "", paper), paint).value
        assert len(page) > 40
        assert figures_in(body_text(handout)) == page

    def test_every_figure_of_the_document_is_on_the_page(self, site):
        (page,) = [page for page in site.pages if page.path.endswith("wall-hanging-inches.md")]
        reader = read_page(page.body(has_folders=True))
        assert "24 × 10 in" in reader.words
        assert all(name is None or name for name in reader.figure_names)


class TestTrueScale:
    """An inch on a template is 72.00 points in the handout, and 2 cm are 2/2.54 of that, on both papers."""

    @pytest.mark.parametrize(("paper", "width", "height"), [("letter", 612, 792), ("a4", 595.276, 841.890)])
    @pytest.mark.parametrize("name", ["wall-hanging-inches", "wall-hanging-centimetres", "mug-rug-inches"])
    def test_the_test_squares_are_true(self, site, name, paper, width, height):
        (file,) = [file for file in site.files if file.path == f"patterns/low-tide/{name}-{paper}.pdf"]
        with pdfplumber.open(file.stored) as pdf:
            sheets = [page for page in pdf.pages[-3:] if "Print at 100" in (page.extract_text() or "")]
            assert sheets
            for page in sheets:
                assert (page.width, page.height) == pytest.approx((width, height), abs=0.01)
                squares = [(float(rect["width"]), float(rect["height"])) for rect in page.rects]
                for side in (72, 2 / 2.54 * 72):
                    assert any(square == pytest.approx((side, side), abs=0.01) for square in squares)

    def test_a_patch_line_is_as_long_as_it_is_sewn(self, site):
        """The hull is drawn 8 of 8 squares wide on a block of 6 in: its longest line is 6 in."""
        (file,) = [file for file in site.files if file.path == "patterns/low-tide/mug-rug-inches-letter.pdf"]
        with pdfplumber.open(file.stored) as pdf:
            page = next(page for page in pdf.pages[-3:] if "Print at 100" in (page.extract_text() or ""))
            lengths = [
                max(float(line["width"]), float(line["height"])) for line in (*page.lines, *page.curves, *page.rects)
            ]
        assert any(length == pytest.approx(6 * 72, abs=0.01) for length in lengths)


class TestTwice:
    """The same patterns give the same bytes, whatever the cache holds and however many processes work."""

    def test_two_caches_two_processes_one_site(self, site, exported, tmp_path):
        again = build_site(SOURCES, SiteOptions(), Cache(tmp_path / "cache"), processes=2)
        export(again, tmp_path / "out")
        assert tree(tmp_path / "out") == tree(exported)

    def test_nothing_is_made_a_second_time(self, site, cache_folder, monkeypatch):
        def refuse(*arguments):
            raise AssertionError("made again")

        monkeypatch.setattr(parallel, "make_one", refuse)
        again = build_site(SOURCES, SiteOptions(), Cache(cache_folder), processes=1)
        assert again == site

    @pytest.mark.parametrize("damage", [b"", b"<p>something else</p>"])
    @pytest.mark.parametrize("kind", ["made", "bytes"])
    def test_a_damaged_cache_is_made_anew(self, tmp_path, damage, kind):
        sources, options = (source("low-tide", SMALL), SOURCES[1]), SiteOptions(papers=("a4",))
        export(build_site(sources, options, Cache(tmp_path / "cache"), processes=1), tmp_path / "first")
        for path in (tmp_path / "cache" / kind).rglob("*"):
            if path.is_file():
                path.write_bytes(damage)
        export(build_site(sources, options, Cache(tmp_path / "cache"), processes=1), tmp_path / "second")
        assert tree(tmp_path / "first") == tree(tmp_path / "second")

    def test_keys_tell_texts_apart(self):
        assert len({key_of("ab", "c"), key_of("a", "bc"), key_of("abc"), key_of("", "abc"), key_of("abc", "")}) == 5

    def test_a_change_of_the_text_is_seen(self, cache_folder, site):
        changed = build_site(
            (source("low-tide", WHOLE.replace("Low Tide", "Low Water Mark")),),
            SiteOptions(has_handouts=False),
            Cache(cache_folder),
        )
        assert "Low Water Mark" in changed.gallery

    def test_what_was_made_survives_being_written_down(self, cache_folder):
        for pattern in SOURCES:
            made = make_pattern(pattern, SiteOptions(has_handouts=False), Cache(cache_folder))
            assert from_text(as_text(made)) == made


class TestFreshness:
    """A page that goes back to an earlier text looks new to a generator that compares times."""

    def test_only_what_shows_something_else_is_made_to_look_new(self, tmp_path):
        def built(text: str) -> SiteFiles:
            return build_site(
                (source("low-tide", text),), SiteOptions(has_handouts=False), Cache(tmp_path / "c"), processes=1
            )

        def times(site: SiteFiles) -> dict[str, int]:
            return {page.path: page.stored.stat().st_mtime_ns for page in site.pages}

        memory = tmp_path / "c" / "shown.json"
        first = built(SMALL)
        for page in first.pages:
            os.utime(page.stored, (1_000_000, 1_000_000))
        mark_changed(first, memory)
        assert set(times(first).values()) == {10**15}
        mark_changed(built(SMALL.replace("Low Tide", "High Tide")), memory)
        mark_changed(first, memory)
        new = {path for path, time in times(first).items() if time > 10**15}
        assert new == {"patterns/index.md", "patterns/low-tide/index.md", "patterns/low-tide/mug-rug-inches.md"}


class TestLinks:
    """Every link inside the site leads somewhere, and nothing is fetched from elsewhere."""

    @pytest.mark.parametrize("has_folders", [True, False])
    def test_every_link_leads_to_a_page_or_file(self, site, has_folders):
        known = {address_of(page.path, has_folders=has_folders) for page in site.pages} | {
            file.path for file in site.files
        }
        count = 0
        for page in site.pages:
            start = address_of(page.path, has_folders=has_folders)
            for _, _, address in read_page(page.body(has_folders=has_folders)).addresses:
                parts = urlsplit(address)
                if address.startswith("#"):
                    assert f'id="{parts.fragment}"' in page.body(has_folders=has_folders)
                    continue
                assert not parts.scheme and not parts.netloc and not parts.path.startswith("/")
                target = posixpath.normpath(posixpath.join(posixpath.dirname(start), unquote(parts.path)))
                target += "/" if parts.path.endswith("/") else ""
                assert target in known, (page.path, address)
                count += 1
        assert count > 30

    @pytest.mark.parametrize(("here", "there", "has_folders", "expected"), [
        ("patterns/a/index.md", "patterns/a/b.md", True, "b/"), ("patterns/a/b.md", "patterns/a/c.pdf", True, "../c.pdf"), ("patterns/a/b.md", "patterns/a/index.md", True, "../"),
        ("patterns/a/b.md", "patterns/a/c.md", False, "c.html"), ("index.md", "patterns/a/index.md", True, "patterns/a/"), ("patterns/a/b.md", "index.md", True, "../../../"),
        ("patterns/a/b.md", "patterns/a/b.md", True, "./"), ("a.md", "a b.md", True, "../a%20b/"),
    ])  # fmt: skip
    def test_links_are_relative(self, here, there, has_folders, expected):
        assert with_links(f'<a href="{site_link(there)}">', here, has_folders=has_folders) == f'<a href="{expected}">'

    def test_words_that_look_like_a_link_stay_words(self):
        assert (
            with_links("<p>href=&quot;site:x.md&quot;</p>", "a.md", has_folders=True)
            == "<p>href=&quot;site:x.md&quot;</p>"
        )


class TestExport:
    """The whole site as plain files, whole or not at all."""

    def test_any_generator_builds_the_same_pages(self, site, tmp_path):
        """Plain MkDocs, without our plugin, finds every page in the exported folder."""
        export(site, tmp_path / "docs")
        config = write_config(tmp_path, plugins=[])
        (tmp_path / "docs" / "index.md").write_text("# Home\n")
        told = mkdocs(config, "--strict")
        assert told.returncode == 0, told.stderr
        built = [path for path in (tmp_path / "site").rglob("*.html") if path.name != "404.html"]
        assert len(built) == len(site.pages) + 1
        html = (tmp_path / "site" / "patterns" / "low-tide" / "wall-hanging-inches" / "index.html").read_text()
        (page,) = [page for page in site.pages if page.path.endswith("wall-hanging-inches.md")]
        assert page.body(has_folders=True) in html
        assert f"<title>{page.title}" in html

    def test_hand_written_pages_go_along_with_the_gallery_in_them(self, site, tmp_path):
        docs = tmp_path / "docs"
        (docs / "sub").mkdir(parents=True)
        (docs / "sub" / "page.md").write_text("# Hello\n\n<!-- gallery -->\n\nBye\n")
        export(site, tmp_path / "out", docs)
        text = (tmp_path / "out" / "sub" / "page.md").read_text()
        assert 'href="../../patterns/low-tide/"' in text and text.endswith("\n\nBye\n")

    def test_a_page_without_the_mark_is_untouched(self, site):
        assert with_gallery("# A\n", "a.md", site, has_folders=True) == "# A\n"

    def test_a_folder_with_other_things_is_never_replaced(self, site, tmp_path):
        (tmp_path / "mine.txt").write_text("mine")
        with pytest.raises(ExportRefusedError, match="not empty"):
            export(site, tmp_path)
        assert tree(tmp_path) == {"mine.txt": b"mine"}

    def test_an_earlier_export_is_replaced_as_a_whole(self, site, exported, tmp_path):
        out = tmp_path / "out"
        export(site, out)
        (out / "patterns" / "old.md").write_text("old")
        export(site, out)
        assert tree(out) == tree(exported)
        assert os.listdir(tmp_path) == ["out"]

    def test_when_writing_fails_the_old_folder_stays(self, site, exported, tmp_path, monkeypatch):
        out = tmp_path / "out"
        export(site, out)
        written = []

        def failing(folder, path, content):
            written.append(path)
            if len(written) > 5:
                raise OSError("no space left")
            (folder / Path(path).name).write_bytes(content)

        monkeypatch.setattr(export_module, "_write", failing)
        with pytest.raises(OSError, match="no space"):
            export(site, out)
        assert tree(out) == tree(exported)
        assert os.listdir(tmp_path) == ["out"]

    def test_when_the_last_rename_fails_the_old_folder_comes_back(self, site, exported, tmp_path, monkeypatch):
        out = tmp_path / "out"
        export(site, out)
        rename = Path.rename

        def failing(self, target):
            if target == out and self.name.startswith(".out-") and not self.parent.name.startswith(".out-old-"):
                raise OSError("in use")
            return rename(self, target)

        monkeypatch.setattr(Path, "rename", failing)
        with pytest.raises(OSError, match="in use"):
            export(site, out)
        assert tree(out) == tree(exported)


class TestHostilePattern:
    """A title full of signs is shown as it is, on the page, in the gallery and in the front matter."""

    HOSTILE = "#\\\"$*<script>alert(1)</script> {{ 7*7 }} & ' @x"

    def test_it_is_words_everywhere(self, tmp_path):
        import yaml

        text = SMALL.replace("title: Low Tide", f"title: {json.dumps(self.HOSTILE)}").replace(
            "Pale Morning", "<b>#x</b>"
        )
        made = build_site((source("x", text),), SiteOptions(papers=("letter",)), Cache(tmp_path / "c"), processes=1)
        for problem in made.errors:
            # The reader may refuse such a title; then the page that says so must be as harmless.
            assert problem.place is not None
        bodies = [page.body(has_folders=True) for page in made.pages] + [made.gallery]
        assert not any("<script" in body.lower() or "<b>#x" in body or "{{" in body for body in bodies)
        export(made, tmp_path / "out")
        for path in (tmp_path / "out").rglob("*.md"):
            front = path.read_text().split("---\n")[1]
            assert isinstance(yaml.safe_load(front)["title"], str)


class TestContents:
    """A contents list nests by level."""

    def test_it_nests(self):
        nested = contents_as_data(
            (
                ContentsEntry(2, "a", "A"),
                ContentsEntry(3, "b", "B"),
                ContentsEntry(3, "c", "C"),
                ContentsEntry(2, "d", "D"),
            )
        )
        assert [(entry["id"], [child["id"] for child in entry["children"]]) for entry in nested] == [
            ("a", ["b", "c"]),
            ("d", []),
        ]
