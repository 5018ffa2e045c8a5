"""The plugin in MkDocs: every page arrives, mistakes are told, strict builds fail, nothing comes from elsewhere."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import ClassVar

import pytest
from evenseam.mkdocs_plugin.pages import as_nav, nav_with
from evenseam.mkdocs_plugin.plugin import EvenseamConfig
from evenseam.publish.search_words import searchable
from evenseam.publish.site_files import NavEntry
from support.mkdocs_site import ROOT, mkdocs, tree, tutorial_patterns, write_config, write_pattern
from support.page_reader import read_page

WHOLE = tutorial_patterns()[1]
EVENSEAM = {"evenseam": {"patterns": "patterns", "papers": ["a4"]}}


@pytest.fixture(scope="module")
def built(tmp_path_factory) -> Path:
    """A site in the Material theme, built strictly, with one pattern."""
    folder = tmp_path_factory.mktemp("quay")
    write_pattern(folder / "patterns" / "low-tide", WHOLE)
    (folder / "docs").mkdir()
    (folder / "docs" / "index.md").write_text("# Home\n\n<!-- gallery -->\n\nWelcome.\n")
    config = write_config(
        folder, plugins=["search", EVENSEAM], theme="material", features=["content.action.edit"], nav=[{"Home": "index.md"}, {"Quilts": "patterns/"}, {"Keys": "guide/every-key.md"}],
        site_url="https://example.org/quay/", repo_url="https://example.org/repo", edit_uri="edit/main/docs/",
    )  # fmt: skip
    told = mkdocs(config, "--strict")
    assert told.returncode == 0, told.stderr
    return folder


class TestSite:
    """A strict build of a good pattern passes and every page is there."""

    def test_every_page_is_there(self, built):
        pages = {path.relative_to(built / "site").as_posix() for path in (built / "site").rglob("*.html")}
        assert pages == {
            "index.html", "404.html", "patterns/index.html", "guide/every-key/index.html", "help/check-your-templates/index.html", "patterns/low-tide/index.html",
            "patterns/low-tide/mug-rug-inches/index.html", "patterns/low-tide/mug-rug-centimetres/index.html",
            "patterns/low-tide/wall-hanging-inches/index.html", "patterns/low-tide/wall-hanging-centimetres/index.html",
        }  # fmt: skip

    def test_pictures_arrive_on_the_page(self, built):
        html = (built / "site/patterns/low-tide/wall-hanging-inches/index.html").read_text()
        assert html.count("<svg") > 10 and "pattern page-->" not in html
        assert "<title>Low Tide: Wall hanging (inches) - Quay</title>" in html

    def test_the_contents_list_leads_to_every_step(self, built):
        html = (built / "site/patterns/low-tide/wall-hanging-inches/index.html").read_text()
        steps = re.findall(r'<section class="step" aria-labelledby="([^"]+)"', html)
        assert len(steps) > 5
        assert all(f'href="#{step}"' in html for step in steps)

    def test_the_section_takes_the_place_of_its_mark(self, built):
        html = (built / "site/patterns/index.html").read_text()
        assert "Quilts" in html and "Low Tide" in html

    def test_the_gallery_stands_in_the_hand_written_page(self, built):
        html = (built / "site/index.html").read_text()
        assert 'href="patterns/low-tide/"' in html and "Welcome." in html and "<!-- gallery -->" not in html

    def test_the_pattern_file_can_be_corrected_from_its_page(self, built):
        html = (built / "site/patterns/low-tide/mug-rug-inches/index.html").read_text()
        assert 'href="https://example.org/repo/edit/main/patterns/low-tide/pattern.yaml"' in html

    def test_search_finds_words_and_not_diagrams(self, built):
        index = json.loads((built / "site/search/search_index.json").read_text())
        texts = {entry["location"]: entry["text"] for entry in index["docs"]}
        steps = [text for place, text in texts.items() if "wall-hanging-inches/#step-" in place]
        assert len(steps) > 5 and any("seam" in text for text in steps)
        page = (built / "site/patterns/low-tide/wall-hanging-inches/index.html").read_text()
        labels = set(re.findall(r"<text[^>]*>([A-Z]\d+ \([A-Z]\))</text>", page))
        assert labels and "Keep the screen on" in page
        assert not any(words in text for words in ("viewBox", "Keep the screen on", *labels) for text in texts.values())
        assert sum(map(len, texts.values())) < 120_000

    def test_search_does_not_find_everything_twice(self, built):
        """The second edition says the same in other figures; it is left out of the search."""
        index = json.loads((built / "site/search/search_index.json").read_text())
        assert not [entry for entry in index["docs"] if "-centimetres/" in entry["location"]]

    def test_the_page_says_what_it_is(self, built):
        html = (built / "site/patterns/low-tide/wall-hanging-inches/index.html").read_text()
        (data,) = re.findall(r'<script type="application/ld\+json">(.*?)</script>', html)
        told = json.loads(data)
        assert told["@type"] == "HowTo" and told["name"] == "Low Tide: Wall hanging (inches)" and len(told["step"]) > 5
        assert (
            '<meta property="og:url" content="https://example.org/quay/patterns/low-tide/wall-hanging-inches/">' in html
        )
        assert '<meta name="description" content="Low Tide: Wall hanging (inches)' in html

    def test_nothing_is_fetched_from_elsewhere(self, built):
        """No script, style, font, frame or picture has an address with a host; links for a reader to follow may."""
        count = 0
        for path in (built / "site").rglob("*.html"):
            for tag, _, address in read_page(path.read_text()).addresses:
                if tag in ("script", "img", "iframe", "source", "video", "audio", "object", "embed", "use", "image"):
                    assert "//" not in address.split("data:")[0], (path, address)
                    count += 1
                elif tag == "link":
                    assert "//" not in address or address.startswith("https://example.org/quay/"), (path, address)
                    count += 1
        assert count > 40

    def test_downloads_are_there(self, built):
        files = {path.name for path in (built / "site/patterns/low-tide").iterdir() if path.is_file()}
        assert {"wall-hanging-inches-a4.pdf", "wall-hanging-inches.json", "mug-rug-centimetres.svg"} <= files
        assert (built / "site/pattern.schema.json").is_file() and (built / "site/assets/evenseam.css").is_file()

    def test_a_second_build_gives_the_same_bytes(self, built):
        before = tree(built / "site")
        assert mkdocs(built / "mkdocs.yml", "--strict").returncode == 0
        after = tree(built / "site")
        # The site map and its packed form carry the day of the build; they are written by MkDocs itself.
        changing = {"sitemap.xml", "sitemap.xml.gz"}
        assert {path: content for path, content in after.items() if path not in changing} == {
            path: content for path, content in before.items() if path not in changing
        }


THIEF = """
from mkdocs.plugins import event_priority

@event_priority(-100)
def on_files(files, config):
    for file in list(files):
        if "wall-hanging" in file.src_uri:
            files.remove(file)
    return files
"""


class TestMistakes:
    """A mistake is told at its place; a strict build fails with one line; the other patterns are published."""

    @pytest.fixture
    def folder(self, tmp_path) -> Path:
        write_pattern(tmp_path / "patterns" / "low-tide", WHOLE)
        write_pattern(
            tmp_path / "patterns" / "stranded", WHOLE.replace("fabric: hull", "fabric: hulk").replace("6 x 6", "0 x 6")
        )
        return tmp_path

    def test_a_strict_build_fails_with_the_number_of_errors(self, folder):
        told = mkdocs(write_config(folder, plugins=[{"evenseam": {"handouts": "never"}}]), "--strict")
        assert told.returncode == 1
        assert re.search(r"patterns/stranded/pattern\.yaml:\d+:\d+: error\[", told.stderr)
        assert re.search(r"\d+ errors in the patterns; each is named above", told.stderr)
        assert "Traceback" not in told.stderr

    def test_otherwise_the_page_shows_them_and_the_rest_is_published(self, folder):
        told = mkdocs(write_config(folder, plugins=[{"evenseam": {"handouts": "never"}}]))
        assert told.returncode == 0
        html = (folder / "site/patterns/stranded/index.html").read_text()
        assert "This pattern is not published yet" in html and "hulk" in html
        assert (folder / "site/patterns/low-tide/wall-hanging-inches/index.html").is_file()

    def test_the_plugin_can_be_strict_by_itself(self, folder):
        told = mkdocs(write_config(folder, plugins=[{"evenseam": {"handouts": "never", "strict": True}}]))
        assert told.returncode == 1

    def test_a_page_that_never_arrives_is_missed(self, folder):
        """Another plugin that throws our pages away makes the build fail."""
        (folder / "thief.py").write_text(THIEF)
        config = write_config(folder, plugins=[{"evenseam": {"handouts": "never"}}], hooks=["thief.py"])
        told = mkdocs(config)
        assert told.returncode == 1 and "pattern pages were not written" in told.stderr

    def test_a_site_without_patterns_is_warned_about(self, tmp_path):
        (tmp_path / "patterns").mkdir()
        told = mkdocs(write_config(tmp_path, plugins=["evenseam"]))
        assert told.returncode == 0 and "there is no pattern.yaml" in told.stderr

    def test_an_unknown_option_is_named(self, tmp_path):
        write_pattern(tmp_path / "patterns" / "low-tide", WHOLE)
        told = mkdocs(write_config(tmp_path, plugins=[{"evenseam": {"papers": ["legal"]}}]))
        assert told.returncode == 1 and "legal" in told.stderr and "Traceback" not in told.stderr


class TestManyPatterns:
    """With more patterns than a list can hold, the navigation leads to the gallery only, and every page is still there."""

    def test_the_navigation_stays_short(self, tmp_path):
        for number in range(2):
            write_pattern(
                tmp_path / "patterns" / f"tide-{number}", tutorial_patterns()[0].replace("Low Tide", f"Tide {number}")
            )
        for nav in ([{"Home": "index.md"}, {"Quilts": "patterns/"}], None):
            more = {"nav": nav} if nav else {}
            config = write_config(
                tmp_path,
                plugins=[{"evenseam": {"handouts": "never", "author_guide": False, "most_in_navigation": 1}}],
                **more,
            )
            told = mkdocs(config, "--strict")
            assert told.returncode == 0, told.stderr
            assert "Tide 1" not in (tmp_path / "site/index.html").read_text()
            assert "Tide 1" in (tmp_path / "site/patterns/index.html").read_text()
            assert (tmp_path / "site/patterns/tide-1/mug-rug-inches/index.html").is_file()


class TestSearchedWords:
    """What a search finds: headings and words; no pictures, no marks, no list of files."""

    def test_only_words_are_left(self):
        body = (
            '<div class="pattern-page"><h1>Low</h1><nav class="switch"><a href="x">other</a></nav><ul class="downloads"><li>file</li></ul>'
            '<h2 id="a">A</h2><figure><svg><title>t</title></svg><figcaption>c</figcaption></figure><p>Cut <span class="measured">2 in</span> wide.</p>'
            "<table><tr><th>Piece</th><td>4</td></tr></table></div>"
        )
        assert " ".join(searchable(body).split()) == '<h1>Low</h1><h2 id="a">A</h2><p>Cut 2 in wide.</p> Piece 4'

    def test_items_are_paragraphs_for_no_list_is_round_them_where_they_are_shown(self):
        body = "<ol><li><p>Cut a strip.</p><ul><li>Cut <strong>two</strong> squares.</li></ul></li><li>Press.</li></ol>"
        assert "".join(searchable(body).split("  ")).replace("> <", "><").strip() == (
            "<p>Cut a strip.</p><p>Cut two squares.</p><p>Press.</p>"
        )


class TestNavigation:
    """The patterns take the place that the navigation gives them."""

    ENTRIES = (
        NavEntry(
            "Patterns",
            "patterns/index.md",
            (
                NavEntry(
                    "Low Tide", "patterns/low-tide/index.md", (NavEntry("Mug rug", "patterns/low-tide/mug-rug.md"),)
                ),
            ),
        ),
    )
    INNER: ClassVar = [
        "patterns/index.md",
        {"Low Tide": ["patterns/low-tide/index.md", {"Mug rug": "patterns/low-tide/mug-rug.md"}]},
    ]

    def test_entries_become_sections_led_by_their_page(self):
        assert as_nav(self.ENTRIES) == [{"Patterns": self.INNER}]

    @pytest.mark.parametrize(("nav", "expected"), [
        ([{"Home": "index.md"}, {"Quilts": "patterns/"}], [{"Home": "index.md"}, {"Quilts": INNER}]),
        (["index.md", "patterns/"], ["index.md", {"Patterns": INNER}]),
        ([{"Sew": [{"Quilts": "patterns/"}, "a.md"]}], [{"Sew": [{"Quilts": INNER}, "a.md"]}]),
        (["index.md"], ["index.md", {"Patterns": INNER}]),
        ([], [{"Patterns": INNER}]),
    ])  # fmt: skip
    def test_the_mark_is_replaced_or_they_come_last(self, nav, expected):
        assert nav_with(nav, "patterns", self.ENTRIES) == expected


class TestOurOwnSite:
    """What stands in this repository."""

    def test_the_tutorial_builds_up_to_its_last_file(self):
        """Each part that the tutorial asks for is in the finished file, as it stands."""
        text = (ROOT / "site_src/guide/first-pattern.md").read_text()
        parts = re.findall(r"```yaml\n(.*?)```", text, re.DOTALL)
        assert len(parts) == 4
        assert all(part in WHOLE for part in parts)

    def test_every_setting_is_explained_with_its_default(self):
        text = (ROOT / "site_src/guide/index.md").read_text()
        rows = dict(re.findall(r"^\| `(\w+)` \|.*\| ([^|]+) \|$", text, re.MULTILINE))
        settings = {name: option.default for name, option in EvenseamConfig._schema}
        assert rows.keys() == settings.keys()
        for name, shown in rows.items():
            expected = (
                "both"
                if isinstance(settings[name], list)
                else f"`{str(settings[name]).lower() if isinstance(settings[name], bool) else settings[name]}`"
            )
            assert shown.strip() == expected, name

    def test_every_hand_written_page_is_in_the_navigation(self):
        settings = (ROOT / "mkdocs.yml").read_text()
        for page in (ROOT / "site_src").rglob("*.md"):
            assert page.relative_to(ROOT / "site_src").as_posix() in settings
